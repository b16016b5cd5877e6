/**
 * The work that all answers share: the plan and its templates read, the search done, one fit chosen. The last
 * results are kept, so that questions about the same plan do not begin again.
 */

import { type Problem, ProblemError } from '../../document/index.ts';
import { fitsOf } from '../../jobs/fits.ts';
import type { Part } from '../../jobs/part.ts';
import { type Plan, readPlan } from '../../plan/index.ts';
import { choicesOf, designFromPlan, designOf, type Ranked } from '../../swag/index.ts';
import { readTemplate, type Template } from '../../template/index.ts';
import { limitInTheWay } from './block-limit.ts';
import type { Input, OwnTemplate } from './messages.ts';
import { fileOf, findTemplate } from './profiles.ts';
import { PLAN_FILE } from './trouble.ts';

export interface ReadPlan {
  readonly plan: Plan;
  readonly templates: readonly Template[];
}

export interface Worked extends ReadPlan {
  readonly results: readonly Ranked[];
  /** By key, in the results' order. */
  readonly keys: readonly string[];
}

export interface ChosenFit extends Worked, Part {
  readonly ranked: Ranked;
  readonly key: string;
  /** From 0. */
  readonly index: number;
}

/** What a fit is called from one search to the next: every choice that it makes. */
export const keyOf = (ranked: Ranked): string => {
  const { corners, from, to, setting, laid, flat, side, direction, repeats, count } = choicesOf(ranked);
  const { name } = ranked.fit.way.shape.stitching.template;
  const words = [name, corners, from, to, setting, laid, flat, side, direction, count ?? repeats.join('-')];
  return words.map((word) => word ?? '').join('|');
};

/** A round frame may close in two ways with the same choices: the second has a key of its own, too. */
const keysOf = (results: readonly Ranked[]): readonly string[] => {
  const times = new Map<string, number>();
  return results.map((ranked) => {
    const key = keyOf(ranked);
    const before = times.get(key) ?? 0;
    times.set(key, before + 1);
    return before === 0 ? key : `${key}|${before + 1}`;
  });
};

/** One thing is kept: the last. Questions come in bunches about one plan. */
const keepLast = <K, V>(make: (key: K) => V, textOf: (key: K) => string): ((key: K) => V) => {
  let known: { readonly text: string; readonly value: V } | undefined;
  return (key) => {
    const text = textOf(key);
    if (known?.text !== text) known = { text, value: make(key) };
    return known.value;
  };
};

const filesText = ({ plan, own }: Omit<Input, 'taken'>): string => JSON.stringify([plan, own]);

/** Throws a ProblemError with all problems of the plan, or of all its templates. */
export const readInput = ({ plan: text, own }: Omit<Input, 'taken'>): ReadPlan => {
  const reading = readPlan(text, PLAN_FILE);
  if (!reading.ok) throw new ProblemError(reading.problems);
  const { plan } = reading.parts[0];
  const problems: Problem[] = [];
  const templates: Template[] = [];
  for (const name of plan.templates) {
    const found = findTemplate(name, own);
    if (!found.ok) problems.push(found.problem);
    else {
      const read = readOwn({ name: found.file, text: found.template.text });
      if (read.ok) templates.push(read.template);
      else problems.push(...read.problems);
    }
  }
  if (problems.length > 0) throw new ProblemError(problems);
  return { plan, templates };
};

export const readOwn = ({ name, text }: OwnTemplate): ReturnType<typeof readTemplate> =>
  readTemplate(text, fileOf(name));

/** The page shows a problem beside the field that its key names. */
const placed = (problem: Problem): Problem => problem;

/** Throws a ProblemError where the plan cannot be read or nothing fits it. */
export const workedOut = keepLast((input: Omit<Input, 'taken'>): Worked => {
  const read = readInput(input);
  const { results } = fitsOf({ ...read, placed });
  if (results.length === 0) {
    // Where there is nothing to rank, the library itself says why, and what would fit.
    const limit = limitInTheWay(read.plan, read.templates);
    if (limit) throw new ProblemError([limit]);
    const made = designFromPlan(read.plan, read.templates);
    throw new ProblemError(made.ok ? [] : made.problems);
  }
  return { ...read, results, keys: keysOf(results) };
}, filesText);

/** Of a fit that is no longer there, the best made in the same way is nearest, then the best with the same template. */
const indexOf = (taken: string | undefined, keys: readonly string[]): number => {
  if (taken === undefined) return 0;
  const same = keys.indexOf(taken);
  if (same >= 0) return same;
  const parts = taken.split('|');
  const [template] = parts;
  for (const start of [parts.slice(0, -1).join('|'), template]) {
    const near = keys.findIndex((key) => key.startsWith(`${start}|`));
    if (near >= 0) return near;
  }
  return 0;
};

/** The fit that was taken, or the best one. */
export const chosenFit = keepLast(
  (input: Input): ChosenFit => {
    const worked = workedOut(input);
    const index = indexOf(input.taken, worked.keys);
    const ranked = worked.results[index]!;
    const key = worked.keys[index]!;
    return {
      ...worked,
      name: undefined,
      ranked,
      key,
      index,
      design: designOf(ranked.field, ranked.fit),
      placed,
    };
  },
  (input) => JSON.stringify([input.plan, input.own, input.taken]),
);
