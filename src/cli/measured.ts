/**
 * `--measured`: what a length on the last print measured, along the paper's short edge and along its long edge.
 *
 * Two ways to say it. `1.98,2` is the 2 in check square along the short and the long edge, read with an inch ruler.
 * `6in=5.97in,9in=9in` says for any length that the sheet marks what the ruler said; the long rules tell more
 * than the square, and the marks in mm need this form, because the square's side is no round number of mm.
 */

import { quoted } from '../document/index.ts';
import type { Units } from '../length/index.ts';
import { CHECK_SIDE, type PerEdge } from '../pagination/index.ts';
import { readLengthOption } from './option-values.ts';
import { wrongValue } from './wrong-use.ts';

const OPTION = '--measured';

const EXPECTED =
  "the 2 in square along the paper's short edge, then along its long edge, such as 1.98,2; or 50mm=49.8mm,50mm=50mm";

/**
 * The largest error that a printer makes is 2 or 3 in 100 (an old laser printer); a viewer that shrinks to fit
 * takes 3 to 6, and that is to be switched off and not measured away. Ten leaves room for both.
 */
const MOST_ERROR = 0.1;

/** Measured over true. */
export const readMeasured = (text: string, units: Units): PerEdge => {
  const parts = text.split(SEPARATOR).map((part) => part.trim());
  const [short, long] = parts;
  if (parts.length !== 2 || !short || !long)
    throw wrongValue(OPTION, 'not two lengths', { found: quoted(text), expected: EXPECTED });
  return { short: readFactor(short, units), long: readFactor(long, units) };
};

/** A comma, `by`, or an x or × as in `2 x 2`. */
const SEPARATOR = /,|×|\bby\b|(?<=[\s\d"″])x(?=[\s\d.])/i;

const readFactor = (text: string, units: Units): number => {
  const parts = text.split('=').map((part) => part.trim());
  const [first, second] = parts;
  if (parts.length > 2 || !first || second === '')
    throw wrongValue(OPTION, 'not a length', { found: quoted(text), expected: EXPECTED });
  if (second === undefined && !isInches(first, units))
    throw wrongValue(OPTION, 'it does not say which length was measured', {
      found: quoted(text),
      expected: `what the sheet says = what your ruler says, such as 50mm=${first}`,
    });
  const nominal = second === undefined ? CHECK_SIDE : readLengthOption(OPTION, first, units, 'positive');
  const measured = readLengthOption(OPTION, second ?? first, units, 'positive');
  const factor = measured / nominal;
  if (Math.abs(factor - 1) <= MOST_ERROR) return factor;
  throw wrongValue(OPTION, "too far off to be a printer's error", {
    found: `${quoted(second ?? first)} for ${second === undefined ? 'the side of the 2 in square' : quoted(first)}`,
    expected: 'within a tenth of it',
    hint: 'print again at 100 % / actual size, and measure that print',
  });
};

/** Whether a length is in inches: it says so, or says nothing where inches are meant. Metric units all hold an m. */
const isInches = (text: string, units: Units): boolean => {
  const saysItsUnit =
    readLengthOption(OPTION, text, 'in', 'positive') === readLengthOption(OPTION, text, 'mm', 'positive');
  return saysItsUnit ? !/m/i.test(text) : units === 'in';
};
