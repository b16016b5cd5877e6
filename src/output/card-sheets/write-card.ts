/**
 * The card as pages to pin up beside the machine: the picture and the setting first, then the marks in large
 * figures, then what is looked up once.
 */

import { boxWidth } from '../../geometry/index.ts';
import { cornerSwag, type Design, kindDesigns, ownCorner, rowsOf } from '../../swag/index.ts';
import type { Card, CardBlock, CardPlace, CardSection, CardTable } from '../card/index.ts';
import {
  type Deflate,
  type FontBytes,
  HAIRLINE,
  INK,
  type PageSetup,
  type Pdf,
  startPdf,
  wrapText,
} from '../pdf/index.ts';
import { asidesOf, asidesThatFit, drawAsides } from './asides.ts';
import { drawFigure, type Figure, figureHeight } from './figure.ts';
import {
  blockHeight,
  bottomOf,
  drawBlock,
  drawHeading,
  drawText,
  type Flow,
  GUTTER,
  HEADING_ROOM,
  mostForFigure,
  need,
  pageHeight,
  SMALL,
  startFlow,
  TEXT,
  TITLE,
} from './flow.ts';
import { drawOnOnePage } from './one-page.ts';
import { drawTable, splitTable, tableHeight } from './table.ts';

export interface CardPdfOptions {
  readonly setup: PageSetup;
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
}

/** The corner's picture may take this share of the width beside the swag's. */
const CORNER_SHARE = 0.32;

/** A card and the design that it is of; what is said of several parts together has none. */
export interface CardOf {
  readonly card: Card;
  readonly design?: Design;
  /** What its pages are called at their foot. */
  readonly called?: string;
}

/** Each card begins on a page of its own. `title` is that of the file. */
export const writeCardPdf = async (
  title: string,
  cards: readonly CardOf[],
  { setup, deflate, fonts }: CardPdfOptions,
): Promise<{ readonly bytes: Uint8Array; readonly pages: number }> => {
  const pdf = await startPdf({ title: `${title}, marking card`, deflate, fonts, pickTray: setup.pickTray });
  const pages = drawCards(pdf, cards, setup);
  return { bytes: await pdf.finish(), pages };
};

/** Returns how many pages they are. */
export const drawCards = (pdf: Pdf, cards: readonly CardOf[], setup: PageSetup): number => {
  let pages = 0;
  for (const [i, { card, design, called = 'marking card' }] of cards.entries()) {
    const flow = startFlow(pdf, setup, card.title, cards.length > 1 ? `${i + 1}-` : '');
    drawHead(flow, card);
    const prepare = card.sections.find((s) => s.id === 'prepare');
    if (prepare) drawPrepare(flow, prepare);
    const designs = design ? rowsOf(design).flatMap(kindDesigns) : [];
    if (!drawOnOnePage(flow, designs, card)) {
      for (const one of designs) drawOne(flow, one, card);
      drawSections(flow, card);
    }
    drawNumbers(flow, called);
    pages += flow.pages.length;
  }
  return pages;
};

/** The swag's figure, and beside it the corner's; of a corner that is made by itself its own alone. */
const drawDesign = (flow: Flow, design: Design, places: readonly CardPlace[]): void => {
  const { setup, content } = flow;
  const width = boxWidth(setup.live);
  const most = mostForFigure(flow);
  const { minX } = setup.live;
  const isOwn = ownCorner(design.fit) !== undefined;
  const forCorner = isOwn ? width : design.row === 1 && cornerSwag(design) ? CORNER_SHARE * width : 0;
  const figures: readonly (readonly [x: number, Figure])[] = [
    [minX, { design, kind: 'swag', places, width: width - forCorner, most }],
    [minX + width - forCorner, { design, kind: 'corner', places, width: forCorner, most }],
  ];
  const drawn = figures.filter(([, figure]) => figure.width > 0);
  for (const [x, figure] of drawn) drawFigure(content, figure, { x, y: flow.y });
  flow.y -= Math.max(...drawn.map(([, figure]) => figureHeight(figure)));
};

