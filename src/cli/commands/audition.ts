/** `audition PLAN`: small copies of the frame, with fills and without, to choose from and to draw on. */

import type { Define } from '../define.ts';
import { addJson, addOutput, addPaper, addPart, addShow, addWithout } from '../options.ts';
import type { AuditionOptions } from './run-audition.ts';

export const defineAudition: Define = (command, io) => {
  command
    .description(
      'Print small copies of the swags side by side, to a stated scale: inside, channels and background filled ' +
        'together, and each fill among others; or empty frames to draw in.',
    )
    .argument('<plan>', 'the plan file (YAML)');
  addOutput(command, 'the PDF to write', "the plan's name and -audition.pdf, or -frames.pdf with --empty");
  command
    .option('--region <region>', 'swag, background, channel or corner (default: each but corner)')
    .option(
      '--fills <names>',
      'the fills to try; several with commas (default: all that suit the region)',
      (text: string, before: readonly string[] = []) => [...before, ...text.split(',').map((s) => s.trim())],
    )
    .option('--spacing <lengths>', 'the spacings to try each at; several with commas')
    .option(
      '--empty <number>',
      'a page of so many empty frames to draw in; with 1 and --scale 1 on as many sheets as it takes',
    )
    .option(
      '--scale <number>',
      '1 for true size, 2 for half of it, and so on (default: as large as a few pages hold)',
    );
  addWithout(command);
  addPart(command);
  addShow(command, 'repeat');
  addPaper(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (plan: string, options: AuditionOptions) => {
      const { runAudition } = await import('./run-audition.ts');
      await runAudition(io, plan, options);
    });
};

const HELP = `
Examples:
  swagwright audition raffle-quilt.yaml
  swagwright audition raffle-quilt.yaml --region background --fills stipple,pebbles --spacing 1/4,3/8
  swagwright audition raffle-quilt.yaml --empty 6
  swagwright audition raffle-quilt.yaml --empty 1 --scale 1 --show corner`;
