/** Lengths as she reads them. */

import { CM_TENTH, formatLength, INCH_SIXTEENTH, MM_TENTH } from '../../length/index.ts';
import { unitsNow } from './fields.tsx';

const STYLES = { in: INCH_SIXTEENTH, cm: CM_TENTH, mm: MM_TENTH } as const;

export const inHers = (mm: number): string => formatLength(mm, STYLES[unitsNow()]);
