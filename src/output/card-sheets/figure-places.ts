/** The measures of a place of the template, as lines of type beside it on a figure. */

import type { Point } from '../../geometry/index.ts';
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

interface Line {
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
