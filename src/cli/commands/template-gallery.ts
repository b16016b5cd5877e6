/** `template gallery FILE`: a contact sheet of what a template can make. */

import type { Define } from '../define.ts';
import { addJson, addOutput, addPaper } from '../options.ts';
import type { GalleryOptions } from './run-template-gallery.ts';

export const defineGallery: Define = (command, io) => {
  command
    .description(
      'Print a contact sheet of the swags that a template can make: from each section to each section, with the ' +
        'template inside and outside the swag, heel first and crown first, at several spans.',
    )
    .argument('<file>', 'the template file (YAML), or the name of a template that comes with swagwright');
  addOutput(command, 'the PDF to write', "the template's name and -gallery.pdf");
  command
    .option('--clearance <length>', "needle to the foot's outer edge (default: 1/4 in)")
    .option('--spans <lengths>', 'the spans to show, with commas: 5,6 1/2,8 (default: three for each part)');
  addPaper(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (file: string, options: GalleryOptions) => {
      const { runGallery } = await import('./run-template-gallery.ts');
      await runGallery(io, file, options);
    });
};

const HELP = `
Examples:
  swagwright template gallery baluster
  swagwright template gallery my-own.yaml --spans 5,6,7 --paper a4

Bare lengths are in the template file's own units. Swags whose stitching would cross itself or their
neighbours' are left out.`;
