/**
 * Tells a PNG file how large it is on paper, so that a program that prints it at 100 % prints it at true size.
 *
 * Puts a pHYs chunk (pixels per metre, whole numbers) right after the header. Source: Portable Network
 * Graphics specification, W3C 2003, section 11.3.5.3 (pHYs).
 */

import { withChunk } from './chunk.ts';

const METRE = 1;

/** The same file with its size said. Throws when the bytes are no PNG. */
export const withPhysicalSize = (png: Uint8Array, pixelsPerMm: number): Uint8Array => {
  const perMetre = Math.round(pixelsPerMm * 1000);
  if (!(perMetre > 0 && perMetre < 2 ** 31)) throw new Error(`No PNG can have ${pixelsPerMm} pixels per mm`);
  const content = new Uint8Array(9);
  const view = new DataView(content.buffer);
  view.setUint32(0, perMetre);
  view.setUint32(4, perMetre);
  view.setUint8(8, METRE);
  return withChunk(png, 'pHYs', content);
};
