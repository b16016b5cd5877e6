/**
 * Changes a YAML or JSON text by single keys. What is not changed stays byte for byte as it was written: quotes,
 * comments, order, spaces, line ends, and numbers such as `007` or `1e3`, which a parser would write back as others.
 *
 * So the text is never written anew: a change replaces, inserts or cuts out the few characters of its own key.
 */

import {
  type Alias,
  CST,
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  Lexer,
  type Node,
  type Pair,
  parseDocument,
  stringify,
  visit,
  type YAMLMap,
} from 'yaml';
import { type KeyPath, keyText } from './read.ts';

/** A text, a number, true or false, a list, a group of keys, or undefined to take the key out. */
export type Written =
  | string
  | number
  | boolean
  | readonly (string | number)[]
  | { readonly [key: string]: Written }
  | undefined;

type Said = Exclude<Written, undefined>;

export type Change = readonly [path: KeyPath, value: Written];

/**
 * The same way of reading as `readDocument`, so that nothing means two things. Who edits a text has had it read, and
 * its mistakes said, before: they are not worded here, which takes two thirds of a text full of them.
 */
export const parseText = (text: string): Document.Parsed =>
  parseDocument(text, {
    version: '1.2',
    schema: 'core',
    resolveKnownTags: false,
    merge: false,
    uniqueKeys: false,
    prettyErrors: false,
  });

/** Throws where the text has a mistake in its writing: there is no telling then what a key would be. */
export const withValues = (text: string, changes: readonly Change[]): string =>
  changes.reduce((now, [path, value]) => withValue(now, path, value), text);

export const withValue = (text: string, path: KeyPath, value: Written): string => {
  const doc = parseText(text);
  if (doc.errors[0]) throw doc.errors[0];
  if (!saysOtherwise(doc, path, value)) return text;
  const change = (now: string, read: Document.Parsed): string =>
    value === undefined ? cutOut(now, read, path) : put(now, read, path, value);
  if (!isShared(doc, path)) return change(text, doc);
  const own = withoutAliases(text, doc);
  return change(own, parseText(own));
};

