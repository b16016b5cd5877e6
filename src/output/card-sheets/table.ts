/** Tables on the card's pages: figures large enough to read from the machine, rows told apart by a tint. */

import type { Point } from '../../geometry/index.ts';
import type { CardTable } from '../card/index.ts';
import { fitText, INK, type PageContent, wrapText } from '../pdf/index.ts';

/** Sizes of type, mm: 13 points for figures, 12 in long tables; 12 for the title, 8.5 for heads. */
const FIGURE = 4.6;
const FIGURE_IN_LONG = 4.25;
/** Smaller than this they are not read at arm's length; a table of so many columns runs over. */
const LEAST_FIGURE = 3.2;
const TITLE = 4.1;
const HEAD = 3;
const ROW = 6.6;
const ROW_IN_LONG = 5.3;
/** More rows than this make a long table. */
const LONG = 6;

const TITLE_HEIGHT = 6;
const HEAD_HEIGHT = 4.2;
/** Lines that a column's head may take. */
const HEAD_LINES = 2;
const RULE = { width: 0.25, color: INK.strong };
const PADDING = 1.6;

const rowHeight = (table: CardTable): number => (table.rows.length > LONG ? ROW_IN_LONG : ROW);

const headLines = (table: CardTable): number =>
  table.columns.some((c) => headParts(c.head).length > 1) ? HEAD_LINES : 1;

export const tableHeight = (table: CardTable, titleLines = table.title === undefined ? 0 : 1): number =>
  titleLines * TITLE_HEIGHT + headLines(table) * HEAD_HEIGHT + table.rows.length * rowHeight(table) + 1;

/** `near end along` on two lines, broken before its last word. */
const headParts = (head: string): readonly string[] => {
  const at = head.lastIndexOf(' ');
  const first = head.slice(0, at);
  return first.includes(' ') ? [first, head.slice(at + 1)] : [head];
};

/** The table in parts that are at most `most` mm high; in at least two where it is to be halved. */
export const splitTable = (table: CardTable, most: number, halved: boolean): readonly CardTable[] => {
  const fit = Math.max(1, Math.floor((most - TITLE_HEIGHT - HEAD_HEIGHT - 1) / ROW_IN_LONG));
  const { length } = table.rows;
  const parts = Math.max(halved ? 2 : 1, Math.ceil(length / fit));
  const each = Math.ceil(length / parts);
  return Array.from({ length: parts }, (_, i) => ({
    ...table,
    rows: table.rows.slice(i * each, (i + 1) * each),
    ...(i > 0 && table.name !== undefined ? { title: `${table.name}, continued` } : {}),
  }));
};

/**
 * Draws a table from its top left corner; the columns share the width as their longest figures ask. Its title is on one
 * line where `titleLines` does not say how it is parted.
 */
export const drawTable = (
  content: PageContent,
  table: CardTable,
  at: Point,
  width: number,
  titleLines: readonly string[] = oneTitle(content, table, width),
): void => {
  const height = rowHeight(table);
  const size = figureSize(content, table, width);
  const { regular } = content.faces;
  let y = at.y;
  for (const text of titleLines) {
    content.text({ text, at: { x: at.x, y: y - TITLE }, size: TITLE, color: INK.strong, bold: true });
    y -= TITLE_HEIGHT;
  }
  const rights = columnEnds(content, table, at.x, width, size);
  const lines = headLines(table);
  for (const [i, column] of table.columns.entries()) {
    const right = rights[i]!;
    const left = (i === 0 ? at.x : rights[i - 1]!) + PADDING;
    const heads = (lines > 1 ? headParts(column.head) : [column.head]).map((h) =>
      fitText(regular, h, HEAD, right - left),
    );
    for (const [k, text] of heads.entries()) {
      const base = y - (lines - heads.length + k + 1) * HEAD_HEIGHT + 1.2;
      const isRight = column.align === 'right';
      content.text({
        text,
        at: { x: isRight ? right - PADDING : left, y: base },
        size: HEAD,
        color: INK.text,
        align: isRight ? 'end' : 'start',
      });
    }
  }
  y -= lines * HEAD_HEIGHT;
  for (const [r, row] of table.rows.entries()) {
    if (r % 2 === 0)
      content.box({ minX: at.x, maxX: at.x + width, minY: y - height, maxY: y }, { fill: '#eeeeee' });
    for (const [i, text] of row.entries()) {
      const right = table.columns[i]?.align === 'right';
      content.text({
        text,
        at: {
          x: right ? rights[i]! - PADDING : (i === 0 ? at.x : rights[i - 1]!) + PADDING,
          y: y - height / 2 - 0.36 * size,
        },
        size,
        color: INK.strong,
        align: right ? 'end' : 'start',
        bold: i === 0,
      });
    }
    y -= height;
  }
  const top = at.y - titleLines.length * TITLE_HEIGHT - lines * HEAD_HEIGHT;
  for (const level of [top, y])
    content.lines([{ from: { x: at.x, y: level }, to: { x: at.x + width, y: level } }], RULE);
};

/** Figures of this size (mm) are as large as the measures on a figure of the card. */
const READ_BESIDE = 3.9;

/** Whether its figures can be read as those of the figure that it stands beside. */
export const isReadAtWidth = (content: PageContent, table: CardTable, width: number): boolean =>
  figureSize(content, table, width) >= READ_BESIDE;

const oneTitle = ({ faces }: PageContent, { title }: CardTable, width: number): readonly string[] =>
  title === undefined ? [] : [fitText(faces.bold, title, TITLE, width)];

/** Its title on as many lines as it takes. */
export const tableTitle = ({ faces }: PageContent, { title }: CardTable, width: number): readonly string[] =>
  title === undefined ? [] : wrapText(faces.bold, title, TITLE, width);

/** As large as the columns leave room for. */
const figureSize = (content: PageContent, table: CardTable, width: number): number => {
  const wanted = table.rows.length > LONG ? FIGURE_IN_LONG : FIGURE;
  const needed = columnWidths(content, table, wanted).reduce((a, b) => a + b, 0);
  return needed > width ? Math.max(LEAST_FIGURE, (wanted * width) / needed) : wanted;
};

/** Where each column ends: as wide as its widest figure, the rest shared equally. */
const columnEnds = (
  content: PageContent,
  table: CardTable,
  left: number,
  width: number,
  size: number,
): readonly number[] => {
  const wanted = columnWidths(content, table, size);
  const spare = (width - wanted.reduce((a, b) => a + b, 0)) / wanted.length;
  let x = left;
  return wanted.map((w) => {
    x += w + spare;
    return x;
  });
};

const columnWidths = (content: PageContent, table: CardTable, size: number): readonly number[] =>
  table.columns.map(
    (column, i) =>
      2 * PADDING +
      Math.max(
        ...headParts(column.head).map((part) => content.width(part, HEAD)),
        ...table.rows.map((row) => content.width(row[i] ?? '', size, i === 0)),
      ),
  );
