/**
 * Holds a document against a schema, and puts what does not fit into words: one line per mistake, each with
 * its place, its key, what was found and what is expected. The schema library's own sentences are never shown.
 *
 * A schema says what it expects in its `error` text ("a length such as 5 1/2"); enumerations, plain kinds and
 * limits speak for themselves. A schema's own test hands over its words with `refuse`.
 */

import * as z from 'zod';
import { describeValue, nearestOf, quoted, series } from './describe.ts';
import type { Problem } from './problem.ts';
import { type KeyPath, keyName, placeOf, type SourceDocument, valueAt } from './read.ts';

export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A file with more mistakes than this is not the right file; the rest is counted, not listed. */
const MOST_PROBLEMS = 20;

/**
 * The value that the schema makes of a document, or every mistake in the order of the file. `homes` says for
 * keys that are often written in the wrong place where they belong: `under layout`. A place among a list's entries
 * may say it for itself: `rows.swag.span`.
 */
export const checkDocument = <T>(
  document: SourceDocument,
  schema: z.ZodType<T>,
  homes: ReadonlyMap<string, string> = new Map(),
): Checked<T> => {
  // Without a text of its own a schema stays silent, so that a text found here is always one of ours.
  const result = schema.safeParse(document.value, { error: () => '' });
  if (result.success) return { ok: true, value: result.data };
  const problems = result.error.issues.flatMap((issue) => explain({ document, homes }, issue as Issue, []));
  return { ok: false, problems: limited(onceEach(inOrder(together(withoutEchoes(problems))))) };
};

/**
 * A mapping with just these keys. `expected` says in words what it is. The names of its keys travel in the
 * message of an unknown-key issue, which is the only way that the schema library offers.
 */
export const group = <S extends z.ZodRawShape>(shape: S, expected = 'a group of keys') =>
  z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? knownKeys(shape) : expected),
  });

/** `$schema` is for editors; nobody looks for it. */
const knownKeys = (shape: z.ZodRawShape): string =>
  Object.keys(shape)
    .filter((key) => !key.startsWith('$'))
    .join(' ');

/** What a schema's own test says about what it refuses; place and key are found here. */
export type ProblemParams = Partial<Pick<Problem, 'code' | 'message' | 'found' | 'expected' | 'hint'>>;

/** Refuses a value within a schema's own test: `return refuse(context, value, { message: … })`. */
export const refuse = (
  context: z.RefinementCtx,
  input: unknown,
  params: ProblemParams,
  path: KeyPath = [],
): never => {
  context.issues.push({ code: 'custom', input, params, path: [...path] });
  return z.NEVER;
};

/** The parts of zod's issues that are used here. */
interface Issue {
  readonly code: string;
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly expected?: string;
  readonly values?: readonly unknown[];
  readonly keys?: readonly string[];
  readonly errors?: readonly (readonly Issue[])[];
  readonly minimum?: number | bigint;
  readonly maximum?: number | bigint;
  readonly origin?: string;
  readonly params?: ProblemParams;
}

/** With the key path, for ordering and for dropping what only echoes another mistake. */
interface Found extends Problem {
  readonly path: KeyPath;
  /** The right key, where a misspelt one is near enough to it. */
  readonly meant?: string;
  /** A schema's own test on a whole group, which a misspelt key in that group fails as well. */
  readonly echoes?: boolean;
}

interface Context {
  readonly document: SourceDocument;
  readonly homes: ReadonlyMap<string, string>;
}

const explain = (context: Context, issue: Issue, around: KeyPath): Found[] => {
  const { document } = context;
  const path = [...around, ...issue.path.map((p) => (typeof p === 'number' ? p : String(p)))];
  switch (issue.code) {
    case 'unrecognized_keys':
      return (issue.keys ?? []).map((key) => unknownKey(context, [...path, key], issue.message));
    case 'invalid_union':
      return explainUnion(context, issue, path);
    case 'custom':
      return [customProblem(document, issue, path)];
    default:
      return [
        valueAt(document, path) === undefined ? missing(document, path, issue) : wrong(document, path, issue),
      ];
  }
};

/**
 * A union has tried everything. Where just one of its choices is of the right kind, its own complaint is the
 * useful one; otherwise one line says what the choices are.
 */
