/**
 * The fit search: templates × start × end × setting × side × direction × counts, within what the plan fixes.
 * Keeps what is valid, best first; what came nearest is looked for only where nothing is.
 */

import {
  type CornerMade,
  closesRound,
  type FurtherRow,
  hasCorners,
  isAbout,
  type Plan,
} from '../plan/index.ts';
import { type Answer, answersOf } from './answers.ts';
import { type Wishes, wishesOf } from './asked.ts';
import { widestSpanAsked } from './asked-rises.ts';
import { anyCounts, type Counts, countsFor } from './counts.ts';
import { type Field, fieldsOf } from './field.ts';
import { type Fit, HALVES } from './fit.ts';
import { hasLeftOut, leavesOutFlat } from './flat.ts';
import { missesOf } from './missed.ts';
import { fitRings, ringsOf } from './ring.ts';
import { fieldBeyond } from './row-beyond.ts';
import { fitRuns, type Miss } from './runs.ts';
import { withoutRepeats } from './same-line.ts';
import type { Score } from './score.ts';
import { type RowMiss, searchBeyond } from './search-beyond.ts';
import { fitKinds } from './search-kinds.ts';
import { fitOwnCorners } from './search-own-corners.ts';
import type { SeatRules } from './seat.ts';
import type { Way } from './setting.ts';
import type { Stitching } from './stitching.ts';
import { byEvenness, tiedOf } from './ties.ts';
import { fitTurns } from './turns.ts';
import { waysOf } from './ways.ts';
import { wishedScore } from './wished.ts';

export interface Ranked {
  readonly field: Field;
  readonly fit: Fit;
  readonly score: Score;
  /** What it answers to each thing that the plan asks for. */
  readonly answers: readonly Answer[];
}

export interface Search {
  /** Best first. */
  readonly results: readonly Ranked[];
  /** Only where nothing fits. */
  readonly misses: readonly Miss[];
  /** Only where the first row fits, and none beyond it. */
  readonly rowMiss?: RowMiss | undefined;
  /** How many counts and poses were tried. */
  readonly tried: number;
}

/**
 * Searches all templates. What misses a range is left out, or else ranks by how far off it is. Where there are rows beyond
 * the first, or a second kind, `others` holds for each of them what it is searched among. Swags that are all but flat come
 * where they are asked for, or nothing else is to be had.
 */
export const searchFits = (
  plan: Plan,
  stitchings: readonly Stitching[],
  ranges: Wishes['ranges'] = 'bind',
  others: readonly (readonly Stitching[])[] = [],
): Search => {
  const wishes = wishesOf(plan, ranges);
  const drapes = searchWith(plan, stitchings, others, { wishes });
  const isOfOne = plan.rows.length === 0 && plan.swag.alternate === undefined;
  return drapes.results.length > 0 || (isOfOne && !leavesOutFlat({ wishes }))
    ? drapes
    : searchWith(plan, stitchings, others, { wishes, mayBeFlat: true });
};

/** What is asked of swags whatever the band. */
type Asking = Pick<SeatRules, 'wishes' | 'mayBeFlat'>;

const searchWith = (
  plan: Plan,
  stitchings: readonly Stitching[],
  others: readonly (readonly Stitching[])[],
  asking: Asking,
): Search => {
  const outward = outwardOf(plan);
  const results: Ranked[] = [];
  const missed: (() => readonly Miss[])[] = [];
  let tried = 0;
  const { alternate } = plan.swag;
  if (plan.corner) return searchCorners(plan, plan.corner, [stitchings, others[0] ?? stitchings], asking);
  if (alternate) return searchKinds(plan, alternate, [stitchings, others[0] ?? stitchings], asking);
  const grounds = groundsOf(plan, asking);
  for (const stitching of stitchings) {
    const ways = waysOf(stitching, plan);
    for (const ground of grounds)
      for (const way of ways) {
        const found = ground(way);
        tried += found.tried;
        for (const { field, fit } of found.fits) results.push(...rankedOf([fit], field, outward, asking));
        if (results.length === 0) missed.push(found.misses);
      }
  }
  const misses = results.length > 0 ? [] : missed.flatMap((told) => told());
  const first: Search = { results: withoutRepeats(inOrder(results)), misses, tried };
  const [row] = plan.rows;
  const found = row && others[0] && results.length > 0 ? withRow(first, plan, row, others[0], asking) : first;
  return { ...found, results: withHalves(found.results, plan) };
};

