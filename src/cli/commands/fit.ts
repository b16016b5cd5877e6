/** `fit PLAN`: what fits, ranked. */

import type { Define } from '../define.ts';
import { addJson, addPaper, addPart, outputName } from '../options.ts';
import { addWishes } from '../wish-options.ts';
import type { FitOptions } from './run-fit.ts';

export const defineFit: Define = (command, io) => {
  command
    .description(
      'Find what fits the layout: which part of which template, how often, and how it is set. The best come ' +
        'first, and what looks alike is shown once; where nothing fits, it says what came nearest and what would make it fit.',
    )
    .argument('<plan>', 'the plan file (YAML)')
    .option('--most <number>', 'how many to show (default: 10, at most 100)')
    .option(
      '--all',
      'list each by itself (with numbers of their own); otherwise what looks alike is shown once',
    )
    .option(
      '--sheet <file>',
      'draw them side by side, to one scale, in a PDF to choose from by eye',
      outputName,
    )
    .option('--take <number>', 'write the plan again with everything decided as in that result')
    .option(
      '-o, --output <file>',
      "where --take writes it (default: the plan's name, -fit- and the number; - for stdout)",
      outputName,
    )
    .option('--in-place', 'let --take change the plan file itself');
  addWishes(command);
  addPart(command);
  addPaper(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (plan: string, options: FitOptions) => {
      const { runFit } = await import('./run-fit.ts');
      await runFit(io, plan, options);
    });
};

const HELP = `
Examples:
  swagwright fit raffle-quilt.yaml
  swagwright fit raffle-quilt.yaml --sheet choices.pdf --most 12
  swagwright fit raffle-quilt.yaml --take 3 -o raffle-quilt-chosen.yaml
  swagwright fit raffle-quilt.yaml --span "about 10" --use "at least 3/4" --touching

What the plan fixes stays fixed: give it a list of templates and leave swag out to see everything.
A wish is exact (9), a range (8 to 10, at least 8), or about 9: a range must be met, about ranks before
anything else. What options ask stands in place of what the plan says; auto lifts it. Where nothing meets
it all, the nearest come, each with the change that it would take, and --take writes that change too.`;
