/** What a fit chooses, in a quilter's words: the same in tables, captions and cards. */

import { plural, series } from '../../document/index.ts';
import {
  formatLength,
  INCH_SIXTYFOURTH,
  INCH_THIRTYSECOND,
  type LengthStyle,
  roundLength,
  stepOf,
} from '../../length/index.ts';
import { sayShare } from '../../plan/index.ts';
import {
  depthsOf,
  type Field,
  type Fit,
  isRound,
  kindsIn,
  type Shape,
  seatsOf,
  sidesOf,
} from '../../swag/index.ts';

/** `heel to crown end`, `section 2 (vase) to end of section 3`; where there is little room, without the names. */
export const partWords = ({ from, to }: Shape, how: 'label' | 'brief' = 'label'): string =>
  `${from[how]} to ${to[how]}`;

export const settingWords = (fit: Fit, { around }: Pick<Field, 'around'>): string => {
  const { setting } = fit.way;
  switch (setting.kind) {
    case 'crown-on-centre':
      return 'crown on centre';
    case 'alignment-line': {
      // Round a motif there is no seam: what is square to it there runs along the ray from the centre.
      const isSquare = setting.laid === 'square';
      const lies = isRound(fit)
        ? `${isSquare ? 'along' : 'square to'} ray`
        : `${isSquare ? 'square to' : 'along'} ${around.kind === 'block' ? 'block' : 'seam'}`;
      return `line ${setting.line.name} ${lies}`;
    }
    case 'flat-on-guide':
      return `flat ${setting.flat.number} on a guide line`;
    default:
      return setting satisfies never;
  }
};

/** `heel first`, `crown first`. */
export const directionWords = ({ direction }: Shape): string =>
  direction === 'heel-first' ? 'heel first' : 'crown first';

/** A length without its unit, for tables that say the unit once. */
export const bareLength = (mm: number, style: LengthStyle): string =>
  formatLength(mm, style).slice(0, -` ${style.unit}`.length);

/** `in inches, to 1/16`. */
export const unitWords = (style: LengthStyle): string =>
  style.unit === 'in'
    ? `in inches, to 1/${style.denominator}`
    : `in ${style.unit}, to ${formatLength(style.step, style)}`;

/** `3 5/8 to 3 11/16`, or one length where all come out alike: each is rounded as the drawing and the marks have it. */
export const rangeWords = (values: readonly number[], style: LengthStyle): string => {
  const least = bareLength(Math.min(...values), style);
  const most = bareLength(Math.max(...values), style);
  return least === most ? least : `${least} to ${most}`;
};

/** How far apart (mm) lengths are as `rangeWords` prints them. */
export const printedSpread = (values: readonly number[], style: LengthStyle): number =>
  roundLength(Math.max(...values), style) - roundLength(Math.min(...values), style);

/**
 * Distances about as small as the foot, such as from a notch to the needle: to 1/32 in or half a millimetre, since
 * a sixteenth is too much of them; finer where the style itself is.
 */
export const smallLength = (mm: number, style: LengthStyle): string => formatLength(mm, fineStyle(style));

const fineStyle = (style: LengthStyle): LengthStyle => {
  if (style.unit === 'in') return style.denominator === 64 ? INCH_SIXTYFOURTH : INCH_THIRTYSECOND;
  return style.step < 0.5 ? style : { unit: style.unit, step: 0.5 };
};

/** How far (mm) the stitching reaches from the start line, on every side and at corners that are made alike. */
export const highestOf = (fit: Fit): readonly number[] =>
  isRound(fit) ? [] : seatsOf(kindsIn(sidesOf(fit))[0]).map((seat) => seat.pose.top);

/** Whether lobes stand higher than the crown, by more than a rounding step. */
export const standsHigher = (fit: Fit, style: LengthStyle): boolean => {
  const depths = depthsOf(sidesOf(fit));
  return highestOf(fit).some((top, i) => isHigher(top, depths[i]!, style));
};

/** Whether stitching that reaches so far (mm) stands higher than a crown that is so deep. */
export const isHigher = (top: number, depth: number, style: LengthStyle): boolean =>
  top - depth > stepOf(style);

/** A share in whole percents, of which it is not less: `82 %`. What would be met by rounding only is not said to be. */
export const usedWords = (share: number): string => sayShare(Math.floor(100 * share + ROUNDING) / 100);

/** A share in whole percents, of which it is not more. */
export const usedAtMost = (share: number): string => sayShare(Math.ceil(100 * share - ROUNDING) / 100);

/** Of a chain of closed forms, and what is within a range when it lies on its very end, in percents. */
const ROUNDING = 1e-4;

/** How many of a side's swags are whole: two halves at its ends are one of them. */
export const wholeSwags = ({ corner }: Pick<Fit, 'corner'>, repeats: number): number =>
  corner.kind === 'half' ? repeats - 1 : repeats;

const HALVES = 'half a swag at each end';

/** What some sides have beside their whole swags: ` and half a swag at each end`. */
export const halvesWords = ({ corner }: Pick<Fit, 'corner'>): string =>
  corner.kind === 'half' ? ` and ${HALVES}` : '';

/** Of one side: `7 swags`, `6 swags and half a swag at each end`, or, where it is too short for a whole one, the halves alone. */
export const sideWords = (fit: Pick<Fit, 'corner'>, repeats: number): string => {
  const whole = wholeSwags(fit, repeats);
  return whole > 0 ? `${plural(whole, 'swag')}${halvesWords(fit)}` : HALVES;
};

/** Of a border on whose shortest sides there is no whole swag. */
const longSidesWords = (fit: Fit): string => {
  const long = fit.sides.filter((s) => wholeSwags(fit, s.repeats) > 0);
  const counts = [...new Set(long.map((s) => wholeSwags(fit, s.repeats)))].map((whole) => {
    const on = long.filter((s) => wholeSwags(fit, s.repeats) === whole).map((s) => s.run.name);
    return `${plural(whole, 'swag')} on ${series(on)}`;
  });
  return [...counts, `${HALVES} of every side`].join(', ');
};

/**
 * As a person says it: `7 swags on each side`, `5, 6, 5 and 6 swags`, and where there is room for it
 * which is which. Of a strip or a frame there is one count: `12 swags`.
 */
export const swagsWords = (fit: Fit, naming: 'named' | 'unnamed' = 'unnamed'): string => {
  const counts = fit.sides.map((s) => wholeSwags(fit, s.repeats));
  const [first = 0] = counts;
  if (counts.includes(0)) return longSidesWords(fit);
  const halves = halvesWords(fit);
  if (counts.every((c) => c === first)) {
    const swags = `${plural(first, 'swag')}${halves}`;
    return counts.length > 1 ? `${swags}${halves ? ' of every side' : ' on each side'}` : swags;
  }
  const listed = `${series(counts.map(String))} swags${halves}`;
  return naming === 'named' ? `${listed} (${fit.sides.map((s) => s.run.name).join(', ')})` : listed;
};
