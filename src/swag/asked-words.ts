/** What is asked of swags, and what might be asked instead, as a person says it. */

import { exactLength, type LengthStyle, MM_PER_INCH } from '../length/index.ts';
import { type CountWish, SIDES, sayShare, wishText } from '../plan/index.ts';
import type { Asked } from './asked.ts';

/** `about 9 in`, `at least 80 %`, `5 to 7`, `odd`. */
export const wishWords = ({ key }: Pick<Asked, 'key'>, wish: CountWish, style: LengthStyle): string => {
  const say = { repeats: String, use: sayShare, span: undefined, depth: undefined, gap: undefined }[key];
  return wishText(wish, say ?? ((mm) => asAsked(mm, style)));
};

/** In the unit that it is asked in: what no 64th of an inch says is said in thousandths. */
const asAsked = (mm: number, style: LengthStyle): string => {
  const words = exactLength(mm, style);
  const inches = Math.round((1000 * mm) / MM_PER_INCH) / 1000;
  return style.unit === 'in' && Math.abs(inches * MM_PER_INCH - mm) < 1e-6 && !words.endsWith(' in')
    ? `${inches} in`
    : words;
};

/** `span about 9 in`, `7 repeats on the top side`, `an odd number of repeats`. */
export const askedWords = (asked: Pick<Asked, 'key' | 'wish' | 'on' | 'of'>, style: LengthStyle): string =>
  `${counted(asked, asked.wish, style)}${onSide(asked)}`;

/** `depth at least 2 7/8 in instead of at least 3 in`, `9 repeats instead of 8`. */
export const insteadWords = (asked: Asked, wish: CountWish, style: LengthStyle): string => {
  const was = wishWords(asked, asked.wish, style);
  const old = asked.wish === 'odd' || asked.wish === 'even' ? `an ${asked.wish} one` : was;
  return `${counted(asked, wish, style)} instead of ${old}${onSide(asked)}`;
};

const counted = (asked: Pick<Asked, 'key'>, wish: CountWish, style: LengthStyle): string => {
  const words = wishWords(asked, wish, style);
  if (asked.key !== 'repeats') return `${asked.key} ${words}`;
  if (typeof wish === 'string') return `an ${wish} number of repeats`;
  return `${words} ${wish === 1 ? 'repeat' : 'repeats'}`;
};

const onSide = ({ on, of }: Pick<Asked, 'on' | 'of'>): string =>
  on === undefined ? (of === undefined ? '' : ` of kind ${of + 1}`) : ` on the ${SIDES[on]} side`;
