/** `template trace PICTURE`: from a scan, or a photograph of the capture sheet, to a template file. */

import { addEdge } from '../add-edge.ts';
import { addSetRight, gathered } from '../add-set-right.ts';
import type { Define } from '../define.ts';
import { addJson, addOutput } from '../options.ts';
import type { TraceCommandOptions } from './run-template-trace.ts';

export const defineTrace: Define = (command, io) => {
  command
    .description(
      'Trace a template from a flatbed scan, or from a photograph of the capture sheet: a filled shape, or the ' +
        'line that a pencil drew round it, becomes a template file, and a picture shows the traced outline over ' +
        'the scan.',
    )
    .argument('<picture>', 'a PNG or JPEG file with one template in it');
  addOutput(command, 'the template file to write', "the picture's name and .yaml");
  command
    .option(
      '--overlay <file>',
      "the PNG of the outline over the picture (default: the picture's name and -outline.png, beside the template)",
    )
    .option('--dpi <number>', "the scan's dots per inch, where its file does not say it, or says it wrong")
    .option(
      '--marks <way>',
      'two marks of a ruler in the picture, and how far apart: "120,340 to 1890,352 is 6 in"',
    )
    .option(
      '--line <side>',
      'of a drawn line take the middle, or its inner or outer side (default: middle; outer of what looks like the rim of acrylic)',
    )
    .option('--thickness <length>', "the acrylic's thickness: the template file then says it")
    .option(
      '--camera <length>',
      'how high the camera was over the sheet, where the acrylic itself lay on it: its edge is then seen too large ' +
        'by what --thickness says, and made smaller',
    )
    .option(
      '--level <what>',
      'what is laid level: the back, the line from end to end (ends), or nothing (picture)',
    )
    .option('--tolerance <length>', 'how far lines and arcs may lie from the outline (default: 0.03 mm)')
    .option(
      '--measured <short,long>',
      "what the capture sheet's lengths measured along its short and its long edge: 170mm=169mm,238mm=237mm",
    );
  addEdge(command, "the picture's pixels");
  addSetRight(command, 'the print of this trace without --off');
  command
    .option(
      '--across <name=length>',
      'a line etched across, near the heel: "A=1/4 in", or "A=812,604" where it runs; may be given again',
      gathered,
    )
    .option(
      '--along <length>',
      'a line etched along the edge: how far inside, or x,y where it runs; may be given again',
      gathered,
    );
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (picture: string, options: TraceCommandOptions) => {
      const { runTrace } = await import('./run-template-trace.ts');
      await runTrace(io, picture, options);
    });
};

const HELP = `
Examples:
  swagwright template trace scan.png
  swagwright template trace photo.jpg --title Corbel --heel 2 --crown 5
  swagwright template trace pencil.png --dpi 300 --line inner
  swagwright template trace scan.png --break "shoulder=3 1/4 in" --stretch "812,604 to 900,610 straight"

Scan at 300 dots per inch, the template dark on light ground or light on dark. The long straight side is taken
for the back and laid level, a straight side at either end for a cut end; what is left is the working edge. Where
that guess is wrong, look at the corners' numbers in the overlay and say --heel and --crown. Where a section
begins on a smooth stretch, put a dot of 2 mm on the template, 3 mm inside its edge, or say --break.

A PLACE is a corner's number in the overlay, x,y in the picture's pixels, a length along the edge from the
heel (such as 3 1/4 in or 82 mm), heel, crown, or a break's name. Numbers and lengths are those of the outline
as it was traced, whatever is set right. A stretch is the shorter way between its two places.

A photograph needs the capture sheet (swagwright template sheet). Draw round the template and photograph the
line: acrylic 1/4 in thick, seen from 16 in, comes out 1.6 % too large unless --thickness and --camera say so. What a lens bends is
taken out by the sheet's eight marks, where the sheet lies flat and the picture was not cut. By how far the marks are
off after that, the outline's expected error is told: by more than 0.3 mm the photograph is called unsure, by more
than 1 mm it is refused. A sheet with six marks is an older one, and tells less: print it again.
Pictures of up to 60 million pixels are read.`;