/** How the template is set for a row, or for a kind: its figures, and the words. */
const drawOne = (flow: Flow, one: Design, card: Card): void => {
  const kind = one.cells[0]?.kind ?? 1;
  const on = ownCorner(one.fit) ? 'corners' : 'sides';
  const find = (id: CardSection['id']): CardSection | undefined =>
    card.sections.find(
      (s) => s.id === id && (s.row ?? 1) === one.row && (s.kind ?? 1) === kind && (s.on ?? on) === on,
    );
  const { blocks = [] } = find('stands') ?? {};
  // What the swag's figure has written on it is not said again below it.
  const below = blocks.filter((b) => b.kind !== 'place' || ownCorner(one.fit));
  const width = boxWidth(flow.setup.live);
  const belowHeight = below.reduce((sum, block) => sum + blockHeight(flow, block, width, SMALL), 0);
  if (one.row > 1 || kind > 1 || on === 'corners')
    need(flow, mostForFigure(flow) + belowHeight + HEADING_ROOM);
  drawDesign(
    flow,
    one,
    blocks.filter((b): b is CardPlace => b.kind === 'place'),
  );
  for (const block of below) drawBlock(flow, block, flow.setup.live.minX, width, SMALL, '–');
  const set = find('set');
  if (set) drawSection(flow, set);
};

const drawSections = (flow: Flow, card: Card): void => {
  const marks = card.sections.filter((s) => s.id === 'marks');
  const asides = asidesOf(card.sections);
  // Below the setting goes what the marks leave room for nowhere else: the pauses first, which belong to it.
  const first =
    flow.pages.length === 1 && !marks.every((s) => marksFit(flow, s)) ? asidesThatFit(flow, asides) : 0;
  drawAsides(flow, asides.slice(0, first));
  for (const section of marks) drawMarks(flow, section);
  drawAsides(flow, asides.slice(first));
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

/** What comes before all else, in a few small lines. */
const drawPrepare = (flow: Flow, { heading, blocks }: CardSection): void => {
  const words = blocks.flatMap((block) => (block.kind === 'table' ? [] : [block.text]));
  const { minX } = flow.setup.live;
  drawText(flow, `${heading}: ${words.join(' ')}`, minX, boxWidth(flow.setup.live), SMALL);
  flow.y -= 2;
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
  const isLone = tables.length === 1 && !tables[0]!.isWide;
  const parts = tables.flatMap((table) =>
    splitTable(table, pageHeight(flow) - ABOVE_PART, isLone && table.rows.length > ROWS_IN_ONE),
  );
  const inRow = tables.some(({ isWide }) => isWide) ? 1 : 2;
  const pairs: (readonly CardTable[])[] = [];
  for (let i = 0; i < parts.length; i += inRow) pairs.push(parts.slice(i, i + inRow));
  const heightOf = (pair: readonly CardTable[]): number =>
    Math.max(...pair.map((table) => tableHeight(table))) + ABOVE_TABLE;
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
      drawTable(
        flow.content,
        table,
        { x: minX + i * (column + GUTTER), y: flow.y },
        table.isWide ? width : column,
      );
    flow.y -= heightOf(pair) - ABOVE_TABLE;
  }
};

/** Kept for what stands over a part of a long table. */
const ABOVE_PART = 24;
const ABOVE_TABLE = 4.5;
/** A lone table of more rows is parted in two. */
const ROWS_IN_ONE = 10;

const drawNumbers = ({ pages, setup, title }: Flow, called: string): void => {
  for (const [i, content] of pages.entries()) {
    const y = setup.live.minY;
    const size = 2.7;
    content.text({ text: title, at: { x: setup.live.minX, y }, size, color: INK.quiet });
    content.text({
      text: `${called}, page ${i + 1} of ${pages.length}`,
      at: { x: setup.live.maxX, y },
      size,
      color: INK.quiet,
      align: 'end',
    });
  }
};
