/** `template FILE`: check a template, and print its outline to lay the acrylic on. */

import type { Define } from '../command-list.ts';
import { addJson, addOutput, addSheets, type OutputOptions, type SheetOptions } from '../options.ts';

export interface TemplateOptions extends OutputOptions, SheetOptions {
  readonly clearance?: string;
}

export const defineTemplate: Define = (command, io) => {
  command
    .description(
      'Check a template file, and print its outline at true size to lay the acrylic on, with the line that ' +
        'the needle stitches round it.',
    )
    .argument('<file>', 'the template file (YAML), or the name of a template that comes with swagwright');
  addOutput(command, 'the PDF to write', "the template's name and -outline.pdf");
  command.option('--clearance <length>', "needle to the foot's outer edge (default: 1/4 in)");
  addSheets(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (file: string, options: TemplateOptions) => {
      const { runTemplate } = await import('./run-template.ts');
      await runTemplate(io, file, options);
    });
};

const HELP = `
Examples:
  swagwright template baluster
  swagwright template templates/my-own.yaml --paper a4 --clearance 1/4

Bare lengths are in inches.`;