const explainUnion = (context: Context, issue: Issue, path: KeyPath): Found[] => {
  const { document } = context;
  if (valueAt(document, path) === undefined) return [missing(document, path, issue)];
  const inside = (issue.errors ?? []).filter((e) => e.length > 0 && !e.some(isWrongKind));
  const only = inside.length === 1 ? inside[0] : undefined;
  if (!only || nearWord(valueAt(document, path), issue)) return [wrong(document, path, issue)];
  return only.flatMap((i) => explain(context, i, path));
};

/** Whether a value is altogether of another kind than this choice of a union is for. */
const isWrongKind = (issue: Issue): boolean => {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_union') return (issue.errors ?? []).every((e) => e.some(isWrongKind));
  return issue.code === 'invalid_type' || issue.code === 'invalid_value';
};

/** A text that is nearly one of the words that a schema allows. */
const nearWord = (value: unknown, issue: Issue): string | undefined =>
  typeof value === 'string' ? nearestOf(value, wordsOf(issue)) : undefined;

const unknownKey = ({ document, homes }: Context, path: KeyPath, known: string): Found => {
  const key = String(path.at(-1));
  const keys = known === '' ? [] : known.split(' ');
  const near = nearestOf(key, keys);
  const hint = near
    ? `did you mean ${quoted(near)}?`
    : (homeHint(path, homes) ?? `known keys: ${series(keys)}`);
  return {
    code: 'unknown-key',
    message: `the key ${quoted(key)} is not known here`,
    place: placeOf(document, path, 'key'),
    ...keyOf(path.slice(0, -1)),
    hint,
    path,
    ...(near !== undefined && { meant: near }),
  };
};

/** Where a key belongs, or the key that it was meant for. */
const homeHint = (path: KeyPath, homes: ReadonlyMap<string, string>): string | undefined => {
  const key = String(path.at(-1));
  const homeOf = (name: string): string | undefined => {
    const names = [...path.slice(0, -1), name].filter((part) => typeof part === 'string');
    return names.map((_, i) => homes.get(names.slice(i).join('.'))).find((home) => home !== undefined);
  };
  const home = homeOf(key);
  if (home !== undefined) return `it belongs ${home}`;
  const meant = nearestOf(
    key,
    [...homes.keys()].filter((name) => !name.includes('.')),
  );
  return meant && `did you mean ${quoted(meant)}? It belongs ${homeOf(meant)}`;
};

const missing = (document: SourceDocument, path: KeyPath, issue: Issue): Found => ({
  code: 'missing-key',
  message: `the key ${quoted(String(path.at(-1)))} is missing`,
  place: placeOf(document, path, 'key'),
  ...keyOf(path.slice(0, -1)),
  expected: expectedOf(issue),
  path,
});

const wrong = (document: SourceDocument, path: KeyPath, issue: Issue): Found => {
  const value = valueAt(document, path);
  const near = nearWord(value, issue);
  const glued = typeof value === 'string' && /^[A-Za-z]+:\S/.test(value) && issue.expected === 'object';
  const hint = near
    ? `did you mean ${quoted(near)}?`
    : glued
      ? 'a space is needed after the colon'
      : undefined;
  return {
    code: 'wrong-value',
    message: value === null ? 'no value is written' : wrongness(issue),
    place: placeOf(document, path),
    ...keyOf(path),
    ...(value !== null && { found: describeValue(value) }),
    expected: expectedOf(issue),
    ...(hint !== undefined && { hint }),
    path,
  };
};

const wrongness = (issue: Issue): string => {
  if (issue.code === 'too_big') return TOO_BIG[issue.origin ?? ''] ?? 'too large';
  if (issue.code === 'too_small') return TOO_SMALL[issue.origin ?? ''] ?? 'too small';
  return 'this does not fit here';
};

const TOO_BIG: Readonly<Record<string, string>> = { string: 'too long', array: 'too many' };
const TOO_SMALL: Readonly<Record<string, string>> = { string: 'too short', array: 'too few' };

/** What a schema expects: its own text, or what its issue says of itself. */
const expectedOf = (issue: Issue): string => {
  if (issue.message !== '') return issue.message;
  const words = wordsOf(issue);
  if (words.length > 0) return series(words, 'or');
  const limit = issue.maximum ?? issue.minimum;
  if (issue.code === 'too_big') return `at most ${limit}${countedAs(issue.origin, limit)}`;
  if (issue.code === 'too_small') return `at least ${limit}${countedAs(issue.origin, limit)}`;
  return KINDS[issue.expected ?? ''] ?? 'another value';
};

