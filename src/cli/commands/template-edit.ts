/** `template edit FILE`: set right what the print of a template's outline showed to be wrong. */

import { addSetRight } from '../add-set-right.ts';
import type { Define } from '../define.ts';
import { addJson, addOutput } from '../options.ts';
import type { EditOptions } from './run-template-edit.ts';

export const defineEdit: Define = (command, io) => {
  command
    .description(
      'Set a template file right, once the acrylic has lain on the print of its outline: its size, a stretch of its ' +
        'edge, the breaks where sections begin.',
    )
    .argument('<file>', 'the template file (YAML), or the name of a template that comes with swagwright');
  addOutput(command, 'the template file to write', "the template's name and -edited.yaml");
  command.option('--in-place', 'change the template file itself');
  addSetRight(command, 'its outline');
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (file: string, options: EditOptions) => {
      const { runEdit } = await import('./run-template-edit.ts');
      await runEdit(io, file, options);
    });
};

const HELP = `
Examples:
  swagwright template edit corbel.yaml --off "1/16 in longer" --in-place
  swagwright template edit corbel.yaml --break "shoulder=3 1/4 in" --rename "dot 1=collar"
  swagwright template edit corbel.yaml --stretch "collar to shoulder straight" -o corbel-2.yaml

A PLACE is a length along the edge from the heel (such as 3 1/4 in or 82 mm), x,y as in the file, heel,
crown, or a break's name. Bare lengths are in the template file's own units. Lengths are those of the edge
before anything is set right. Sizes are set right by what lies between heel and crown end; etched lines stay
where the file says. Corners are breaks by themselves, and cannot be taken out but by their stretch. The
edge is written as steps, and of the comments those on top are kept.`;
