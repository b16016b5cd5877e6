/**
 * A chosen fit written into its plan, so that the plan gives that design again.
 *
 * The gap is the one choice that is a length, and rounded it would move every mark. So it is said by a rule
 * where one gives it again, `0` or `auto`, which is found out by searching with the new plan; only where
 * neither does is it written as a length, to GAP_DIGITS.
 */

import { planSaying } from '../output/plan-file/index.ts';
import { type Plan, readPlan } from '../plan/index.ts';
import { type Fit, type Ranked, searchPlan, seatsOf } from '../swag/index.ts';
import type { Part } from './part.ts';

/**
 * `text` is the plan as it is written. `named` gives a template's name as the new plan is to say it: a path is meant
 * from where a plan lies, and the new one may lie elsewhere.
 */
export const takeFit = (
  text: string,
  { plan, templates }: Pick<Part, 'plan' | 'templates'>,
  ranked: Pick<Ranked, 'field' | 'fit'>,
  named: (template: string) => string = (template) => template,
): string => {
  const index = templates.indexOf(ranked.fit.way.shape.stitching.template);
  const taken = { plan, ranked, template: named(plan.templates[index]!) };
  let written = text;
  for (const gap of gapsToSay(plan, ranked.fit)) {
    written = planSaying(text, taken, gap);
    if (givesAgain(written, plan, ranked.fit)) break;
  }
  return written;
};

/** In the order in which a person would rather read them; undefined leaves what the plan says. */
const gapsToSay = (plan: Plan, fit: Fit): readonly (string | number | undefined)[] => {
  const { gap } = plan.swag;
  const widest = Math.max(...fit.sides.map((s) => s.seat.gap));
  const step = 10 ** -GAP_DIGITS;
  // Never less than it is: swags that bulge need all of it.
  const length = Math.ceil(widest / step) * step;
  const said = gap !== undefined ? [undefined] : widest > 0 ? ['auto'] : [0, 'auto'];
  return [...said, ...(widest > 0 ? [] : [0]), `${length.toFixed(GAP_DIGITS)} mm`];
};

/** Of a millimetre: less than a double loses in working out a fit. */
const GAP_DIGITS = 6;

const givesAgain = (text: string, { part }: Plan, fit: Fit): boolean => {
  const reading = readPlan(text, 'plan');
  if (!reading.ok) return false;
  const own = reading.parts.find(({ plan }) => plan.part?.name === part?.name);
  if (!own) return false;
  const searched = searchPlan(own.plan, [fit.way.shape.stitching.template]);
  const again = searched.ok ? searched.search.results[0]?.fit : undefined;
  return again !== undefined && depthsAndSpans(again) === depthsAndSpans(fit);
};

const depthsAndSpans = (fit: Fit): string =>
  seatsOf(fit)
    .map(({ pose, gap }) => [pose.tilt, pose.halfSpan, pose.depth, gap].join(' '))
    .join('; ');
