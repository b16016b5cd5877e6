/** The kinds of file that a picture of a design can be: a row and a file for each, loaded when it is asked for. */

import type { Writer } from './writer.ts';

export const WRITERS: readonly [Writer, ...Writer[]] = [
  {
    name: 'SVG',
    about: 'one group a layer, in mm',
    ending: 'svg',
    takes: [],
    hasOurLetters: false,
    write: async (...asked) => (await import('./svg.ts')).write(...asked),
  },
  {
    name: 'PDF',
    about: 'one page',
    ending: 'pdf',
    takes: ['measured'],
    hasOurLetters: true,
    write: async (...asked) => (await import('./pdf.ts')).write(...asked),
  },
  {
    name: 'PNG',
    ending: 'png',
    takes: ['pixels'],
    hasOurLetters: true,
    write: async (...asked) => (await import('./png.ts')).write(...asked),
  },
  {
    name: 'DXF',
    about: 'lines for cutting machines, one layer a kind of line, in mm',
    ending: 'dxf',
    takes: [],
    hasOurLetters: false,
    write: async (...asked) => (await import('./dxf.ts')).write(...asked),
  },
];

export type { Means, PictureWanted, Writer } from './writer.ts';
