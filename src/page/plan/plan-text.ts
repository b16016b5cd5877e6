/**
 * Changes to a plan's text by single keys. The text itself is the page's only record of the plan, so that what is
 * saved is what she wrote: order, comments and the way lengths are written stay as they are.
 */

import { type Document, isCollection, isMap, isScalar, isSeq, parseDocument, visit } from 'yaml';
import { readLength, type Units } from '../../length/index.ts';
import { exactly } from './her-units.ts';

export type KeyPath = readonly (string | number)[];

/** A text, a list that is written on one line, a group, or undefined to take the key out. */
export type Written =
  | string
  | number
  | readonly (string | number)[]
  | { readonly [key: string]: Written }
  | undefined;

/** The same way of reading as the program's own, so that nothing means two things. */
const parse = (text: string): Document.Parsed =>
  parseDocument(text, { version: '1.2', schema: 'core', merge: false, uniqueKeys: false });

/** The text's values. Fields ask for many of one text: it is parsed once for all of them, and never changed. */
const read = (text: string): Document.Parsed => {
  if (last?.text !== text) last = { text, doc: parse(text) };
  return last.doc;
};

let last: { readonly text: string; readonly doc: Document.Parsed } | undefined;

export const withValue = (text: string, path: KeyPath, value: Written): string =>
  withValues(text, [[path, value]]);

export const withValues = (text: string, changes: readonly (readonly [KeyPath, Written])[]): string => {
  const doc = parse(text);
  for (const [path, value] of changes) put(doc, path, value);
  return doc.toString({ lineWidth: 0 });
};

const put = (doc: Document.Parsed, path: KeyPath, value: Written): void => {
  if (value === undefined) {
    if (doc.hasIn(path)) doc.deleteIn(path);
    dropEmpty(doc, path.slice(0, -1));
    return;
  }
  for (let depth = 1; depth < path.length; depth++) {
    const parent = path.slice(0, depth);
    if (!isCollection(doc.getIn(parent, true))) doc.setIn(parent, doc.createNode({}));
  }
  const old = doc.getIn(path, true);
  const plain = typeof value === 'object' ? value : plainValue(value);
  if (typeof plain === 'object') {
    const node = doc.createNode(plain, { flow: true });
    if (isScalar(old) || isCollection(old)) node.comment = old.comment ?? null;
    doc.setIn(path, node);
  } else if (isScalar(old)) {
    old.value = plain;
    delete old.source;
  } else doc.setIn(path, plain);
};

/** A group that nothing is left in goes too: `swag: {}` says nothing. */
const dropEmpty = (doc: Document.Parsed, path: KeyPath): void => {
  if (path.length === 0) return;
  const group = doc.getIn(path, true);
  if (isCollection(group) && group.items.length === 0) {
    doc.deleteIn(path);
    dropEmpty(doc, path.slice(0, -1));
  }
};

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
  const doc = parse(text);
  visit(doc, {
    Scalar: (where, node, ancestors) => {
      const written = scalarText(node);
      if (where === 'key' || !(isBare(written) || written.endsWith(` ${to}`))) return;
      const keys = ancestors.flatMap((a) =>
        'key' in a && isScalar(a.key) && typeof a.key.value === 'string' ? [a.key.value] : [],
      );
      if (keys.includes('repeats') || !LENGTH_KEYS.has(keys.at(-1) ?? '')) return;
      const read = readLength(written, from, 'any');
      const inNew = read.ok ? exactly(read.mm, to) : undefined;
      if (inNew !== undefined) node.value = plainValue(inNew);
      else if (isBare(written)) node.value = `${written} ${from}`;
      delete node.source;
    },
  });
  if (doc.hasIn(['marks', 'round'])) put(doc, ['marks', 'round'], undefined);
  doc.setIn(['units'], to);
  return doc.toString({ lineWidth: 0 });
};

/** A number or a fraction without a unit. */
const isBare = (text: string): boolean => /^[\d\s./⁄½¼¾⅛⅜⅝⅞-]+$/.test(text) && /\d|[½¼¾⅛⅜⅝⅞]/.test(text);