/** Of two kinds that take turns each is searched among its own. */
const searchKinds = (
  plan: Plan,
  alternate: NonNullable<Plan['swag']['alternate']>,
  stitchings: readonly [readonly Stitching[], readonly Stitching[]],
  asking: Asking,
): Search => {
  const { layout } = plan;
  if (closesRound(layout)) return { results: [], misses: [], tried: 0 };
  const outward = outwardOf(plan);
  const ways = [0, 1].map((k) => stitchings[k]!.flatMap((one) => waysOf(one, { swag: alternate[k]! })));
  const results: Ranked[] = [];
  let tried = 0;
  for (const field of fieldsOf(layout).filter(({ corners }) => corners !== 'turn' && corners !== 'across'))
    for (const gap of gapsToTry(plan, asking)) {
      const rules = { room: field.room - outward, gap: gap === 'auto' ? 0 : gap, ...asking };
      const counts = countsOf(plan, field, asking);
      const found = fitKinds([ways[0]!, ways[1]!], field, rules, counts, outward);
      tried += found.tried;
      results.push(...rankedOf(found.fits, field, outward, asking));
    }
  return { results: withoutRepeats(inOrder(results)), misses: [], tried };
};

/** With a swag of its own over each corner: its ways are searched among its own templates. */
const searchCorners = (
  plan: Plan,
  corner: CornerMade,
  stitchings: readonly [readonly Stitching[], readonly Stitching[]],
  asking: Asking,
): Search => {
  const { layout, swag } = plan;
  if (closesRound(layout)) return { results: [], misses: [], tried: 0 };
  const outward = outwardOf(plan);
  const [sides, corners] = [swag, corner].map((made, k) => {
    const onCentre = { swag: { ...made, setting: 'crown-on-centre' as const } };
    return stitchings[k]!.flatMap((one) => waysOf(one, onCentre));
  });
  const grounds = fieldsOf(layout).flatMap((field) =>
    field.corners === 'turn' || field.corners === 'across'
      ? gapsToTry(plan, asking).map((gap) => ({
          field,
          rules: {
            room: field.room - outward,
            gap,
            ...asking,
            widestGap: widestGapOf(plan),
            smoothCorners: corner.smooth,
          },
          counts: countsOf(plan, field, asking),
        }))
      : [],
  );
  const { found, tried } = fitOwnCorners([sides!, corners!], grounds, outward);
  const results = found.flatMap(({ field, fit }) => rankedOf([fit], field, outward, asking));
  return { results: withoutRepeats(inOrder(results)), misses: [], tried };
};

/** What some fits score and answer; without those that miss a range that binds, or are left out for being all but flat. */
const rankedOf = (fits: readonly Fit[], field: Field, outward: number, asking: Asking): readonly Ranked[] =>
  fits.flatMap((fit) => {
    if (hasLeftOut(fit, asking)) return [];
    const { wishes } = asking;
    const score = wishedScore(fit, field, outward, wishes);
    const answers = wishes ? answersOf(fit, { wishes, field, outward }) : [];
    return score ? [{ field, fit, score, answers }] : [];
  });

const inOrder = (results: readonly Ranked[]): readonly Ranked[] =>
  results.toSorted((a, b) => a.score.cost - b.score.cost || byEvenness(tiedOf(a.fit), tiedOf(b.fit)));

/** The same with the row beyond it that suits each best. */
const withRow = (
  { results: firsts, tried }: Search,
  plan: Plan,
  row: FurtherRow,
  stitchings: readonly Stitching[],
  { mayBeFlat }: Asking,
): Search => {
  const ways = stitchings.flatMap((stitching) => waysOf(stitching, row));
  const rules = { gap: givenGap(plan), outward: reach(plan.channels.outward), mayBeFlat };
  const found = searchBeyond(firsts, ways, row, rules);
  const results = found.results.toSorted((a, b) => a.score.cost - b.score.cost);
  return { results, misses: [], rowMiss: found.miss, tried: tried + found.tried };
};

/** A band with what a plan asks of it: what a way makes there, and, where that is nothing, by how much it misses. */
type Ground = (way: Way) => {
  readonly fits: readonly Pick<Ranked, 'field' | 'fit'>[];
  readonly misses: () => readonly Miss[];
  readonly tried: number;
};

const groundsOf = (plan: Plan, asking: Asking): readonly Ground[] =>
  gapsToTry(plan, asking).flatMap((gap) => groundsWith(plan, gap, asking));

