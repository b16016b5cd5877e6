/** The options that set an edge right. Apart from what reads them, which needs more: help comes without it. */

import type { Command } from 'commander';

export interface SetRightOptions {
  readonly break?: readonly string[];
  readonly rename?: readonly string[];
  readonly takeOut?: readonly string[];
  readonly stretch?: readonly string[];
  readonly off?: string;
}

/** An option that may be given several times; what it is given may hold commas. */
export const gathered = (text: string, before: readonly string[] = []): readonly string[] => [
  ...before,
  text,
];

export const addSetRight = (command: Command, print: string): Command =>
  command
    .option(
      '--break <name=place>',
      'a break where a section begins, or the name of a corner, such as "shoulder=3 1/4 in"; may be given again',
      gathered,
    )
    .option('--rename <old=new>', 'another name for a break; may be given again', gathered)
    .option('--take-out <name>', 'takes a break out, or the name of a corner; may be given again', gathered)
    .option(
      '--stretch <way>',
      'sets a stretch right: "PLACE to PLACE straight", or "PLACE to PLACE through x,y x,y"; may be given again',
      gathered,
    )
    .option(
      '--off <length>',
      `what the acrylic is longer or shorter than ${print}, heel to crown end: "1/16 in longer"`,
    );
