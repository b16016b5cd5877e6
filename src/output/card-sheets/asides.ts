/** What is looked up once: in columns of smaller type, as even as can be, in the first way that the page has room for. */

import { boxWidth } from '../../geometry/index.ts';
import type { CardSection } from '../card/index.ts';
import { INK, wrapText } from '../pdf/index.ts';
import {
  bottomOf,
  drawHeading,
  type Flow,
  GUTTER,
  HEADING_ROOM,
  INDENT,
  isFresh,
  LEADING,
  nextPage,
  SMALL,
} from './flow.ts';

const SETTINGS = [
  { columns: 2, size: SMALL, gutter: GUTTER },
  { columns: 3, size: 2.85, gutter: 6 },
] as const;

/** What has a place of its own; all else that a card says is looked up once. */
const PLACED: ReadonlySet<CardSection['id']> = new Set(['prepare', 'set', 'stands', 'marks']);

export const asidesOf = (sections: readonly CardSection[]): readonly CardSection[] =>
  sections.filter(({ id }) => !PLACED.has(id));

/** What no column parts: lines of one paragraph or point, under the section's heading where they are its first. */
interface Piece {
  readonly heading: string | undefined;
  readonly lines: readonly string[];
  /** mm. */
  readonly indent: number;
  /** Whether they begin a paragraph or a point; the rest of one goes on without white above it. */
  readonly begins: boolean;
}

interface Way {
  readonly pieces: readonly Piece[];
  readonly columns: number;
  readonly size: number;
  readonly gutter: number;
  /** mm, of a column, and of the fullest. */
  readonly width: number;
  readonly height: number;
  readonly columnOf: readonly number[];
}

/**
 * How many of the sections, from the first, this page has room for, where more pages follow: whole ones, or the first
 * by itself.
 */
export const asidesThatFit = (flow: Flow, sections: readonly CardSection[]): number => {
  let count = sections.length;
  while (count > 1 && !wayThatFits(flow, sections.slice(0, count), [withWholeSections])) count--;
  return wayThatFits(flow, sections.slice(0, count)) ? count : 0;
};

/** Whether this page has room for all of the sections. */
export const asidesFit = (flow: Flow, sections: readonly CardSection[]): boolean =>
  sections.length === 0 || wayThatFits(flow, sections) !== undefined;

/** On the next page, where this one lacks the room, and on as many as it takes. */
export const drawAsides = (flow: Flow, sections: readonly CardSection[]): void => {
  if (sections.length === 0) return;
  let way = wayThatFits(flow, sections);
  if (!way && !isFresh(flow)) {
    nextPage(flow);
    way = wayThatFits(flow, sections);
  }
  drawWay(flow, way ?? overPages(flow, sections));
};

const roomOf = (flow: Flow): number => flow.y - bottomOf(flow);

/** Sections stay whole where one of the settings has room for that; else the lines that fill columns best. */
const wayThatFits = (
  flow: Flow,
  sections: readonly CardSection[],
  parted: readonly ((way: Laid) => Way)[] = [withWholeSections, withEvenColumns],
): Way | undefined => {
  const ways = SETTINGS.map((setting) => laid(flow, sections, setting));
  return parted.flatMap((part) => ways.map(part)).find(({ height }) => height <= roomOf(flow));
};

/** More than a page takes, in columns as long as a page. */
const overPages = (flow: Flow, sections: readonly CardSection[]): Way => {
  const way = laid(flow, sections, SETTINGS[0]);
  return { ...way, height: roomOf(flow), columnOf: columnsWithin(heightsOf(way), roomOf(flow)) };
};

type Laid = Omit<Way, 'height' | 'columnOf'>;

const laid = (
  flow: Flow,
  sections: readonly CardSection[],
  { columns, size, gutter }: (typeof SETTINGS)[number],
): Laid => {
  const width = (boxWidth(flow.setup.live) - (columns - 1) * gutter) / columns;
  const pieces = sections.flatMap(({ heading, blocks }) =>
    blocks.flatMap((block, i) => {
      if (block.kind === 'table') throw new Error('A table stands in a place of its own');
      const indent = block.kind === 'text' ? 0 : INDENT;
      const lines = wrapText(flow.content.faces.regular, block.text, size, width - indent);
      return inPieces(lines).map(
        (some, k): Piece => ({
          heading: i === 0 && k === 0 ? heading : undefined,
          lines: some,
          indent,
          begins: k === 0,
        }),
      );
    }),
  );
  return { pieces, columns, size, gutter, width };
};

