/** How large a picture is, by options: what the scanner was set to, or two marks of a ruler that lies in it. */

import { quoted } from '../document/index.ts';
import { distance } from '../geometry/index.ts';
import type { Units } from '../length/index.ts';
import type { Marks } from '../trace/index.ts';
import { readLengthOption, readPair } from './option-values.ts';
import { wrongValue } from './wrong-use.ts';

export interface ScaleOptions {
  readonly dpi?: string;
  readonly marks?: string;
}

export interface ReadScale {
  readonly pixelsPerMm: number;
  /** Those that told it, in pixels. */
  readonly marks?: Marks;
}

/** Undefined where neither is given. Throws wrong use. */
export const readScale = ({ dpi, marks }: ScaleOptions, units: Units): ReadScale | undefined => {
  if (dpi !== undefined && marks !== undefined)
    throw wrongValue('--marks', 'it cannot go with --dpi', { expected: 'one of them' });
  if (marks !== undefined) return readMarks(marks, units);
  return dpi === undefined ? undefined : { pixelsPerMm: readDpi(dpi) };
};

/** 2400 is the finest that desktop scanners see. */
const readDpi = (text: string): number => {
  const value = /^\d{1,4}(\.\d+)?$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= 100 && value <= 2400) return value / 25.4;
  throw wrongValue('--dpi', 'not a resolution that can be used', {
    found: quoted(text),
    expected: 'dots per inch, from 100 to 2400',
  });
};

const readMarks = (text: string, units: Units): ReadScale => {
  const said = /^\s*(\S+)\s+to\s+(\S+)\s+is\s+(.+)$/i.exec(text);
  const [a, b] = [readPair(said?.[1] ?? ''), readPair(said?.[2] ?? '')];
  if (!said || !a || !b || !(distance(a, b) > 0))
    throw wrongValue('--marks', 'not two marks and how far they are apart', {
      found: quoted(text),
      expected: 'such as "120,340 to 1890,352 is 6 in", in the picture\'s pixels',
    });
  const apart = readLengthOption('--marks', said[3]!, units, 'positive');
  return { pixelsPerMm: distance(a, b) / apart, marks: [a, b] };
};
