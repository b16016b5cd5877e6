/**
 * The card as pages to pin up beside the machine: the picture and the setting first, then the marks in large
 * figures, then what is looked up once.
 */

import { boxWidth } from '../../geometry/index.ts';
import { cornerSwag, type Design, kindDesigns, rowsOf } from '../../swag/index.ts';
import type { Card, CardBlock, CardSection, CardTable } from '../card/index.ts';
import {
  type Deflate,
  type FontBytes,
  HAIRLINE,
  INK,
  type PageContent,
  type PageSetup,
  type Pdf,
  startPdf,
  wrapText,
} from '../pdf/index.ts';
import { drawFigure, figureHeight } from './figure.ts';
import { drawTable, splitTable, tableHeight } from './table.ts';

export interface CardPdfOptions {
  readonly setup: PageSetup;
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
}

/** Sizes of type, mm: 20, 13, 10 and 9 points. Figures are larger, see the tables. */
const TITLE = 7;
const HEADING = 4.6;
const TEXT = 3.6;
const SMALL = 3.2;
const LEADING = 1.32;
const GUTTER = 9;
const INDENT = 4.2;
const ABOVE_HEADING = 4;
/** Kept at the foot of each page for its number. */
const FOOT = 6;
/** The figure may take this share of the page. */
const FIGURE_SHARE = 0.21;
/** The corner's picture may take this share of the width beside the swag's. */
const CORNER_SHARE = 0.32;

/** What has a place of its own; all else that a card says is looked up once. */
const PLACED: ReadonlySet<CardSection['id']> = new Set(['set', 'guides', 'marks']);

/** More pages than this would be a plan for something else than a quilt. */
const MOST_PAGES = 40;

interface Flow {
  readonly pdf: Pdf;
  readonly setup: PageSetup;
  readonly title: string;
  /** Before the names of its pages, where a file holds several cards. */
  readonly prefix: string;
  content: PageContent;
  /** Where the next thing may start, mm. */
  y: number;
  pages: PageContent[];
}

/** A card and the design that it is of; what is said of several parts together has none. */
export interface CardOf {
  readonly card: Card;
  readonly design?: Design;
}

/** Each card begins on a page of its own. `title` is that of the file. */
export const writeCardPdf = async (
  title: string,
  cards: readonly CardOf[],
  { setup, deflate, fonts }: CardPdfOptions,
): Promise<{ readonly bytes: Uint8Array; readonly pages: number }> => {
  const pdf = await startPdf({ title: `${title}, marking card`, deflate, fonts, pickTray: setup.pickTray });
  let pages = 0;
  for (const [i, { card, design }] of cards.entries()) {
    const flow = startFlow(pdf, setup, card.title, cards.length > 1 ? `${i + 1}-` : '');
    drawHead(flow, card);
    for (const one of design ? rowsOf(design).flatMap(kindDesigns) : []) drawOne(flow, one, card);
    drawSections(flow, card);
    drawNumbers(flow);
    pages += flow.pages.length;
  }
  return { bytes: await pdf.finish(), pages };
};

/** The swag's figure, and beside it the corner's. */
const drawDesign = (flow: Flow, design: Design): void => {
  const { setup } = flow;
  const width = boxWidth(setup.live);
  const most = FIGURE_SHARE * (setup.live.maxY - setup.live.minY);
  const forCorner = design.row === 1 && cornerSwag(design) ? CORNER_SHARE * width : 0;
  const forSwag = width - forCorner;
  const { minX } = setup.live;
  drawFigure(flow.content, design, 'swag', { x: minX, y: flow.y }, forSwag, most);
  if (forCorner > 0)
    drawFigure(flow.content, design, 'corner', { x: minX + forSwag, y: flow.y }, forCorner, most);
  flow.y -= Math.max(
    figureHeight(design, 'swag', forSwag, most),
    forCorner > 0 ? figureHeight(design, 'corner', forCorner, most) : 0,
  );
};

