/** Parts in a plan's text: one more, one less, and where the open one lies on the quilt. */

import { isMap, isScalar, isSeq, type Pair } from 'yaml';
import { keyText, nodeAt, parseText, writtenInLine } from '../../document/index.ts';
import { MM_PER, readLength, type Units } from '../../length/index.ts';
import { inCornersOf } from '../../plan/index.ts';
import { partsWords } from '../words/words.ts';
import {
  groupAt,
  keysAt,
  listAt,
  openPart,
  type PlanSource,
  partsOf,
  pathIn,
  textAt,
  type Written,
  withValues,
} from './plan-text.ts';

/** What a design says for itself: with several parts each of them says it. Templates stay at the head, for all. */
export const OWN_KEYS: readonly string[] = ['layout', 'rows', 'swag', 'corner', 'channels', 'fills'];

/** A plan of one design, which then is the one part that it has: comments and figures stay as they are written. */
export const asParts = (text: string, name: string): string => {
  const { contents } = parseText(text);
  const written = keysAt(text, []);
  const keys = OWN_KEYS.filter((key) => written.includes(key));
  if (!isMap(contents) || contents.flow) {
    const own = keys.map((key) => [key, groupAt(text, [key])] as const);
    return withValues(text, [
      [['parts', name], Object.fromEntries(own)],
      ...keys.map((key) => [[key], undefined] as const),
    ]);
  }
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const starts = contents.items.map((pair, i) => startOf(text, pair, i === 0));
  const pieces = contents.items.map(({ key }, i) => {
    const piece = text.slice(starts[i], starts[i + 1]);
    const isOwn = isScalar(key) && keys.includes(keyText(key));
    return { isOwn, text: piece.endsWith('\n') ? piece : `${piece}${eol}` };
  });
  const joined = (own: boolean): string =>
    pieces.flatMap((piece) => (piece.isOwn === own ? [piece.text] : [])).join('');
  const head = text.slice(0, starts[0] ?? 0);
  const indented = joined(true).replace(/^(?=[^\r\n])/gm, '    ');
  return `${head}${joined(false)}parts:${eol}  ${writtenInLine(name)}:${eol}${indented}`;
};

/** Where the lines of a key begin, with the comments right above it; what stands above the first is the whole plan's. */
const startOf = (text: string, { key }: Pair, isFirst: boolean): number => {
  const at = isScalar(key) ? key.range![0] : 0;
  let start = text.lastIndexOf('\n', at - 1) + 1;
  while (!isFirst && start > 0) {
    const above = text.lastIndexOf('\n', start - 2) + 1;
    if (!/^[ \t]*#/.test(text.slice(above, start))) break;
    start = above;
  }
  return start;
};

/** One more part, with a layout to begin with, below all that the quilt has (mm from its middle). */
export const withPart = (text: string, name: string, units: Units, below: number): string => {
  const parts = partsOf(text);
  const whole = parts.length > 0 ? text : asParts(text, keysAt(text, ['layout'])[0] ?? partsWords.firstPart);
  const { length, width, apart } = FIRST_STRIP[units];
  const down = Math.ceil(below / MM_PER[units] + apart + width / 2);
  const part: Written = { at: [0, -down], layout: { strip: { length, width } } };
  return withValues(whole, [[['parts', name], part]]);
};

const FIRST_STRIP: Readonly<
  Record<Units, { readonly length: number; readonly width: number; readonly apart: number }>
> = {
  in: { length: 36, width: 5, apart: 1 },
  cm: { length: 90, width: 12, apart: 2 },
  mm: { length: 900, width: 120, apart: 20 },
};

export const withoutPart = (text: string, name: string): string =>
  withValues(text, [[['parts', name], undefined]]);

/** A name that no part has. */
export const freeName = (text: string): string => {
  const taken = partsOf(text);
  let n = Math.max(2, taken.length + 1);
  while (taken.includes(partsWords.freeName({ number: n }))) n++;
  return partsWords.freeName({ number: n });
};

/** Where the open part lies: right and up, as it is written; how often, where that is in several places; or in whose corners. */
export type Place =
  | { readonly right: string; readonly up: string }
  | { readonly places: number }
  | { readonly cornersOf: string };

export const placeOf = (from: Exclude<PlanSource, string>): Place => {
  const node = nodeAt(parseText(from.plan), pathIn(from, ['at']));
  const cornersOf = isScalar(node) ? inCornersOf(String(node.value)) : undefined;
  if (cornersOf !== undefined) return { cornersOf };
  if (isSeq(node) && node.items.some(isSeq)) {
    if (node.items.length !== 1) return { places: node.items.length };
    const [only] = node.items;
    const [right = '0', up = '0'] = isSeq(only)
      ? only.items.map((item) => (isScalar(item) ? String(item.value) : ''))
      : [];
    return { right, up };
  }
  const [right = '0', up = '0'] = isSeq(node) ? listAt(from, ['at']) : [];
  return { right, up };
};

/** The other parts in whose corner squares the open one may lie. */
export const freeCornered = (from: Exclude<PlanSource, string>): readonly string[] => {
  const open = openPart(from);
  return partsOf(from.plan).filter((part) => {
    if (part === open) return false;
    const corners = keysAt({ ...from, part }, ['layout']).map((kind) =>
      textAt({ ...from, part }, ['layout', kind, 'corners']),
    );
    return corners.some((kind) => kind === 'half' || kind === 'open');
  });
};

/** The change that lays it somewhere else; in the middle nothing need be said. */
export const placeWritten = (right: string, up: string): Written =>
  [right, up].every((text) => isNothing(text)) ? undefined : [right, up].map(plainNumber);

const isNothing = (text: string): boolean => {
  const read = readLength(text, 'in', 'any');
  return read.ok && read.mm === 0;
};

const plainNumber = (text: string): string | number =>
  /^-?(0|[1-9]\d{0,8})(\.\d{1,6})?$/.test(text.trim()) ? Number(text) : text.trim();

export const turnOf = (from: PlanSource): string => textAt(from, ['turn']) ?? '0';
