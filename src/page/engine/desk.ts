/**
 * The work that all answers share: the plan and its templates read, the search done, one fit chosen. The last
 * results are kept, so that questions about the same plan do not begin again.
 */

import { type Problem, ProblemError } from '../../document/index.ts';
import { fitsOf } from '../../jobs/fits.ts';
import type { Part } from '../../jobs/part.ts';
import { type Plan, readPlan } from '../../plan/index.ts';
import {
  choicesOf,
  type Design,
  designFromPlan,
  designOf,
  type Kind,
  kindsIn,
  kindsOf,
  type Ranked,
  reordered,
  withoutSizes,
} from '../../swag/index.ts';
import { readTemplate, type Template } from '../../template/index.ts';
import { openPart, partsOf } from '../plan/plan-text.ts';
import { takenIn } from '../plan/state.ts';
import { limitInTheWay } from './block-limit.ts';
import type { Input, OwnTemplate } from './messages.ts';
import { seenFrom, underPart } from './part-words.ts';
import { fileOf, findTemplate } from './profiles.ts';
import { PLAN_FILE } from './trouble.ts';

interface ReadPart {
  /** The part's; undefined where the plan is one design. */
  readonly name: string | undefined;
  /** The title of the whole. */
  readonly title: string;
  readonly plan: Plan;
  readonly templates: readonly Template[];
}

