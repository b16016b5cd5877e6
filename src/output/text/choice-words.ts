/** What a fit chooses, in a quilter's words: the same in tables, captions and cards. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import { depthsOf, type Fit, type Setting, type Shape, spansOf } from '../../swag/index.ts';

/** `heel to crown end`, `section 2 (vase) to the end of section 3`. */
export const partWords = ({ from, to }: Shape): string => `${from.label} to ${to.label}`;

export const settingWords = (setting: Setting): string => {
  switch (setting.kind) {
    case 'crown-on-centre':
      return 'crown on centre';
    case 'alignment-line':
      return `line ${setting.line.name} ${setting.laid === 'square' ? 'square to seam' : 'along seam'}`;
    case 'flat-on-guide':
      return `flat ${setting.flat.number} on a guide line`;
    default:
      return setting satisfies never;
  }
};

/** `heel first`, `crown first`. */
export const directionWords = ({ direction }: Shape): string => direction.replace('-', ' ');

/** A length without its unit, for tables that say the unit once. */
export const bareLength = (mm: number, style: LengthStyle): string =>
  formatLength(mm, style).slice(0, -` ${style.unit}`.length);

/** `in inches, to 1/16`. */
export const unitWords = (style: LengthStyle): string =>
  style.unit === 'in'
    ? `in inches, to 1/${style.denominator}`
    : `in ${style.unit}, to ${formatLength(style.step, style)}`;

/** One text where all are the same, else each, in the sides' order. */
export const eachOrOne = (texts: readonly string[]): string =>
  texts.every((t) => t === texts[0]) ? (texts[0] ?? '') : texts.join(', ');

/** `3 5/8 to 3 11/16`, or one length where all come out alike. */
export const rangeWords = (values: readonly number[], style: LengthStyle): string => {
  const least = bareLength(Math.min(...values), style);
  const most = bareLength(Math.max(...values), style);
  return least === most ? least : `${least} to ${most}`;
};

/** `7 8 7 8`, or `7` where every side has as many. */
export const repeatsWords = (fit: Fit): string => {
  const counts = fit.sides.map((s) => String(s.repeats));
  return counts.every((c) => c === counts[0]) ? counts[0]! : counts.join(' ');
};

export const spanWords = (fit: Fit, style: LengthStyle): string =>
  eachOrOne(spansOf(fit).map((span) => bareLength(span, style)));

/** The sides' depths, and the corner's where there is one and it is not the same. */
export const depthWords = (fit: Fit, style: LengthStyle): string => {
  const depths = depthsOf(fit).map((d) => bareLength(d, style));
  if (depths.every((d) => d === depths[0])) return depths[0]!;
  if (!fit.corner) return depths.join(', ');
  return `${eachOrOne(depths.slice(0, -1))}; corner ${depths.at(-1)}`;
};

export const gapWords = (fit: Fit, style: LengthStyle): string =>
  eachOrOne(fit.sides.map((s) => bareLength(s.seat.gap, style)));
