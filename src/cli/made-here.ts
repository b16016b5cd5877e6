/**
 * Whether a file is as this program once left it, so that nobody's work is in it. Only of kinds that are made to be
 * looked at: a plan, a template and an SVG drawing ask to be worked on, and look the same after it.
 */

import { MAKER_CHUNK } from '../output/png/index.ts';

const utf16Hex = (text: string): string =>
  ['\ufeff', ...text]
    .map((c) => c.charCodeAt(0).toString(16).padStart(4, '0'))
    .join('')
    .toUpperCase();

/** A PDF: who made it and when it was last changed (ISO 32000-1, 14.3.3; who changes it has to say when). */
const PDF_MARKS = [`/Producer <${utf16Hex('swagwright')}>`, '/ModDate (D:20000101000000Z)'];
/** Whoever adds to a PDF without writing it anew adds another end (7.5.6). */
const PDF_END = '%%EOF';

export const isMadeHere = (bytes: Uint8Array): boolean => {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (file.subarray(0, 5).toString('latin1') === '%PDF-')
    return (
      PDF_MARKS.every((mark) => file.includes(mark, 0, 'latin1')) &&
      file.indexOf(PDF_END) === file.lastIndexOf(PDF_END)
    );
  return file.includes(Buffer.from(MAKER_CHUNK));
};
