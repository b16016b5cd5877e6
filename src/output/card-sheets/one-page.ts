/**
 * A card of few marks on one page: they stand beside the figure, so that whoever stands at the machine has all figures
 * in one look, and what is set and what is looked up once stand below both.
 */

import { boxWidth } from '../../geometry/index.ts';
import { cornerSwag, type Design, ownCorner } from '../../swag/index.ts';
import type { Card, CardBlock, CardPlace, CardSection, CardTable } from '../card/index.ts';
import { asidesFit, asidesOf, drawAsides } from './asides.ts';
import { drawFigure, type Figure, figureHeight, figureScale } from './figure.ts';
import {
  blockHeight,
  drawBlock,
  drawHeading,
  type Flow,
  HEADING_ROOM,
  mostForFigure,
  SMALL,
  TEXT,
} from './flow.ts';
import { drawTable, isReadAtWidth, tableHeight, tableTitle } from './table.ts';

/** mm, of the marks beside the figure, which has names on both sides; and between the two. */
const MARKS_WIDTH = 61;
const BETWEEN = 7;
const ABOVE_TABLE = 2;
/** A figure that would be smaller than this share of what it is by itself is not read from afar: its names run into one another. */
const LEAST_SHARE = 0.8;

interface Sections {
  readonly set: CardSection;
  readonly stands: readonly CardBlock[];
  readonly marks: CardSection;
  readonly table: CardTable;
  readonly asides: readonly CardSection[];
}

/** Returns false, and has drawn nothing, where one page does not hold the card. */
export const drawOnOnePage = (flow: Flow, designs: readonly Design[], card: Card): boolean => {
  const [design, ...others] = designs;
  const found = sectionsOf(card);
  if (!design || others.length > 0 || ownCorner(design.fit) || cornerSwag(design) || !found) return false;
  const { set, stands, marks, table, asides } = found;
  const { minX } = flow.setup.live;
  const width = boxWidth(flow.setup.live);
  const forFigure = width - MARKS_WIDTH - BETWEEN;
  if (!isReadAtWidth(flow.content, table, MARKS_WIDTH)) return false;
  const isPlace = (block: CardBlock): block is CardPlace => block.kind === 'place';
  const places = stands.filter(isPlace);
  const below = stands.filter((block) => !isPlace(block));
  const intro = marks.blocks.filter((block) => block !== table);
  const heightOf = (blocks: readonly CardBlock[], wide: number, size: number): number =>
    blocks.reduce((sum, block) => sum + blockHeight(flow, block, wide, size), 0);
  const title = tableTitle(flow.content, table, MARKS_WIDTH);
  const beside =
    HEADING_ROOM + heightOf(intro, MARKS_WIDTH, SMALL) + ABOVE_TABLE + tableHeight(table, title.length);
  const figure: Figure = { design, kind: 'swag', places, width: forFigure, most: mostForFigure(flow) };
  if (figureScale(figure) < LEAST_SHARE * figureScale({ ...figure, width })) return false;
  const head = Math.max(figureHeight(figure) + heightOf(below, forFigure, SMALL), beside);
  const size = [TEXT, SMALL].find((one) => {
    const y = flow.y - head - HEADING_ROOM - heightOf(set.blocks, width, one);
    return asidesFit({ ...flow, y }, asides);
  });
  if (size === undefined) return false;
  const top = flow.y;
  drawFigure(flow.content, figure, { x: minX, y: top });
  flow.y = top - figureHeight(figure);
  for (const block of below) drawBlock(flow, block, minX, forFigure, SMALL, '–');
  const x = minX + forFigure + BETWEEN;
  flow.y = top;
  drawHeading(flow, marks.heading, x);
  for (const block of intro) drawBlock(flow, block, x, MARKS_WIDTH, SMALL, '–');
  drawTable(flow.content, table, { x, y: flow.y - ABOVE_TABLE }, MARKS_WIDTH, title);
  flow.y = top - head;
  drawHeading(flow, set.heading, minX);
  let number = 0;
  for (const block of set.blocks) drawBlock(flow, block, minX, width, size, String(++number));
  drawAsides(flow, asides);
  return true;
};

/** Undefined where there is more of something than has a place here. */
const sectionsOf = ({ sections }: Card): Sections | undefined => {
  const of = (id: CardSection['id']): readonly CardSection[] => sections.filter((s) => s.id === id);
  const [[set, ...sets], [stands, ...placings], [marks, ...bands]] = [of('set'), of('stands'), of('marks')];
  if (!set || !marks || sets.length + placings.length + bands.length > 0) return undefined;
  const tables = marks.blocks.filter((b): b is CardTable => b.kind === 'table');
  const [table, ...more] = tables;
  if (!table || more.length > 0 || table.isWide || set.blocks.some((b) => b.kind !== 'point'))
    return undefined;
  return { set, stands: stands?.blocks ?? [], marks, table, asides: asidesOf(sections) };
};
