/** Lengths as she reads them. */

import {
  CM_TENTH,
  formatLength,
  INCH_SIXTEENTH,
  INCH_SIXTYFOURTH,
  INCH_THIRTYSECOND,
  MM_TENTH,
} from '../../length/index.ts';
import { unitsNow } from './fields.tsx';

const STYLES = { in: INCH_SIXTEENTH, cm: CM_TENTH, mm: MM_TENTH } as const;

export const inHers = (mm: number): string => formatLength(mm, STYLES[unitsNow()]);

/** As finely as a ruler is read. */
export const asMeasured = (mm: number): string =>
  formatLength(mm, unitsNow() === 'in' ? INCH_SIXTYFOURTH : STYLES[unitsNow()]);

/** So finely that each step of a millimetre is another length. */
export const finely = (mm: number): string =>
  formatLength(mm, unitsNow() === 'in' ? INCH_THIRTYSECOND : STYLES[unitsNow()]);
