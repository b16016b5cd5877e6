/** From a plan and its templates to the best design, or to the reasons why there is none. */

import type { Problem } from '../document/index.ts';
import { exactLength } from '../length/index.ts';
import { closesRound, type Frame, type HowMade, type Plan } from '../plan/index.ts';
import type { Template } from '../template/index.ts';
import { type Design, designOf } from './design.ts';
import { describeFault } from './edge-problem.ts';
import { describeMiss, describeRowMiss, nearestMisses } from './near-miss.ts';
import { noWayHint } from './no-way.ts';
import type { Miss } from './runs.ts';
import { type Search, searchFits } from './search.ts';
import { tooLarge } from './search-size.ts';
import { smallestChange } from './smallest-change.ts';
import { flatsOf, type Stitching, stitchTemplate } from './stitching.ts';
import { type Unmet, unmetWishes } from './unmet.ts';
import { hasSpot, spotNames } from './ways.ts';

export type Designed =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export type Searched =
  | { readonly ok: true; readonly search: Search }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * A template thinner than this (mm) can slip under any ruler foot. Common practice, no source: 3 mm templates
 * go with low- and medium-shank feet, 1/4 in ones with longarms and high-shank feet.
 */
const THINNEST = 2.5;

/** The fit search of a plan, with everything wrong with its templates found first. */
export const searchPlan = (plan: Plan, templates: readonly Template[]): Searched => {
  const stitchings: Stitching[] = [];
  const problems: Problem[] = [];
  for (const template of templates) {
    const stitched = stitchTemplate(template, plan.foot.clearance);
    if (!stitched.ok) problems.push(describeFault(template, plan.foot.clearance, stitched.fault));
    else if (template.thickness !== undefined && template.thickness < THINNEST)
      problems.push(tooThin(template, plan));
    else stitchings.push(stitched.stitching);
  }
  const { first, others } = amongOf(plan, templates, stitchings);
  problems.push(
    ...(plan.swag.alternate
      ? plan.swag.alternate.flatMap((kind, k) =>
          unknownPlaces(kind, `swag.alternate.${k + 1}`, k === 0 ? first : others[0]!),
        )
      : unknownPlaces(plan.swag, 'swag', first)),
    ...(plan.corner ? unknownPlaces(plan.corner, 'corner', others[0]!) : []),
    ...plan.rows.flatMap((row, i) => unknownPlaces(row.swag, `rows.${i + 1}.swag`, others[i]!)),
  );
  if (problems.length > 0) return { ok: false, problems };
  const large = tooLarge(plan, [first, ...others].flat());
  return large
    ? { ok: false, problems: [large] }
    : { ok: true, search: searchFits(plan, first, 'bind', others) };
};

/** Places that a plan names under `key`, and that none of the templates has. */
const unknownPlaces = (
  { from, to, flat }: HowMade,
  key: string,
  stitchings: readonly Stitching[],
): readonly Problem[] => {
  if (stitchings.length === 0) return [];
  const problems: Problem[] = [];
  for (const [name, spot] of Object.entries({ from, to })) {
    if (!spot || stitchings.some((s) => hasSpot(spot, s))) continue;
    const found =
      spot.kind === 'section' ? `section ${spot.number}` : spot.kind === 'named' ? spot.name : spot.kind;
    problems.push({
      code: 'unknown-place',
      key: `${key}.${name}`,
      message: `no template here has that place`,
      found,
      expected: stitchings.map((s) => `${s.template.name}: ${spotNames(s).join(', ')}`).join('; '),
    });
  }
  if (flat !== undefined && !stitchings.some((s) => flatsOf(s).length >= flat))
    problems.push({
      code: 'unknown-place',
      key: `${key}.flat`,
      message: 'no template here has that flat',
      found: String(flat),
      expected: stitchings.map((s) => `${s.template.name}: ${flatsOf(s).length}`).join('; '),
    });
  return problems;
};

