/**
 * The fit search: templates × start × end × setting × side × direction × counts, within what the plan fixes.
 * Keeps what is valid, best first, and what came nearest where nothing is.
 */

import type { Plan } from '../plan/index.ts';
import { type Field, fieldOf } from './field.ts';
import type { Fit } from './fit.ts';
import { type Counts, fitRuns, type Miss } from './runs.ts';
import { type Score, scoreOf } from './score.ts';
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
  readonly misses: readonly Miss[];
  /** How many poses were tried. */
  readonly tried: number;
}

/** The most swags that a search puts on a side; a plan may ask for more by number. */
export const MOST_COUNT = 40;

/** Searches all templates; the plan's layout must not be a frame. */
export const searchFits = (plan: Plan, stitchings: readonly Stitching[]): Search => {
  if (plan.layout.kind === 'frame') return { results: [], misses: [], tried: 0 };
  const outward = plan.channels.outward.reduce((a, b) => a + b, 0);
  const results: Ranked[] = [];
  const misses: Miss[] = [];
  let tried = 0;
  const layout = plan.layout;
  const choices = layout.kind === 'border' && layout.cornersAreOpen ? (['turn', 'meet'] as const) : undefined;
  const fields = choices
    ? choices.map((corners) => fieldOf({ ...layout, corners } as typeof layout))
    : [fieldOf(layout)];
  for (const field of fields) {
    const rules: SeatRules = { room: field.room - outward, gap: plan.swag.gap ?? 'auto' };
    const counts = countsOf(plan, field);
    for (const stitching of stitchings) {
      for (const way of waysOf(stitching, plan)) {
        const found =
          field.corners === 'turn' ? fitTurns(way, field, rules, counts) : fitRuns(way, field, rules, counts);
        tried += found.fits.length + found.misses.length;
        for (const fit of found.fits) results.push({ field, fit, score: scoreOf(fit, field, outward) });
        misses.push(...found.misses);
      }
    }
  }
  results.sort((a, b) => a.score.cost - b.score.cost);
  return { results, misses, tried };
};

const countsOf = (plan: Plan, field: Field): readonly Counts[] =>
  field.runs.map((_, i) => {
    const given = plan.swag.repeats;
    const exactly = given && (given.length === 1 ? given[0] : given[i]);
    return exactly === undefined ? { upTo: MOST_COUNT } : { exactly };
  });
