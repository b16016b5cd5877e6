/** `template import DRAWING`: from a path of an SVG drawing to a template file. */

import { addEdge } from '../add-edge.ts';
import type { Define } from '../define.ts';
import { addJson, addOutput } from '../options.ts';
import type { ImportOptions } from './run-template-import.ts';

export const defineImport: Define = (command, io) => {
  command
    .description(
      'Turn a path of an SVG drawing into a template file: lines and circles come out exact, other curves as arcs ' +
        'within 0.002 mm.',
    )
    .argument('<drawing>', 'an SVG file');
  addOutput(command, 'the template file to write', "the drawing's name and .yaml");
  command
    .option('--id <name>', 'the id of the path (default: the longest path)')
    .option(
      '--scale <length>',
      'what one unit of the drawing measures, where it does not say it, or says it wrong',
    );
  addEdge(command, "mm from the drawing's upper left corner");
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (drawing: string, options: ImportOptions) => {
      const { runImport } = await import('./run-template-import.ts');
      await runImport(io, drawing, options);
    });
};

const HELP = `
Examples:
  swagwright template import drawing.svg
  swagwright template import drawing.svg --id edge --scale 1mm
  swagwright template import outline.svg --heel 4 --crown 1 --foot left

An open path runs from the heel to the crown end, the foot on its left, unless --foot says right. Of a closed one
the long straight side is taken for the back, and a straight side at either end of it for a cut end; the rest is
the working edge. The corners are numbered and listed, so that --heel and --crown can say it otherwise. Ends that
nearly meet are joined. The edge is laid level by the long straight side, or from the heel to the crown end.
The drawing is taken as a browser paints it: what is not seen is left out, unless --id names it. What cannot be
followed is refused with its place: transforms in styles or about a point of their own (transform-origin), masks, clip
paths that cut the path. Text and pictures in the drawing are not read, and nothing beyond this one file.`;
