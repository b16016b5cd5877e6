/** The whole drawing at true size on one page, for a wide printer: the frame round it is a ruler on all sides. */

import { type Problem, ProblemError } from '../../document/index.ts';
import type { StyledDrawing } from '../../drawing/index.ts';
import { boxHeight, boxWidth, growBox, isEmptyBox, shift } from '../../geometry/index.ts';
import { numberApart, type Units } from '../../length/index.ts';
import {
  edgesOf,
  factorsFor,
  type Ink,
  inkOf,
  isCorrected,
  LONGEST_PAGE,
  type Orientation,
  type PerEdge,
  rulesFor,
  UNMEASURED,
} from '../../pagination/index.ts';
import { type Deflate, startPdf } from './document.ts';
import { drawRule } from './furniture.ts';
import { FRAME, INK, LEADING, TYPE } from './look.ts';
import { correctedFor } from './sheet-words.ts';
import { drawLayers, textWidthOf } from './sheets.ts';
import { type FontBytes, fitText, typefacesOf } from './typeface.ts';

export interface OnePageOptions {
  readonly title: string;
  readonly units: Units;
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
  readonly measured?: PerEdge | undefined;
}

/** Between the page's edge and the frame, and between the frame and the ink, mm. */
const MARGIN = 12.7;
const PADDING = 6;
/** Below the ink, for the page's words, mm. */
const FOOT = 12.5;

/**
 * A drawing on a ground of its own is shown and not printed: nothing goes round it.
 * Throws a ProblemError when there is nothing to print, or more than one page can hold.
 */
export const writeOnePage = async (drawing: StyledDrawing, options: OnePageOptions): Promise<Uint8Array> => {
  const ink = inkOf(drawing, textWidthOf(typefacesOf(options.fonts)));
  if (isEmptyBox(ink.box))
    throw new ProblemError([{ code: 'nothing-to-print', message: 'the drawing holds nothing to print' }]);
  if (drawing.ground !== undefined) return writeShown(ink, drawing.ground, options);
  const measured = options.measured ?? UNMEASURED;
  const inner = growBox(ink.box, PADDING);
  const framed = { ...inner, minY: inner.minY - FOOT };
  // On the page as it is printed the frame's corner stands at the margin.
  const live = {
    minX: MARGIN,
    minY: MARGIN,
    maxX: MARGIN + boxWidth(framed),
    maxY: MARGIN + boxHeight(framed),
  };
  const { orientation, factors, width, height } = pageFor(boxWidth(framed), boxHeight(framed), measured);
  const problems = sizeProblems(width, height);
  if (problems.length > 0) throw new ProblemError(problems);

  const pdf = await startPdf({ ...options, pickTray: false });
  const correction = { fixed: { x: MARGIN, y: MARGIN }, ...factors };
  const content = pdf.page({ width, height, label: 'Drawing', correction });
  content.placed(shift(live.minX - framed.minX, live.minY - framed.minY), () =>
    drawLayers(content, ink.items),
  );
  content.box(live, { stroke: FRAME });
  for (const rule of rulesFor(live, options.units === 'in' ? 'in' : 'mm')) drawRule(content, rule);
  const words = [
    `${options.title}. True size: print at 100 % / actual size; check the marks along the frame with a ruler.`,
    `The paper’s ${edgesOf(orientation).x} edge runs across, its ${edgesOf(orientation).y} edge up.${isCorrected(measured) ? ` ${correctedFor(measured)}` : ''}`,
  ];
  const room = boxWidth(live) - 2 * PADDING;
  const size = TYPE.small;
  for (const [i, text] of words.entries())
    content.text({
      text: fitText(pdf.faces.regular, text, size, room),
      at: { x: live.minX + PADDING, y: live.minY + PADDING + (words.length - 1 - i) * LEADING * size },
      size,
      color: INK.text,
    });
  return pdf.finish();
};

/** On a ground: a little of it beyond the ink, and that is the page. */
const writeShown = async (ink: Ink, ground: string, options: OnePageOptions): Promise<Uint8Array> => {
  const shown = growBox(ink.box, PADDING);
  const [width, height] = [boxWidth(shown), boxHeight(shown)];
  const problems = sizeProblems(width, height);
  if (problems.length > 0) throw new ProblemError(problems);
  const pdf = await startPdf({ ...options, pickTray: false });
  const content = pdf.page({ width, height, label: 'Drawing' });
  content.box({ minX: 0, minY: 0, maxX: width, maxY: height }, { fill: ground });
  content.placed(shift(-shown.minX, -shown.minY), () => drawLayers(content, ink.items));
  return pdf.finish();
};

/** The page in the file for a frame of a given size on paper; a correction never makes its short edge the long one. */
const pageFor = (wide: number, high: number, measured: PerEdge) => {
  const orientation: Orientation = wide <= high ? 'portrait' : 'landscape';
  const factors = factorsFor(measured, orientation);
  const width = wide * factors.x + 2 * MARGIN;
  const height = high * factors.y + 2 * MARGIN;
  return orientation === 'portrait'
    ? { orientation, factors, width, height: Math.max(height, width + LONGER) }
    : { orientation, factors, width: Math.max(width, height + LONGER), height };
};

/** So much longer (mm) is a page's long edge at least, so that a printer's driver sees which it is. */
const LONGER = 1;

const sizeProblems = (width: number, height: number): Problem[] => {
  if (Math.max(width, height) <= LONGEST_PAGE) return [];
  return [
    {
      code: 'page-too-large',
      message: 'the drawing is too large for one page of a PDF',
      found: `${[width, height].map((mm) => numberApart(mm, LONGEST_PAGE, 0)).join(' × ')} mm`,
      expected: 'at most 200 in (5080 mm) each way',
      hint: 'print true-size sheets instead, or a part of it (one repeat, one side, a corner)',
    },
  ];
};
