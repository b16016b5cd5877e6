/**
 * Counts for runs that end at their corners: each side of length L takes n repeats of L/n, on its own. What
 * shows on the quilt is the difference in depth between the sides, so the counts are chosen together.
 */

import type { Field, Run } from './field.ts';
import { depthsOf, type Fit, type SideFit, spreadOf } from './fit.ts';
import { FIT_NOISE, type Misfit } from './misfit.ts';
import { type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';

/** The counts that a plan allows for a side: one, or all up to a most. */
export type Counts = { readonly exactly: number } | { readonly upTo: number };

/** What was tried and missed, for telling a person what would be nearest. */
export interface Miss {
  readonly way: Way;
  readonly run: Run;
  readonly repeats: number;
  readonly misfit: Misfit;
}

export interface Tried {
  readonly fits: readonly Fit[];
  readonly misses: readonly Miss[];
}

/** All good choices of counts for one way: for each side's possible depth, the other sides' nearest to it. */
export const fitRuns = (way: Way, field: Field, rules: SeatRules, counts: readonly Counts[]): Tried => {
  const missed: Miss[] = [];
  const bySide = field.runs.map((run, i) => seatsOf(way, run, rules, counts[i]!, field, missed));
  const fits: Fit[] = [];
  const seen = new Set<string>();
  for (const anchors of bySide) {
    for (const anchor of anchors) {
      const sides: SideFit[] = [];
      for (const choices of bySide) {
        const nearest = nearestDepth(choices, anchor.seat.pose.depth);
        if (nearest) sides.push(nearest);
      }
      const key = sides.map((s) => s.repeats).join(' ');
      if (sides.length < bySide.length || seen.has(key)) continue;
      seen.add(key);
      fits.push({ way, sides, corner: undefined });
    }
  }
  return { fits: fits.sort((a, b) => spreadOf(depthsOf(a)) - spreadOf(depthsOf(b))), misses: missed };
};

const nearestDepth = (choices: readonly SideFit[], depth: number): SideFit | undefined => {
  let best: SideFit | undefined;
  let off = Number.POSITIVE_INFINITY;
  for (const c of choices) {
    const d = Math.abs(c.seat.pose.depth - depth);
    if (d < off) {
      best = c;
      off = d;
    }
  }
  return best;
};

const seatsOf = (
  way: Way,
  run: Run,
  rules: SeatRules,
  counts: Counts,
  field: Field,
  missed: Miss[],
): readonly SideFit[] => {
  const found: SideFit[] = [];
  for (const repeats of countsFor(counts, way, run.length, rules)) {
    const tried = seat(way, run.length / repeats, rules);
    if (!tried.ok) {
      missed.push({ way, run, repeats, misfit: tried.misfit });
      continue;
    }
    const over = pastCornerMitre(tried.value.pose.tilt, way, tried.value.gap, field);
    if (over > FIT_NOISE) missed.push({ way, run, repeats, misfit: { kind: 'past-centre', by: over } });
    else found.push({ run, repeats, seat: tried.value });
  }
  return found;
};

/** The counts worth laying: from the first at which the chord reaches, to the last at which the depth may still fit. */
export const countsFor = (counts: Counts, way: Way, length: number, rules: SeatRules): readonly number[] => {
  if ('exactly' in counts) return [counts.exactly];
  const gap = rules.gap === 'auto' ? 0 : rules.gap;
  const { chord } = way.shape;
  // h ≤ C gives the fewest; d ≤ room, so h ≥ √(C² − room²), gives the most. One more on each side is a near miss to report.
  const least = Math.max(1, Math.floor(length / (2 * chord + gap)));
  const half = Math.sqrt(Math.max(0, chord * chord - rules.room * rules.room));
  const fewest =
    half > 0 && way.tilt === undefined && rules.gap !== 'auto'
      ? Math.ceil(length / (2 * half + gap)) + 1
      : counts.upTo;
  const most = Math.min(counts.upTo, fewest);
  const list: number[] = [];
  for (let n = least; n <= most; n++) list.push(n);
  return list;
};

/** From the outer seam, two runs that meet at a corner lean over the same cloth: each keeps to its side of the mitre. */
const pastCornerMitre = (tilt: number, way: Way, gap: number, field: Field): number => {
  if (field.from !== 'outer' || field.corners !== 'meet') return 0;
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  // The mitre leaves the corner at 45°: beyond it is the direction (−1, 1)/√2, seen from the first start.
  const nx = -Math.SQRT1_2;
  const ny = Math.SQRT1_2;
  return way.shape.support(c * nx + s * ny, c * ny - s * nx) - (gap / 2) * Math.SQRT1_2;
};
