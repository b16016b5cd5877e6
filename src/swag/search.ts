/**
 * The fit search: templates × start × end × setting × side × direction × counts, within what the plan fixes.
 * Keeps what is valid, best first; what came nearest is looked for only where nothing is.
 */

import type { Plan } from '../plan/index.ts';
import type { Counts } from './counts.ts';
import { type Field, fieldOf } from './field.ts';
import type { Fit } from './fit.ts';
import { missesOf } from './missed.ts';
import { fitRuns, type Miss } from './runs.ts';
import { withoutRepeats } from './same-line.ts';
import { type Score, scoreOf } from './score.ts';
import { searchRings } from './search-rings.ts';
import type { SeatRules } from './seat.ts';
import type { Stitching } from './stitching.ts';
import { fitTurns } from './turns.ts';
import { waysOf } from './ways.ts';

export interface Ranked {
  readonly field: Field;
  readonly fit: Fit;
  readonly score: Score;
}

export interface Search {
  /** Best first. */
  readonly results: readonly Ranked[];
  /** Only where nothing fits. */
  readonly misses: readonly Miss[];
  /** How many counts and poses were tried. */
  readonly tried: number;
}

/** The most swags that a search puts on a side; a plan may ask for more by number. */
export const MOST_COUNT = 40;

/** Searches all templates. */
export const searchFits = (plan: Plan, stitchings: readonly Stitching[]): Search => {
  if (plan.layout.kind === 'frame') return searchRings(plan, plan.layout, stitchings);
  const outward = plan.channels.outward.reduce((a, b) => a + b, 0);
  const results: Ranked[] = [];
  let tried = 0;
  const grounds = groundsOf(plan);
  for (const stitching of stitchings) {
    const ways = waysOf(stitching, plan);
    for (const { field, rules, counts } of grounds) {
      const fitWay = field.corners === 'turn' ? fitTurns : fitRuns;
      for (const way of ways) {
        const found = fitWay(way, field, rules, counts, outward);
        tried += found.tried;
        for (const fit of found.fits) results.push({ field, fit, score: scoreOf(fit, field, outward) });
      }
    }
  }
  results.sort((a, b) => a.score.cost - b.score.cost);
  const misses =
    results.length > 0
      ? []
      : grounds.flatMap(({ field, rules, counts }) =>
          stitchings.flatMap((s) => waysOf(s, plan).flatMap((way) => missesOf(way, field, rules, counts))),
        );
  return { results: withoutRepeats(results), misses, tried };
};

/** A field with what a plan asks of it. */
interface Ground {
  readonly field: Field;
  readonly rules: SeatRules;
  readonly counts: readonly Counts[];
}

const groundsOf = (plan: Plan): readonly Ground[] => {
  const { layout } = plan;
  if (layout.kind === 'frame') return [];
  const outward = plan.channels.outward.reduce((a, b) => a + b, 0);
  const fields =
    layout.kind === 'border' && layout.cornersAreOpen
      ? (['turn', 'meet'] as const).map((corners) => fieldOf({ ...layout, corners }))
      : [fieldOf(layout)];
  return fields.map((field) => ({
    field,
    rules: { room: field.room - outward, gap: plan.swag.gap ?? 'auto' },
    counts: countsOf(plan, field),
  }));
};

const countsOf = (plan: Plan, field: Field): readonly Counts[] =>
  field.runs.map((_, i) => {
    const given = plan.swag.repeats;
    const exactly = given && (given.length === 1 ? given[0] : given[i]);
    return exactly === undefined ? { upTo: MOST_COUNT } : { exactly };
  });
