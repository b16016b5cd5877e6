/**
 * What a picture file says of itself before anything is decoded: its kind, its size in pixels, its resolution, and
 * whether it is all there and sound. Looks at chunk and segment heads, and at a PNG's checksums; a file's claims cost nothing.
 *
 * Sources: PNG, W3C Recommendation 2003 (5.2 signature, 5.3 chunks, 11.2.2 IHDR, 11.3.5.3 pHYs); JPEG, ITU-T T.81
 * annex B (markers, frame header); JFIF 1.02 (density); Exif 2.3, section 4.6 (XResolution, ResolutionUnit).
 */

import type { Problem } from '../document/index.ts';
import { MM_PER_INCH } from '../length/index.ts';
import { sizeProblem } from './picture.ts';

interface PictureHead {
  readonly kind: 'png' | 'jpeg';
  readonly width: number;
  readonly height: number;
  /** Undefined where the file does not say, or says differently across and up. */
  readonly pixelsPerMm: number | undefined;
}

export type HeadResult =
  | { readonly ok: true; readonly head: PictureHead }
  | { readonly ok: false; readonly problem: Problem };

const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

export const readPictureHead = (bytes: Uint8Array): HeadResult => {
  if (bytes.length === 0) return refuse(NOT_A_PICTURE);
  const isPng = PNG_SIGNATURE.every((b, i) => bytes[i] === b);
  const isJpeg = bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
  if (!isPng && !isJpeg) return refuse(NOT_A_PICTURE);
  const head = isPng ? pngHead(bytes) : jpegHead(bytes);
  if (head === 'damaged') return refuse(DAMAGED);
  const problem = sizeProblem(head.width, head.height);
  if (problem) return refuse(problem);
  return { ok: true, head };
};

const refuse = (problem: Problem): HeadResult => ({ ok: false, problem });

/** What becomes of a file in a format that is not read here. */
export const OTHER_FORMAT =
  'save it as JPEG or PNG; on a telephone set the camera to JPEG (“most compatible”), or send the picture to yourself, which often makes it one';

const NOT_A_PICTURE: Problem = {
  code: 'not-a-picture',
  message: 'this is no picture that can be read',
  expected: 'a PNG or JPEG file',
  hint: OTHER_FORMAT,
};
export const DAMAGED: Problem = {
  code: 'damaged-picture',
  message: 'the picture is damaged, or not all of it is there',
  hint: 'scan or save it again',
};

/** A file has some dozens of chunks; more than this many is a trap. */
const MOST_PARTS = 200_000;

const MM_PER_METRE = 1000;

const pngHead = (bytes: Uint8Array): PictureHead | 'damaged' => {
  const view = viewOf(bytes);
  if (bytes.length < 33 || view.getUint32(8) !== 13 || nameAt(bytes, 12) !== 'IHDR') return 'damaged';
  const width = view.getUint32(16);
  const height = view.getUint32(20);
  let pixelsPerMm: number | undefined;
  let hasData = false;
  for (let at = 8, part = 0; part < MOST_PARTS; part++) {
    if (at + 12 > bytes.length) return 'damaged';
    const length = view.getUint32(at);
    const name = nameAt(bytes, at + 4);
    if (at + 12 + length > bytes.length) return 'damaged';
    const body = bytes.subarray(at + 4, at + 8 + length);
    if (checksum(body) !== view.getUint32(at + 8 + length)) return 'damaged';
    if (name === 'pHYs' && length === 9 && bytes[at + 16] === 1)
      pixelsPerMm = even(view.getUint32(at + 8) / MM_PER_METRE, view.getUint32(at + 12) / MM_PER_METRE);
    if (name === 'IDAT') hasData = true;
    if (name === 'IEND') return hasData ? { kind: 'png', width, height, pixelsPerMm } : 'damaged';
    at += 12 + length;
  }
  return 'damaged';
};

