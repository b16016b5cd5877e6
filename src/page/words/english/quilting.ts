/** Channels and fills. */

import { series } from '../../../document/index.ts';

export const quiltingWords = {
  title: 'Channels and fills',
  lead: 'Echo lines beside the swags, and what is quilted into the shapes.',
  outside: 'Channels outside',
  inside: 'Channels inside',
  points: { label: 'At a point they', round: 'roll round it', pivot: 'stay a point' },
  widths: 'Widths: each from the line before',
  lines: ({ lines, several }: { readonly lines: readonly string[]; readonly several: string }) =>
    `${whereLines(lines)}. Several: ${several}`,

  fills: 'Fills: feathers, pebbles, stippling …',
  inSwags: 'Inside the swags',
  roundSwags: 'Round the swags',
  inCorners: 'In the corners',
  inSquares: 'In the corner squares',
  inChannels: 'In the channels',
  none: 'nothing',
  asInSwags: 'as in the swags',
};

const whereLines = (lines: readonly string[]): string =>
  lines.length === 0
    ? 'Counted from the stitching'
    : lines.length === 1
      ? `One line, ${lines[0]} from the stitching`
      : `Lines ${series(lines)} from the stitching`;