/** Characters of a text, and what comes in their place. */
export interface Splice {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export const spliced = (text: string, splices: readonly Splice[]): string =>
  [...splices]
    .sort((a, b) => b.from - a.from)
    .reduce((now, s) => now.slice(0, s.from) + s.text + now.slice(s.to), text);

const saysOtherwise = (doc: Document.Parsed, path: KeyPath, value: Written): boolean => {
  const old = nodeAt(doc, path);
  if (value === undefined) return old !== undefined;
  return typeof value === 'object' || !isScalar(old) || old.value !== value;
};

/** How a value is written within a line: in JSON as JSON, else without quotes where it is read as the same. */
export const writtenInLine = (value: Said, json = false): string => {
  if (Array.isArray(value)) return `[${value.map((v) => writtenInLine(v, json)).join(', ')}]`;
  if (typeof value === 'object') {
    const pairs = Object.entries(value).flatMap(([key, v]) =>
      v === undefined ? [] : [`${writtenInLine(key, json)}: ${writtenInLine(v, json)}`],
    );
    return pairs.length === 0 ? '{}' : `{ ${pairs.join(', ')} }`;
  }
  if (json) return JSON.stringify(value);
  const style = { collectionStyle: 'flow', flowCollectionPadding: false, lineWidth: 0 } as const;
  return stringify([value], { ...style, version: '1.2', schema: 'core' })
    .trim()
    .slice(1, -1);
};

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

const put = (text: string, doc: Document.Parsed, path: KeyPath, value: Said): string => {
  const json = isJson(text);
  const eol = eolOf(text);
  /** The keys of the path from one on, in brackets. */
  const group = (from: number): Said =>
    path.slice(from).reduceRight<Said>((inner, key) => ({ [key]: inner }), value);
  const inLine = (from: number): string => writtenInLine(group(from), json);
  /** The keys of the path from one on, each on a line of its own. */
  const onLines = (from: number, indent: string): string => {
    const outer = path
      .slice(from, -1)
      .map((key, i) => `${indent}${'  '.repeat(i)}${writtenInLine(key)}:${eol}`);
    const last = `${indent}${'  '.repeat(outer.length)}${writtenInLine(path.at(-1)!)}`;
    return `${outer.join('')}${last}: ${writtenInLine(value)}`;
  };
  let map: unknown = doc.contents;
  for (let i = 0; i < path.length; i++) {
    const key = path[i];
    if (!isMap(map)) return `${text}${text === '' || text.endsWith('\n') ? '' : eol}${onLines(0, '')}${eol}`;
    const pair = pairOf(map, key);
    if (!pair) return inserted(text, map, inLine(i).slice(2, -2), (indent) => onLines(i, indent));
    const old = pair.value as Node | null;
    const isLast = i === path.length - 1;
    if (isMap(old) && !isLast) {
      map = old;
      continue;
    }
    // An entry of a list that is a group itself.
    const place = path[i + 1];
    const entry = isSeq(old) && typeof place === 'number' ? old.items[place] : undefined;
    if (isMap(entry) && i + 2 < path.length) {
      map = entry;
      i++;
      continue;
    }
    // An entry of a list that is to be another.
    if (isNode(entry) && entry.range && i + 2 === path.length)
      return replacedEntry(text, entry, writtenInLine(value, json));
    const keyEnd = (pair.key as Node).range![1];
    // A key in brackets that has no colon.
    if (!old?.range) return spliced(text, [{ from: keyEnd, to: keyEnd, text: `: ${inLine(i + 1)}` }]);
    const [from, to] = old.range;
    if (from < to) return replaced(text, old, inLine(i + 1), pair.key as Node);
    if (isLast || map.flow)
      return spliced(text, [{ from, to, text: `${text[from - 1] === ' ' ? '' : ' '}${inLine(i + 1)}` }]);
    // A group that is named and left empty.
    const at = lineEnd(text, from);
    const indent = ' '.repeat(columnOf(text, firstKey(map)) + 2);
    return spliced(text, [{ from: at, to: at, text: `${eol}${onLines(i + 1, indent)}` }]);
  }
  return text;
};

/** What stands at a path, as the reader of documents finds it: a part that is called 1 has the key '1'. */
export const nodeAt = (doc: Document.Parsed, path: KeyPath): unknown =>
  path.reduce<unknown>((node, key) => {
    if (isMap(node)) return pairOf(node, key)?.value;
    return isSeq(node) && typeof key === 'number' ? node.items[key] : undefined;
  }, doc.contents);

const pairOf = (map: YAMLMap, key: unknown): Pair | undefined =>
  map.items.find((pair) => isScalar(pair.key) && keyText(pair.key) === String(key));

/** A value in the place of another. Comments inside a list or group that becomes one value stay, on lines below it. */
const replaced = (text: string, old: Node, value: string, key: Node): string => {
  const [from, to] = old.range!;
  const eol = eolOf(text);
  if (!isCollection(old))
    return spliced(text, [{ from, to, text: text[to - 1] === '\n' ? value + eol : value }]);
  const end = old.flow ? to : lineEnd(text, contentEnd(old));
  const indent = `${eol}${' '.repeat(columnOf(text, key.range![0]) + 2)}`;
  const comments = commentsIn(text, from, end)
    .map((comment) => indent + comment)
    .join('');
  if (old.flow) {
    // What follows on the line is no part of a comment.
    const after = comments === '' || /^\s*(#|$)/.test(text.slice(to, lineEnd(text, to))) ? '' : indent;
    return spliced(text, [{ from, to, text: value + comments + after }]);
  }
  const colon = text.indexOf(':', key.range![1]) + 1;
  return spliced(text, [
    { from: colon, to: end, text: ` ${value}${text.slice(colon, from).trimEnd()}${comments}` },
  ]);
};

/** The same for an entry of a list. */
const replacedEntry = (text: string, old: Node, value: string): string => {
  if (!isCollection(old) || old.flow) return replaced(text, old, value, old);
  const from = old.range![0];
  const to = lineEnd(text, contentEnd(old));
  const indent = `${eolOf(text)}${' '.repeat(columnOf(text, from))}`;
  return spliced(text, [{ from, to, text: [value, ...commentsIn(text, from, to)].join(indent) }]);
};

const commentsIn = (text: string, from: number, to: number): readonly string[] => {
  const comments: string[] = [];
  let at = 0;
  for (const token of new Lexer().lex(text)) {
    // The lexer puts these before what they say of it; they stand for no characters.
    const isMark = token === CST.DOCUMENT || token === CST.FLOW_END || token === CST.SCALAR;
    if (isMark) continue;
    if (CST.tokenType(token) === 'comment' && at >= from && at < to) comments.push(token);
    at += token.length;
  }
  return comments;
};

/** A pair after the last one of its group: in brackets as `pair`, else on lines of its own. */
const inserted = (text: string, map: YAMLMap, pair: string, onLines: (indent: string) => string): string => {
  const eol = eolOf(text);
  if (map.items.length === 0) {
    // Brackets with nothing in them: no empty group has other signs.
    const at = map.range![0] + 1;
    return spliced(text, [{ from: at, to: at, text: text[at] === '}' ? ` ${pair} ` : ` ${pair}` }]);
  }
  const end = pairEnd(map.items.at(-1)!);
  const column = columnOf(text, lastKey(map));
  if (!map.flow) {
    const at = text[end - 1] === '\n' ? end : lineEnd(text, end);
    const written = onLines(' '.repeat(columnOf(text, firstKey(map))));
    return spliced(text, [
      {
        from: at,
        to: at,
        text: at === end && at > 0 && text[at - 1] === '\n' ? written + eol : eol + written,
      },
    ]);
  }
  const [, comma = '', rest = ''] = /^([ \t]*,)?(.*)/.exec(text.slice(end, lineEnd(text, end)))!;
  const isAlone = text.slice(lastKey(map) - column, lastKey(map)).trim() === '' && /^\s*(#.*)?$/.test(rest);
  if (!isAlone) return spliced(text, [{ from: end, to: end, text: `, ${pair}` }]);
  const at = end + comma.length + rest.length;
  const line = `${eol}${' '.repeat(column)}${pair}${comma === '' ? '' : ','}`;
  return spliced(text, [
    { from: at, to: at, text: line },
    ...(comma === '' ? [{ from: end, to: end, text: ',' }] : []),
  ]);
};

/** A key and its value are taken out, and a group that nothing is left in with them: `swag: {}` says nothing. */
const cutOut = (text: string, doc: Document.Parsed, path: KeyPath): string => {
  const map = nodeAt(doc, path.slice(0, -1));
  if (!isMap(map)) return text;
  if (map.items.length === 1 && path.length > 1) return cutOut(text, doc, path.slice(0, -1));
  const index = map.items.indexOf(pairOf(map, path.at(-1))!);
  const from = startOf(map.items[index]!);
  const next = map.items[index + 1];
  const before = map.items[index - 1];
  const end = pairEnd(map.items[index]!);
  if (map.flow) {
    const cut = next ? { from, to: startOf(next) } : { from: before ? pairEnd(before) : from, to: end };
    return spliced(text, [{ ...cut, text: '' }]);
  }
  const lineStart = from - columnOf(text, from);
  // The first key of an entry of a list stands behind its dash.
  if (text.slice(lineStart, from).trim() !== '' && next)
    return spliced(text, [{ from, to: startOf(next), text: '' }]);
  const to = text[end - 1] === '\n' ? end : lineEnd(text, end);
  const lineBreak = /^\r?\n/.exec(text.slice(to))?.[0].length ?? 0;
  return spliced(text, [{ from: lineStart, to: text[to - 1] === '\n' ? to : to + lineBreak, text: '' }]);
};

const startOf = (pair: Pair): number => (pair.key as Node).range![0];
const firstKey = (map: YAMLMap): number => startOf(map.items[0]!);
const lastKey = (map: YAMLMap): number => startOf(map.items.at(-1)!);

const pairEnd = ({ key, value }: Pair): number =>
  contentEnd(((value as Node | null)?.range ? value : key) as Node);

/** Where what a value says ends, before comments and empty lines behind it. */
const contentEnd = (node: Node): number => {
  if (isCollection(node) && !node.flow) {
    const last = node.items.at(-1);
    if (isPair(last)) return pairEnd(last);
    if (isNode(last) && last.range) return contentEnd(last);
  }
  return node.range![1];
};

const lineEnd = (text: string, at: number): number => {
  const end = text.indexOf('\n', at);
  if (end < 0) return text.length;
  return text[end - 1] === '\r' && end > at ? end - 1 : end;
};

const columnOf = (text: string, at: number): number => at - (text.lastIndexOf('\n', at - 1) + 1);

const eolOf = (text: string): string => /\r?\n/.exec(text)?.[0] ?? '\n';

/** Whether a change at this path would reach what an alias stands for, or take away what one is the name of. */
const isShared = (doc: Document.Parsed, path: KeyPath): boolean => {
  let node: unknown = doc.contents;
  for (const key of path) {
    if (isAlias(node)) return true;
    if (isNode(node) && 'anchor' in node && node.anchor) return true;
    if (isSeq(node) && typeof key === 'number') node = node.items[key];
    else if (isMap(node)) node = pairOf(node, key)?.value;
    else return false;
  }
  if (!isNode(node)) return false;
  let shared = false;
  visit(node, {
    Node: (_, inner) => {
      if (isAlias(inner) || ('anchor' in inner && inner.anchor)) shared = true;
    },
  });
  return shared;
};

/** What an alias stands for takes its place, so that a change at the one changes nothing at the other. */
const withoutAliases = (text: string, doc: Document.Parsed): string => {
  const splices: Splice[] = [];
  const said = (alias: Alias): string => {
    const node = alias.resolve(doc);
    const [from, to] = node?.range ?? [0, 0];
    const asWritten = text.slice(from, to);
    if (isScalar(node) && !asWritten.includes('\n')) return asWritten;
    return writtenInLine(node?.toJS(doc) as Said, isJson(text));
  };
  visit(doc, {
    Alias: (_, alias) => void splices.push({ from: alias.range![0], to: alias.range![1], text: said(alias) }),
    Node: (_, node) => {
      if (!('anchor' in node) || !node.anchor) return;
      const from = text.lastIndexOf(`&${node.anchor}`, node.range![0]);
      if (from < 0) return;
      const to = from + node.anchor.length + 1;
      splices.push({ from, to: text[to] === ' ' ? to + 1 : to, text: '' });
    },
  });
  return spliced(text, splices);
};
