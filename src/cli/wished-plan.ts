/** The plan with what is asked of swags by options in place of what it says itself. */

import { type Change, type Problem, quoted, series, withValues } from '../document/index.ts';
import {
  type Plan,
  readPlan,
  readRepeatsWish,
  readShareWish,
  readWishOf,
  SIDES,
  type WishReading,
} from '../plan/index.ts';
import type { PlanFiles } from './steps.ts';
import type { WishOptions } from './wish-options.ts';
import { wrongValue } from './wrong-use.ts';

const KEYS = ['span', 'depth', 'use', 'repeats', 'gap'] as const;
type Key = (typeof KEYS)[number];
type Asked = Readonly<Partial<Record<Key, string>>>;

/** The plan, and its text, with what is asked by options in place of its own. */
export const withWishes = (files: PlanFiles, options: WishOptions, file: string): PlanFiles => {
  const asked = askedBy(options);
  const keys = KEYS.filter((key) => asked[key] !== undefined);
  if (keys.length === 0) return files;
  const own = files.name === undefined ? [] : ['parts', files.name];
  const changes = keys.map((key): Change => [[...own, 'swag', key], written(key, asked[key]!, files.plan)]);
  const text = withValues(files.text, changes);
  const reading = readPlan(text, file);
  // All but what one option means beside the rest of the plan has been checked by now.
  if (!reading.ok) throw wrongOption(reading.problems[0]!, keys);
  const plan = reading.parts.find((part) => part.plan.part?.name === files.name)!.plan;
  const placed = (problem: Problem): Problem => optionOf(problem, keys) ?? files.placed(problem);
  return { ...files, plan, asked: text, placed };
};

const askedBy = ({ touching, ...asked }: WishOptions): Asked => {
  if (touching && asked.gap !== undefined)
    throw wrongValue('--touching', 'it says what --gap says', { hint: 'leave one of them out' });
  return touching ? { ...asked, gap: '0' } : asked;
};

/** As it stands in a plan. */
const written = (key: Key, text: string, { units }: Plan): Change[1] => {
  if (text.trim().toLowerCase() === 'auto') return 'auto';
  if (key === 'repeats') return repeatsIn(text);
  check(key, key === 'use' ? readShareWish(text) : readWishOf(key, text, units));
  return plain(text);
};

const repeatsIn = (text: string): Change[1] => {
  const counts = text.split(BETWEEN_SIDES).map((part) => part.trim());
  const sides = counts.map((part) => BY_SIDE.exec(part)?.slice(1) as [string, string] | undefined);
  const named = sides.filter((side) => side !== undefined);
  if (named.length > 0 && named.length === counts.length) {
    if (new Set(named.map(([side]) => side.toLowerCase())).size < named.length)
      throw wrongValue('--repeats', 'a side is named twice', {
        found: quoted(text),
        expected: 'each side once at most',
      });
    for (const [side, count] of named) check('repeats', readRepeatsWish(count), side.toLowerCase());
    return Object.fromEntries(named.map(([side, count]) => [side.toLowerCase(), plain(count)]));
  }
  const unnamed = counts.length === 1 ? /^([a-z]+)[ :=]+\d+$/i.exec(text.trim())?.[1] : undefined;
  if (unnamed !== undefined && !readRepeatsWish(text).ok)
    throw wrongValue('--repeats', 'no side is called so', {
      found: quoted(unnamed),
      expected: series(SIDES, 'or'),
      hint: 'for example "top 5, right 7"',
    });
  if (/^\d+(?:[ /]+\d+){3}$/.test(text.trim()))
    throw wrongValue('--repeats', 'four counts without commas', {
      found: quoted(text),
      expected: text.trim().split(/[ /]+/).join(','),
    });
  if (counts.length !== 1 && counts.length !== SIDES.length)
    throw wrongValue('--repeats', 'not for one side, and not for four', {
      found: quoted(text),
      expected: 'one such as 7 or odd, four such as 5,7,5,7, or "top 5, right 7"',
    });
  for (const [i, count] of counts.entries())
    check('repeats', readRepeatsWish(count), counts.length > 1 ? SIDES[i] : undefined);
  return counts.length === 1 ? plain(counts[0]!) : counts.map(plain);
};

/** A comma or a semicolon; or nothing, before the name of a side. */
const BETWEEN_SIDES = new RegExp(`\\s*[,;]\\s*|\\s+(?=(?:${SIDES.join('|')})\\b)`, 'i');

const BY_SIDE = new RegExp(`^(${SIDES.join('|')})[ :=]+(.+)$`, 'i');

const check = (key: Key, reading: WishReading<unknown>, side?: string): void => {
  if (reading.ok) return;
  const { reason, expected, hint } = reading;
  throw wrongValue(`--${key}`, side === undefined ? reason : `for the ${side} side ${reason}`, {
    found: reading.found,
    expected,
    ...(hint !== undefined && { hint }),
  });
};

/** A whole number is written as one. */
const plain = (text: string): string | number => (/^\d{1,9}$/.test(text.trim()) ? Number(text) : text.trim());

/** The problem as one of the option that a key stands for. */
const optionOf = (problem: Problem, keys: readonly Key[]): Problem | undefined => {
  const key = keys.find((k) => new RegExp(`(^|\\.)swag\\.${k}(\\.|$)`).test(problem.key ?? ''));
  if (key === undefined) return undefined;
  const { place: _, ...rest } = problem;
  return { ...rest, key: `--${key}` };
};

const wrongOption = (problem: Problem, keys: readonly Key[]): Error => {
  const { key = '', message, ...more } = optionOf(problem, keys) ?? problem;
  return wrongValue(key, message, more);
};
