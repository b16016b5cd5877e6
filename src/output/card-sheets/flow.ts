/** Text and headings that flow down the pages of a card, and on to the next. */

import type { CardBlock } from '../card/index.ts';
import { INK, type PageContent, type PageSetup, type Pdf, wrapText } from '../pdf/index.ts';
import { drawTable, tableHeight } from './table.ts';

/** Sizes of type, mm: 20, 13, 10 and 9 points. Figures are larger, see the tables. */
export const TITLE = 7;
const HEADING = 4.6;
export const TEXT = 3.6;
export const SMALL = 3.2;
export const LEADING = 1.32;
export const GUTTER = 9;
export const INDENT = 4.2;
const ABOVE_HEADING = 4;
/** Kept at the foot of each page for its number. */
const FOOT = 6;
/** More pages than this would be a plan for something else than a quilt. */
const MOST_PAGES = 40;

export interface Flow {
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

export const startFlow = (pdf: Pdf, setup: PageSetup, title: string, prefix: string): Flow => {
  const content = pdf.page({ width: setup.width, height: setup.height, label: `${prefix}Card` });
  return { pdf, setup, title, prefix, content, y: setup.live.maxY, pages: [content] };
};

export const nextPage = (flow: Flow): void => {
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

export const bottomOf = ({ setup }: Flow): number => setup.live.minY + FOOT;

export const pageHeight = (flow: Flow): number => flow.setup.live.maxY - bottomOf(flow);

/** The figure may take this share of the page; mm. */
export const mostForFigure = ({ setup }: Flow): number => 0.21 * (setup.live.maxY - setup.live.minY);

export const isFresh = (flow: Flow): boolean => flow.y === flow.setup.live.maxY;

/** Begins a page when less than `height` is left; on a fresh page there is no more to be had. */
export const need = (flow: Flow, height: number): void => {
  if (flow.y - height < bottomOf(flow) && !isFresh(flow)) nextPage(flow);
};

/** mm that a heading takes with the white above it. */
export const HEADING_ROOM = 8;

export const drawText = (flow: Flow, text: string, x: number, width: number, size: number): void => {
  for (const line of wrapText(flow.content.faces.regular, text, size, width)) {
    flow.y -= LEADING * size;
    flow.content.text({ text: line, at: { x, y: flow.y }, size, color: INK.strong });
  }
};

const textHeight = (flow: Flow, text: string, width: number, size: number): number =>
  wrapText(flow.content.faces.regular, text, size, width).length * LEADING * size;

/** A point's or a paragraph's height with the space above it. */
export const blockHeight = (flow: Flow, block: CardBlock, width: number, size: number): number => {
  if (block.kind === 'table') return tableHeight(block) + 3;
  return 0.35 * size + textHeight(flow, block.text, block.kind === 'text' ? width : width - INDENT, size);
};

/** `mark` stands before a point. */
export const drawBlock = (
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
  if (block.kind !== 'text') {
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

export const drawHeading = (flow: Flow, text: string, x: number): void => {
  flow.y -= isFresh(flow) ? HEADING : ABOVE_HEADING + 0.6 * HEADING;
  flow.content.text({ text, at: { x, y: flow.y }, size: HEADING, color: INK.strong, bold: true });
  flow.y -= 0.8;
};
