/** Parallel lines, evenly spaced or not. */

import { checked, type Fill, MOST_ELEMENTS, nothing, TOO_FINE } from './fill.ts';
import { anchorOf, evenOffsets, parallelLines, reachAcross } from './parallel.ts';
import { randomOf } from './random.ts';
import { linesOnSides } from './sides.ts';

/** Uneven gaps lie between these shares of the spacing; their mean is the spacing. */
export const UNEVEN_GAPS: readonly [number, number] = [0.4, 1.6];

const UPRIGHT = Math.PI / 2;

export const lines: Fill = checked({
  name: 'lines',
  about: 'parallel lines, upright unless an angle is given; evenly or unevenly spaced',
  suits: 'area',
  sewn: 'sew line after line, each back beside the one before; between two lines the needle travels along the edge',
  crowd: 0.1,
  takes: ['angle'],
  usualAngle: UPRIGHT,
  fill: (region, options, context) => {
    if (context?.sides) {
      const paths = linesOnSides(region, context.sides, [options.angle ?? UPRIGHT], options.spacing);
      return paths ? { paths, continuous: false, messages: [] } : nothing(TOO_FINE);
    }
    const anchor = anchorOf(region, context);
    const angle = (options.angle ?? UPRIGHT) + (options.turn ?? 0);
    const reach = reachAcross(region, anchor, angle);
    const offsets = options.uneven
      ? unevenOffsets(reach, options.spacing, options.seed)
      : evenOffsets(reach, options.spacing);
    if (!offsets) return nothing(TOO_FINE);
    return { paths: parallelLines(region, anchor, angle, offsets), continuous: false, messages: [] };
  },
});

const unevenOffsets = (
  [least, most]: readonly [number, number],
  spacing: number,
  seed: number,
): number[] | undefined => {
  if (!((most - least) / spacing < MOST_ELEMENTS)) return undefined;
  const random = randomOf(seed);
  const offsets: number[] = [];
  for (let at = least + spacing / 2; at < most; at += spacing * random.between(...UNEVEN_GAPS))
    offsets.push(at);
  return offsets;
};
