/** `template FILE`: check a template, and print its outline to lay the acrylic on. */

import type { Define } from '../define.ts';
import { addJson, addOutput, addSheets } from '../options.ts';
import type { TemplateOptions } from './run-template.ts';
import { defineEdit } from './template-edit.ts';
import { defineGallery } from './template-gallery.ts';
import { defineImport } from './template-import.ts';
import { defineSheet } from './template-sheet.ts';
import { defineTrace } from './template-trace.ts';

export const defineTemplate: Define = (command, io) => {
  // Without this, --paper after `sheet` would be taken for the option of `template` itself.
  command.enablePositionalOptions();
  command
    .usage('[options] <file>\n       swagwright template trace|import|edit|sheet|gallery ...')
    .description(
      'Check a template file, and print its outline at true size to lay the acrylic on, with the line that ' +
        "the needle stitches round it and a spacer of the foot's size. Or get a template from a picture or a " +
        'drawing, or see what it can make.',
    )
    .argument('<file>', 'the template file (YAML), or the name of a template that comes with swagwright');
  addOutput(command, 'the PDF to write', "the template's name and -outline.pdf");
  command.option('--clearance <length>', "needle to the foot's outer edge (default: 1/4 in)");
  command.option('--solid', 'print the template as a black shape, to cut out, or to scan and trace');
  addSheets(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (file: string, options: TemplateOptions) => {
      const { runTemplate } = await import('./run-template.ts');
      await runTemplate(io, file, options);
    });
  const named = (name: string, summary: string) =>
    command.command(name).summary(summary).helpOption('-h, --help', 'print this help');
  defineTrace(named('trace', 'from a scan, or a photograph of the capture sheet, to a template file'), io);
  defineImport(named('import', 'from a path of an SVG drawing to a template file'), io);
  defineEdit(named('edit', 'set right what the print of its outline shows to be wrong'), io);
  defineSheet(named('sheet', 'print the capture sheet, to photograph a template on'), io);
  defineGallery(named('gallery', 'a contact sheet of the swags that a template can make'), io);
};

const HELP = `
Examples:
  swagwright template baluster
  swagwright template templates/my-own.yaml --paper a4 --clearance 1/4
  swagwright template trace scan.png
  swagwright template import drawing.svg
  swagwright template edit my-own.yaml --off "1/16 in longer" --in-place
  swagwright template sheet --paper a4
  swagwright template gallery baluster

Bare lengths are in the template file's own units.`;
