/** What a job is given from where it runs, and what it hands back: bytes, and sentences about them as data. */

import type { Deflate, FontBytes } from '../output/pdf/index.ts';
import type { Means } from '../output/writers/index.ts';

import { correctionWords, isCorrected, type PerEdge, scaledWords } from '../pagination/index.ts';

export type { Means } from '../output/writers/index.ts';

export interface Made<Bytes = Uint8Array> {
  readonly bytes: Bytes;
  /** What the file holds, as it is said after the file's name: `the marking card, 2 pages of Letter`. */
  readonly words: string;
  /** How much paper it takes: `2 pages of Letter`. */
  readonly paper?: string;
  /** What a person should know about it: what was left out, letters that cannot be printed. */
  readonly notices?: readonly string[];
  /** What was designed, a line each. */
  readonly summary?: readonly string[];
  /** What was done to make up for her printer. */
  readonly corrections?: readonly string[];
}

/** What the writers of PDF take. */
export const pdfMeans = async ({
  deflate,
  fonts,
}: Means): Promise<{ readonly deflate: Deflate; readonly fonts: FontBytes }> => ({
  deflate,
  fonts: await fonts(),
});

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
