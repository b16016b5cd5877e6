/** A picture as rows of grey values, 0 black to 255 white; the first row is the top one. */

import type { Problem } from '../document/index.ts';

export interface Picture {
  /** Whole pixels. */
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** A4 at 600 dots per inch is 35 million pixels, a large camera's picture 50; beyond this memory would not do. */
const MOST_PIXELS = 60_000_000;
/** No scanner's glass and no camera is this long (pixels). */
const LONGEST_SIDE = 20_000;
/** Fewer pixels on a side than this show nothing. */
const SHORTEST_SIDE = 64;

/** What is wrong with a picture's size, before it is decoded. */
export const sizeProblem = (width: number, height: number): Problem | undefined => {
  const found = `${width} by ${height} pixels`;
  if (!(width >= SHORTEST_SIDE && height >= SHORTEST_SIDE))
    return {
      code: 'picture-too-small',
      message: 'the picture is too small to show a template',
      found,
      expected: `at least ${SHORTEST_SIDE} pixels on a side`,
    };
  if (!(width <= LONGEST_SIDE && height <= LONGEST_SIDE && width * height <= MOST_PIXELS))
    return {
      code: 'picture-too-large',
      message: 'the picture is too large',
      found,
      expected: `at most ${MOST_PIXELS / 1e6} million pixels, and ${LONGEST_SIDE} on a side`,
      hint: 'scan at 300 dots per inch, or cut the picture to the template',
    };
  return undefined;
};

/** The luma of a row of red, green, blue and opacity over white paper, in bytes (ITU-R BT.601, section 2.5.1). */
export const greyOf = (rgba: ArrayLike<number>, into: Uint8Array, at: number): void => {
  for (let i = 0; i + 3 < rgba.length; i += 4) {
    const luma = 0.299 * rgba[i]! + 0.587 * rgba[i + 1]! + 0.114 * rgba[i + 2]!;
    const opacity = rgba[i + 3]! / 255;
    into[at + i / 4] = Math.round(luma * opacity + 255 * (1 - opacity));
  }
};

/** Rows that are decoded at once: in colour they take four times as much as in grey. */
export const BAND = 256;

/** A picture in greys; `rowsFrom` gives red, green, blue and opacity of so many rows, at most a band, from `y` on. */
export const greysOf = (
  width: number,
  height: number,
  rowsFrom: (y: number, rows: number) => ArrayLike<number>,
): Picture => {
  const grey = new Uint8Array(width * height);
  for (let y = 0; y < height; y += BAND) greyOf(rowsFrom(y, Math.min(BAND, height - y)), grey, y * width);
  return { width, height, grey };
};

/** A picture of two greys and none between: what a scanner calls line art. Looked at by one pixel in seven. */
export const isLineArt = ({ grey }: Picture): boolean => {
  let between = 0;
  for (let i = 0; i < grey.length; i += 7) if (grey[i]! > 15 && grey[i]! < 240) between++;
  return 7 * between < grey.length * BETWEEN;
};

const BETWEEN = 1e-4;

/** Every pixel with its neighbours by the binomial weights 1 2 1 each way: takes the noise, keeps the edges' places. */
export const softened = ({ width, height, grey }: Picture): Picture => {
  const out = new Uint8Array(grey.length);
  const rows = [new Uint16Array(width), new Uint16Array(width), new Uint16Array(width)];
  const across = (y: number, row: Uint16Array): void => {
    const at = Math.min(height - 1, Math.max(0, y)) * width;
    for (let x = 0; x < width; x++)
      row[x] = grey[at + Math.max(0, x - 1)]! + 2 * grey[at + x]! + grey[at + Math.min(width - 1, x + 1)]!;
  };
  across(-1, rows[0]!);
  across(0, rows[1]!);
  for (let y = 0; y < height; y++) {
    const above = rows[y % 3]!;
    const here = rows[(y + 1) % 3]!;
    const below = rows[(y + 2) % 3]!;
    across(y + 1, below);
    for (let x = 0; x < width; x++) out[y * width + x] = (above[x]! + 2 * here[x]! + below[x]! + 8) >> 4;
  }
  return { width, height, grey: out };
};
