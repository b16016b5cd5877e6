/**
 * The options that say which part of an outline is the working edge, and how its file is to be written. Apart from what
 * reads them, which needs more: help comes without it.
 */

import type { Command } from 'commander';

export interface EdgeOptions {
  readonly heel?: string;
  readonly crown?: string;
  readonly foot?: string;
  readonly title?: string;
  readonly units?: string;
}

export const addEdge = (command: Command, coordinates: string): Command =>
  command
    .option('--heel <place>', `where the edge begins: the number of a corner, or x,y in ${coordinates}`)
    .option('--crown <place>', 'where it ends, said the same way')
    .option(
      '--foot <side>',
      'left or right: where the foot runs as you look at the picture, going from the heel',
    )
    .option('--title <text>', "the template's title (default: the file's name)")
    .option('--units <unit>', 'mm or in: what the template file is written in (default: mm)');