/** `1 entry`, `3 entries`, `120 characters`; plain numbers are counted as nothing. */
const countedAs = (origin: string | undefined, limit: number | bigint | undefined): string => {
  if (origin === 'array') return limit === 1 ? ' entry' : ' entries';
  if (origin === 'string') return limit === 1 ? ' character' : ' characters';
  return '';
};

const KINDS: Readonly<Record<string, string>> = {
  object: 'a group of keys',
  record: 'a group of keys',
  array: 'a list',
  tuple: 'a list',
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
};

/** The words that an enumeration, or a union of them, allows. */
const wordsOf = (issue: Issue): string[] => [
  ...(issue.values ?? []).map(String),
  ...(issue.errors ?? []).flat().filter(isWrongKind).flatMap(wordsOf),
];

const customProblem = (document: SourceDocument, issue: Issue, path: KeyPath): Found => {
  const { code, message, ...rest }: ProblemParams = issue.params ?? {};
  const value = valueAt(document, path);
  return {
    code: code ?? 'wrong-value',
    message: message ?? (issue.message || 'this does not fit here'),
    place: placeOf(document, path),
    ...keyOf(path),
    ...((typeof value === 'string' || typeof value === 'number') && { found: describeValue(value) }),
    ...rest,
    path,
    echoes: true,
  };
};

const keyOf = (path: KeyPath): { key?: string } => (path.length > 0 ? { key: keyName(path) } : {});

/**
 * One mistake, one line. A misspelt key also leaves the right one missing, and may leave its group without
 * what it needs: neither need be said as well.
 */
const withoutEchoes = (problems: readonly Found[]): readonly Found[] => {
  const meant = new Set<string>();
  const upset = new Set<string>();
  for (const { code, path, meant: word } of problems) {
    if (code !== 'unknown-key') continue;
    const parent = path.slice(0, -1);
    upset.add(JSON.stringify(parent));
    if (word !== undefined) meant.add(JSON.stringify([...parent, word]));
  }
  return problems.filter(({ code, path, echoes }) => {
    if (code === 'missing-key' && !echoes) return !meant.has(JSON.stringify(path));
    return !(echoes && upset.has(JSON.stringify(path)));
  });
};

/** Keys that are missing from one group, and are all of one kind, share a line. */
const together = (problems: readonly Found[]): readonly Found[] => {
  const merged = new Map<string, { readonly first: Found; readonly keys: string[] }>();
  const others: Found[] = [];
  for (const p of problems) {
    if (p.code !== 'missing-key' || p.echoes) {
      others.push(p);
      continue;
    }
    const group = JSON.stringify([p.path.slice(0, -1), p.expected]);
    const key = quoted(String(p.path.at(-1)));
    const entry = merged.get(group);
    if (entry) entry.keys.push(key);
    else merged.set(group, { first: p, keys: [key] });
  }
  for (const { first, keys } of merged.values())
    others.push(keys.length === 1 ? first : { ...first, message: `the keys ${series(keys)} are missing` });
  return others;
};

/** As they stand in the file. */
const inOrder = (problems: readonly Found[]): Found[] =>
  [...problems].sort(
    (a, b) => (a.place?.line ?? 0) - (b.place?.line ?? 0) || (a.place?.column ?? 0) - (b.place?.column ?? 0),
  );

/** Two tests of a schema may find the same fault with one value, in the same words. */
const onceEach = (problems: readonly Found[]): Found[] => {
  const said = new Set<string>();
  return problems.filter(({ path, message, found, expected, hint }) => {
    const words = JSON.stringify([path, message, found, expected, hint]);
    return !said.has(words) && said.add(words);
  });
};

const limited = (problems: readonly Found[]): Problem[] => {
  const shown = problems
    .slice(0, MOST_PROBLEMS)
    .map(({ path: _path, meant: _meant, echoes: _echoes, ...problem }): Problem => problem);
  const rest = problems.length - shown.length;
  const place = problems.at(-1)?.place;
  if (rest > 0 && place)
    shown.push({ code: 'more', message: `and ${rest} more`, place: { file: place.file } });
  return shown;
};

/** The JSON Schema of what may be written, before any of it is turned into other values. */
export const jsonSchemaOf = (schema: z.ZodType, title: string, description: string): object => ({
  ...z.toJSONSchema(schema, { io: 'input', target: 'draft-7' }),
  title,
  description,
});
