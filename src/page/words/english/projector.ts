/** The swags on a projector, over a table or a wall. */

export const projectorWords = {
  open: 'On a projector',
  openWhy: 'true size on the table or the wall',
  title: 'On a projector',
  opening: 'the projector’s view',

  setting:
    'Point the projector straight at the table or the wall, let this window fill its picture, and lay a tape along both bars, from tick to tick.',
  across: 'The long bar measures',
  up: 'The upright bar measures',
  upEmpty: 'Empty: the same size both ways',
  longBar: 'A bar to lay a tape along, across',
  uprightBar: 'A bar to lay a tape along, up',
  lengthOf: { across: 'length of the long bar', up: 'length of the upright bar' },
  unlikely: ({ least, most }: { readonly least: string; readonly most: string }) =>
    `A projector makes this bar between ${least} and ${most} long. Measure again from tick to tick.`,
  apart:
    'One way would be more than half as large again as the other, and no projector leans so far. Measure both bars again from tick to tick.',
  showPicture: 'Show it at true size',

  shows: 'It shows',
  turned: 'Turned a quarter',
  withFills: 'With fills',
  again: 'Measure again',
  hide: 'Hide these',
  unhide: 'Show the buttons',
  check: ({ square }: { readonly square: string }) =>
    `Check it first: the square at the lower left is ${square} each way. Then measure the grid near all four edges, both ways: a lens that throws from near by, or one that leans, bends it there. Do not zoom the page or move the projector afterwards.`,
  leans: ({ percent }: { readonly percent: number }) =>
    `One way is ${percent} % larger than the other: the projector leans. The picture makes up for it, but not where lines bend; set it straight if you can.`,
  drawing: 'Drawing it …',
  failed: 'It could not be drawn.',
  view: 'What the projector shows',
  picture: ({ words }: { readonly words: string }) => `The swags at true size: ${words}`,
};
