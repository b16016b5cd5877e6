/** A drawing as a picture to show: on cloth and with thread in colours of her own. */

import { type Box, boxHeight, boxWidth } from '../geometry/index.ts';
import type { ClothArea } from './cloth.ts';
import type { ClothColours } from './cloth-colours.ts';
import type { Drawing, LayerId } from './drawing.ts';
import type { LineRole } from './role.ts';
import { SHEET } from './sheet-style.ts';
import { type Stroke, type StyledArea, type StyledDrawing, type StyleSheet, styled } from './style.ts';

interface Shown {
  readonly cloth: readonly ClothArea[];
  readonly colours: ClothColours;
  /** What all of the drawing takes, mm. */
  readonly box: Box;
  /** Layers left out; with the marks go the lines that are not on the quilt when it is done. */
  readonly without: readonly LayerId[];
}

/** The cloth is none of the layers, and stays whichever are left out. */
export const inColours = (drawing: Drawing, { cloth, colours, box, without }: Shown): StyledDrawing => {
  const sheet = sheetIn(colours, widerFor(box), !without.includes('marks'));
  const { layers: all } = styled(drawing, sheet);
  const layers = { ...all, ...Object.fromEntries(without.map((id) => [id, []])) };
  const areas = cloth.map(
    ({ role, loop }): StyledArea => ({
      kind: 'area',
      loops: [loop],
      color: colours[role],
    }),
  );
  return {
    title: drawing.title,
    ground: colours.fabric,
    // What is painted first.
    layers: { ...layers, fill: [...areas, ...layers.fill] },
  };
};

/** Of a picture to look at, mm: in a larger one lines are wider, or they would be lost in it. */
const LOOKED_AT = 700;

const widerFor = (box: Box): number => Math.max(1, Math.max(boxWidth(box), boxHeight(box)) / LOOKED_AT);

/** What is there until the last mark is washed out. */
const HELPS: ReadonlySet<LineRole> = new Set(['limit', 'startLine', 'margin', 'clear', 'mitre']);

const sheetIn = (colours: ClothColours, wider: number, withMarks: boolean): StyleSheet => ({
  lines: Object.fromEntries(
    Object.entries(SHEET.lines).flatMap(([name, stroke]: [string, Stroke]) => {
      const role = name as LineRole;
      if (!withMarks && HELPS.has(role)) return [];
      const dash = stroke.dash && { dash: stroke.dash.map((length) => length * wider) };
      return [[role, { width: stroke.width * wider, color: colours[PARTS[role]], ...dash }]];
    }),
  ),
  areas: { silhouette: colours.template },
  words: { label: colours.mark, etchedName: colours.template, note: colours.mark },
});

const PARTS: Readonly<Record<LineRole, keyof ClothColours>> = {
  stitch: 'thread',
  channel: 'thread',
  fill: 'thread',
  way: 'mark',
  seam: 'seam',
  block: 'seam',
  motif: 'seam',
  limit: 'seam',
  startLine: 'seam',
  margin: 'seam',
  clear: 'seam',
  mitre: 'seam',
  edge: 'template',
  etched: 'template',
  break: 'mark',
  unreached: 'mark',
  measure: 'mark',
  ghostEdge: 'template',
  ghostLine: 'template',
  startMark: 'mark',
  stopMark: 'mark',
  centreLine: 'mark',
  guideLine: 'mark',
  ray: 'mark',
  spacer: 'thread',
  spacerCross: 'thread',
};
