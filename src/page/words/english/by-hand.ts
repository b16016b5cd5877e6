/** What is said of a template by hand, be it over its picture or over its points. */

import { capital, plural } from '../../../document/index.ts';

export const handWords = {
  back: 'Take the last step back',
  again: 'Do it again',
  called: 'What it is called',

  breaks: 'Breaks',
  breaksHint:
    'A swag can start at a break. Corners are breaks by themselves; add one where a section begins on a smooth stretch: tap the edge there, or press this button.',
  addBreak: 'Add a break',
  breakName: ({ number }: { readonly number: number }) => `break ${number}`,
  breakAdded: ({ name, length }: { readonly name: string; readonly length: string }) =>
    `${name} is added, ${length} from the heel. Arrow keys move it, Delete takes it out.`,
  breakLabel: ({ kind, length }: { readonly kind: string; readonly length: string }) =>
    `${capital(kind)}, ${length} from the heel`,
  noName: 'no name',
  takeOut: ({ name }: { readonly name: string }) => `Take out ${name}`,
  takenOut: ({ name }: { readonly name: string }) => `${name} is taken out.`,
  notOnEdge: ({ name }: { readonly name: string }) => `“${name}” is not on the edge as it is now.`,
  fromHeel: ({ length }: { readonly length: string }) => `${length} from the heel`,
  fromLeftAndTop: ({ left, top }: { readonly left: string; readonly top: string }) =>
    `${left} from the left, ${top} from the top`,

  acrylic: 'The acrylic',
  thickness: 'Its thickness',
  quarterInch: 'such as 1/4 in',
  notALength: 'Write a length, such as 1/4 in or 6 mm.',
  across: {
    add: 'Add a line etched across, near the heel',
    label: ({ name }: { readonly name: string }) => `Line ${name}, from the heel`,
    takeOut: ({ name }: { readonly name: string }) => `Take out line ${name}`,
    takenOut: ({ name }: { readonly name: string }) => `Line ${name} is taken out.`,
    freeName: ({ number }: { readonly number: number }) => `line ${number}`,
    nameLabel: ({ number }: { readonly number: number }) => `Name of line ${number} across`,
  },
  along: {
    add: 'Add a line etched along the edge',
    label: ({ number }: { readonly number: number }) => `Line ${number} along the edge, inside the edge`,
    takeOut: ({ number }: { readonly number: number }) => `Take out line ${number} along the edge`,
    takenOut: ({ number }: { readonly number: number }) => `Line ${number} along the edge is taken out.`,
  },
  lineAdded: 'A line is added: type its distance, or tap it in the picture.',
  tapped: 'tapped',
  tapIt: 'Tap it in the picture',

  fits: 'Does it fit?',
  printHint:
    'Print the outline at 100 %, lay a ruler on its check square, then lay the acrylic on it, heel on heel.',
  print: 'Print its outline',
  save: 'Save its outline',
  notPrinted: 'The outline could not be printed.',

  toShelf: 'Put it on the shelf',
  onShelf: ({ title, note }: { readonly title: string; readonly note: string }) =>
    `The template “${title}” is on the shelf, and ticked.${note} Print its outline and lay the acrylic on it before you trust it.`,
  saveFile: 'Save its file',
  places: ({ count }: { readonly count: number }) => plural(count, 'place'),
};
