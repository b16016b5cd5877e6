/** A figure and the limit that it passes, in as many digits as show that it does: `1/64 in; at most 1/64 in` says nothing. */

import { formatLength, INCH_SIXTYFOURTH, INCH_THIRTYSECOND, type LengthStyle } from './print.ts';

/** Figures that are the same to so many decimals are one figure. */
const MOST_DECIMALS = 9;

/** What was found, with `decimals` or as many more as it takes to differ from the limit. */
export const numberApart = (found: number, limit: number, decimals: number): string => {
  for (let d = decimals; d <= MOST_DECIMALS; d++)
    if (found.toFixed(d) !== limit.toFixed(d)) return found.toFixed(d);
  return found.toFixed(decimals);
};

/**
 * What was found and its limit (mm) in words that differ: finer than the style where they must be. What no ruler in
 * inches tells apart is a little more, or less; other figures have as many decimals as it takes.
 */
export const lengthsApart = (
  found: number,
  limit: number,
  style: LengthStyle,
): readonly [found: string, limit: string] => {
  const isOne = found.toFixed(MOST_DECIMALS) === limit.toFixed(MOST_DECIMALS);
  const finer = style.unit === 'in' ? [style, INCH_THIRTYSECOND, INCH_SIXTYFOURTH] : [style];
  for (const s of finer) {
    const words = [formatLength(found, s), formatLength(limit, s)] as const;
    if (isOne || words[0] !== words[1]) return words;
  }
  if (style.unit === 'in') {
    const words = formatLength(limit, INCH_SIXTYFOURTH);
    return [`a little ${found > limit ? 'more' : 'less'} than ${words}`, words];
  }
  const said = numberApart(found, limit, 1);
  const decimals = /\.(\d+)$/.exec(said)?.[1]?.length ?? 1;
  return [`${said} mm`, `${formatLength(limit, style)} (${limit.toFixed(decimals)} mm)`];
};
