/**
 * The sheets of paper that a plan may name, upright, in exact millimetres. To add one: a row here.
 *
 * Sources: A4 and A3 from ISO 216 (A series, sizes in whole mm); letter and tabloid from ASME Y14.1 (8 1/2 × 11
 * and 11 × 17 in); legal, 8 1/2 × 14 in, is not in that standard (the media size lists of printing systems have it).
 * Written in mm, because products such as 8.5 · 25.4 are not exact in binary.
 */

import type { Units } from '../length/index.ts';

const LETTER_WIDTH = 215.9;
const LETTER_HEIGHT = 279.4;
const A4_WIDTH = 210;

/** `name` is what is printed on the sheets. */
const SIZES = {
  letter: { name: 'Letter', width: LETTER_WIDTH, height: LETTER_HEIGHT },
  a4: { name: 'A4', width: A4_WIDTH, height: 297 },
  legal: { name: 'Legal', width: LETTER_WIDTH, height: 355.6 },
  tabloid: { name: 'Tabloid', width: LETTER_HEIGHT, height: 431.8 },
  a3: { name: 'A3', width: 297, height: 420 },
  // As narrow as A4 and as short as letter: the page lies wholly on either, so that neither is shrunk to fit.
  'letter-a4': { name: 'Letter or A4', width: A4_WIDTH, height: LETTER_HEIGHT, inTray: false },
} as const;

export type PaperId = keyof typeof SIZES;
export const PAPER_IDS = Object.keys(SIZES) as readonly PaperId[];

/** The paper of most printers where that unit is used: common practice, no source. */
export const USUAL_PAPER: Readonly<Record<Units, PaperId>> = { in: 'letter', cm: 'a4', mm: 'a4' };

export interface Paper {
  /** Pages of a roll have a width of their own, and are as long as it takes. */
  readonly id: PaperId | 'roll';
  /** As it is printed on the sheets. */
  readonly name: string;
  /** The short side, mm. */
  readonly width: number;
  /** The long side, mm. */
  readonly height: number;
  /** False where no tray holds just this size, so that a viewer must not look for one. */
  readonly inTray: boolean;
}

export const PAPERS = Object.fromEntries(
  PAPER_IDS.map((id): [PaperId, Paper] => [id, { id, inTray: true, ...SIZES[id] }]),
) as Readonly<Record<PaperId, Paper>>;
