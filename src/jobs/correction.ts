/** What a print makes up for, in words. */

import { correctionWords, isCorrected, type PerEdge } from '../pagination/index.ts';

/** `corrected for your printer: short edge × 1.0101, long edge × 1.0000`; nothing where nothing is corrected. */
export const correctionLines = (measured: PerEdge): readonly string[] =>
  isCorrected(measured) ? [`corrected for your printer: ${correctionWords(measured)}`] : [];
