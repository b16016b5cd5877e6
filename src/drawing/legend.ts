/** What the lines of a drawing are, for a person who sees it for the first time: only the roles that it holds. */

import { LAYERS } from './drawing.ts';
import type { LineRole } from './role.ts';
import type { Stroke, StyledDrawing } from './style.ts';

export interface LegendEntry {
  readonly stroke: Stroke;
  readonly words: string;
}

/** In the order of importance. What has no words needs none: it is named where it stands. */
const WORDS: Readonly<Partial<Record<LineRole, string>>> = {
  stitch: 'where the needle goes',
  channel: 'channels (echo lines)',
  fill: 'fills',
  way: 'where a fill starts (dot), goes (arrows) and stops (bar)',
  edge: "the template's working edge",
  ghostEdge: "the template's edge, in place",
  etched: 'lines etched on the template',
  ghostLine: 'lines etched on the template',
  seam: 'seams',
  block: "the block's edge",
  motif: "the motif's edge",
  limit: 'the limit',
  startLine: 'the line that swags start on',
  margin: 'margin, kept clear',
  clear: 'the circle kept clear',
  mitre: 'the mitre',
  startMark: 'start and stop marks',
  stopMark: 'start and stop marks',
  break: 'breaks',
  centreLine: 'centre lines',
  guideLine: 'guide lines',
  ray: 'rays',
  unreached: 'where the foot cannot reach',
};

/** One entry for each look on the drawing; roles that look alike share it. */
export const legendOf = (drawing: StyledDrawing): readonly LegendEntry[] => {
  const strokes = new Map<LineRole, Stroke>();
  for (const layer of LAYERS)
    for (const item of drawing.layers[layer])
      if (item.kind === 'path' && item.role) strokes.set(item.role, item.stroke);
  const entries = new Map<string, { stroke: Stroke; words: string[] }>();
  for (const [role, words] of Object.entries(WORDS) as [LineRole, string][]) {
    const stroke = strokes.get(role);
    if (!stroke) continue;
    const known = entries.get(keyOf(stroke));
    if (!known) entries.set(keyOf(stroke), { stroke, words: [words] });
    else if (!known.words.includes(words)) known.words.push(words);
  }
  return [...entries.values()].map(({ stroke, words }) => ({ stroke, words: words.join(', ') }));
};

const keyOf = ({ width, color, dash }: Stroke): string => [width, color, ...(dash ?? [])].join(' ');
