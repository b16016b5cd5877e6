/** What is asked of swags, and what might be asked instead, as a person says it. */

import { exactLength, type LengthStyle } from '../length/index.ts';
import { type CountWish, SIDES, sayShare, wishText } from '../plan/index.ts';
import type { Asked } from './asked.ts';

/** `about 9 in`, `at least 80 %`, `5 to 7`, `odd`. */
export const wishWords = ({ key }: Pick<Asked, 'key'>, wish: CountWish, style: LengthStyle): string => {
  const say = { repeats: String, use: sayShare, span: undefined, depth: undefined, gap: undefined }[key];
  return wishText(wish, say ?? ((mm) => exactLength(mm, style)));
};

/** `span about 9 in`, `7 repeats on the top side`, `an odd number of repeats`. */
export const askedWords = (asked: Pick<Asked, 'key' | 'wish' | 'on'>, style: LengthStyle): string =>
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

const onSide = ({ on }: Pick<Asked, 'on'>): string => (on === undefined ? '' : ` on the ${SIDES[on]} side`);