export interface Worked extends ReadPart {
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
const keyOf = (ranked: Ranked): string => {
  const words = kindsIn(ranked.fit).flatMap((fit) => {
    const { corners, from, to, setting, laid, flat, side, direction, repeats, count } = choicesOf({
      field: ranked.field,
      fit,
    });
    const { name } = fit.way.shape.stitching.template;
    return [name, corners, from, to, setting, laid, flat, side, direction, count ?? repeats.join('-')];
  });
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
export const keepLast = <K, V>(make: (key: K) => V, textOf: (key: K) => string): ((key: K) => V) => {
  let known: { readonly text: string; readonly value: V } | undefined;
  return (key) => {
    const text = textOf(key);
    if (known?.text !== text) known = { text, value: make(key) };
    return known.value;
  };
};

export interface ReadQuilt {
  readonly title: string;
  readonly plans: readonly [Plan, ...Plan[]];
  /** The one whose part is open. */
  readonly open: Plan;
  /** What a person should know though the plan can be made. */
  readonly notes: readonly Problem[];
}

/** The plan with all its parts, and nothing of their templates. Throws a ProblemError with all that is wrong with it. */
export const readQuilt = keepLast(
  (input: Input): ReadQuilt => {
    const reading = readPlan(input.plan, PLAN_FILE);
    const open = openPart(input);
    const names = partsOf(input.plan);
    const seen = (problem: Problem): Problem => seenFrom(open, names, problem);
    if (!reading.ok) throw new ProblemError(reading.problems.map(seen));
    const [first, ...others] = reading.parts;
    const plans = [first.plan, ...others.map(({ plan }) => plan)] as const;
    return {
      title: reading.title,
      plans,
      open: plans.find(({ part }) => part?.name === open) ?? first.plan,
      notes: reading.notes.map(seen),
    };
  },
  ({ plan, part }) => JSON.stringify([plan, part]),
);

/** What a search is made from. */
interface Searched {
  readonly plan: Plan;
  readonly title: string;
  readonly own: Input['own'];
}

/** What of an input the search depends on. */
const searchedText = ({ plan, own, part }: Input): string => JSON.stringify([plan, own, part]);

/** Throws a ProblemError with all that is wrong with the part's templates. */
const withTemplates = (plan: Plan, title: string, own: Input['own'], placed: Part['placed']): ReadPart => {
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
  if (problems.length > 0) throw new ProblemError(problems.map(placed));
  return { name: plan.part?.name, title, plan, templates };
};

/** The title, where the plan and the templates of all its parts can be read; throws a ProblemError where not. */
export const checked = (input: Input): string => {
  const { title, plans } = readQuilt(input);
  for (const plan of plans) withTemplates(plan, title, input.own, placedIn(plan));
  return title;
};

/** The open part with its templates, and nothing searched. Throws a ProblemError with all that is wrong with them. */
export const readOpen = (input: Input): ReadPart => {
  const { open, title } = readQuilt(input);
  return withTemplates(open, title, input.own, atItsField);
};

export const readOwn = ({ name, text }: OwnTemplate): ReturnType<typeof readTemplate> =>
  readTemplate(text, fileOf(name));

/** The page shows a problem beside the field that its key names. */
const atItsField = (problem: Problem): Problem => problem;
/** One of a part that is not looked at has no field in sight. */
const placedIn = ({ part }: Plan): Part['placed'] =>
  part ? (problem) => underPart(part.name, problem) : atItsField;

/** Throws a ProblemError where the templates cannot be read or nothing fits. */
const workOut = (plan: Plan, title: string, own: Input['own'], placed: Part['placed']): Worked => {
  const read = withTemplates(plan, title, own, placed);
  const { results } = fitsOf({ ...read, placed });
  if (results.length === 0) {
    // Where there is nothing to rank, the library itself says why, and what would fit.
    const limit = limitInTheWay(read.plan, read.templates);
    if (limit) throw new ProblemError([placed(limit)]);
    const made = designFromPlan(read.plan, read.templates);
    throw new ProblemError(made.ok ? [] : made.problems.map(placed));
  }
  return { ...read, results, keys: keysOf(results) };
};

/** Of a plan all that anything is worked out from: while she picks a colour, nothing is worked out anew. */
export const uncoloured = (plan: Plan): Plan => ({ ...plan, colours: {} });

/** What fits has nothing to do with what is quilted into it: while a fill's figures move, one search serves all moves. */
const withAnyFills = keepLast(
  ({ plan, title, own }: Searched): Worked => workOut(plan, title, own, atItsField),
  ({ plan, title, own }) => JSON.stringify([{ ...uncoloured(plan), fills: undefined }, title, own]),
);

/** Of the open part. Throws a ProblemError where the plan cannot be read or nothing fits it. */
export const workedOut = keepLast((input: Input): Worked => {
  const { open, title } = readQuilt(input);
  return { ...withAnyFills({ plan: open, title, own: input.own }), plan: open };
}, searchedText);

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

const choose = (worked: Worked, taken: string | undefined, placed: Part['placed']): ChosenFit => {
  const index = indexOf(taken, worked.keys);
  const ranked = worked.results[index]!;
  const key = worked.keys[index]!;
  const design = designsKept.get(ranked) ?? designOf(ranked.field, ranked.fit);
  designsKept.set(ranked, design);
  return { ...worked, ranked, key, index, design, placed };
};

/** A fit has one design, whatever is quilted into it. */
const designsKept = new WeakMap<Ranked, Design>();

/** Kept with the very results that they are made of: those of the same plan that are searched again are others. */
const kindsKept = new WeakMap<readonly Ranked[], readonly Kind[]>();

/** What looks alike in the open part as one, in the order of its firsts. */
export const kindsFound = (input: Input): readonly Kind[] => {
  const { results } = workedOut(input);
  const kinds = kindsKept.get(results) ?? kindsOf(results);
  kindsKept.set(results, kinds);
  return kinds;
};

/** What fits whatever its size: while a slider moves, the same search serves all its moves. */
const ofAnySize = keepLast(
  ({ plan, title, own }: Searched): Worked => workOut(plan, title, own, atItsField),
  ({ plan, own }) => JSON.stringify([plan, own]),
);

/** Of the open part the nearest of what fits whatever its size: an answer at once, which a search may better. */
export const nearestFit = (input: Input): ChosenFit => {
  const { open, title } = readQuilt(input);
  const found = ofAnySize({ plan: withoutSizes(open), title, own: input.own });
  const results = reordered(found.results, open);
  return choose({ ...found, plan: open, results, keys: keysOf(results) }, undefined, atItsField);
};

/** Of the open part the fit that was taken, or the best one. */
export const chosenFit = keepLast(
  (input: Input): ChosenFit => choose(workedOut(input), takenIn(input), atItsField),
  (input) => JSON.stringify([searchedText(input), takenIn(input)]),
);

/** The same of any part, by its plan, which stays a part's own whichever is open. Throws a ProblemError that names it. */
export const fitOfPart = (plan: Plan, title: string, input: Input): ChosenFit => {
  const placed = placedIn(plan);
  const worked = workOut(plan, title, input.own, placed);
  return choose(worked, takenIn({ ...input, part: plan.part?.name }), placed);
};

/** Of every part of a quilt. Throws a ProblemError with all that is wrong with any. */
export const fitsOfQuilt = (
  input: Input,
): { readonly title: string; readonly parts: readonly ChosenFit[] } => {
  const { title, plans } = readQuilt(input);
  const problems: Problem[] = [];
  const parts = plans.flatMap((plan) => {
    try {
      return [fitOfPart(plan, title, input)];
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      problems.push(...error.problems);
      return [];
    }
  });
  if (problems.length > 0) throw new ProblemError(problems);
  return { title, parts };
};
