/** What a fit answers to what was asked of its swags: `span 9 3/16 in (asked: about 9 in)`. */

import type { LengthStyle } from '../../length/index.ts';
import { SIDES, sayShare } from '../../plan/index.ts';
import { type Answer, changesFor, type Ranked, toldAnswers, wishWords } from '../../swag/index.ts';
import { rangeWords } from './choice-words.ts';

/** One for each thing that is asked and worth telling of. */
export const answerWords = (ranked: Pick<Ranked, 'answers'>, style: LengthStyle): readonly string[] => {
  const changes = changesFor(ranked, style);
  return toldAnswers(ranked.answers).map((answer) => {
    const change = changes.find((c) => c.answer === answer);
    const asked = wishWords(answer, answer.wish, style);
    const unmet = change ? `; not met, it takes ${change.text}` : '';
    return `${nameOf(answer)} ${foundWords(answer, style)} (asked: ${asked}${unmet})`;
  });
};

const nameOf = ({ key, on }: Answer): string => (on === undefined ? key : `${key} on the ${SIDES[on]} side`);

const foundWords = ({ key, least, most }: Answer, style: LengthStyle): string => {
  if (key === 'repeats') return least === most ? String(least) : `${least} to ${most}`;
  if (key !== 'use') return `${rangeWords([least, most], style)} ${style.unit}`;
  const [low, high] = [least, most].map((share) => sayShare(Math.round(100 * share) / 100)) as [
    string,
    string,
  ];
  return low === high ? low : `${low.replace(' %', '')} to ${high}`;
};
