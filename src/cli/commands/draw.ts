/** `draw PLAN`: the whole design as one picture. */

import { WRITERS } from '../../output/writers/index.ts';
import type { Define } from '../define.ts';
import { eitherOf } from '../either-of.ts';
import { addJson, addOutput, addPart, addShow, addTransfer, addWithout } from '../options.ts';
import type { DrawOptions } from './run-draw.ts';

export const defineDraw: Define = (command, io) => {
  command
    .description(
      `Draw the whole design as one picture at true size: ${eitherOf(
        WRITERS.map(({ name, about }) => (about === undefined ? name : `${name} (${about})`)),
      )}.`,
    )
    .argument('<plan>', 'the plan file (YAML)');
  addOutput(command, 'the picture to write', "the plan's name and .svg");
  command
    .option(
      '--format <format>',
      `${eitherOf(WRITERS.map(({ ending }) => ending))} (default: by the ending of the output's name)`,
    )
    .option('--dpi <number>', 'dots per inch of a PNG (default: 150, less for a large one)')
    .option('--width <pixels>', 'width of a PNG in pixels, instead of --dpi')
    .option(
      '--measured <short,long>',
      "of a PDF: what a print measured along the paper's short and long edge; see mockup --help",
    );
  addPart(command);
  addShow(command, 'all');
  addWithout(command);
  command.option(
    '--colours',
    "a picture to show, in the plan's colours of fabric and thread: without templates, marks and notes, or else without what --without names",
  );
  addTransfer(command, '; projector, light lines and a grid on a dark ground');
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (plan: string, options: DrawOptions) => {
      const { runDraw } = await import('./run-draw.ts');
      await runDraw(io, plan, options);
    });
};

const HELP = `
Examples:
  swagwright draw raffle-quilt.yaml -o raffle.svg
  swagwright draw raffle-quilt.yaml -o raffle.png --width 1600 --without template,notes
  swagwright draw raffle-quilt.yaml -o to-show.png --colours
  swagwright draw raffle-quilt.yaml -o raffle.dxf
  swagwright draw raffle-quilt.yaml -o for-the-cutter.svg --as clean --without fill
  swagwright draw raffle-quilt.yaml -o pounce.svg --as pounce --every 3mm
  swagwright draw raffle-quilt.yaml -o top.pdf --show top --as projector --without fill
  swagwright draw raffle-quilt.yaml -o stencil.dxf --as stencil --slot 1/16 --bridge 1/8 --every 2`;
