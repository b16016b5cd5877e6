/** The answers that take their time: fills and PDF, with all that they need. */

import { drawing } from './drawing.ts';
import { filledWords, fillList, fills } from './fills.ts';
import { print, printOutline } from './print.ts';
import type { Answering } from './serve.ts';

export const THOROUGH: Answering = {
  fills: ({ input, side }) => fills(input, side),
  words: ({ input }) => filledWords(input),
  'fill-list': () => fillList(),
  drawing: ({ fileName, svg, units }) => drawing(fileName, svg, units),
  print: ({ input, what, choices, fonts }) => print(input, what, choices, fonts),
  outline: ({ name, own, choices, fonts }) => printOutline(name, own, choices, fonts),
};
