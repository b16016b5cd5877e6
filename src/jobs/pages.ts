/** Pages that are read and not taped. */

import { type PageSetup, pageSetup } from '../output/pdf/index.ts';
import {
  DEFAULT_MARGIN,
  evenMargins,
  type LayOutOptions,
  type Orientation,
  PAPERS,
  type PaperId,
} from '../pagination/index.ts';

/** Sheets and pages of one paper. Its units are the plan's. */
export type SheetsWanted = Omit<LayOutOptions, 'units' | 'paper'> & { readonly paper: PaperId };

export type PagesWanted = Pick<SheetsWanted, 'paper' | 'orientation' | 'margins'>;

/** The pages that are left to choose from: both orientations where they are left open. */
export const pageSetups = (
  { paper, orientation, margins }: PagesWanted,
  orientations: readonly Orientation[] = ['portrait', 'landscape'],
): readonly PageSetup[] => {
  const held = orientation === 'portrait' || orientation === 'landscape' ? [orientation] : orientations;
  const usual = evenMargins(DEFAULT_MARGIN);
  const given = typeof margins === 'number' ? evenMargins(margins) : { ...usual, ...margins };
  return held.map((o) => pageSetup(PAPERS[paper], o, given));
};
