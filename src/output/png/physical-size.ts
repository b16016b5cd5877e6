/**
 * Tells a PNG file how large it is on paper, so that a program that prints it at 100 % prints it at true size.
 *
 * Puts a pHYs chunk (pixels per metre, whole numbers) right after the header. Source: Portable Network
 * Graphics specification, W3C 2003, sections 5.3 (chunks), 11.3.5.3 (pHYs) and annex D (the checksum).
 */

/** 8 bytes of signature, then the header: 4 of length, 4 of name, 13 of content, 4 of checksum. */
const AFTER_HEADER = 33;
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const METRE = 1;

/** The same file with its size said. Throws when the bytes are no PNG. */
export const withPhysicalSize = (png: Uint8Array, pixelsPerMm: number): Uint8Array => {
  if (png.length < AFTER_HEADER || SIGNATURE.some((byte, i) => png[i] !== byte))
    throw new Error('These bytes are no PNG file');
  const perMetre = Math.round(pixelsPerMm * 1000);
  if (!(perMetre > 0 && perMetre < 2 ** 31)) throw new Error(`No PNG can have ${pixelsPerMm} pixels per mm`);

  const chunk = new Uint8Array(4 + 4 + 9 + 4);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9);
  chunk.set([0x70, 0x48, 0x59, 0x73], 4); // pHYs
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  view.setUint8(16, METRE);
  view.setUint32(17, checksum(chunk.subarray(4, 17)));

  const out = new Uint8Array(png.length + chunk.length);
  out.set(png.subarray(0, AFTER_HEADER));
  out.set(chunk, AFTER_HEADER);
  out.set(png.subarray(AFTER_HEADER), AFTER_HEADER + chunk.length);
  return out;
};

/** CRC-32, bit by bit: thirteen bytes need no table. */
const checksum = (bytes: Uint8Array): number => {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
};
