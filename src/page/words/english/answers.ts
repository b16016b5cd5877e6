/** What the page's workers say of what they have worked out, beside what the commands say too. */

import { plural } from '../../../document/index.ts';

export const answersWords = {
  edge: ({ length, sections }: { readonly length: string; readonly sections: number }) =>
    `${length} of edge in ${sections === 1 ? 'one section' : plural(sections, 'section')}`,

  swags: ({ count }: { readonly count: number }) => plural(count, 'swag'),
  swagsAndCorners: ({ count, corner }: { readonly count: number; readonly corner: 'across' | 'round' }) =>
    `${plural(count, 'swag')} and one ${corner === 'across' ? 'across' : 'round'} each corner`,
  wide: ({ length }: { readonly length: string }) => `${length} wide`,
  deep: ({ length }: { readonly length: string }) => `${length} deep`,

  pose: ({ wide, deep }: { readonly wide: string; readonly deep: string }) => `${wide} wide, ${deep} deep`,
  cornerPose: ({ deep, marks }: { readonly deep: string; readonly marks: string }) =>
    `${deep} deep, marks ${marks} from the corner`,
  stop: (of: { readonly count: number; readonly wide: string; readonly deep: string }) =>
    `${plural(of.count, 'swag')}, ${of.wide} wide, ${of.deep} deep`,
  cornerStop: ({ deep, swags }: { readonly deep: string; readonly swags: string }) =>
    `corners ${deep} deep; ${swags}`,
  section: ({ number }: { readonly number: number }) => `section ${number}`,
  namedSection: ({ number, name }: { readonly number: number; readonly name: string }) =>
    `section ${number} (${name})`,

  limitInTheWay: ({ limit, wider }: { readonly limit: string; readonly wider: string }) =>
    `nothing fits round the block within “Finished, at most”, ${limit}: the block, what is kept clear of it and a swag on both sides need more; with ${wider} there is something that fits`,
  fileNotGiven: 'this template is a file that the page has not been given',
  noTemplate: 'there is no such template',
  dropFile: 'drop the file on the page',
  didYouMean: ({ name }: { readonly name: string }) => `did you mean ${name}?`,
  chooseBelow: 'choose one below',
  ownMistake: ({ told }: { readonly told: string }) =>
    `swagwright has made a mistake of its own (${told}); please report it, with the plan`,
};

/** Of templates from drawings and pictures, and of pages for them. */
export const madeWords = {
  drawnEdge: ({ edge }: { readonly edge: string }) => `It has ${edge}.`,
  drawnInPixels: 'The drawing does not say how large it is; 96 of its pixels were taken as an inch.',
  layAcrylic: 'Print its outline and lay the acrylic on it before you trust it.',
  drawnSize: 'save the drawing with its real width and height, in mm or inches',
  drawnLine: 'save the line that the foot follows, or the whole outline, alone',

  pictureTooLarge: 'this file is too large',
  pictureMost: ({ megabytes }: { readonly megabytes: number }) => `at most ${megabytes} MB`,
  notAPicture: 'this browser cannot read it as a picture',
  dragEnd: 'if the edge ends elsewhere, drag its end there',
  dragEnds: 'drag the two ends of the edge to where the foot starts and stops',
  sayScale:
    'say what the scanner was set to, or tap two marks of a ruler that lies in the picture; a photograph without a ruler needs the sheet for photographs',

  cannotPaint: 'this browser cannot paint pictures',
  takeDrawing: 'take the drawing (SVG)',

  captureSheet:
    'Draw round the template inside its corner ticks, take the template away, and photograph the line from as far as you can, zoomed in, with all eight marks in the picture.',
  outline: ({ title, words }: { readonly title: string; readonly words: string }) =>
    `the outline of ${title}, ${words}`,
  outlineUse: 'Lay the acrylic on the edge that is drawn: it must cover it from heel to crown end.',
};
