/** Where nothing fits: by how much each way misses, at the counts that come nearest. */

import { besideNeighbour } from './beside.ts';
import { checkCorner, toCornerOf } from './corner.ts';
import { type Counts, countsBetween, fixedCount } from './counts.ts';
import type { CorneredField, Field } from './field.ts';
import type { Misfit } from './misfit.ts';
import { crownPose, tiltedPose } from './pose.ts';
import type { Miss } from './runs.ts';
import { type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';

/**
 * What keeps a way from fitting: on every side its counts are tried, the count that misses least speaks for the side,
 * and the side that misses most for the way, since all of them have to fit.
 */
export const missesOf = (
  way: Way,
  field: Field,
  rules: SeatRules,
  counts: readonly Counts[],
): readonly Miss[] => {
  const offset =
    field.corners === 'turn' || field.corners === 'across' ? cornerFor(way, field, rules) : { by: 0 };
  if (offset.misfit) {
    const [first] = counts;
    const repeats = first && fixedCount(first);
    return [{ way, run: field.runs[0]!, repeats, misfit: offset.misfit }];
  }
  const bySide = field.runs.flatMap((run, i): Miss[] => {
    const length = run.length - 2 * offset.by;
    const tried = nearCounts(counts[i]!, way, length).map((repeats) => {
      const misfit = missOf(way, length / repeats, rules, field);
      return misfit && { way, run, repeats, misfit };
    });
    const missed = tried.filter((miss) => miss !== undefined);
    // A side on which one count fits is not what is in the way.
    return missed.length < tried.length ? [] : missed.sort(nearest).slice(0, 1);
  });
  return bySide.sort(nearest).slice(-1);
};

const nearest = (a: Miss, b: Miss): number => a.misfit.by - b.misfit.by;

/** The counts whose spans are from the template's longest to a third of it; more make spikes. */
const nearCounts = (counts: Counts, way: Way, length: number): readonly number[] => {
  const fewest = Math.max(1, Math.floor(length / (2 * way.shape.chord)));
  return countsBetween(counts, fewest, 3 * fewest + 1);
};

const missOf = (way: Way, share: number, rules: SeatRules, field: Field): Misfit | undefined => {
  const tried = seat(way, share, rules);
  if (!tried.ok) return tried.misfit;
  return besideNeighbour(tried.value, field);
};

/** The corner of a way that misses least: its offset (mm), or its misfit. */
const cornerFor = (way: Way, field: CorneredField, rules: SeatRules): { by: number; misfit?: Misfit } => {
  let nearest: { by: number; misfit?: Misfit } | undefined;
  const gap = rules.gap === 'auto' ? 0 : rules.gap;
  for (const rise of CORNER_RISES) {
    const { chord } = way.shape;
    const pose =
      way.tilt === undefined ? crownPose(way.shape, chord * Math.cos(rise)) : tiltedPose(way.shape, way.tilt);
    if (!pose) continue;
    const by = toCornerOf(field, pose) + gap / 2;
    const tried = checkCorner(way, pose, gap, field, rules);
    if (tried.ok) return { by };
    if (!(tried.misfit.by >= (nearest?.misfit?.by ?? Number.POSITIVE_INFINITY)))
      nearest = { by, misfit: tried.misfit };
  }
  return nearest ?? { by: 0 };
};

/** From a flat drape to one as deep as half its span is wide (radians). */
const CORNER_RISES = [0.3, 0.4, 0.5, 0.6, 0.7, 0.78];
