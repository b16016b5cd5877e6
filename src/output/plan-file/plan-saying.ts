/**
 * Writes a chosen fit into the text of the plan that it was found with, so that the plan says every choice.
 *
 * What the fit does not decide stays byte for byte as the person wrote it, and so does what a value says already.
 * A plan in JSON stays JSON.
 */

import { type Change, type Written, withValues } from '../../document/index.ts';
import { type HowMade, layoutKey, type Plan, type Spot } from '../../plan/index.ts';
import { type Choices, choicesOf, kindsIn, ownCorner, type Ranked } from '../../swag/index.ts';

export interface TakenFit {
  readonly plan: Plan;
  readonly ranked: Pick<Ranked, 'field' | 'fit'>;
  /** The template of each row, or of each kind, or of sides and corners, as the new plan names it: a name, or a path from where the new plan will lie. */
  readonly templates: readonly string[];
}

/** `text` is a plan that has been read without a problem. Undefined for `gap` leaves what the plan says of it. */
export const planSaying = (
  text: string,
  { plan, ranked, templates }: TakenFit,
  gap: string | number | undefined,
): string => {
  const choices = choicesOf(ranked);
  const { swag, layout } = plan;
  const key = layoutKey(layout);
  // A part's choices are its own, also where others share the template it chose from.
  const at = plan.part ? ['parts', plan.part.name] : [];
  const changes: Change[] = [];
  const put = (path: Change[0], value: Written): number => changes.push([[...at, ...path], value]);
  const putMade = (under: Change[0], said: HowMade, made: Choices, of: TakenFit['ranked']): void => {
    if (!says(said.from, made.from, of)) put([...under, 'from'], made.from);
    if (!says(said.to, made.to, of)) put([...under, 'to'], made.to);
    for (const name of ['setting', 'laid', 'flat', 'side', 'direction'] as const)
      put([...under, name], made[name]);
  };
  const { alternate } = swag;
  const kinds = kindsIn(ranked.fit);
  const [template] = templates;
  const own = ownCorner(ranked.fit);
  put(['template'], alternate && templates[1] !== template ? templates.slice(0, kinds.length) : template);
  if (choices.corners !== undefined) put(['layout', key, 'corners'], choices.corners);
  if (choices.count !== undefined) put(['layout', 'frame', 'count'], choices.count);
  if (alternate)
    kinds.forEach((fit, k) => {
      const kind = { field: ranked.field, fit };
      put(['swag', 'alternate', k, 'template'], templates[k]);
      putMade(['swag', 'alternate', k], alternate[k]!, choicesOf(kind), kind);
    });
  else putMade(['swag'], swag, choices, ranked);
  if (choices.repeats.length > 0 && !sameCounts(swag.repeats, choices.repeats))
    put(['swag', 'repeats'], counts(choices.repeats));
  if (gap !== undefined) put(['swag', 'gap'], gap);
  if (own && plan.corner) {
    const made = { field: ranked.field, fit: { ...ranked.fit, way: own } };
    put(['corner', 'template'], templates[1]);
    putMade(['corner'], plan.corner, choicesOf(made), made);
  }
  const { beyond } = ranked.fit;
  const [row] = plan.rows;
  if (beyond && row) {
    put(['rows', 0, 'template'], templates[1]);
    putMade(['rows', 0, 'swag'], row.swag, choicesOf(beyond), beyond);
  }
  return withValues(text, changes);
};

/** One number where a person would write one, else one per side. */
const counts = (repeats: readonly number[]): Written =>
  repeats.every((n) => n === repeats[0]) ? repeats[0] : repeats;

const sameCounts = (written: Plan['swag']['repeats'], chosen: readonly number[]): boolean =>
  written !== undefined && chosen.every((n, i) => n === (written.length === 1 ? written[0] : written[i]));

/** Whether what the plan says of a place means the chosen one, and for the chosen template nothing else. */
const says = (spot: Spot | undefined, choice: Choices['from'], { fit }: TakenFit['ranked']): boolean => {
  const { sections, template } = fit.way.shape.stitching;
  switch (spot?.kind) {
    case undefined:
      return false;
    case 'section':
      return spot.number === choice;
    case 'heel':
      return choice === 1;
    case 'crown':
      return choice === 'crown';
    case 'named': {
      const same = (name: string | undefined): boolean => name?.toLowerCase() === spot.name.toLowerCase();
      const named = sections.filter((s) => same(s.name));
      const lines = template.alignment.filter((a) => same(a.name));
      if (named.length + lines.length !== 1) return false;
      const number = named[0]?.number;
      if (number === undefined) return same(String(choice));
      return number === (choice === 'crown' ? sections.length : choice);
    }
    default:
      return spot satisfies never;
  }
};
