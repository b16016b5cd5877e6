/** From the options about paper to the pages that are read and not taped. */

import type { Units } from '../length/index.ts';
import { type PageSetup, pageSetup } from '../output/pdf/index.ts';
import { DEFAULT_MARGIN, evenMargins, type Orientation, PAPERS, type PaperId } from '../pagination/index.ts';
import type { PaperOptions } from './options.ts';
import { readSheetOptions } from './sheets.ts';

/** The setups that the options leave possible: both orientations where they are left open. */
export const readPages = (
  options: PaperOptions,
  units: Units,
  usual: PaperId,
  orientations: readonly Orientation[] = ['portrait', 'landscape'],
): readonly PageSetup[] => {
  const { paper, orientation, margins } = readSheetOptions(options, units, usual);
  const held = orientation === 'portrait' || orientation === 'landscape' ? [orientation] : orientations;
  const usualMargins = evenMargins(DEFAULT_MARGIN);
  const given = typeof margins === 'number' ? evenMargins(margins) : { ...usualMargins, ...margins };
  return held.map((o) => pageSetup(PAPERS[paper], o, given));
};
