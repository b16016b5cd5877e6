/** Problems of a plan with parts: of the open part by the keys that its fields have, of another under its name. */

import type { Problem } from '../../document/index.ts';
import { plainWords } from '../plan/plain-words.ts';

/** What lies between parts names them in its own words. */
const BETWEEN_PARTS: ReadonlySet<string> = new Set(['parts-overlap', 'seams-differ']);

/** A problem of a part, its keys those of its own fields, said under the part's name. */
export const underPart = (name: string, problem: Problem): Problem => {
  const { code, place } = problem;
  if (BETWEEN_PARTS.has(code)) return problem;
  return { code, message: `${name}: ${plainWords(problem)}`, ...(place && { place }) };
};

/** A problem as the plan's reader gives it, its key from the head of the file. `names` are the parts'. */
export const seenFrom = (open: string | undefined, names: readonly string[], problem: Problem): Problem => {
  const own = (name: string): string => `parts.${name}.`;
  const { key } = problem;
  // Of `a` and `a.layout` the longer one is meant.
  const name = names
    .filter((each) => key?.startsWith(own(each)))
    .reduce<string | undefined>((a, b) => (a !== undefined && a.length > b.length ? a : b), undefined);
  if (name === undefined || key === undefined) return problem;
  const inPart = { ...problem, key: key.slice(own(name).length) };
  return name === open ? inPart : underPart(name, inPart);
};
