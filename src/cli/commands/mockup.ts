/** `mockup PLAN`: the design at true size, on sheets to tape together. */

import type { Define } from '../define.ts';
import {
  addJson,
  addOutput,
  addPart,
  addRoll,
  addSheets,
  addShow,
  addTransfer,
  addWithout,
} from '../options.ts';
import type { MockupOptions } from './run-mockup.ts';

export const defineMockup: Define = (command, io) => {
  command
    .description(
      'Print the design at true size, on sheets of paper that tape together: the stitching, the marks and ' +
        'the template in place. Print at 100 % / actual size, and measure the check square.',
    )
    .argument('<plan>', 'the plan file (YAML)');
  addOutput(command, 'the PDF to write', "the plan's name and -mockup.pdf");
  addSheets(command);
  addRoll(command);
  command.option('--count', 'only say how many sheets it takes, and write nothing');
  addPart(command);
  addShow(command, 'a strip whole, of a border one corner');
  addWithout(command);
  addTransfer(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (plan: string, options: MockupOptions) => {
      const { runMockup } = await import('./run-mockup.ts');
      await runMockup(io, plan, options);
    });
};

const HELP = `
Examples:
  swagwright mockup raffle-quilt.yaml
  swagwright mockup raffle-quilt.yaml --paper a4 --margin 10mm --without fill,template
  swagwright mockup raffle-quilt.yaml --as clean --mirrored
  swagwright mockup raffle-quilt.yaml --show top --roll 36in

Sheets of --as clean are for tear-away or wash-away stabiliser: they hold the stitching and small crosses
to tape by, and the check square is on the cover.

If a print comes out a little too large or too small: lay a ruler on it, along the paper's short edge and
then along its long edge, and say what you read, in this order, also where the sheet is read lying on its
long edge. (The check square says beside its sides which is which.) The next print makes up for it, its sheets
turned the same way; do not mix the two prints. Measure a print that was made without --measured.
  --measured 1.98,2                   the 2 in square is 1.98 in along the short edge and 2 in along the long
  --measured "1 31/32, 2"             the same in fractions
  --measured 6in=5.97in,9in=9in       what the long rules say = what your ruler says; this tells more
  --measured 50mm=49.6mm,50mm=50mm    the same in mm`;
