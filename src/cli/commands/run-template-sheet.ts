/** What `template sheet` does. */

import { writeCaptureSheet } from '../../output/capture-sheet/index.ts';
import { pageSetup } from '../../output/pdf/index.ts';
import { DEFAULT_MARGIN, evenMargins, PAPERS } from '../../pagination/index.ts';
import type { Io } from '../io.ts';
import { say } from '../messages.ts';
import { readWord } from '../option-values.ts';
import { checkOutputOption } from '../output-option.ts';
import { pdfMeans } from '../render-pdf.ts';
import { openOutput } from '../write-set.ts';
import type { SheetCommandOptions } from './template-sheet.ts';

export const runSheet = async (io: Io, options: SheetCommandOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const paper =
    options.paper === undefined ? 'letter' : readWord('--paper', options.paper, ['letter', 'a4'] as const);
  const output = await openOutput(io, { asked: options.output, usual: 'capture-sheet.pdf' }, []);
  const setup = pageSetup(PAPERS[paper], 'portrait', evenMargins(DEFAULT_MARGIN));
  await output.write(await writeCaptureSheet({ setup, ...(await pdfMeans()) }));
  await say(io, `${output.name}: one sheet of ${PAPERS[paper].name}; print it at 100 % / actual size`);
};
