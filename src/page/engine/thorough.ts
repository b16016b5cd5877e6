/** The answers that take their time: fills and PDF, with all that they need. */

import { classCount, printClass } from './class.ts';
import { decoded } from './decode.ts';
import { drawing } from './drawing.ts';
import { filledWords, fillList, fills } from './fills.ts';
import { pictureFile } from './picture-file.ts';
import { points } from './points.ts';
import { pageCounts, print, printCaptureSheet, printOutline, sheetCount } from './print.ts';
import type { Answering } from './serve.ts';
import { trace } from './trace.ts';

export const THOROUGH: Answering = {
  fills: ({ input, side }) => fills(input, side),
  words: ({ input }) => filledWords(input),
  'fill-list': () => fillList(),
  points: ({ points: input }) => points(input),
  trace: ({ picture }) => trace(picture, decoded),
  'capture-sheet': ({ paper, fonts }) => printCaptureSheet(paper, fonts),
  drawing: ({ fileName, svg, units }) => drawing(fileName, svg, units),
  print: ({ input, what, choices, fonts }) => print(input, what, choices, fonts),
  picture: (asked) => pictureFile(asked),
  'count-sheets': ({ input, choices }) => sheetCount(input, 'sheets', choices),
  'count-quilt-sheets': ({ input, choices }) => sheetCount(input, 'quilt-sheets', choices),
  'count-pages': pageCounts,
  'class-count': ({ input, table, choices }) => classCount(input, table, choices),
  class: ({ input, table, choices, fonts }) => printClass(input, table, choices, fonts),
  outline: ({ name, own, choices, fonts }) => printOutline(name, own, choices, fonts),
};
