/** Points that were measured off a cutting mat, as she types or pastes them: one a line, across and up, and “corner”. */

import { MM_PER_INCH, readLength, type Units } from '../../length/index.ts';
import { pointsWords } from '../words/words.ts';
import { typedIn } from './typed-in.ts';

export interface TypedPoint {
  /** As typed. */
  readonly across: string;
  readonly up: string;
  readonly isCorner: boolean;
  /** mm */
  readonly x: number;
  readonly y: number;
}

/** A line that is no point, counted from 1, and why. */
interface UnreadLine {
  readonly line: number;
  readonly text: string;
}

export interface PointText {
  readonly points: readonly TypedPoint[];
  readonly unread: readonly UnreadLine[];
}

/** As many as a template's file may hold. */
export const MOST_POINTS = 300;
/** What has more lines than this that are none was never meant to be points. */
const MOST_UNREAD = 1000;

/** Reads no farther than tells that there are too many. */
export const pointsIn = (text: string, units: Units): PointText => {
  const points: TypedPoint[] = [];
  const unread: UnreadLine[] = [];
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    if (points.length > MOST_POINTS || unread.length >= MOST_UNREAD) break;
    if (line.trim() === '') continue;
    const point = pointIn(line, units);
    if (point) points.push(point);
    else unread.push({ line: i + 1, text: line.trim() });
  }
  return { points, unread };
};

/** Between the two figures a tab, a semicolon or a comma; or blanks, where no fraction has one of its own. */
const pointIn = (line: string, units: Units): TypedPoint | undefined => {
  const isCorner = /\bcorner\s*\]?\s*$/i.test(line);
  const plain = line
    .replace(/\bcorner\s*\]?\s*$/i, '')
    .replace(/^\s*(?:-\s*)?[[(]|[\])]/g, '')
    .replace(/[\s,;]+$/, '')
    .trim();
  const parts = PARTED.map((by) => plain.split(by)).find((found) => found.length > 1) ?? [];
  if (parts.length !== 2) return undefined;
  const [across, up] = parts.map((part) => part.trim()) as [string, string];
  const [x, y] = [readLength(across, units, 'any'), readLength(up, units, 'any')];
  return x.ok && y.ok ? { across, up, isCorner, x: x.mm, y: y.mm } : undefined;
};

const PARTED = [/\t+/, /;/, /,/, /\s{2,}/, /\s+/] as const;

/** The template's file; its points stand one a line, so that what is wrong with one is said of its line. */
export const templateOfPoints = (title: string, points: readonly TypedPoint[], units: Units): string =>
  [
    `# ${pointsWords.remark}`,
    `title: ${JSON.stringify(title)}`,
    `units: ${units}`,
    'edge:',
    '  points:',
    ...points.map(
      (p) => `    - [${JSON.stringify(p.across)}, ${JSON.stringify(p.up)}${p.isCorner ? ', corner' : ''}]`,
    ),
    '',
  ].join('\n');

/** Lines of that file before the first point's. */
const BEFORE = 5;

/** Which point a place in that file is (`mine.yaml:7:5`), from 0; undefined where it is none. */
export const pointAt = (where: string | undefined, count: number): number | undefined => {
  const line = Number(/:(\d+)(?::\d+)?$/.exec(where ?? '')?.[1]);
  const index = line - BEFORE - 1;
  return index >= 0 && index < count ? index : undefined;
};

/** The text with a point put elsewhere; lines that are no points stay as they are. */
export const withPoint = (
  text: string,
  index: number,
  at: { readonly x: number; readonly y: number },
  units: Units,
): string => {
  let n = -1;
  const lines = text.split(/\r?\n/).map((line) => {
    const point = line.trim() === '' ? undefined : pointIn(line, units);
    if (point) n++;
    if (!point || n !== index) return line;
    return `${figure(at.x, units)}, ${figure(at.y, units)}${point.isCorner ? ', corner' : ''}`;
  });
  return lines.join('\n');
};

/** The same points on a page whose figures are in other units by now. */
export const pointsTypedIn = (text: string, then: Units, now: Units): string =>
  text
    .split(/\r?\n/)
    .map((line) => {
      const point = line.trim() === '' ? undefined : pointIn(line, then);
      if (!point) return line;
      const [across, up] = [point.across, point.up].map((figure) => typedIn(figure, then, now));
      return `${across}, ${up}${point.isCorner ? ', corner' : ''}`;
    })
    .join('\n');

/** As fine as a hand can put it. */
const figure = (mm: number, units: Units): string => {
  const text = { in: (mm / MM_PER_INCH).toFixed(3), cm: (mm / 10).toFixed(2), mm: mm.toFixed(1) }[units];
  const plain = text.replace(/\.?0+$/, '');
  return plain === '-0' || plain === '' ? '0' : plain;
};
