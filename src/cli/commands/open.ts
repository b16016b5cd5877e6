/** `open`: the page for the browser, served on this computer only. */

import type { Define } from '../define.ts';
import { outputName } from '../options.ts';
import type { OpenOptions } from './run-open.ts';

export const defineOpen: Define = (command, io) => {
  command
    .description(
      'Open the page in your browser: figures, fits and sheets without a terminal. It is served on this ' +
        'computer only (the loopback address), and runs until you stop it with Ctrl+C.',
    )
    .argument('[plan]', 'a plan file (YAML) to open the page with')
    .option(
      '--save <file>',
      'write the whole page, with the plan in it, as one file, and serve nothing',
      outputName,
    )
    .option('--no-browser', 'only print the address')
    .addHelpText('after', HELP)
    .action(async (plan: string | undefined, options: OpenOptions) => {
      const { runOpen } = await import('./run-open.ts');
      await runOpen(io, plan, options);
    });
};

const HELP = `
Examples:
  swagwright open
  swagwright open raffle-quilt.yaml
  swagwright open --no-browser
  swagwright open raffle-quilt.yaml --save raffle.html`;
