/** The least gap that serves where swags bulge past their starts, of a border with a swag over each corner. */

import { gapBefore } from './beside.ts';
import { FIT_NOISE } from './misfit.ts';
import { NEIGHBOUR_ROOM } from './seat.ts';
import type { Shape } from './shape.ts';
import { bestOf } from './turns-corner.ts';
import { type Corner, type Ground, riseOnSide, toStart } from './turns-ground.ts';

/**
 * The least gap that serves where swags bulge past their starts. The gap that the poses need depends on the
 * poses, and these on the gap: from none upward until it serves.
 */
export const withRoom = (first: Corner, without: Ground): { corner: Corner; gap: number } | undefined => {
  let corner: Corner | undefined = first;
  let { gap } = without;
  let before: { gap: number; wanted: number } | undefined;
  for (let round = 0; round < ROOM_ROUNDS; round++) {
    const wanted = gapWanted(corner, { ...without, gap });
    if (wanted <= gap + FIT_NOISE && gap - wanted <= GAP_PLAY) return { corner, gap };
    const next = secant(before, { gap, wanted });
    before = { gap, wanted };
    gap = next;
    const ground: Ground = { ...without, gap };
    corner = bestOf(first.repeats, ground);
    if (corner) continue;
    // The most alike is not to be had: poses that the gap leaves room for may still be.
    const windows = without.keepBefore((sine) => (gap * sine - NEIGHBOUR_ROOM) / 2);
    corner = bestOf(first.repeats, { ...ground, windows });
    if (!corner) return undefined;
  }
  return undefined;
};

/** A gap within this (mm) of the least that serves is the least that serves: no one sews finer. */
const GAP_PLAY = 1e-3;
/** The secants close in within a few rounds; after this many nothing is to be found. */
const ROOM_ROUNDS = 30;

/** The next gap to try, where the gap that is wanted would be the gap that is, a hair above it. */
const secant = (
  before: { readonly gap: number; readonly wanted: number } | undefined,
  now: { readonly gap: number; readonly wanted: number },
): number => {
  const slope = before ? (now.wanted - before.wanted) / (now.gap - before.gap) : 0;
  const next = now.gap + (now.wanted - now.gap) / (1 - slope);
  return (slope < 0.9 && next > 0 ? next : now.wanted) + GAP_PLAY / 10;
};

/** The least gap (mm) that leaves room for a corner and its sides: the steepest pose bulges most. */
export const gapWanted = ({ repeats, rise }: Corner, ground: Ground): number => {
  const { way, over, field, lay, lines } = ground;
  const offset = toStart(lay, over.shape.chord, rise);
  const sides = repeats.map((n, i) => riseOnSide(field.runs[i]!.length - 2 * offset, n, ground));
  if (over === way) return gapAtRise(Math.max(rise, ...sides), way.shape, lines);
  return Math.max(gapAtRise(Math.max(...sides), way.shape, lines), gapAtRise(rise, over.shape, lines));
};

export const gapAtRise = (rise: number, shape: Shape, lines: readonly number[]): number =>
  Math.max(...lines.map((line) => gapBefore(line, shape, rise)));
