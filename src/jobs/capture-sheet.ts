/** The sheet that a template is photographed on. */

import { writeCaptureSheet } from '../output/capture-sheet/index.ts';
import { PAPERS } from '../pagination/index.ts';
import { type Made, type Means, pdfMeans } from './made.ts';
import { pageSetups } from './pages.ts';

/** The papers that hold its marks. */
export const CAPTURE_PAPERS = ['letter', 'a4'] as const;

export const captureSheet = async (paper: (typeof CAPTURE_PAPERS)[number], means: Means): Promise<Made> => {
  const [setup] = pageSetups({ paper }, ['portrait']);
  if (!setup) throw new Error('A capture sheet has one paper');
  return {
    bytes: await writeCaptureSheet({ setup, ...(await pdfMeans(means)) }),
    words: `one sheet of ${PAPERS[paper].name}; print it at 100 % / actual size`,
  };
};
