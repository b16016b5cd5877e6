/** The answers that come at once, while hands type and drag. Neither fills nor PDF are loaded for them. */

import { checked } from './desk.ts';
import { decided, fits, look, words } from './look.ts';
import { others } from './quilt.ts';
import type { Answering } from './serve.ts';
import { shelf } from './shelf.ts';
import { dragged, swagView } from './swag-view.ts';

export const QUICK: Answering = {
  look: ({ input, isMoving }) => look(input, isMoving),
  check: ({ input }) => checked(input),
  others: ({ input }) => others(input),
  fits: ({ input, from, count }) => fits(input, from, count),
  words: ({ input }) => words(input),
  swag: ({ input, side }) => swagView(input, side),
  drag: ({ input, side, halfSpan }) => dragged(input, side, halfSpan),
  decided: ({ input }) => decided(input),
  shelf: ({ own, units }) => shelf(own, units),
};
