/** What a print makes up for, in words. */

import { correctionWords, isCorrected, type PerEdge, scaledWords } from '../pagination/index.ts';

/**
 * `corrected for your printer: short edge × 1.0101, long edge × 1.0000`, and where it was no printer that did it, that;
 * nothing where nothing is corrected.
 */
export const correctionLines = (measured: PerEdge): readonly string[] => {
  if (!isCorrected(measured)) return [];
  const scaled = scaledWords(measured);
  return [
    `corrected for your printer: ${correctionWords(measured)}`,
    ...(scaled === undefined ? [] : [scaled]),
  ];
};
