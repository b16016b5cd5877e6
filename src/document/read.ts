/**
 * Reads a YAML or JSON text into plain values (mappings, lists, texts, numbers, true, false, nothing) and
 * remembers where each stood, so that any later message can name a line and a column.
 *
 * The text may come from anywhere, so everything is bounded and checked before the parser sees it: size and
 * nesting (the yaml package builds a regular expression as long as the nesting, and runs out of memory at a
 * few hundred thousand levels); and after: the number of values once aliases are followed, which is where
 * small texts explode. Mappings have no prototype, so a key such as `__proto__` is a key like any other.
 */

import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type Pair,
  parseDocument,
  type Scalar,
} from 'yaml';
import { pointInstead } from '../length/index.ts';
import { MOST_SHOWN, quoted } from './describe.ts';
import type { Place, Problem } from './problem.ts';
import { explainSyntax, firstMistake, syntaxOffset } from './syntax.ts';

/** A plan has some thousand characters, a traced template some ten thousand. The worst texts of this size take some 3 s. */
export const MOST_CHARACTERS = 200_000;

/** The deepest path that means anything has five keys. */
export const MOST_DEPTH = 24;

/** Values after following aliases. 500 pieces of edge with their points are about 6,000. */
export const MOST_VALUES = 50_000;

/** The longest key that means anything has a dozen letters. Keys are part of every place below them, so long ones add up. */
const MOST_KEY = 100;

/** Columns of indentation, and unclosed brackets, beyond which the parser is not asked. */
const MOST_INDENT = 200;
const MOST_BRACKETS = 64;

/** Where a value stands in its document: keys of mappings and indices of lists, from the outside in. */
export type KeyPath = readonly (string | number)[];

export interface SourceDocument {
  readonly fileName: string;
  /** Mappings without prototype, lists, strings, finite or infinite numbers, NaN, booleans and null. */
  readonly value: unknown;
  /** Places by path, see placeOf. */
  readonly places: ReadonlyMap<string, Spot>;
}

/** Where something stands: its value, and its key where it has one. */
interface Spot {
  readonly key: Place | undefined;
  readonly value: Place;
}

export type DocumentReading =
  | { readonly ok: true; readonly document: SourceDocument }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Never throws: whatever the text, there is a document or at least one problem. Under the keys `texts` a number stays
 * the text that was written: `007` is no 7, and `1.10` no 1.1.
 */
export const readDocument = (
  text: string,
  fileName: string,
  texts: ReadonlySet<string> = new Set(),
): DocumentReading => {
  const refused = refuse(text, fileName);
  if (refused) return { ok: false, problems: [refused] };
  const lines = new LineCounter();
  const parsed = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    // Asked for below, in linear time; the package compares every key with every other.
    uniqueKeys: false,
    version: '1.2',
    schema: 'core',
    // Sets, dates and other kinds of YAML 1.1 mean nothing here, and the page does without what reads them.
    resolveKnownTags: false,
    merge: false,
  });
  const at = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file: fileName, line, column: col };
  };
  // What follows the first mistake in the writing is guesswork of the parser: one mistake, one line.
  const syntax = firstMistake([...parsed.errors, ...parsed.warnings]);
  if (syntax) {
    const offset = syntaxOffset(syntax, parsed);
    return {
      ok: false,
      problems: [
        explainSyntax(syntax, at(offset), text.slice(0, offset), text.slice(offset, offset + MOST_SHOWN)),
      ],
    };
  }
  const walk: Walk = {
    at,
    texts,
    places: new Map(),
    problems: [],
    anchors: new Map(),
    open: new Set(),
    values: 0,
  };
  const value = convert(parsed.contents, [], undefined, walk);
  if (walk.problems.length > 0)
    return {
      ok: false,
      problems: walk.problems.map((p) => ({ ...p, place: p.place ?? { file: fileName } })),
    };
  if (value === null)
    return {
      ok: false,
      problems: [{ code: 'empty', message: 'the file is empty', place: { file: fileName } }],
    };
  return { ok: true, document: { fileName, value, places: walk.places } };
};

/** Asked before the parser runs. */
const refuse = (text: string, file: string): Problem | undefined => {
  if (text.length > MOST_CHARACTERS)
    return {
      code: 'too-large',
      message: 'the file is too large to be a plan or a template',
      place: { file },
      found: `${text.length} characters`,
      expected: `at most ${MOST_CHARACTERS}`,
    };
  if (text.includes('\u0000'))
    return {
      code: 'not-text',
      message: 'this is not a text file',
      place: { file },
      expected: 'YAML or JSON',
    };
  const line = deepLine(text);
  if (line === undefined) return undefined;
  return { code: 'too-deep', message: 'nested too deeply', place: { file, line } };
};

