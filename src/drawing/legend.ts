/** What the lines of a drawing are, for a person who sees it for the first time: only the kinds that it holds. */

import { type Drawing, LAYERS, type Stroke } from './drawing.ts';
import { STROKES } from './style.ts';

export interface LegendEntry {
  readonly stroke: Stroke;
  readonly words: string;
}

const WORDS: readonly (readonly [keyof typeof STROKES, string])[] = [
  ['stitch', 'where the needle goes'],
  ['channel', 'channels (echo lines)'],
  ['fill', 'fills'],
  ['edge', "the template's working edge"],
  ['ghostEdge', "the template's edge, in place"],
  ['etched', 'lines etched on the template'],
  ['ghostLine', 'lines etched on the template'],
  ['seam', 'seams'],
  ['margin', 'start line and margin'],
  ['mitre', 'the mitre'],
  ['startMark', 'start and stop marks'],
  ['centreLine', 'centre lines'],
  ['guideLine', 'guide lines'],
];

/** One entry for each kind of line on the drawing, in the order of importance. */
export const legendOf = (drawing: Drawing): readonly LegendEntry[] => {
  const used = new Set<string>();
  for (const layer of LAYERS) {
    for (const item of drawing.layers[layer]) if (item.kind === 'path') used.add(keyOf(item.stroke));
  }
  const own = frameWords(drawing);
  return WORDS.filter(([name]) => used.has(keyOf(STROKES[name]))).map(([name, words]) => ({
    stroke: STROKES[name],
    words: own[name] ?? words,
  }));
};

/** A frame has no seams: its circles, or the block's edge, are drawn in their place. */
const frameWords = (drawing: Drawing): Partial<Record<keyof typeof STROKES, string>> => {
  const kinds = new Set(
    drawing.layers.border.map((item) => {
      const { line } = (item.kind === 'path' && item.facts) || {};
      return line;
    }),
  );
  if (kinds.has('motif'))
    return {
      seam: "the motif's edge",
      margin: kinds.has('limit') ? 'the circle kept clear, and the limit' : 'the circle kept clear',
    };
  if (kinds.has('block')) return { seam: "the block's edge, and the limit" };
  return {};
};

const keyOf = ({ width, color, dash }: Stroke): string => [width, color, ...(dash ?? [])].join(' ');
