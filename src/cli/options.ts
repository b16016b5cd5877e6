/** The options that several commands share, in the same words everywhere. */

import type { Command } from 'commander';

export interface OutputOptions {
  readonly output?: string;
  readonly json?: boolean;
}

export interface PaperOptions {
  readonly paper?: string;
  readonly orientation?: string;
  readonly margin?: string;
}

export interface SheetOptions extends PaperOptions {
  readonly overlap?: string;
  readonly measured?: string;
}

export interface RollOptions {
  readonly roll?: string;
}

export const addRoll = (command: Command): Command =>
  command.option(
    '--roll <width>',
    'for a wide printer: pages as wide as its roll and as long as it takes, in place of sheets',
  );

export interface LayerOptions {
  readonly without?: readonly string[];
}

export const addOutput = (command: Command, what: string, usual: string): Command =>
  command.option('-o, --output <file>', `${what} (default: ${usual}; - for stdout)`, outputName);

/** Where a system gives stdout a name of its own, it is stdout all the same. */
export const outputName = (name: string): string =>
  /^\/(dev\/stdout|(dev|proc\/self)\/fd\/1)$/.test(name) ? '-' : name;

export const addJson = (command: Command): Command =>
  command.option('--json', 'print what was made as JSON on stdout, in mm and degrees');

/** For pages that are read, not taped. */
export const addPaper = (command: Command): Command => addPaperAs(command, 'portrait, landscape, or auto');

const addPaperAs = (command: Command, orientation: string): Command =>
  command
    .option('--paper <name>', 'letter, a4, legal, tabloid, a3, or letter-a4, which prints on both')
    .option('--orientation <way>', orientation)
    .option(
      '--margin <length>',
      'white kept at the edges of each sheet, at least 1/4 in; or four lengths: top,right,bottom,left',
    );

export const addSheets = (command: Command): Command =>
  addPaperAs(command, 'portrait, landscape, or auto, whichever takes fewer sheets')
    .option('--overlap <length>', 'how far neighbouring sheets lie over each other')
    .option(
      '--measured <short,long>',
      "what the check square of your last print measured along the paper's short and long edge; the next print makes up for it",
    );

/** Several layers may be named at once, with commas, or one after another. */
export const addWithout = (command: Command): Command =>
  command.option(
    '--without <layers>',
    'leave out fill, way, border, template, channel, stitch, marks or notes; several with commas',
    (text: string, before: readonly string[] = []) => [...before, ...text.split(',').map((s) => s.trim())],
  );

export interface TransferOptions {
  readonly as?: string;
  readonly mirrored?: boolean;
  readonly every?: string;
  readonly slot?: string;
  readonly bridge?: string;
}

/** `more` is what a command has beside what goes onto cloth as lines. */
export const addTransfer = (command: Command, more = ''): Command =>
  command
    .option(
      '--as <what>',
      'to get it onto cloth: clean, what is stitched and nothing else, in joined lines; pounce, holes along them; ' +
        `stencil, the stitching and the channels as slots${more}`,
    )
    .option(
      '--every <length>',
      'how far apart holes are (default: 1/8 in, or 3 mm), or bridges (default: 2 in, or 50 mm)',
    )
    .option('--slot <width>', 'of a stencil: how wide its slots are (default: 1/16 in, or 1.5 mm)')
    .option('--bridge <width>', 'of a stencil: how wide its bridges are at least (default: 1/8 in, or 3 mm)')
    .option('--mirrored', 'with --as: turned over, left for right, for what is laid face down');

export interface ShowOptions {
  readonly show?: string;
}

export const addShow = (command: Command, usual: string): Command =>
  command.option(
    '--show <what>',
    `all, side, repeat or corner; or by name: top, top 2, corner top right (default: ${usual})`,
  );

export interface PartOptions {
  readonly part?: readonly string[];
}

/** Several parts may be named at once, with commas, or one after another. */
export const addPart = (command: Command): Command =>
  command.option(
    '--part <names>',
    'of a plan with parts only these, by their names; several with commas (default: all)',
    (text: string, before: readonly string[] = []) => [...before, ...text.split(',').map((s) => s.trim())],
  );
