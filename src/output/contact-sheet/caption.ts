/** What stands under a candidate's picture: the plain sentence, what it is made with, the row beyond it, and how far from wishes it is. */

import type { LengthStyle } from '../../length/index.ts';
import type { Ranked } from '../../swag/index.ts';
import { answerWords, furtherWords, likeWords, makingWords, plainSentence } from '../text/index.ts';

/** `like` says how many look like it. */
export const captionOf = (
  ranked: Pick<Ranked, 'field' | 'fit' | 'score' | 'answers'>,
  style: LengthStyle,
  like = 0,
): readonly string[] => [
  plainSentence(ranked, style),
  [makingWords(ranked, style), likeWords(like)].filter((words) => words !== '').join('; '),
  ...furtherWords(ranked, style),
  ...answerWords(ranked, style),
];
