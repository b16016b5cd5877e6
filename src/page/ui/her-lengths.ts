/** Lengths as she reads them. */

import { AS_READ, formatLength, INCH_SIXTYFOURTH, INCH_THIRTYSECOND } from '../../length/index.ts';
import { unitsNow } from './fields.tsx';

export const inHers = (mm: number): string => formatLength(mm, AS_READ[unitsNow()]);

/** As finely as a ruler is read. */
export const asMeasured = (mm: number): string =>
  formatLength(mm, unitsNow() === 'in' ? INCH_SIXTYFOURTH : AS_READ[unitsNow()]);

/** So finely that each step of a millimetre is another length. */
export const finely = (mm: number): string =>
  formatLength(mm, unitsNow() === 'in' ? INCH_THIRTYSECOND : AS_READ[unitsNow()]);
