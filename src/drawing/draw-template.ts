/** A template at true size, to lay the acrylic on: its edge, what the needle stitches round it, and its etched lines. */

import {
  add,
  directionAlong,
  leftOf,
  movePath,
  type Point,
  pathBox,
  pathStart,
  pointAlong,
  polyline,
  STAY,
  scale,
} from '../geometry/index.ts';
import type { Stitching } from '../swag/index.ts';
import type { Drawing, Item, Stroke, TextItem } from './drawing.ts';
import { etchedAlignment, etchedChannels } from './ghost.ts';
import { INK, LABEL_SIZE, STROKES } from './style.ts';

const OUTLINE: Stroke = { width: 0.5, color: INK.stitch };
const NEEDLE: Stroke = { width: 0.35, color: INK.mark, dash: [3, 1.2] };
const ETCHED: Stroke = { width: 0.2, color: INK.ghost };

/** How far a section's number stands inside the edge, mm: clear of channel lines etched up to half an inch in. */
const NUMBER_INSIDE = 9;
/** Half the length of the tick across the edge at a break, mm. */
const BREAK_TICK = 2.5;

export const drawTemplate = (stitching: Stitching, title: string): Drawing => {
  const { template, stitched, sections } = stitching;
  const path = (p: Parameters<typeof movePath>[0], stroke: Stroke, part: string): Item => ({
    kind: 'path',
    path: movePath(p, STAY),
    stroke,
    facts: { part },
  });
  const at = (along: number): Point => pointAlong(template.edge, along) ?? { x: 0, y: 0 };
  const inward = (along: number): Point =>
    scale(leftOf(directionAlong(template.edge, along) ?? { x: 1, y: 0 }), -1);
  const box = pathBox(template.edge);
  const heel = pathStart(template.edge) ?? at(0);
  const ticks = template.breaks.map((b): Item => {
    const normal = inward(b.at);
    const tick = polyline([
      add(b.point, scale(normal, -BREAK_TICK)),
      add(b.point, scale(normal, BREAK_TICK)),
    ]);
    return path(tick, STROKES.startMark, 'break');
  });
  const numbers = sections.map((s): Item => {
    const middle = (s.from + s.to) / 2;
    const place = add(at(middle), scale(inward(middle), NUMBER_INSIDE));
    return label(place, s.name ? `${s.number} ${s.name}` : String(s.number), LABEL_SIZE, INK.note, true);
  });
  const alignment = etchedAlignment(template);
  return {
    title,
    layers: {
      fill: [],
      border: [],
      template: [
        path(template.edge, OUTLINE, 'edge'),
        ...alignment.map((a) => path(a.path, ETCHED, 'alignment')),
        ...etchedChannels(template).map((c) => path(c.path, ETCHED, 'channel-line')),
      ],
      channel: [],
      stitch: [path(stitched.path, NEEDLE, 'needle')],
      marks: [
        ...ticks,
        ...stitched.unreached.map((u) => path(polyline([u.turn, u.deepest]), STROKES.guideLine, 'unreached')),
      ],
      notes: [
        ...numbers,
        ...alignment.map((a): Item => {
          const foot = a.path.pieces[0]?.to ?? heel;
          return label({ x: foot.x, y: foot.y - 1.2 * LABEL_SIZE }, a.name, LABEL_SIZE, INK.ghost, true);
        }),
        label({ x: heel.x - 1.5 * LABEL_SIZE, y: heel.y }, 'heel', LABEL_SIZE, INK.note, false, 'end'),
        label(
          { x: box.maxX + 1.5 * LABEL_SIZE, y: at(stitched.edgeLength).y },
          'crown end',
          LABEL_SIZE,
          INK.note,
          false,
          'start',
        ),
      ],
    },
  };
};

const label = (
  at: Point,
  text: string,
  size: number,
  color: string,
  bold: boolean,
  align: TextItem['align'] = 'middle',
): TextItem => ({ kind: 'text', text, at, size, align, angle: 0, color, ...(bold ? { bold } : {}) });
