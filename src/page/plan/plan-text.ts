/**
 * Changes to a plan's text by single keys. The text itself is the page's only record of the plan, so that what is
 * saved is what she wrote: order, comments and the way lengths are written stay as they are.
 */

import { type Document, isMap, isScalar, isSeq, visit } from 'yaml';
import {
  type Change,
  withValues as changed,
  type KeyPath,
  keyText,
  nodeAt,
  parseText,
  type Splice,
  spliced,
  type Written,
  writtenInLine,
} from '../../document/index.ts';
import { readLength, type Units } from '../../length/index.ts';
import { inCornersOf } from '../../plan/index.ts';
import { exactly } from './her-units.ts';
import { wishParts, wishWritten } from './wish-text.ts';

export type { KeyPath, Written };

/**
 * A plan to read from: its text, or with it the part that is open, whose keys are then meant where every part has its
 * own. A part that is not there, or none, is the first; a plan of one design has none.
 */
export type PlanSource = string | { readonly plan: string; readonly part?: string | undefined };

/** The names of the parts, in the plan's order; none where the plan is one design. */
export const partsOf = (text: string): readonly string[] => keysAt(text, ['parts']);

export const openPart = (from: PlanSource): string | undefined => {
  if (typeof from === 'string') return undefined;
  const names = partsOf(from.plan);
  return names.find((name) => name === from.part) ?? names[0];
};

/** What each part says for itself; the rest stands at the head of the plan, for all. */
const OF_PARTS: ReadonlySet<unknown> = new Set([
  ...['layout', 'rows', 'swag', 'channels', 'fills', 'template', 'at', 'turn'],
]);

/** A key's place in the plan: within the open part where each part has its own. */
export const pathIn = (from: PlanSource, path: KeyPath): KeyPath => {
  const part = openPart(from);
  return part !== undefined && OF_PARTS.has(path[0]) ? ['parts', part, ...path] : path;
};

/** The node at a key. A part without templates of its own has those of all. */
const nodeIn = (
  from: PlanSource,
  path: KeyPath,
): { readonly doc: Document.Parsed; readonly node: unknown } => {
  const doc = read(typeof from === 'string' ? from : from.plan);
  const node = nodeAt(doc, pathIn(from, path));
  return { doc, node: node === undefined && path[0] === 'template' ? nodeAt(doc, path) : node };
};

/** What of a part says where it and its corners lie. */
interface OnQuilt {
  readonly layout?: unknown;
  readonly at?: unknown;
  readonly turn?: unknown;
}

/** All that the plan says but for its open part, to be compared: it changes when what another part is made from does. */
export const textBesides = (from: Exclude<PlanSource, string>): string => {
  const open = openPart(from);
  const { parts = {}, ...shared } = (read(from.plan).toJS({ maxAliasCount: -1 }) ?? {}) as {
    readonly parts?: Readonly<Record<string, OnQuilt | null>>;
  };
  const others = Object.entries(parts).filter(([name]) => name !== open);
  // What lies in the corners of a part goes with them.
  const { layout, at, turn } = parts[open ?? ''] ?? {};
  const isFollowed = others.some(([, part]) => inCornersOf(String(part?.at)) === open);
  return JSON.stringify([shared, others, isFollowed && { layout, at, turn }]);
};

/** The text's values. Fields ask for many of one text: it is parsed once for all of them, and never changed. */
const read = (text: string): Document.Parsed => {
  if (last?.text !== text) last = { text, doc: parseText(text) };
  return last.doc;
};

let last: { readonly text: string; readonly doc: Document.Parsed } | undefined;

export const withValue = (text: string, path: KeyPath, value: Written): string =>
  withValues(text, [[path, value]]);

export const withValues = (text: string, changes: readonly Change[]): string =>
  changed(
    text,
    changes.map(([path, value]) => [path, typeof value === 'string' ? plainValue(value) : value]),
  );

/** `72` is written as a number, `60 1/8` as the text that it is. */
export const plainValue = (value: string | number): string | number =>
  typeof value === 'string' && /^-?(0|[1-9]\d{0,8})(\.\d{1,6})?$/.test(value.trim())
    ? Number(value)
    : typeof value === 'string'
      ? value.trim()
      : value;

/** What stands at a key, as it is written; undefined where nothing or a group does. */
export const textAt = (from: PlanSource, path: KeyPath): string | undefined => {
  const { node } = nodeIn(from, path);
  return isScalar(node) && node.value !== null ? scalarText(node) : undefined;
};

/** A fill's name, whether it stands alone or with its figures; undefined where none is. */
export const fillKind = (from: PlanSource, path: KeyPath): string | undefined =>
  textAt(from, path) ?? textAt(from, [...path, 'kind']);