/** The first line on which the nesting may go beyond what any real file has. Counts brackets in texts too. */
const deepLine = (text: string): number | undefined => {
  let brackets = 0;
  let indent = 0;
  let line = 1;
  let atStart = true;
  for (const c of text) {
    if (c === '\n' || c === '\r') {
      if (c === '\n') line++;
      indent = 0;
      atStart = true;
    } else if (atStart && (c === ' ' || c === '\t' || c === '-' || c === '?' || c === ':')) {
      indent++;
      if (indent > MOST_INDENT && c !== ' ' && c !== '\t') return line;
    } else {
      if (atStart && indent > MOST_INDENT && brackets === 0 && c !== '#') return line;
      atStart = false;
      if (c === '[' || c === '{') brackets++;
      if (c === ']' || c === '}') brackets = Math.max(0, brackets - 1);
      if (brackets > MOST_BRACKETS) return line;
    }
  }
  return undefined;
};

interface Walk {
  readonly at: (offset: number) => Place;
  readonly texts: ReadonlySet<string>;
  readonly places: Map<string, Spot>;
  readonly problems: Problem[];
  readonly anchors: Map<string, Node>;
  /** The nodes that are being converted, to notice one that contains itself. */
  readonly open: Set<Node>;
  values: number;
}

const convert = (node: unknown, path: KeyPath, keyPlace: Place | undefined, walk: Walk): unknown => {
  walk.values++;
  if (walk.values > MOST_VALUES) return stop(walk, 'too-many', 'too many values', keyPlace);
  if (path.length > MOST_DEPTH) return stop(walk, 'too-deep', 'nested too deeply', keyPlace);
  const target = follow(node as Node | null, walk);
  if (target === undefined) return null;
  const start = (node as Node | null)?.range?.[0];
  const place = start === undefined ? keyPlace : walk.at(start);
  if (place) walk.places.set(spotKey(path), { key: keyPlace, value: place });
  if (target === null) return null;
  if (walk.open.has(target)) return stop(walk, 'endless', 'a value that contains itself', place);
  if (target.anchor) walk.anchors.set(target.anchor, target);
  walk.open.add(target);
  const value = convertPlain(target, path, place, walk);
  walk.open.delete(target);
  return value;
};