const groundsWith = (plan: Plan, gap: number | 'auto', asking: Asking): readonly Ground[] => {
  const { layout, channels } = plan;
  const outward = outwardOf(plan);
  if (closesRound(layout)) {
    const gaps = { gap, widestSpan: widestSpanAsked(asking.wishes), widestGap: widestGapOf(plan) };
    const rings = ringsOf(layout, outward, reach(channels.inward), gaps);
    return [(way) => fitRings(way, rings)];
  }
  // A second row goes round a corner, and not across it.
  const fields = fieldsOf(layout).filter(({ corners }) => corners !== 'across' || plan.rows.length === 0);
  const halved = halvedOf(plan);
  return fields
    .filter(({ corners }) => !halved || corners !== 'half')
    .map((field): Ground => {
      const rules = { room: field.room - outward, gap, ...asking, widestGap: widestGapOf(plan) };
      const counts = countsOf(plan, field, asking);
      return (way) => {
        const { fits, tried } =
          field.corners === 'turn' || field.corners === 'across'
            ? fitTurns(way, field, rules, counts, outward)
            : fitRuns(way, field, rules, counts, outward);
        const misses = () => missesOf(way, field, rules, counts);
        return { fits: fits.map((fit) => ({ field, fit })), misses, tried };
      };
    });
};

/** The band with halves at its corners, of a plan that leaves them to the search. */
const halvedOf = ({ layout }: Plan): Field | undefined =>
  hasCorners(layout) && layout.corners === undefined
    ? fieldsOf(layout).find(({ corners }) => corners === 'half')
    : undefined;

/**
 * Beside a free corner square whole swags and halves fit alike, and so do rows beyond them: what is found for the one
 * serves for the other, too.
 */
const withHalves = (results: readonly Ranked[], plan: Plan): readonly Ranked[] => {
  const field = halvedOf(plan);
  if (!field) return results;
  const fieldAbove = fieldBeyond(field, plan.rows[0]?.at ?? 0);
  const halved = ({ beyond, ...fit }: Fit): Fit => ({
    ...fit,
    corner: HALVES,
    ...(beyond && { beyond: { field: fieldAbove, fit: halved(beyond.fit) } }),
  });
  return results.flatMap((one) =>
    one.field.corners === 'open' ? [one, { ...one, field, fit: halved(one.fit) }] : [one],
  );
};

/**
 * The gaps with which designs are looked for: the one that is given, else the least that serves, and of a wish the ends
 * of its range, or what is asked about.
 */
const gapsToTry = ({ swag: { gap } }: Plan, { wishes }: Asking): readonly (number | 'auto')[] => {
  if (gap === undefined || gap === 'auto') return ['auto'];
  if (typeof gap === 'number') return wishes?.ranges === 'rank' ? [gap, 'auto'] : [gap];
  if (isAbout(gap)) return [gap.about, 'auto'];
  const { least = 0, most } = gap;
  return [...(least > 0 ? [least] : []), 'auto', ...(most !== undefined && most > 0 ? [most] : [])];
};

/** How wide (mm) a gap may be made where that gives what else is asked; undefined where it is given in figures. */
const widestGapOf = ({ swag: { gap } }: Plan): number | undefined => {
  if (typeof gap === 'number') return undefined;
  const most = gap === undefined || gap === 'auto' || isAbout(gap) ? undefined : gap.most;
  return most ?? Number.POSITIVE_INFINITY;
};

const countsOf = (plan: Plan, field: Field, { wishes }: Asking): readonly Counts[] =>
  field.runs.map((_, i) => {
    const given = plan.swag.repeats;
    const wish = given && (given.length === 1 ? given[0] : given[i]);
    return wishes?.ranges === 'rank' ? anyCounts(wish) : countsFor(wish);
  });

/** The gap that a plan gives in figures (mm), or as little as serves. */
export const givenGap = ({ swag: { gap } }: Plan): number | 'auto' =>
  typeof gap === 'number' ? gap : 'auto';

/** What the first row leaves free beyond it (mm): for channels, or for the row that keeps apart from it. */
export const outwardOf = ({ channels, rows }: Plan): number =>
  reach(channels.outward) + rows.reduce((sum, { at, apart }) => sum + (at > 0 ? apart : 0), 0);

const reach = (widths: readonly number[]): number => widths.reduce((a, b) => a + b, 0);