/** The entries of a list, or the one that stands there instead of a list. */
export const listAt = (from: PlanSource, path: KeyPath): readonly string[] => {
  const { node } = nodeIn(from, path);
  if (isSeq(node)) return node.items.flatMap((item) => (isScalar(item) ? [scalarText(item)] : []));
  return isScalar(node) && node.value !== null ? [scalarText(node)] : [];
};

/** The keys under which the plan names templates: for all, for a part, a corner, a row, or one kind of two. */
export const templatePlaces = (text: string): readonly KeyPath[] => {
  const within = (value: unknown, path: KeyPath): readonly KeyPath[] =>
    typeof value !== 'object' || value === null
      ? []
      : Object.entries(value).flatMap(([key, held]) => {
          const at = [...path, Array.isArray(value) ? Number(key) : key];
          return key === 'template' ? [at] : within(held, at);
        });
  return within(read(text).toJS({ maxAliasCount: -1 }), []);
};

/** Every template that the plan names, for all its parts and for any. */
export const templatesOf = (text: string): readonly string[] => [
  ...new Set(templatePlaces(text).flatMap((at) => listAt(text, at))),
];

/** What stands at a key, as it can be put back; undefined where nothing does. */
export const groupAt = (from: PlanSource, path: KeyPath): Written => {
  const { doc, node } = nodeIn(from, path);
  return isMap(node) ? (node.toJS(doc, { maxAliasCount: 0 }) as Written) : undefined;
};

/** The keys of the group at a path. */
export const keysAt = (from: PlanSource, path: KeyPath): readonly string[] => {
  const { node } = nodeIn(from, path);
  return isMap(node) ? node.items.map(({ key }) => (isScalar(key) ? keyText(key) : String(key))) : [];
};

const scalarText = (node: { readonly value: unknown; readonly source?: string }): string =>
  typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));

/** The keys under which a plan holds lengths. */
const LENGTH_KEYS = new Set([
  ...['clearance', 'width', 'length', 'inner', 'outer', 'top', 'right', 'bottom', 'left', 'margin', 'around'],
  ...['ends', 'within', 'block', 'height', 'outward', 'inward', 'spacing', 'at'],
]);

/**
 * The plan in other units, and no length changes: where the new units have a number for just that length it is
 * written instead, and any other now says the old ones. How marks are rounded is left to the new units.
 */
export const withUnits = (text: string, from: Units, to: Units): string => {
  if (from === to) return text;
  const splices: Splice[] = [];
  visit(parseText(text), {
    Scalar: (where, node, ancestors) => {
      const written = scalarText(node);
      if (where === 'key') return;
      const keys = ancestors.flatMap((a) =>
        'key' in a && isScalar(a.key) && typeof a.key.value === 'string' ? [a.key.value] : [],
      );
      // A part may be called anything.
      const own = keys[0] === 'parts' ? keys.slice(2) : keys;
      const key = own.at(-1) ?? '';
      const isWish = WISH_KEYS.has(key);
      if (own.includes('repeats') || !(isWish || LENGTH_KEYS.has(key))) return;
      const value = isWish ? wishInUnits(written, from, to) : inUnits(written, from, to);
      const [start, end] = node.range ?? [0, 0];
      if (value !== undefined && start < end)
        splices.push({ from: start, to: end, text: writtenInLine(value, text[start] === '"') });
    },
  });
  return withValues(spliced(text, splices), [
    [['marks', 'round'], undefined],
    [['units'], to],
  ]);
};

const WISH_KEYS = new Set(['span', 'depth', 'gap']);

/** The same length, where it is written otherwise in other units. */
const inUnits = (written: string, from: Units, to: Units): string | number | undefined => {
  if (!(isBare(written) || written.endsWith(` ${to}`))) return undefined;
  const read = readLength(written, from, 'any');
  const inNew = read.ok ? exactly(read.mm, to) : undefined;
  if (inNew !== undefined) return plainValue(inNew);
  return isBare(written) ? `${written} ${from}` : undefined;
};

/** Each figure of `about 9` or of `3 to 4`. Of two with one unit between them both are in that. */
const wishInUnits = (written: string, from: Units, to: Units): string | number | undefined => {
  const parts = wishParts(written);
  const own = parts.kind === 'between' ? /[a-z]+$/.exec(parts.second)?.[0] : undefined;
  const first = own !== undefined && isBare(parts.first) ? `${parts.first} ${own}` : parts.first;
  const [a, b] = [first, parts.second].map((figure) => inUnits(figure, from, to) ?? figure);
  const words = wishWritten({ ...parts, first: String(a), second: String(b) });
  return words === undefined || words === written ? undefined : plainValue(words);
};

/** A number or a fraction without a unit. */
const isBare = (text: string): boolean => /^[\d\s./⁄½¼¾⅛⅜⅝⅞-]+$/.test(text) && /\d|[½¼¾⅛⅜⅝⅞]/.test(text);