/** How the template is set for a row, or for a kind: its figures, and the words. */
const drawOne = (flow: Flow, one: Design, card: Card): void => {
  const kind = one.cells[0]?.kind ?? 1;
  if (one.row > 1 || kind > 1) need(flow, FIGURE_SHARE * pageHeight(flow));
  drawDesign(flow, one);
  for (const section of card.sections)
    if (
      (section.id === 'set' || section.id === 'guides') &&
      (section.row ?? 1) === one.row &&
      (section.kind ?? 1) === kind
    )
      drawSection(flow, section);
};

const drawSections = (flow: Flow, card: Card): void => {
  const marks = card.sections.filter((s) => s.id === 'marks');
  const asides = card.sections.filter((s) => !PLACED.has(s.id));
  // Below the setting goes what the marks leave room for nowhere else: the pauses first, which belong to it.
  const first =
    flow.pages.length === 1 && !marks.every((s) => marksFit(flow, s)) ? asidesThatFit(flow, asides) : 0;
  drawAside(flow, asides.slice(0, first));
  for (const section of marks) drawMarks(flow, section);
  drawAside(flow, asides.slice(first));
};

const startFlow = (pdf: Pdf, setup: PageSetup, title: string, prefix: string): Flow => {
  const content = pdf.page({ width: setup.width, height: setup.height, label: `${prefix}Card` });
  return { pdf, setup, title, prefix, content, y: setup.live.maxY, pages: [content] };
};

const nextPage = (flow: Flow): void => {
  const { pdf, setup } = flow;
  if (flow.pages.length >= MOST_PAGES) throw new Error('A marking card ran on without end');
  flow.content = pdf.page({
    width: setup.width,
    height: setup.height,
    label: `${flow.prefix}Card ${flow.pages.length + 1}`,
  });
  flow.pages.push(flow.content);
  flow.y = setup.live.maxY;
};

const bottomOf = ({ setup }: Flow): number => setup.live.minY + FOOT;

const pageHeight = (flow: Flow): number => flow.setup.live.maxY - bottomOf(flow);

const isFresh = (flow: Flow): boolean => flow.y === flow.setup.live.maxY;

/** Begins a page when less than `height` is left; on a fresh page there is no more to be had. */
const need = (flow: Flow, height: number): void => {
  if (flow.y - height < bottomOf(flow) && !isFresh(flow)) nextPage(flow);
};

const drawHead = (flow: Flow, card: Card): void => {
  const { content, setup } = flow;
  const { minX, maxX } = setup.live;
  for (const line of wrapText(content.faces.bold, card.title, TITLE, maxX - minX)) {
    flow.y -= 1.05 * TITLE;
    content.text({ text: line, at: { x: minX, y: flow.y }, size: TITLE, color: INK.strong, bold: true });
  }
  flow.y -= 1.5;
  for (const text of card.summary) drawText(flow, text, minX, maxX - minX, TEXT);
  flow.y -= 2.5;
  content.lines([{ from: { x: minX, y: flow.y }, to: { x: maxX, y: flow.y } }], HAIRLINE);
  flow.y -= 2;
};

const drawText = (flow: Flow, text: string, x: number, width: number, size: number): void => {
  for (const line of wrapText(flow.content.faces.regular, text, size, width)) {
    flow.y -= LEADING * size;
    flow.content.text({ text: line, at: { x, y: flow.y }, size, color: INK.strong });
  }
};

const textHeight = (flow: Flow, text: string, width: number, size: number): number =>
  wrapText(flow.content.faces.regular, text, size, width).length * LEADING * size;

/** A point's or a paragraph's height with the space above it. */
const blockHeight = (flow: Flow, block: CardBlock, width: number, size: number): number => {
  if (block.kind === 'table') return tableHeight(block) + 3;
  return 0.35 * size + textHeight(flow, block.text, block.kind === 'point' ? width - INDENT : width, size);
};

