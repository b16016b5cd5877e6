/** Where on a template's edge a swag starts and ends, one of the sides' or a corner's own: one end is chosen, and the other stays. */

import { swagWords } from '../words/words.ts';
import { type KeyPath, type PlanSource, textAt, type Written } from './plan-text.ts';

/** As a plan says them: a section's number, the name of a line, `heel` or `crown`. */
export interface Ends {
  readonly from: number | string;
  readonly to: number | string;
}

/** The plan's group that says how the swag is made. */
export type MadeIn = 'swag' | 'corner';

const asEnd = (written: string | undefined): number | string | undefined =>
  written !== undefined && /^\d{1,3}$/.test(written) ? Number(written) : written;

/** The ends as the plan has them, or where it is silent as the design that is shown has. */
export const endsNow = (plan: PlanSource, shown: Ends, group: MadeIn = 'swag'): Ends => ({
  from: asEnd(textAt(plan, [group, 'from'])) ?? shown.from,
  to: asEnd(textAt(plan, [group, 'to'])) ?? shown.to,
});

/**
 * One end moved, and both in the plan, so that the search does not move the other; but an end that would lie before the
 * start goes along with it, and a start that would lie behind the end too: between them there must be some edge.
 */
export const withEnd = (
  now: Ends,
  which: keyof Ends,
  at: number | string,
  group: MadeIn = 'swag',
): readonly (readonly [KeyPath, Written])[] => {
  const next = { ...now, [which]: at };
  const isCrossed = typeof next.from === 'number' && typeof next.to === 'number' && next.from > next.to;
  return [
    [[group, 'from'], isCrossed ? at : next.from],
    [[group, 'to'], isCrossed ? at : next.to],
  ];
};

/** What is said of ends that nothing fits with, or that no edge has; undefined where that is not what is wrong. */
export const noneWithBoth = (
  problems: readonly { readonly code?: string; readonly key: string | undefined }[],
  plan: PlanSource,
  group: MadeIn = 'swag',
): string | undefined => {
  const from = asEnd(textAt(plan, [group, 'from']));
  const to = asEnd(textAt(plan, [group, 'to']));
  if (from === undefined || to === undefined) return undefined;
  const isOfEnds = problems.some(
    ({ code, key }) => code === 'nothing-fits' || key === `${group}.from` || key === `${group}.to`,
  );
  if (!isOfEnds) return undefined;
  return swagWords.noneWithBoth({ from: startWords(from), to: endWords(to) });
};

const startWords = (from: number | string): string =>
  from === 1 || from === 'heel'
    ? swagWords.startAtHeel
    : typeof from === 'number'
      ? swagWords.startAtSection({ number: from })
      : swagWords.atLine({ name: from });

const endWords = (to: number | string): string =>
  typeof to === 'number'
    ? swagWords.endAtSection({ number: to })
    : to === 'crown'
      ? swagWords.endAtCrown
      : swagWords.atLine({ name: to });
