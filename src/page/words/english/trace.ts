/** A template from a picture of it. */

import { handWords } from './by-hand.ts';

const places = (of: { readonly count: number }): string => handWords.places(of);

export const traceWords = {
  title: 'Your template, from its picture',
  lead: 'The foot runs along the red line, outside the template. Drag its two ends to where the foot starts and stops.',
  putAway: 'Put the picture away',
  whole: 'Whole picture',
  closer: ({ times }: { readonly times: number }) => `${times} times closer`,
  picture: 'The picture with the outline that was found',
  heel: 'Heel',
  crown: 'Crown end',
  alongOutline: ({ length }: { readonly length: string }) => `${length} along the outline`,

  size: {
    bySheet: 'The eight marks of the sheet say how large it is.',
    label: 'How large it is',
    fileSilent: 'the file does not say',
    byFile: ({ dots }: { readonly dots: number }) => `as its file says: ${dots} dots per inch`,
    byScanner: 'what the scanner was set to',
    byMarks: 'two marks that I tap',
    dots: 'Dots per inch',
    dotsExample: 'such as 300',
    dotsWrong: 'Write a whole number from 100 to 2400.',
    apart: 'The two marks are apart by',
    apartExample: 'such as 6',
    tapMarks:
      'Tap two lines of a ruler or a cutting mat in the picture, as far apart as they go; the ruler must lie as high as the template’s edge.',
    tapAgain: 'Tap again to begin anew.',
    missing: 'Say how large the picture is, above: then this can go on the shelf.',
  },

  line: {
    label: 'Of the drawn line take',
    middle: 'its middle',
    inner: 'its inner side',
    outer: 'its outer side',
  },
  swapEnds: 'Heel and crown end change places',
  otherSide: 'The foot runs on the template’s other side',
  level: {
    label: 'Lay it level by',
    back: 'its long straight side, if it has one',
    ends: 'the line from heel to crown end',
    picture: 'nothing: as it lies in the picture',
  },

  mend: {
    title: 'Where the line is wrong',
    begin: 'Set a stretch right',
    from: 'Stretch from',
    to: 'Stretch to',
    begun: 'Put the two violet places at the ends of the stretch.',
    hint: 'Drag the two violet places to where the stretch begins and ends. Then make it straight; or tap places that the edge runs through, and take it through them.',
    straight: 'Make it straight',
    isStraight: 'The stretch is straight.',
    tap: 'Tap places on it',
    add: 'Add a place in its middle',
    added: 'A place is added in the middle. Arrow keys move it.',
    through: (of: { readonly count: number }) => `Take it through ${places(of)}`,
    isThrough: (of: { readonly count: number }) => `The stretch runs through ${places(of)}.`,
    leave: 'Leave it',
    left: 'The stretch stays as it is.',
    listedStraight: ({ number }: { readonly number: number }) => `Stretch ${number}, made straight`,
    listedThrough: ({ number, count }: { readonly number: number; readonly count: number }) =>
      `Stretch ${number}, through ${places({ count })}`,
    undo: ({ number }: { readonly number: number }) => `As it was traced, stretch ${number}`,
    undone: ({ number }: { readonly number: number }) => `Stretch ${number} is as it was traced.`,
  },

  height: {
    label: 'How high the camera was over the sheet',
    example: 'such as 16 in',
    tooNear: 'From nearer than 6 in no camera shows the whole sheet.',
    hint: 'Only where the acrylic itself lay on the sheet, and not a line drawn round it. Held level over its middle the camera sees the upper edge all round.',
  },

  fit: {
    offBy: ({ chord }: { readonly chord: string }) => `Between heel and crown end (${chord}) it is off by`,
    example: 'such as 1/16 in',
    acrylic: 'The acrylic is',
    longer: 'longer than its outline',
    shorter: 'shorter than its outline',
    tooFar:
      'That is more than a tenth. Look at how large the picture is, above, and whether the page was printed at 100 %.',
    put: 'Put the size right',
    isPut: ({ larger }: { readonly larger: string }) => `The outline is now ${larger}. Print it once more.`,
    byHand: ({ larger }: { readonly larger: string }) =>
      `Set right by hand: ${larger} than the picture says.`,
    undo: 'As the picture says',
  },

  isOld: 'This is the outline of before: what you said since is not worked out.',
  workOut: 'Work it out',
  openElsewhere:
    'This picture is open in another window too. What you say of it here is kept by itself, and becomes a template of its own.',
  cannot: ({ file }: { readonly file: string }) => `${file} cannot be traced.`,
  problem: ({ file, problem }: { readonly file: string; readonly problem: string }) => `${file}: ${problem}.`,
  found: ({ file }: { readonly file: string }) =>
    `The outline of ${file} is found. Look at it over the picture, and set right what is wrong.`,
  kept: 'the picture of your template',
};