/** `mark` stands before a point. */
const drawBlock = (
  flow: Flow,
  block: CardBlock,
  x: number,
  width: number,
  size: number,
  mark: string,
): void => {
  if (block.kind === 'table') {
    flow.y -= 3;
    drawTable(flow.content, block, { x, y: flow.y }, width);
    flow.y -= tableHeight(block);
    return;
  }
  flow.y -= 0.35 * size;
  if (block.kind === 'point') {
    flow.content.text({
      text: mark,
      at: { x, y: flow.y - LEADING * size },
      size,
      color: INK.strong,
      bold: true,
    });
    drawText(flow, block.text, x + INDENT, width - INDENT, size);
  } else drawText(flow, block.text, x, width, size);
};

const drawHeading = (flow: Flow, text: string, x: number): void => {
  flow.y -= isFresh(flow) ? HEADING : ABOVE_HEADING + 0.6 * HEADING;
  flow.content.text({ text, at: { x, y: flow.y }, size: HEADING, color: INK.strong, bold: true });
  flow.y -= 0.8;
};

const drawSection = (flow: Flow, section: CardSection): void => {
  const { minX } = flow.setup.live;
  const width = boxWidth(flow.setup.live);
  const heights = section.blocks.map((b) => blockHeight(flow, b, width, TEXT));
  const all = heights.reduce((a, b) => a + b, 0);
  // A table says nothing without the words before it.
  const together = section.blocks.some((b) => b.kind === 'table') ? all : (heights[0] ?? 0);
  need(flow, HEADING_ROOM + together);
  drawHeading(flow, section.heading, minX);
  let number = 0;
  for (const block of section.blocks) {
    need(flow, blockHeight(flow, block, width, TEXT));
    if (block.kind === 'point') number++;
    drawBlock(flow, block, minX, width, TEXT, section.id === 'set' ? String(number) : '–');
  }
};

/** mm that a heading takes with the white above it. */
const HEADING_ROOM = 8;

interface MarksLayout {
  readonly intro: readonly CardBlock[];
  readonly pairs: readonly (readonly CardTable[])[];
  /** mm of the heading with the words, of each pair, and of all together. */
  readonly head: number;
  readonly heightOf: (pair: readonly CardTable[]) => number;
  readonly all: number;
}

/** Tables two by two. A long one is parted, and a lone one is parted so that both columns are used. */
const layMarks = (flow: Flow, section: CardSection): MarksLayout => {
  const tables = section.blocks.filter((b): b is CardTable => b.kind === 'table');
  const intro = section.blocks.filter((b) => b.kind !== 'table');
  const parts = tables.flatMap((table) =>
    splitTable(table, pageHeight(flow) - 24, tables.length === 1 && table.rows.length > ROWS_IN_ONE),
  );
  const pairs: (readonly CardTable[])[] = [];
  for (let i = 0; i < parts.length; i += 2) pairs.push(parts.slice(i, i + 2));
  const heightOf = (pair: readonly CardTable[]): number => Math.max(...pair.map(tableHeight)) + ABOVE_TABLE;
  const width = boxWidth(flow.setup.live);
  const head = 14 + intro.reduce((sum, b) => sum + blockHeight(flow, b, width, TEXT), 0);
  return { intro, pairs, head, heightOf, all: head + pairs.reduce((sum, pair) => sum + heightOf(pair), 0) };
};

const marksFit = (flow: Flow, section: CardSection): boolean =>
  flow.y - layMarks(flow, section).all >= bottomOf(flow);

const drawMarks = (flow: Flow, section: CardSection): void => {
  const { minX } = flow.setup.live;
  const width = boxWidth(flow.setup.live);
  const column = (width - GUTTER) / 2;
  const { intro, pairs, head, heightOf, all } = layMarks(flow, section);
  // All marks together on the next page are better than some here and some there.
  need(flow, all <= pageHeight(flow) ? all : head + heightOf(pairs[0] ?? []));
  drawHeading(flow, section.heading, minX);
  for (const block of intro) drawBlock(flow, block, minX, width, TEXT, '');
  for (const pair of pairs) {
    need(flow, heightOf(pair));
    flow.y -= ABOVE_TABLE;
    for (const [i, table] of pair.entries())
      drawTable(flow.content, table, { x: minX + i * (column + GUTTER), y: flow.y }, column);
    flow.y -= heightOf(pair) - ABOVE_TABLE;
  }
};

