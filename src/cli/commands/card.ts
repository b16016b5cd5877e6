/** `card PLAN`: the marking card for the sewing room. */

import type { Define } from '../define.ts';
import { addJson, addPaper, addPart, outputName } from '../options.ts';
import type { CardOptions } from './run-card.ts';

export const defineCard: Define = (command, io) => {
  command
    .description(
      'Print the marking card for the sewing room: where every start, centre and stop mark goes along each ' +
        'side, how the template sits for both halves, where to pause, channels, and thread. As text, or as a PDF.',
    )
    .argument('<plan>', 'the plan file (YAML)')
    .option('-o, --output <file>', 'a PDF or text file to write (default: text on stdout)', outputName);
  addPart(command);
  addPaper(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (plan: string, options: CardOptions) => {
      const { runCard } = await import('./run-card.ts');
      await runCard(io, plan, options);
    });
};

const HELP = `
Examples:
  swagwright card raffle-quilt.yaml
  swagwright card raffle-quilt.yaml -o raffle-card.pdf --paper a4
  swagwright card raffle-quilt.yaml -o raffle-card.txt`;