const convertPlain = (node: Node, path: KeyPath, place: Place | undefined, walk: Walk): unknown => {
  if (isScalar(node)) return scalarAt(node, path, walk);
  if (isSeq(node)) {
    const list: unknown[] = [];
    for (const [i, item] of node.items.entries()) {
      if (walk.values > MOST_VALUES) break;
      const written = commaBetween(node.items[i - 1], item);
      // A length with its unit after a bare number without a space: nobody writes two lengths so.
      if (written !== undefined && /[a-z"']$/i.test(written))
        refuseComma(walk, written, [...path, i - 1], 'for two lengths put a space after the comma');
      list.push(convert(item, [...path, list.length], undefined, walk));
    }
    return list;
  }
  if (!isMap(node)) return stop(walk, 'odd-value', 'not a text, number, list or group of keys', place);
  const map: Record<string, unknown> = Object.create(null);
  let before: unknown;
  for (const pair of node.items as Pair<unknown, unknown>[]) {
    if (walk.values > MOST_VALUES) break;
    const written = pair.value === null ? commaBetween(before, pair.key) : undefined;
    before = pair.value;
    if (written !== undefined) {
      refuseComma(walk, written, [...path, Object.keys(map).at(-1) ?? '']);
      continue;
    }
    const keyNode = isAlias(pair.key) ? follow(pair.key, walk) : pair.key;
    const where = (pair.key as Node | null)?.range ? walk.at((pair.key as Node).range![0]) : place;
    if (!isScalar(keyNode) || keyNode.value === null || typeof keyNode.value === 'object') {
      walk.problems.push({
        code: 'odd-key',
        message: 'a key must be a word',
        ...(where && { place: where }),
      });
      continue;
    }
    if (keyNode.anchor) walk.anchors.set(keyNode.anchor, keyNode);
    const key = keyText(keyNode);
    if (key.length > MOST_KEY) {
      walk.problems.push({
        code: 'odd-key',
        message: 'this key is too long',
        ...(where && { place: where }),
        found: quoted(key),
        expected: 'a word',
      });
      continue;
    }
    const inner = [...path, key];
    if (Object.hasOwn(map, key)) {
      const first = walk.places.get(spotKey(inner))?.key?.line;
      walk.problems.push({
        code: 'duplicate-key',
        message: `the key ${quoted(key)} is written twice`,
        ...(where && { place: where }),
        key: keyName(inner),
        ...(first !== undefined && { hint: `the first one is on line ${first}` }),
      });
      continue;
    }
    map[key] = convert(pair.value, inner, where, walk);
  }
  return map;
};

/**
 * What was written where a decimal comma has parted a number in two: in brackets and braces YAML takes `91,5 cm` for
 * `91` and `5 cm`.
 */
const commaBetween = (before: unknown, after: unknown): string | undefined => {
  if (!isPlain(before) || !isPlain(after)) return undefined;
  const isClose = after.range[0] - before.range[1] === 1;
  if (!isClose || !/^[+-]?\d+$/.test(before.source) || !/^\d[\d.]*( ?[a-z"']+\.?)?$/i.test(after.source))
    return undefined;
  return `${before.source},${after.source}`;
};

interface PlainScalar {
  readonly source: string;
  readonly range: readonly [number, number, number];
}

/** A value without quotes, as it stands in the file. */
const isPlain = (node: unknown): node is PlainScalar =>
  isScalar(node) && node.type === 'PLAIN' && typeof node.source === 'string' && Boolean(node.range);

const refuseComma = (walk: Walk, written: string, path: KeyPath, hint?: string): void => {
  const place = walk.places.get(spotKey(path))?.value;
  walk.problems.push({
    code: 'not-a-length',
    message: `a comma in a number; ${pointInstead(written)}`,
    ...(place && { place }),
    key: keyName(path),
    found: quoted(written),
    ...(hint !== undefined && { hint }),
  });
};

const scalarAt = (node: Scalar, path: KeyPath, { texts }: Walk): unknown => {
  const key = path.findLast((step) => typeof step === 'string');
  const isText = typeof node.value === 'number' && key !== undefined && texts.has(key);
  return isText ? (node.source ?? String(node.value)) : plainScalar(node.value);
};

/** As much of a parsed scalar as is told of here: the library's types are not for those who use ours. */
interface Written {
  readonly value: unknown;
  readonly source?: string | undefined;
}

/** A key as it is written: a part may be called `007` or `1.10`, which are no 7 and no 1.1. */
export const keyText = ({ value, source }: Written): string =>
  typeof value === 'string' ? value : (source ?? String(value));

/** BigInt and Date do not arise from the core schema; anything unforeseen becomes its text. */
const plainScalar = (value: unknown): unknown =>
  value === null || typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? value
    : String(value);

/** An alias leads to the latest anchor of its name before it, which may itself be an alias only by mistake. */
const follow = (node: Node | null, walk: Walk): Node | null | undefined => {
  if (!isAlias(node)) return node;
  const target = walk.anchors.get(node.source);
  if (target) return target;
  const place = node.range ? walk.at(node.range[0]) : undefined;
  stop(walk, 'unknown-alias', `nothing above is marked &${node.source}`, place);
  return undefined;
};

const stop = (walk: Walk, code: string, message: string, place: Place | undefined): null => {
  // Bounds are met again and again on the way out; the first time says it all.
  if (!walk.problems.some((p) => p.code === code))
    walk.problems.push({ code, message, ...(place && { place }) });
  return null;
};

/** A path as a map's key: unlike the name shown to people it tells `a.b` from `a` then `b`. */
const spotKey = (path: KeyPath): string => JSON.stringify(path);

/** A path as people say it: `layout.border.inner.top`, `edge.2.arc.to`; lists count from 1. Empty for the whole. */
export const keyName = (path: KeyPath): string =>
  path.map((p) => (typeof p === 'number' ? String(p + 1) : quoted(p).slice(1, -1))).join('.');

/**
 * Where a path stands: its value, or its key when asked for that; for what is not written, the nearest thing
 * around it that is.
 */
export const placeOf = (document: SourceDocument, path: KeyPath, what: 'key' | 'value' = 'value'): Place => {
  for (let length = path.length; length >= 0; length--) {
    const spot = document.places.get(spotKey(path.slice(0, length)));
    if (!spot) continue;
    const whole = length === path.length;
    return (whole && what === 'value' ? spot.value : spot.key) ?? spot.value;
  }
  return { file: document.fileName };
};

/** The keys of the group at a path, in the order of the file: JavaScript puts names such as `10` and `2` first, by size. */
export const keysAt = (document: SourceDocument, path: KeyPath): readonly string[] => {
  const value = valueAt(document, path);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  const at = (key: string): Place => placeOf(document, [...path, key], 'key');
  return Object.keys(value)
    .map((key) => ({ key, ...at(key) }))
    .sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0))
    .map(({ key }) => key);
};

/** The value at a path, undefined where there is none. */
export const valueAt = (document: SourceDocument, path: KeyPath): unknown => {
  let value: unknown = document.value;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    if (!Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
};
