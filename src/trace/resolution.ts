/** Whether a resolution that is stated of a scan, or told by two marks in a picture, can be true. */

import type { Problem } from '../document/index.ts';
import { MM_PER_INCH, numberApart } from '../length/index.ts';
import type { Picture } from './picture.ts';
import { SHORTEST } from './shape.ts';

/** Coarser than this (dots per inch) a scan does not show an edge to a tenth of a millimetre. */
const LEAST = 100;
/** Beyond these no scanner works, not even one for faxes or for film (dots per inch; common practice, no source). */
const COARSEST = 50;
const FINEST = 9600;
/** Files round what they say, to whole dots per cm for instance. */
const NEARLY = 0.98;

const SAY_SIZE =
  'give what the scanner was set to, such as --dpi 300; a photograph needs the capture sheet, or a ruler in it and --marks';

/** Whether this is what no scanner is set to, pixels per mm: then a file says it by mistake. */
export const isNoResolution = (pixelsPerMm: number): boolean => {
  const dots = pixelsPerMm * MM_PER_INCH;
  return !(dots >= COARSEST * NEARLY && dots <= FINEST / NEARLY);
};

export const NO_RESOLUTION: Problem = {
  code: 'no-resolution',
  message: 'the picture does not say how large it is',
  hint: SAY_SIZE,
};

/** What is wrong with a scan's resolution, pixels per mm; `byMarks`: two marks in the picture told it. */
export const resolutionProblem = (
  pixelsPerMm: number,
  { width, height }: Picture,
  byMarks: boolean,
): Problem | undefined => {
  const dots = pixelsPerMm * MM_PER_INCH;
  const across = Math.max(width, height) / pixelsPerMm;
  const hint = byMarks ? 'look where the two marks lie, and how far apart they were said to be' : SAY_SIZE;
  if (!byMarks && isNoResolution(pixelsPerMm))
    return {
      code: 'no-such-resolution',
      message: `the picture says ${dotsWords(dots)}, which no scanner has`,
      hint,
    };
  if (across < SHORTEST)
    return {
      code: 'no-such-resolution',
      message: `at ${dotsWords(dots)} all of the picture is only ${Number(across.toPrecision(2))} mm across`,
      expected: `at least ${SHORTEST} mm`,
      hint,
    };
  return dots >= LEAST * NEARLY
    ? undefined
    : {
        code: 'too-coarse',
        message: 'the scan is too coarse',
        found: `${numberApart(dots, LEAST, 0)} dots per inch`,
        expected: `at least ${LEAST} dots per inch; 300 is best`,
        hint: byMarks ? hint : `if the file says it wrong, ${SAY_SIZE}`,
      };
};

const dotsWords = (dots: number): string => {
  const said = numberApart(dots, 0, 0);
  return `${said} ${said === '1' ? 'dot' : 'dots'} per inch`;
};
