/** The measures of a place of the template, as lines of type beside it on a figure. */

import { type Box, boxesTouch, growBox, type Point } from '../../geometry/index.ts';
import type { CardPlace } from '../card/index.ts';
import { INK, type PageContent } from '../pdf/index.ts';

export type Align = 'start' | 'middle' | 'end';

/** Sizes of type on a figure, mm: names, and measures. */
export const LABEL = 3.4;
const MEASURE = 3.9;
/** A letter is at most so wide, of its height, in words of more than a few. */
const LETTER = 0.6;
const LINE = 1.2;

export const BESIDE = 1.5;
export const nameWidth = (name: string): number => BESIDE + LETTER * LABEL * name.length;

export interface Line {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

/** The name, then each measure. */
export const placeLines = ({ name, measures }: CardPlace): readonly Line[] => [
  { text: name, size: LABEL, bold: false },
  ...measures.map((text) => ({ text, size: MEASURE, bold: true })),
];

/** mm. */
export const linesHeight = (lines: readonly Line[]): number =>
  lines.reduce((sum, { size }) => sum + LINE * size, 0);

export const linesWidth = (lines: readonly Line[]): number =>
  BESIDE + Math.max(0, ...lines.map(({ text, size }) => LETTER * size * text.length));

/** `top` is where the first line's upper edge is. */
export const writeLines = (
  paper: Paper,
  lines: readonly Line[],
  top: Point,
  align: Exclude<Align, 'middle'>,
): void => {
  let { y } = top;
  for (const line of lines) {
    y -= LINE * line.size;
    writeLine(paper, line, { x: top.x, y: y + 0.2 * line.size }, align);
  }
};

/** What is written on, and the boxes (mm) of what is written there by now. */
export interface Paper {
  readonly content: PageContent;
  readonly written: Box[];
}

/** How far letters reach over and under their base line, as shares of their size. */
const OVER = 0.75;
const UNDER = 0.2;

const lineBox = ({ content }: Paper, { text, size, bold }: Line, at: Point, align: Align): Box => {
  const width = content.width(text, size, bold);
  const minX = at.x - { start: 0, middle: width / 2, end: width }[align];
  return { minX, maxX: minX + width, minY: at.y - UNDER * size, maxY: at.y + OVER * size };
};

export const writeLine = (paper: Paper, line: Line, at: Point, align: Align): void => {
  paper.content.text({ ...line, at, color: INK.strong, align, halo: 0.6 });
  paper.written.push(lineBox(paper, line, at, align));
};

/** mm between what is written and what is put beside it. */
const CLEAR = 0.6;

/** The first of some places at which a line lies on nothing that is written, or the very first. */
export const freePlace = (paper: Paper, line: Line, places: readonly Point[], align: Align): Point => {
  const isFree = (at: Point): boolean => {
    const box = growBox(lineBox(paper, line, at, align), CLEAR);
    return !paper.written.some((other) => boxesTouch(box, other));
  };
  return places.find(isFree) ?? places[0]!;
};
