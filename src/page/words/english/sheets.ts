/** Pages for her paper. */

export const sheetsWords = {
  title: 'On paper',
  lead: 'Print at 100 % or “actual size”, never “fit to page”, borderless off, one-sided. Then lay a ruler on the check square.',
  paper: 'Paper',
  show: 'Sheets show',
  whole: ({ what }: { readonly what: string }) => `the whole ${what}`,
  design: 'design',
  oneSwag: 'one swag',
  wholeSide: ({ side }: { readonly side: string }) => `the whole ${side} side`,
  corner: 'a corner with its neighbours',
  square: ({ side }: { readonly side: string }) => `${side} square measures, along the paper’s short edge`,
  squareLong: 'and along its long edge',
  squareWrong: 'What you measured is not a length near 2 in (50.8 mm). Correct it, or leave it empty.',
  unclear: ({ before }: { readonly before: string }) =>
    `What you measured before (${before}) may have been either edge of the paper, and is not used. Measure again along its short and its long edge: the check square says which is which.`,
  firstPrint:
    'Leave the measurements empty for a first print. If its square is not 2 in (50.8 mm), type what it is, and print again.',
  wasScaled: 'A print that is off by more than a tenth was scaled: print again at 100 %.',
  makesUp: ({ correction }: { readonly correction: string }) =>
    `The next sheets make up for it: ${correction}.`,
  lastPrint: ({ scaled }: { readonly scaled: string }) => `On your last print ${scaled}.`,
  notMade: 'The pages could not be made.',

  sheets: {
    name: 'the sheets',
    button: 'True-size sheets',
    about: 'to tape together, and a cover; with a map and a check square on each',
  },
  card: { name: 'the card', button: 'Marking card', about: 'every mark and setting, for the sewing room' },
  audition: {
    name: 'the fills',
    button: 'Fills to choose from',
    about: 'small copies of one swag with each fill',
  },
  frames: { name: 'the empty ones', button: 'Empty swags', about: 'to draw your own quilting in' },
  contact: { name: 'the choices', button: 'What fits, in pictures', about: 'the best dozen side by side' },
  trueSize: 'True size on the screen',
  trueSizeAbout: 'lay the acrylic on the glass of a tablet',
  class: 'A class',
  classAbout: 'a strip for each student, from a table of theirs',
  wholeQuilt: 'The whole quilt',
  quiltSheets: {
    name: 'the sheets of all parts',
    button: 'True-size sheets of all parts',
    about: 'in one file, and one cover with a map of each',
  },
  quiltCard: {
    name: 'the cards of all parts',
    button: 'Marking cards of all parts',
    about: 'a card for each, and the thread of the whole quilt',
  },

  photographLead:
    'A template of yours comes onto the shelf from a photograph of this sheet with its line on it:',
  photograph: { name: 'the sheet for photographs', button: 'Sheet for photographs', about: 'one sheet' },
  outlinesLead: 'Lay your acrylic on its own outline first, before you trust the rest:',
  outlineName: ({ title }: { readonly title: string }) => `${title}’s outline`,
  outlineOf: ({ title }: { readonly title: string }) => `Outline of ${title}`,
  atTrueSize: 'at true size',
};
