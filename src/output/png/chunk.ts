/**
 * Puts a chunk right after the header of a PNG file. Source: Portable Network Graphics specification, W3C 2003,
 * sections 5.3 (chunks), 11.3.4.3 (tEXt), 11.3.5.3 (pHYs) and annex D (the checksum).
 */

/** 8 bytes of signature, then the header: 4 of length, 4 of name, 13 of content, 4 of checksum. */
const AFTER_HEADER = 33;
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** The chunk by its name of four letters, its content and its checksum. */
const chunkOf = (name: string, content: Uint8Array): Uint8Array => {
  const chunk = new Uint8Array(4 + 4 + content.length + 4);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, content.length);
  chunk.set(latin1(name), 4);
  chunk.set(content, 8);
  view.setUint32(8 + content.length, checksum(chunk.subarray(4, 8 + content.length)));
  return chunk;
};

/** The same picture with one chunk more. Throws when the bytes are no PNG. */
const withChunk = (png: Uint8Array, name: string, content: Uint8Array): Uint8Array => {
  if (png.length < AFTER_HEADER || SIGNATURE.some((byte, i) => png[i] !== byte))
    throw new Error('These bytes are no PNG file');
  const chunk = chunkOf(name, content);
  const out = new Uint8Array(png.length + chunk.length);
  out.set(png.subarray(0, AFTER_HEADER));
  out.set(chunk, AFTER_HEADER);
  out.set(png.subarray(AFTER_HEADER), AFTER_HEADER + chunk.length);
  return out;
};

const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));

const MAKER = latin1('Software\0swagwright');

/** The chunk that says which program made the picture; one that changes it says so itself, or drops this. */
export const MAKER_CHUNK: Uint8Array = chunkOf('tEXt', MAKER);

/** The same picture, which says who made it. */
export const withMaker = (png: Uint8Array): Uint8Array => withChunk(png, 'tEXt', MAKER);

/** CRC-32, bit by bit: a few dozen bytes need no table. */
function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const METRE = 1;

/**
 * The same file with its size on paper said, so that a program that prints it at 100 % prints it at true size: in
 * whole pixels per metre (pHYs). Throws when the bytes are no PNG.
 */
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
