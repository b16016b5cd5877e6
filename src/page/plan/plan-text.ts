/**
 * Changes to a plan's text by single keys. The text itself is the page's only record of the plan, so that what is
 * saved is what she wrote: order, comments and the way lengths are written stay as they are.
 */

import { type Document, isMap, isScalar, isSeq, visit } from 'yaml';
import {
  type Change,
  withValues as changed,
  type KeyPath,
  parseText,
  type Splice,
  spliced,
  type Written,
  writtenInLine,
} from '../../document/index.ts';
import { readLength, type Units } from '../../length/index.ts';
import { exactly } from './her-units.ts';

export type { KeyPath, Written };

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
const plainValue = (value: string | number): string | number =>
  typeof value === 'string' && /^(0|[1-9]\d{0,8})(\.\d{1,6})?$/.test(value.trim())
    ? Number(value)
    : typeof value === 'string'
      ? value.trim()
      : value;

/** What stands at a key, as it is written; undefined where nothing or a group does. */
export const textAt = (text: string, path: KeyPath): string | undefined => {
  const node = read(text).getIn(path, true);
  return isScalar(node) && node.value !== null ? scalarText(node) : undefined;
};

/** The entries of a list, or the one that stands there instead of a list. */
export const listAt = (text: string, path: KeyPath): readonly string[] => {
  const node = read(text).getIn(path, true);
  if (isSeq(node)) return node.items.flatMap((item) => (isScalar(item) ? [scalarText(item)] : []));
  return isScalar(node) && node.value !== null ? [scalarText(node)] : [];
};

/** What stands at a key, as it can be put back; undefined where nothing does. */
export const groupAt = (text: string, path: KeyPath): Written => {
  const doc = read(text);
  const node = doc.getIn(path, true);
  return isMap(node) ? (node.toJS(doc, { maxAliasCount: 0 }) as Written) : undefined;
};

/** The keys of the group at a path. */
export const keysAt = (text: string, path: KeyPath): readonly string[] => {
  const doc = read(text);
  const node = path.length === 0 ? doc.contents : doc.getIn(path, true);
  return isMap(node) ? node.items.map((pair) => String(pair.key)) : [];
};

const scalarText = (node: { readonly value: unknown; readonly source?: string }): string =>
  typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));

/** The keys under which a plan holds lengths. */
const LENGTH_KEYS = new Set([
  ...['clearance', 'width', 'length', 'inner', 'outer', 'top', 'right', 'bottom', 'left', 'margin', 'around'],
  ...['within', 'block', 'height', 'gap', 'outward', 'inward', 'spacing'],
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
      if (where === 'key' || !(isBare(written) || written.endsWith(` ${to}`))) return;
      const keys = ancestors.flatMap((a) =>
        'key' in a && isScalar(a.key) && typeof a.key.value === 'string' ? [a.key.value] : [],
      );
      if (keys.includes('repeats') || !LENGTH_KEYS.has(keys.at(-1) ?? '')) return;
      const read = readLength(written, from, 'any');
      const inNew = read.ok ? exactly(read.mm, to) : undefined;
      const value =
        inNew !== undefined ? plainValue(inNew) : isBare(written) ? `${written} ${from}` : undefined;
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

/** A number or a fraction without a unit. */
const isBare = (text: string): boolean => /^[\d\s./⁄½¼¾⅛⅜⅝⅞-]+$/.test(text) && /\d|[½¼¾⅛⅜⅝⅞]/.test(text);
