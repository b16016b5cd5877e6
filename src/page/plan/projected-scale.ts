/**
 * How large a projector makes the page on the cloth, found by a tape: a bar of so many pixels measures so much. Across
 * and up are found apart, because a projector that leans makes them differ. Kept per browser.
 */

import { readLength, type Units } from '../../length/index.ts';

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
 * three of them. Beyond twice one way what it is the other, something else was measured.
 */
const LEAST = 0.05;
const MOST = 10;
const MOST_APART = 2;

const isLikely = ({ across, up }: PerWay): boolean =>
  [across, up].every((scale) => scale >= LEAST && scale <= MOST) &&
  Math.max(across / up, up / across) <= MOST_APART;

/** `bars` in px; a bare number is in her units. Undefined while nothing is typed of the long bar. */
export const scaleFrom = (
  bars: PerWay,
  typed: TypedBars,
  units: Units,
  ratio: number,
): ProjectedScale | 'wrong' | undefined => {
  if (typed.across.trim() === '' && typed.up.trim() === '') return undefined;
  const read = (text: string, bar: number): number => {
    const length = readLength(text, units, 'positive');
    return length.ok ? bar / length.mm : Number.NaN;
  };
  const across = read(typed.across, bars.across);
  const up = typed.up.trim() === '' ? across : read(typed.up, bars.up);
  return isLikely({ across, up }) ? { across, up, ratio } : 'wrong';
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