/** What a plan's swags are searched among: those of the first row, or first kind, and of each other, or of the corners. */
interface Among {
  readonly first: readonly Stitching[];
  readonly others: readonly (readonly Stitching[])[];
}

/** With one kind in one row, at the corners too, all that is at hand is for that. */
const amongOf = (plan: Plan, templates: readonly Template[], stitchings: readonly Stitching[]): Among => {
  const [made, ...others] = plan.swag.alternate ?? [
    plan.swag,
    ...(plan.corner ? [plan.corner] : plan.rows.map((row) => row.swag)),
  ];
  const among = ({ templates: names }: HowMade): readonly Stitching[] =>
    others.length === 0
      ? stitchings
      : stitchings.filter(({ template }) => names.includes(plan.templates[templates.indexOf(template)]!));
  return { first: among(made), others: others.map(among) };
};

const stitchedOf = (plan: Plan, templates: readonly Template[]): Among => {
  const stitchings = templates.flatMap((template) => {
    const stitched = stitchTemplate(template, plan.foot.clearance);
    return stitched.ok ? [stitched.stitching] : [];
  });
  return amongOf(plan, templates, stitchings);
};

/** Of a plan that nothing fits, what comes nearest to what it asks of its swags; undefined where that is not why. */
export const unmetBy = (plan: Plan, templates: readonly Template[]): Unmet | undefined => {
  const { first, others } = stitchedOf(plan, templates);
  return unmetWishes(plan, first, others);
};

/** The best design that a plan leaves possible. */
export const designFromPlan = (plan: Plan, templates: readonly Template[]): Designed => {
  const searched = searchPlan(plan, templates);
  if (!searched.ok) return searched;
  const best = searched.search.results[0];
  if (best) return { ok: true, design: designOf(best.field, best.fit) };
  return { ok: false, problems: nothingFits(plan, searched.search, stitchedOf(plan, templates)) };
};

const tooThin = (template: Template, plan: Plan): Problem => ({
  code: 'too-thin',
  message: `the template “${template.title}” is thinner than a ruler foot needs, and can slip under it`,
  place: { file: template.name },
  key: 'thickness',
  found: exactLength(template.thickness ?? 0, plan.marks.style),
  expected: `at least 3 mm for low- and medium-shank feet, 1/4 in for longarms and high-shank feet`,
  hint: 'see the foot’s manual',
});

/** Near misses for which a change is looked for: each takes some searches. */
const LOOKED_AT = 24;

/** Of a frame's near misses the first that a change helps, and rather one that leaves the motif as it is. */
const helped = (misses: readonly Miss[], plan: Plan, { around }: Frame): Miss | undefined => {
  const changes = misses.slice(0, LOOKED_AT).map((miss) => ({ miss, change: smallestChange(miss, plan) }));
  const keepsMotif = ({ change }: (typeof changes)[number]): boolean =>
    change !== undefined && closesRound(change.plan.layout) && change.plan.layout.around === around;
  return (changes.find(keepsMotif) ?? changes.find((c) => c.change !== undefined))?.miss;
};

const nothingFits = (plan: Plan, search: Search, { first, others }: Among): readonly Problem[] => {
  if (search.rowMiss) return [describeRowMiss(search.rowMiss, plan)];
  const unmet = unmetWishes(plan, first, others);
  if (unmet) return [unmet.problem];
  const misses = nearestMisses(search.misses);
  const nearest = (closesRound(plan.layout) && helped(misses, plan, plan.layout)) || misses[0];
  const problem: Problem = { code: 'nothing-fits', message: 'nothing fits this layout' };
  if (!nearest) return [{ ...problem, hint: noWayHint(plan) }];
  const { found, hint } = describeMiss(nearest, plan);
  return [{ ...problem, message: `${problem.message}; ${found}`, ...(hint === undefined ? {} : { hint }) }];
};
