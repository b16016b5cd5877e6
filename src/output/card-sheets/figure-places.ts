/** The measures of a place of the template, as lines of type beside it on a figure. */

import type { Point } from '../../geometry/index.ts';
import type { CardPlace } from '../card/index.ts';
import { INK, type PageContent } from '../pdf/index.ts';

export type Align = 'start' | 'middle' | 'end';

/** Sizes of type on a figure, mm: names, measures, and measures of the few that differ. */
export const LABEL = 3.4;
const MEASURE = 3.9;
const OTHERS = 2.9;
/** A letter is at most so wide, of its height, in words of more than a few. */
const LETTER = 0.6;
const LINE = 1.2;
/** So many letters of what differs stand in a line. */
const MOST_LETTERS = 22;

export const BESIDE = 1.5;
export const nameWidth = (name: string): number => BESIDE + LETTER * LABEL * name.length;

interface Line {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

/** The name, then each measure, and below it the rows that have another. */
export const placeLines = ({ name, measures }: CardPlace): readonly Line[] => [
  { text: name, size: LABEL, bold: false },
  ...measures.flatMap(({ most, others }): readonly Line[] => [
    { text: most, size: MEASURE, bold: true },
    ...(others === '' ? [] : broken(others).map((text) => ({ text, size: OTHERS, bold: false }))),
  ]),
];

/** Broken between words, so that no line is longer than the figure has room for. */
const broken = (text: string): readonly string[] => {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= MOST_LETTERS)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
};

/** mm. */
export const linesHeight = (lines: readonly Line[]): number =>
  lines.reduce((sum, { size }) => sum + LINE * size, 0);

export const linesWidth = (lines: readonly Line[]): number =>
  BESIDE + Math.max(0, ...lines.map(({ text, size }) => LETTER * size * text.length));

/** `top` is where the first line's upper edge is. */
export const writeLines = (
  content: PageContent,
  lines: readonly Line[],
  top: Point,
  align: Exclude<Align, 'middle'>,
): void => {
  let { y } = top;
  for (const { text, size, bold } of lines) {
    y -= LINE * size;
    content.text({
      text,
      at: { x: top.x, y: y + 0.2 * size },
      size,
      color: INK.strong,
      align,
      bold,
      halo: 0.6,
    });
  }
};
