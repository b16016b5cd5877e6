/** From the options about paper to the pages that are read and not taped. */

import { pageSetups } from '../jobs/pages.ts';
import type { Units } from '../length/index.ts';
import type { PageSetup } from '../output/pdf/index.ts';
import type { PaperId } from '../pagination/index.ts';
import type { PaperOptions } from './options.ts';
import { readSheetOptions } from './sheets.ts';

/** The setups that the options leave possible. */
export const readPages = (options: PaperOptions, units: Units, usual: PaperId): readonly PageSetup[] =>
  pageSetups(readSheetOptions(options, units, usual));
