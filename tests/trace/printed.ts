/** Pages of the program as a scanner and a camera see them: rasterised by pdf.js, turned, warped, with noise. */

import { createCanvas } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { flatten, nearnessOf, type Path } from '../../src/geometry/index.ts';
import { withPhysicalSize } from '../../src/output/png/index.ts';
import type { Picture } from '../../src/trace/index.ts';
import { greyOf } from '../../src/trace/index.ts';

const FONTS = `${import.meta.dirname}/../../node_modules/pdfjs-dist/standard_fonts/`;

/** One page of a PDF at so many dots per inch. */
export const rasterise = async (pdf: Uint8Array, page: number, dpi: number): Promise<Picture> => {
  const document = await getDocument({
    data: new Uint8Array(pdf),
    standardFontDataUrl: FONTS,
    verbosity: 0,
  }).promise;
  try {
    const sheet = await document.getPage(page);
    const viewport = sheet.getViewport({ scale: dpi / 72 });
    const canvas = createCanvas(Math.ceil(viewport.width), Math.ceil(viewport.height));
    const context = canvas.getContext('2d');
    await sheet.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
    const { width, height } = canvas;
    const grey = new Uint8Array(width * height);
    greyOf(context.getImageData(0, 0, width, height).data, grey, 0);
    return { width, height, grey };
  } finally {
    await document.destroy();
  }
};

/** Seeded: numbers in [0, 1) (Park and Miller, "Random number generators: good ones are hard to find", 1988). */
export const chance = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return (state - 1) / 2147483646;
  };
};

/** The picture seen through a map from its places to places of the original; beyond it lies white, or `ground`. */
export const resampled = (
  picture: Picture,
  width: number,
  height: number,
  from: (x: number, y: number, into: { x: number; y: number }) => void,
  ground = 255,
): Picture => {
  const grey = new Uint8Array(width * height);
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= picture.width || y >= picture.height
      ? ground
      : picture.grey[y * picture.width + x]!;
  const place = { x: 0, y: 0 };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      from(x + 0.5, y + 0.5, place);
      const fx = place.x - 0.5;
      const fy = place.y - 0.5;
      const x0 = Math.floor(fx);
      const y0 = Math.floor(fy);
      const a = fx - x0;
      const b = fy - y0;
      const top = at(x0, y0) * (1 - a) + at(x0 + 1, y0) * a;
      const bottom = at(x0, y0 + 1) * (1 - a) + at(x0 + 1, y0 + 1) * a;
      grey[y * width + x] = Math.round(top * (1 - b) + bottom * b);
    }
  return { width, height, grey };
};

/** Turned about its middle by an angle (radians), with room for its corners. */
export const turned = (picture: Picture, angle: number): Picture => {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const width = Math.ceil(picture.width * Math.abs(c) + picture.height * Math.abs(s));
  const height = Math.ceil(picture.width * Math.abs(s) + picture.height * Math.abs(c));
  return resampled(picture, width, height, (x, y, into) => {
    const dx = x - width / 2;
    const dy = y - height / 2;
    into.x = picture.width / 2 + c * dx + s * dy;
    into.y = picture.height / 2 - s * dx + c * dy;
  });
};

/** Grey of a scanner: paper not quite white, ink not quite black, every pixel off by about `spread`, and specks. */
export const noisy = (picture: Picture, spread: number, specks: number, seed: number): Picture => {
  const random = chance(seed);
  // Twelve even chances add up to a normal one (central limit; variance 1); drawn once, then picked from.
  const normal = Float32Array.from({ length: 1 << 16 }, () => {
    let sum = -6;
    for (let k = 0; k < 12; k++) sum += random();
    return sum;
  });
  const grey = new Uint8Array(picture.grey.length);
  for (let i = 0; i < grey.length; i++) {
    const pick = random();
    const seen = 30 + (picture.grey[i]! * 205) / 255 + spread * normal[Math.floor(pick * 65536)]!;
    const isSpeck = random() < specks;
    grey[i] = isSpeck ? 255 * random() : Math.max(0, Math.min(255, Math.round(seen)));
  }
  return { ...picture, grey };
};

/** The farthest that either of two edges lies from the other, mm (Hausdorff's distance, by points 0.1 mm apart at most). */
export const apart = (a: Path, b: Path): number => {
  const oneWay = (from: Path, to: Path): number => {
    const near = nearnessOf(to.pieces);
    return Math.max(...flatten(from, 0.0005).map(near.distance));
  };
  return Math.max(oneWay(a, b), oneWay(b, a));
};

/** As a scanner's file, which says how fine it is; a camera's does not. */
export const pngOf = (picture: Picture, pixelsPerMm: number | undefined): Uint8Array => {
  const canvas = createCanvas(picture.width, picture.height);
  const context = canvas.getContext('2d');
  const image = context.createImageData(picture.width, picture.height);
  const words = new Uint32Array(image.data.buffer);
  // Red, green and blue alike, and opaque: the order of the bytes does not matter but for the last.
  for (let i = 0; i < words.length; i++) words[i] = 0xff000000 | (picture.grey[i]! * 0x010101);
  context.putImageData(image, 0, 0);
  const file = canvas.toBuffer('image/png');
  return pixelsPerMm === undefined ? file : withPhysicalSize(file, pixelsPerMm);
};
