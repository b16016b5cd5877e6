/** The fit search for round frames: every way with every count, each closed round the motif as tightly as it may. */

import type { Frame, Plan } from '../plan/index.ts';
import type { Fit } from './fit.ts';
import { fitRing, type Ring, ringRun } from './ring.ts';
import type { Miss } from './runs.ts';
import { withoutRepeats } from './same-line.ts';
import { scoreOfRing } from './score.ts';
import type { Ranked, Search } from './search.ts';
import type { Stitching } from './stitching.ts';
import { waysOf } from './ways.ts';

/** Two swags have no room between their mirrors, and more than 64 are no swags any more. */
const FEWEST = 3;
const MOST = 64;

export const searchRings = (plan: Plan, layout: Frame, stitchings: readonly Stitching[]): Search => {
  const results: Ranked[] = [];
  const misses: Miss[] = [];
  let tried = 0;
  const rings = ringsOf(plan, layout);
  for (const stitching of stitchings)
    for (const way of waysOf(stitching, plan))
      for (const ring of rings) {
        const found = fitRing(way, ring);
        tried++;
        for (const laid of found.fits) {
          const { seat, field } = laid;
          const sides = [{ run: field.runs[0]!, repeats: ring.count, seat }];
          const fit: Fit = { way, sides, corner: undefined };
          results.push({ field, fit, score: scoreOfRing(fit, field) });
        }
        if (found.misfit)
          misses.push({
            way,
            run: ringRun(ring.count, 1 / ring.clear),
            repeats: ring.count,
            misfit: found.misfit,
          });
      }
  results.sort((a, b) => a.score.cost - b.score.cost);
  return { results: withoutRepeats(results), misses: results.length > 0 ? [] : misses, tried };
};

/** What the plan asks for, for each count that it leaves open. */
const ringsOf = (plan: Plan, layout: Frame): readonly Ring[] => {
  const counts =
    layout.count === undefined
      ? Array.from({ length: MOST - FEWEST + 1 }, (_, i) => FEWEST + i)
      : [layout.count];
  return counts.map((count) => ({
    count,
    motif: layout.around / 2,
    clear: layout.around / 2 + layout.clearance,
    within: layout.within === undefined ? Number.POSITIVE_INFINITY : layout.within / 2,
    from: layout.from,
    outward: reach(plan.channels.outward),
    inward: reach(plan.channels.inward),
    gap: plan.swag.gap ?? 'auto',
  }));
};

const reach = (widths: readonly number[]): number => widths.reduce((a, b) => a + b, 0);
