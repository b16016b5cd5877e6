/** What is asked of swags by options, in the words of a plan's `swag`; `wished-plan.ts` reads it. */

import type { Command } from 'commander';

export interface WishOptions {
  readonly span?: string;
  readonly depth?: string;
  readonly use?: string;
  readonly repeats?: string;
  readonly gap?: string;
  readonly touching?: boolean;
}

export const addWishes = (command: Command): Command =>
  command
    .option('--span <wish>', 'how wide a swag is: 9, "about 9", "8 to 10", "at least 8 in"')
    .option('--depth <wish>', 'how deep it is, in the same words')
    .option('--use <wish>', 'how much of the border\'s width is used: "at least 80 %", "about 3/4"')
    .option(
      '--repeats <wish>',
      'how many on a side: 7, odd, even, "5 to 7", "about 9"; or by the sides: 5,7,5,7 or "top 5, right 7"',
    )
    .option('--gap <wish>', 'between neighbours: a length, "at most 1/2", or auto')
    .option('--touching', 'the same as --gap 0: neighbours touch');
