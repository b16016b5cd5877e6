/**
 * A chosen fit written into its plan, so that the plan gives that design again. What was asked of its swags stays as it
 * is written beside what was decided; only a wish that the fit does not meet, or is far from, is changed to one that is
 * true of it.
 *
 * The gap is the one choice that is a length, and rounded it would move every mark. So it is said by a rule
 * where one gives it again, `0` or `auto`, which is found out by searching with the new plan; only where
 * neither does is it written as a length, to GAP_DIGITS.
 */

import { type Change, withValues } from '../document/index.ts';
import { planSaying } from '../output/plan-file/index.ts';
import { type Plan, readPlan } from '../plan/index.ts';
import {
  changeOf,
  type Fit,
  isUnmet,
  kindsIn,
  ownCorner,
  type Ranked,
  searchPlan,
  seatsOf,
  wishWords,
} from '../swag/index.ts';
import type { Template } from '../template/index.ts';
import type { Part } from './part.ts';

/**
 * `text` is the plan as it is written. `named` gives a template's name as the new plan is to say it: a path is meant
 * from where a plan lies, and the new one may lie elsewhere.
 */
export const takeFit = (
  text: string,
  { plan, templates }: Pick<Part, 'plan' | 'templates'>,
  ranked: Pick<Ranked, 'field' | 'fit' | 'answers'>,
  named: (template: string) => string = (template) => template,
): string => {
  const names = templatesOf(ranked.fit).map((template) =>
    named(plan.templates[templates.indexOf(template)]!),
  );
  const taken = { plan, ranked, templates: names };
  // What is about right guides the search to its corners: where the plan with other words gives another fit, they stay.
  const texts = [...new Set([false, true].map((kept) => askingWhatItMeets(text, plan, ranked, kept)))];
  const all = texts.flatMap((asking) => gapsToSay(plan, ranked).map((gap) => planSaying(asking, taken, gap)));
  const giving = (near: number): string | undefined =>
    all.find((written) => givesAgain(written, plan, ranked.fit, near));
  return giving(0) ?? giving(SAME) ?? all.at(-1)!;
};

/** The wishes that the fit does not meet, changed as little as it takes; repeats and gap are said in any case. */
const askingWhatItMeets = (
  text: string,
  plan: Plan,
  { answers }: Pick<Ranked, 'answers'>,
  keepsAbout: boolean,
): string => {
  const { style } = plan.marks;
  const own = plan.part ? ['parts', plan.part.name] : [];
  const changes = answers
    .filter(({ key }) => key !== 'repeats' && key !== 'gap')
    .filter((answer) => (keepsAbout ? isUnmet(answer) : !answer.meets))
    .map((answer): Change => {
      const { wish } = changeOf(answer, style);
      const { key, of } = answer;
      const at = of === undefined ? ['swag', key] : ['swag', 'alternate', of, key];
      return [[...own, ...at], wishWords(answer, wish, style)];
    });
  return withValues(text, changes);
};

/** Of each kind, of corners of their own, and of each row. */
const templatesOf = (fit: Fit): readonly Template[] => [
  ...[...kindsIn(fit).map(({ way }) => way), ownCorner(fit) ?? []]
    .flat()
    .map(({ shape }) => shape.stitching.template),
  ...(fit.beyond ? templatesOf(fit.beyond.fit) : []),
];

/** In the order in which a person would rather read them; undefined leaves what the plan says. */
const gapsToSay = (
  plan: Plan,
  { fit, answers }: Pick<Ranked, 'fit' | 'answers'>,
): readonly (string | number | undefined)[] => {
  const isKept = !answers.some(({ key, meets }) => key === 'gap' && !meets);
  const gap = isKept ? plan.swag.gap : undefined;
  const widest = Math.max(...fit.sides.map((s) => s.seat.gap));
  const step = 10 ** -GAP_DIGITS;
  // Never less than it is: swags that bulge need all of it.
  const length = Math.ceil(widest / step) * step;
  const said = gap !== undefined ? [undefined] : widest > 0 ? ['auto'] : [0, 'auto'];
  return [...said, ...(widest > 0 ? [] : [0]), `${length.toFixed(GAP_DIGITS)} mm`];
};

/** Of a millimetre: less than a double loses in working out a fit. */
const GAP_DIGITS = 6;

/** Where a wish was changed the search comes to the corner's rise by another way: nearer than this (mm) it is the same. */
const SAME = 1e-3;

/** Whether a plan gives a fit, its figures (mm) no farther off than `near`. */
const givesAgain = (text: string, { part }: Plan, fit: Fit, near: number): boolean => {
  const reading = readPlan(text, 'plan');
  if (!reading.ok) return false;
  const own = reading.parts.find(({ plan }) => plan.part?.name === part?.name);
  if (!own) return false;
  const searched = searchPlan(own.plan, [...new Set(templatesOf(fit))]);
  const again = searched.ok ? searched.search.results[0]?.fit : undefined;
  const [wanted, found] = [fit, again].map((one) => one && figuresOf(one));
  return (
    wanted !== undefined &&
    wanted.length === found?.length &&
    wanted.every((figure, i) => Math.abs(figure - found[i]!) <= near)
  );
};

const figuresOf = (fit: Fit): readonly number[] =>
  [...seatsOf(fit), ...(fit.beyond ? seatsOf(fit.beyond.fit) : [])].flatMap(({ pose, gap }) => [
    pose.tilt,
    pose.halfSpan,
    pose.depth,
    gap,
  ]);