/** CRC-32 (PNG, annex D): a decoder would show what comes before the damage and leave the rest white. */
const checksum = (bytes: Uint8Array): number => {
  let crc = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) crc = CRC[(crc ^ bytes[i]!) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
};

const CRC = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c >>> 0;
});

/** Frame headers: all of T.81's SOFs, less DHT, JPG and DAC, which share the range. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const jpegHead = (bytes: Uint8Array): PictureHead | 'damaged' => {
  const view = viewOf(bytes);
  let jfif: number | undefined;
  let exif: number | undefined;
  for (let at = 2, part = 0; part < MOST_PARTS; part++) {
    // Markers may be filled up with bytes of 255.
    while (bytes[at] === 0xff && bytes[at + 1] === 0xff) at++;
    if (at + 4 > bytes.length || bytes[at] !== 0xff) return 'damaged';
    const marker = bytes[at + 1]!;
    const length = view.getUint16(at + 2);
    if (length < 2 || at + 2 + length > bytes.length || marker === 0xd9 || marker === 0xda) return 'damaged';
    if (marker === 0xe0 && length >= 14 && nameAt(bytes, at + 4) === 'JFIF')
      jfif = density(bytes[at + 11]!, view.getUint16(at + 12), view.getUint16(at + 14));
    if (marker === 0xe1 && length >= 16 && nameAt(bytes, at + 4) === 'Exif')
      exif = exifResolution(bytes.subarray(at + 10, at + 2 + length));
    if (isFrame(marker)) {
      if (length < 8 || !endsWithEoi(bytes)) return 'damaged';
      const height = view.getUint16(at + 5);
      const width = view.getUint16(at + 7);
      return { kind: 'jpeg', width, height, pixelsPerMm: exif ?? jfif };
    }
    at += 2 + length;
  }
  return 'damaged';
};

const density = (unit: number, x: number, y: number): number | undefined => {
  if (unit === 1) return even(x / MM_PER_INCH, y / MM_PER_INCH);
  if (unit === 2) return even(x / 10, y / 10);
  return undefined;
};

/** Cameras put a few bytes after the end; a cut file ends in the middle of its data. */
const AFTER_END = 64 * 1024;

const endsWithEoi = (bytes: Uint8Array): boolean => {
  for (let i = bytes.length - 2; i >= Math.max(2, bytes.length - AFTER_END); i--)
    if (bytes[i] === 0xff && bytes[i + 1] === 0xd9) return true;
  return false;
};

/** The resolution in the first directory of a TIFF block; undefined where it says none. */
const exifResolution = (tiff: Uint8Array): number | undefined => {
  if (tiff.length < 8) return undefined;
  const view = viewOf(tiff);
  const little = tiff[0] === 0x49;
  if (view.getUint16(2, little) !== 42) return undefined;
  const start = view.getUint32(4, little);
  if (start + 2 > tiff.length) return undefined;
  const count = Math.min(view.getUint16(start, little), MOST_TAGS);
  let x: number | undefined;
  let y: number | undefined;
  let unit = 2;
  for (let i = 0; i < count; i++) {
    const at = start + 2 + 12 * i;
    if (at + 12 > tiff.length) break;
    const tag = view.getUint16(at, little);
    const value = view.getUint32(at + 8, little);
    if (tag === 0x128) unit = view.getUint16(at + 8, little);
    else if ((tag === 0x11a || tag === 0x11b) && value + 8 <= tiff.length) {
      const ratio = view.getUint32(value, little) / view.getUint32(value + 4, little);
      if (tag === 0x11a) x = ratio;
      else y = ratio;
    }
  }
  return x !== undefined && y !== undefined ? density(unit === 3 ? 2 : unit === 2 ? 1 : 0, x, y) : undefined;
};

const MOST_TAGS = 200;

/** Resolutions that differ across and up by more than a thousandth are of no use, nor are zero and nonsense. */
const even = (x: number, y: number): number | undefined =>
  x > 0 && Number.isFinite(x) && Math.abs(x - y) <= x / 1000 ? (x + y) / 2 : undefined;

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const nameAt = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