/** Neither the first nor the last line of a paragraph stands by itself at the foot or the head of a column. */
const inPieces = (lines: readonly string[]): readonly (readonly string[])[] => {
  if (lines.length < 4) return [lines];
  return [lines.slice(0, 2), ...lines.slice(2, -2).map((line) => [line]), lines.slice(-2)];
};

const aboveOf = (size: number): number => 0.35 * size;

const heightsOf = ({ pieces, size }: Laid): readonly number[] =>
  pieces.map(
    ({ heading, lines, begins }) =>
      (heading === undefined ? 0 : HEADING_ROOM) +
      (begins ? aboveOf(size) : 0) +
      lines.length * LEADING * size,
  );

const withEvenColumns = (way: Laid): Way => {
  const heights = heightsOf(way);
  const height = leastHeight(heights, way.columns);
  return { ...way, height, columnOf: columnsWithin(heights, height) };
};

const withWholeSections = (way: Laid): Way => {
  const heights = heightsOf(way);
  const firsts = way.pieces.flatMap(({ heading }, i) => (heading === undefined ? [] : [i]));
  const sums = firsts.map((from, k) => heights.slice(from, firsts[k + 1]).reduce((a, b) => a + b, 0));
  const height = leastHeight(sums, way.columns, 0);
  const bySection = columnsWithin(sums, height, 0);
  const columnOf = heights.map((_, i) => bySection[firsts.findLastIndex((from) => from <= i)] ?? 0);
  return { ...way, height, columnOf };
};

const drawWay = (flow: Flow, { pieces, columns, size, gutter, width, columnOf }: Way): void => {
  const { minX } = flow.setup.live;
  let top = flow.y;
  let lowest = top;
  for (const [i, { heading, lines, indent, begins }] of pieces.entries()) {
    const column = columnOf[i]!;
    const before = columnOf[i - 1] ?? 0;
    if (Math.floor(column / columns) > Math.floor(before / columns)) {
      nextPage(flow);
      top = flow.y;
      lowest = top;
    }
    if (column !== before) flow.y = top - (heading === undefined ? HEADING_ROOM - SMALL : 0);
    const x = minX + (column % columns) * (width + gutter);
    if (heading !== undefined) drawHeading(flow, heading, x);
    if (begins) flow.y -= aboveOf(size);
    for (const [k, text] of lines.entries()) {
      flow.y -= LEADING * size;
      const at = { x: x + indent, y: flow.y };
      if (begins && indent > 0 && k === 0)
        flow.content.text({ text: '–', at: { x, y: flow.y }, size, color: INK.strong, bold: true });
      flow.content.text({ text, at, size, color: INK.strong });
    }
    lowest = Math.min(lowest, flow.y);
  }
  flow.y = lowest;
};

/** The column of each of some heights in their order, none of them fuller than `most`; mm above what goes on in a next one. */
const columnsWithin = (heights: readonly number[], most: number, above = HEADING_ROOM): readonly number[] => {
  let column = 0;
  let filled = 0;
  return heights.map((h) => {
    if (filled > 0 && filled + h > most) {
      column++;
      // A column that goes on with a section begins level with the text beside it.
      filled = above;
    }
    filled += h;
    return column;
  });
};

/** The least height in which columns hold some heights, by halving. */
const leastHeight = (heights: readonly number[], columns: number, above = HEADING_ROOM): number => {
  let low = Math.max(...heights) + above;
  let high = heights.reduce((a, b) => a + b, low);
  if ((columnsWithin(heights, low, above).at(-1) ?? 0) < columns) return low;
  for (let i = 0; i < HALVINGS; i++) {
    const mid = (low + high) / 2;
    if ((columnsWithin(heights, mid, above).at(-1) ?? 0) < columns) high = mid;
    else low = mid;
  }
  return high;
};

/** From a page's height to a hundredth of a millimetre. */
const HALVINGS = 16;
