/**
 * How large a projector makes the page on the cloth, found by a tape: a bar of so many pixels measures so much. Across
 * and up are found apart, because a projector that leans makes them differ. Kept per browser.
 */

import { AS_READ, formatLength, readLength, type Units } from '../../length/index.ts';
import { projectorWords } from '../words/words.ts';
import { plainWords } from './plain-words.ts';

/** CSS pixels to the millimetre on the cloth. */
interface PerWay {
  readonly across: number;
  readonly up: number;
}

export interface ProjectedScale extends PerWay {
  /** window.devicePixelRatio when it was found: a CSS pixel grows with the browser's zoom. */
  readonly ratio: number;
}

/** What she typed of both bars; an empty upright one is as the other says. */
export interface TypedBars {
  readonly across: string;
  readonly up: string;
}

/** A bar as long as a window leaves room for, in round figures (px). */
export const barFor = (room: number): number => Math.max(2, Math.floor((0.8 * room) / BAR_STEP)) * BAR_STEP;
const BAR_STEP = 50;

/**
 * px to the mm: a projector's pixel is 0.2 to 5 mm on a table or a wall (reckoned, no source), and a CSS pixel up to
 * three of them. One that leans by 45 degrees makes one way √2 times as large as the other; beyond 1.5 times something
 * else was measured.
 */
const LEAST = 0.05;
const MOST = 10;
const MOST_APART = 1.5;

const isOne = (scale: number): boolean => scale >= LEAST && scale <= MOST;
const areAlike = ({ across, up }: PerWay): boolean => Math.max(across / up, up / across) <= MOST_APART;
const isLikely = (scale: PerWay): boolean => isOne(scale.across) && isOne(scale.up) && areAlike(scale);

/** What is wrong with what she typed, and of which bar. */
export interface BarFault {
  readonly at: keyof PerWay;
  readonly words: string;
}

export const isFault = (found: ProjectedScale | BarFault | undefined): found is BarFault =>
  found !== undefined && 'at' in found;

/** `bars` in px; a bare number is in her units. Undefined while nothing is typed of either bar. */
export const scaleFrom = (
  bars: PerWay,
  typed: TypedBars,
  units: Units,
  ratio: number,
): ProjectedScale | BarFault | undefined => {
  if (typed.across.trim() === '' && typed.up.trim() === '') return undefined;
  const read = (at: keyof PerWay): number | BarFault => {
    const length = readLength(typed[at], units, 'positive');
    if (!length.ok)
      return { at, words: plainWords({ ...length, message: length.reason }, projectorWords.lengthOf[at]) };
    const scale = bars[at] / length.mm;
    if (isOne(scale)) return scale;
    const [least, most] = [MOST, LEAST].map((of) => formatLength(bars[at] / of, AS_READ[units]));
    return { at, words: projectorWords.unlikely({ least: least!, most: most! }) };
  };
  const across = read('across');
  if (typeof across !== 'number') return across;
  const up = typed.up.trim() === '' ? across : read('up');
  if (typeof up !== 'number') return up;
  return areAlike({ across, up }) ? { across, up, ratio } : { at: 'up', words: projectorWords.apart };
};

/** At the zoom that the browser has now. */
export const scaleAt = ({ across, up, ratio }: ProjectedScale, now: number): PerWay => ({
  across: (across * ratio) / now,
  up: (up * ratio) / now,
});

/** By how much of a hundred the two ways differ, where a tape can tell: then the projector leans. */
export const leanOf = ({ across, up }: PerWay): number | undefined => {
  const percent = Math.round(100 * (Math.max(across / up, up / across) - 1));
  return percent >= 2 ? percent : undefined;
};

export const scaleText = ({ across, up, ratio }: ProjectedScale): string => `${across} ${up} ${ratio}`;

export const scaleKept = (text: string | null): ProjectedScale | undefined => {
  const [across = Number.NaN, up = Number.NaN, ratio = Number.NaN] = (text ?? '').split(' ').map(Number);
  return isLikely({ across, up }) && ratio > 0 && ratio < 100 ? { across, up, ratio } : undefined;
};
