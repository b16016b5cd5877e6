/** What a fit answers to what was asked of its swags: `span 9 3/16 in (asked: about 9 in)`. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import { SIDES, sayShare } from '../../plan/index.ts';
import { type Answer, changesFor, type Ranked, toldAnswers, wishWords } from '../../swag/index.ts';
import { rangeWords, usedAtMost, usedWords } from './choice-words.ts';

/** One for each thing that is asked and worth telling of. */
export const answerWords = (ranked: Pick<Ranked, 'answers'>, style: LengthStyle): readonly string[] => {
  const changes = changesFor(ranked, style);
  return toldAnswers(ranked.answers).map((answer) => {
    const change = changes.find((c) => c.answer === answer);
    const asked = wishWords(answer, answer.wish, style);
    // What is asked about may be farther off than an eye sees.
    const away = answer.meets ? '' : `; ${offWords(answer, style)} off`;
    const unmet = change ? `; not met, it takes ${change.text}` : away;
    return `${nameOf(answer)} ${foundWords(answer, style)} (asked: ${asked}${unmet})`;
  });
};

const nameOf = ({ key, on, of }: Answer): string =>
  on === undefined
    ? of === undefined
      ? key
      : `${key} of kind ${of + 1}`
    : `${key} on the ${SIDES[on]} side`;

const foundWords = ({ key, wish, meets, least, most }: Answer, style: LengthStyle): string => {
  if (key === 'repeats') return least === most ? String(least) : `${least} to ${most}`;
  if (key !== 'use') return `${rangeWords([least, most], style)} ${style.unit}`;
  if (meets && typeof wish === 'number') return sayShare(wish);
  const [low, high] = [usedWords(least), most - least < SAME ? usedWords(least) : usedAtMost(most)];
  return low === high ? low : `${low.replace(' %', '')} to ${high}`;
};

/** Shares that differ by less are told as one. */
const SAME = 0.005;

const offWords = ({ key, off }: Answer, style: LengthStyle): string =>
  key === 'repeats' ? String(off) : key === 'use' ? usedAtMost(off) : formatLength(off, style);
