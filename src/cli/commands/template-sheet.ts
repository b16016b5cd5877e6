/** `template sheet`: the sheet that a template is photographed on. */

import type { Define } from '../define.ts';
import { addOutput } from '../options.ts';
import type { SheetCommandOptions } from './run-template-sheet.ts';

export const defineSheet: Define = (command, io) => {
  command.description(
    'Print the capture sheet: marks of known place round an empty field. Draw round a template on it, photograph ' +
      'the sheet, and trace the photograph.',
  );
  addOutput(command, 'the PDF to write', 'capture-sheet.pdf');
  command
    .option('--paper <name>', 'letter or a4; the marks are the same on both (default: letter)')
    .action(async (options: SheetCommandOptions) => {
      const { runSheet } = await import('./run-template-sheet.ts');
      await runSheet(io, options);
    });
};