const ABOVE_TABLE = 4.5;
/** A lone table of more rows is parted in two. */
const ROWS_IN_ONE = 10;

/** How what is looked up once may be set: in columns of smaller type, the first way that the page has room for. */
const ASIDES = [
  { columns: 2, size: SMALL, gutter: GUTTER },
  { columns: 3, size: 2.85, gutter: 6 },
] as const;

/** A block of a section, with the section's heading before the first. */
interface AsideItem {
  readonly heading: string | undefined;
  readonly block: CardBlock;
}

/** In columns that are as even as can be: they break between sections where there is room, else between blocks, never after a heading. */
const layAside = (flow: Flow, sections: readonly CardSection[]) => {
  const items = sections.flatMap((s) =>
    s.blocks.map((block, i): AsideItem => ({ heading: i === 0 ? s.heading : undefined, block })),
  );
  const both = ASIDES.map(({ columns, size, gutter }) => {
    const width = (boxWidth(flow.setup.live) - (columns - 1) * gutter) / columns;
    const heights = items.map(
      ({ heading, block }) =>
        (heading === undefined ? 0 : HEADING_ROOM) + blockHeight(flow, block, width, size),
    );
    const height = leastHeight(heights, columns);
    const parted = { size, gutter, width, height, columnOf: columnsWithin(heights, height) };
    const firsts = items.flatMap(({ heading }, i) => (heading === undefined ? [] : [i]));
    const sums = firsts.map((from, k) => heights.slice(from, firsts[k + 1]).reduce((a, b) => a + b, 0));
    const most = leastHeight(sums, columns, 0);
    const bySection = columnsWithin(sums, most, 0);
    const columnOf = items.map((_, i) => bySection[firsts.findLastIndex((from) => from <= i)] ?? 0);
    return [{ ...parted, height: most, columnOf }, parted];
  });
  const ways = [...both.map(([whole]) => whole!), ...both.map(([, parted]) => parted!)];
  const serves = ways.find((w) => flow.y - w.height >= bottomOf(flow));
  return { items, way: serves ?? both[0]![1]!, fits: serves !== undefined };
};

/** How many of the sections, from the first, this page has room for. */
const asidesThatFit = (flow: Flow, sections: readonly CardSection[]): number => {
  let count = sections.length;
  while (count > 0 && !layAside(flow, sections.slice(0, count)).fits) count--;
  return count;
};

const drawAside = (flow: Flow, sections: readonly CardSection[]): void => {
  if (sections.length === 0) return;
  const { minX } = flow.setup.live;
  const { items, way } = layAside(flow, sections);
  need(flow, way.height);
  const top = flow.y;
  let lowest = top;
  for (const [i, { heading, block }] of items.entries()) {
    const column = way.columnOf[i]!;
    if (column !== way.columnOf[i - 1]) flow.y = top - (heading === undefined ? HEADING_ROOM - SMALL : 0);
    const x = minX + column * (way.width + way.gutter);
    if (heading !== undefined) drawHeading(flow, heading, x);
    drawBlock(flow, block, x, way.width, way.size, '–');
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

const drawNumbers = ({ pages, setup, title }: Flow): void => {
  for (const [i, content] of pages.entries()) {
    const y = setup.live.minY;
    const size = 2.7;
    content.text({ text: title, at: { x: setup.live.minX, y }, size, color: INK.quiet });
    content.text({
      text: `marking card, page ${i + 1} of ${pages.length}`,
      at: { x: setup.live.maxX, y },
      size,
      color: INK.quiet,
      align: 'end',
    });
  }
};
