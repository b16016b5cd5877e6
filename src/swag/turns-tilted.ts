/**
 * Corner turns at a fixed tilt: all half swags are alike, the corners' too, and what is left of each side is
 * shared equally as its gaps: L = n·(2h + g) + 2·(h ∓ d + g/2).
 */

import { checkCorner, overNeighbour, toCornerOf } from './corner.ts';
import { type Counted, type Counts, countsBeside, differAcross, fixedCount } from './counts.ts';
import type { CorneredField } from './field.ts';
import type { SideFit } from './fit.ts';
import { FIT_NOISE } from './misfit.ts';
import { tiltedPose } from './pose.ts';
import type { Tried } from './runs.ts';
import { gapFor, type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';

export const turnsByTilt = (
  way: Way,
  tilt: number,
  field: CorneredField,
  rules: SeatRules,
  counts: readonly Counts[],
): Tried => {
  const pose = tiltedPose(way.shape, tilt);
  const none: Tried = { fits: [], tried: 1 };
  const least = Math.max(rules.gap === 'auto' ? 0 : rules.gap, gapFor(pose, rules.gap));
  if (!(pose.halfSpan > 0 && pose.depth > 0)) return none;
  const corner = checkCorner(way, pose, least, field, rules);
  if (!corner.ok) return none;
  const sides: SideFit[] = [];
  const toCorner = toCornerOf(field, pose);
  // The most repeats that leave at least the least gap; opposite sides that are as long take as many.
  const most = field.runs.map(({ length }, i): Counted => {
    const c = counts[i]!;
    const fit = Math.floor((length - 2 * toCorner - least + FIT_NOISE) / (2 * pose.halfSpan + least));
    return { length, repeats: fixedCount(c) ?? Math.min(fit, countsBeside(c, fit)[0] ?? 0) };
  });
  const repeats = most.map((side, i) => {
    const opposite = most[(i + 2) % most.length]!;
    const isFree = fixedCount(counts[i]!) === undefined && opposite.repeats > 0;
    return isFree && differAcross(side, opposite) ? Math.min(side.repeats, opposite.repeats) : side.repeats;
  });
  for (let i = 0; i < field.runs.length; i++) {
    const run = field.runs[i]!;
    const n = repeats[i]!;
    const free = run.length - 2 * toCorner;
    const gap = (free - 2 * n * pose.halfSpan) / (n + 1);
    if (n < 1 || !(gap >= least - FIT_NOISE && gap < 2 * pose.halfSpan)) return none;
    const tried = seat(way, 2 * pose.halfSpan + Math.max(0, gap), rules);
    if (!tried.ok) return none;
    sides.push({ run, repeats: n, seat: tried.value });
  }
  if (overNeighbour(sides, toCorner, field) > FIT_NOISE) return none;
  // The corner's own half gap differs from side to side; its offset is told for the first.
  const offset = toCorner + sides[0]!.seat.gap / 2;
  return { fits: [{ way, sides, corner: { kind: 'turn', seat: corner.value, toCorner, offset } }], tried: 1 };
};
