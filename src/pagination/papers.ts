/**
 * Sheets of paper by name, upright, in exact millimetres.
 *
 * Sources: A4 and A3 from ISO 216 (A series, sizes in whole mm); letter and tabloid from ASME Y14.1 (8 1/2 × 11
 * and 11 × 17 in); legal, 8 1/2 × 14 in, is not in that standard (the media size lists of printing systems have it).
 * Written in mm, because products such as 8.5 · 25.4 are not exact in binary.
 */

import { MM_PER_INCH } from '../length/index.ts';

export const PAPER_IDS = ['letter', 'a4', 'legal', 'tabloid', 'a3', 'letter-a4'] as const;
export type PaperId = (typeof PAPER_IDS)[number];

export interface Paper {
  readonly id: PaperId;
  /** As it is printed on the sheets. */
  readonly name: string;
  /** The short side, mm. */
  readonly width: number;
  /** The long side, mm. */
  readonly height: number;
  /** False where no tray holds just this size, so that a viewer must not look for one. */
  readonly inTray: boolean;
}

const LETTER_WIDTH = 215.9;
const LETTER_HEIGHT = 279.4;
const A4_WIDTH = 210;

export const PAPERS: Readonly<Record<PaperId, Paper>> = {
  letter: { id: 'letter', name: 'Letter', width: LETTER_WIDTH, height: LETTER_HEIGHT, inTray: true },
  a4: { id: 'a4', name: 'A4', width: A4_WIDTH, height: 297, inTray: true },
  legal: { id: 'legal', name: 'Legal', width: LETTER_WIDTH, height: 355.6, inTray: true },
  tabloid: {
    id: 'tabloid',
    name: 'Tabloid',
    width: LETTER_HEIGHT,
    height: 431.8,
    inTray: true,
  },
  a3: { id: 'a3', name: 'A3', width: 297, height: 420, inTray: true },
  // As narrow as A4 and as short as letter: the page lies wholly on either, so that neither is shrunk to fit.
  'letter-a4': {
    id: 'letter-a4',
    name: 'Letter or A4',
    width: A4_WIDTH,
    height: LETTER_HEIGHT,
    inTray: false,
  },
};

export type Orientation = 'portrait' | 'landscape';

/** Millimetres kept free at each side of the sheet, as the sheet is read. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** The edge that printers cannot reach is 4 to 6.35 mm as a rule; 1/2 in clears nearly all of them. */
export const DEFAULT_MARGIN = MM_PER_INCH / 2;

/** Most printers reach to within 1/4 in of the edge; nearer than that ink is lost. */
export const LEAST_MARGIN = MM_PER_INCH / 4;

/**
 * 1/2 in: the cut runs down the middle, so that 1/4 in of paper lies under every join for the tape to hold, the
 * crosses stand whole on the sheet below, and a feed that is off by the usual 1 mm leaves no gap.
 */
export const DEFAULT_OVERLAP = MM_PER_INCH / 2;

export const evenMargins = (margin: number): Margins => ({
  top: margin,
  right: margin,
  bottom: margin,
  left: margin,
});
