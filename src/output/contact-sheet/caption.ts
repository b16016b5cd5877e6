/** What stands under a candidate's picture: the plain sentence, what it is made with, and the row beyond it. */

import type { LengthStyle } from '../../length/index.ts';
import type { Ranked } from '../../swag/index.ts';
import { beyondWords, likeWords, makingWords, plainSentence } from '../text/index.ts';

/** `like` says how many look like it. */
export const captionOf = (
  ranked: Pick<Ranked, 'field' | 'fit' | 'score'>,
  style: LengthStyle,
  like = 0,
): readonly string[] => [
  plainSentence(ranked, style),
  [makingWords(ranked, style), likeWords(like)].filter((words) => words !== '').join('; '),
  ...beyondWords(ranked, style),
];
