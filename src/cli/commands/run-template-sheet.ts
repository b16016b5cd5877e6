/** What `template sheet` does. */

import { CAPTURE_PAPERS, captureSheet } from '../../jobs/capture-sheet.ts';
import { proposedName } from '../../jobs/names.ts';
import type { Io } from '../io.ts';
import { MEANS } from '../means.ts';
import { readWord } from '../option-values.ts';
import type { OutputOptions } from '../options.ts';
import { checkOutputOption } from '../output-option.ts';
import { sayMade } from '../say-made.ts';
import { openOutput } from '../write-set.ts';

export interface SheetCommandOptions extends OutputOptions {
  readonly paper?: string;
}

export const runSheet = async (io: Io, options: SheetCommandOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const paper = options.paper === undefined ? 'letter' : readWord('--paper', options.paper, CAPTURE_PAPERS);
  const usual = proposedName({ kind: 'capture-sheet' });
  const output = await openOutput(io, { asked: options.output, usual }, []);
  const made = await captureSheet(paper, MEANS);
  await output.write(made.bytes);
  await sayMade(io, output, made);
};
