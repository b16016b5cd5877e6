/**
 * Which pixels are the paper and which are the shape, and at what grey the outline runs between them.
 *
 * The two kinds are told apart by Otsu's threshold, which makes the variance between them greatest (Otsu, "A
 * threshold selection method from gray-level histograms", IEEE Trans. Systems, Man and Cybernetics 9, 1979). The
 * outline runs half-way between the two kinds' most common greys: a pixel that the true edge halves has that grey.
 */

import type { Picture } from './picture.ts';

export interface Tone {
  /** The outline's grey, 0 to 255. */
  readonly level: number;
  /** Whether the shape is darker than what lies round it. */
  readonly dark: boolean;
}

/** Kinds that differ by less than this many greys of 255 are one kind: shadows and dust on a blank page. */
const LEAST_CONTRAST = 40;

/**
 * Undefined where the picture shows nothing that stands out. Without a word about it, the ground is what most of
 * the picture's rim is; `counted` says which pixels count (all, unless given).
 */
export const toneOf = (
  picture: Picture,
  dark?: boolean,
  counted?: (x: number, y: number) => boolean,
): Tone | undefined => {
  const histogram = histogramOf(picture, counted);
  const threshold = otsu(histogram);
  if (threshold === undefined) return undefined;
  const level = levelAt(histogram, threshold) ?? levelOfFew(histogram);
  return level === undefined ? undefined : { level, dark: dark ?? borderShare(picture, level) < 0.5 };
};

/** Half-way between the two kinds; a quarter of a grey more, so that no pixel lies on it. */
const levelAt = (histogram: Float64Array, threshold: number): number | undefined => {
  const low = modeOf(histogram, 0, threshold);
  const high = modeOf(histogram, threshold + 1, 255);
  return high - low >= LEAST_CONTRAST ? (low + high) / 2 + 0.25 : undefined;
};

/**
 * A thin line is so little of a page that the paper's own grain weighs more, and the threshold falls into it. Then
 * the line is what is far from the paper's most common grey: the darkest pixels, or the brightest, as the rim of clear
 * acrylic is on a dark ground.
 */
const levelOfFew = (histogram: Float64Array): number | undefined => {
  const paper = modeOf(histogram, 0, 255);
  const towards = (share: number): number | undefined =>
    levelAt(histogram, Math.floor((paper + greyAt(histogram, share)) / 2));
  return towards(FEW) ?? towards(1 - FEW);
};

/** The least grey that such a share of the pixels does not exceed. */
const greyAt = (histogram: Float64Array, share: number): number => {
  const enough = share * histogram.reduce((sum, n) => sum + n, 0);
  let seen = 0;
  for (let g = 0; g < 255; g++) {
    seen += histogram[g]!;
    if (seen >= enough) return g;
  }
  return 255;
};

/** A pencil line of 0.3 mm round a small template is this share of a page. */
const FEW = 0.0008;

const histogramOf = (
  { width, height, grey }: Picture,
  counted?: (x: number, y: number) => boolean,
): Float64Array => {
  const histogram = new Float64Array(256);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) if (!counted || counted(x, y)) histogram[grey[i]!]!++;
  return histogram;
};

/** The last grey of the darker kind; undefined where all pixels are alike. */
export const otsu = (histogram: ArrayLike<number>): number | undefined => {
  let count = 0;
  let sum = 0;
  for (let g = 0; g < 256; g++) {
    count += histogram[g]!;
    sum += g * histogram[g]!;
  }
  let best = 0;
  let threshold: number | undefined;
  let below = 0;
  let belowSum = 0;
  for (let g = 0; g < 255; g++) {
    below += histogram[g]!;
    belowSum += g * histogram[g]!;
    if (!(below > 0 && below < count)) continue;
    const apart = belowSum / below - (sum - belowSum) / (count - below);
    const between = below * (count - below) * apart * apart;
    if (between > best) {
      best = between;
      threshold = g;
    }
  }
  return threshold;
};

/** The middle of the greys between two of them that hold the most pixels, in a window that noise cannot fool. */
const modeOf = (histogram: Float64Array, from: number, to: number): number => {
  let best = -1;
  let mode = from;
  for (let g = from; g <= to; g++) {
    let sum = 0;
    for (let k = Math.max(from, g - WINDOW); k <= Math.min(to, g + WINDOW); k++) sum += histogram[k]!;
    if (sum > best) {
      best = sum;
      mode = g;
    }
  }
  let weight = 0;
  let sum = 0;
  for (let k = Math.max(from, mode - WINDOW); k <= Math.min(to, mode + WINDOW); k++) {
    weight += histogram[k]!;
    sum += k * histogram[k]!;
  }
  return weight > 0 ? sum / weight : mode;
};

/** Greys either side of a kind's most common one that are the same kind. */
const WINDOW = 12;

/** How much of the picture's rim is dark. */
const borderShare = ({ width, height, grey }: Picture, level: number): number => {
  let dark = 0;
  for (let x = 0; x < width; x++) dark += +(grey[x]! < level) + +(grey[(height - 1) * width + x]! < level);
  for (let y = 0; y < height; y++)
    dark += +(grey[y * width]! < level) + +(grey[y * width + width - 1]! < level);
  return dark / (2 * (width + height));
};

/**
 * The same picture lit evenly, for photographs: every pixel over the brightness of the paper near it. The paper's
 * brightness is that of the bright pixels of each field of a coarse grid, carried into the fields that a shape
 * covers, and smooth between fields.
 */
export const evenlyLit = (picture: Picture): Picture => {
  const { width, height, grey } = picture;
  const size = Math.max(8, Math.round(Math.max(width, height) / FIELDS));
  const columns = Math.ceil(width / size);
  const rows = Math.ceil(height / size);
  let paper = new Float64Array(columns * rows);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) paper[r * columns + c] = brightOf(picture, c * size, r * size, size);
  const bright = [...paper].sort((a, b) => b - a)[Math.floor(paper.length / 4)] ?? 255;
  // A field much darker than the bright quarter of the picture is covered: it takes on its neighbours' paper.
  let known = paper.map((v) => (v > bright * COVERED ? 1 : 0));
  for (let round = 0; round < columns + rows && known.some((k) => k === 0); round++)
    [paper, known] = spread(paper, known, columns, rows);
  const out = new Uint8Array(grey.length);
  for (let y = 0; y < height; y++) {
    const fy = Math.min(rows - 1, Math.max(0, (y + 0.5) / size - 0.5));
    const r0 = Math.floor(fy);
    const r1 = Math.min(rows - 1, r0 + 1);
    for (let x = 0; x < width; x++) {
      const fx = Math.min(columns - 1, Math.max(0, (x + 0.5) / size - 0.5));
      const c0 = Math.floor(fx);
      const c1 = Math.min(columns - 1, c0 + 1);
      const top = paper[r0 * columns + c0]! * (1 - fx + c0) + paper[r0 * columns + c1]! * (fx - c0);
      const bottom = paper[r1 * columns + c0]! * (1 - fx + c0) + paper[r1 * columns + c1]! * (fx - c0);
      const white = top * (1 - fy + r0) + bottom * (fy - r0);
      out[y * width + x] = Math.min(255, (grey[y * width + x]! * PAPER) / Math.max(1, white));
    }
  }
  return { width, height, grey: out };
};

/** Fields along the picture's longer side. */
const FIELDS = 40;
/** A field whose bright pixels are darker than this share of the picture's is covered by a shape. */
const COVERED = 0.6;
/** The grey that paper is brought to: noise above it still has room. */
const PAPER = 230;

/** The grey that nine pixels in ten of a field do not exceed. */
const brightOf = ({ width, height, grey }: Picture, x0: number, y0: number, size: number): number => {
  const histogram = new Uint32Array(256);
  let count = 0;
  for (let y = y0; y < Math.min(height, y0 + size); y += 2)
    for (let x = x0; x < Math.min(width, x0 + size); x += 2) {
      histogram[grey[y * width + x]!]!++;
      count++;
    }
  let below = 0;
  for (let g = 0; g < 256; g++) {
    below += histogram[g]!;
    if (below >= count * 0.9) return g;
  }
  return 255;
};

const spread = (
  paper: Float64Array<ArrayBuffer>,
  known: Float64Array<ArrayBuffer>,
  columns: number,
  rows: number,
): [Float64Array<ArrayBuffer>, Float64Array<ArrayBuffer>] => {
  const nextPaper = paper.slice();
  const nextKnown = known.slice();
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      if (known[r * columns + c]) continue;
      let sum = 0;
      let count = 0;
      for (let dr = -1; dr <= 1; dr++)
        for (let dc = -1; dc <= 1; dc++) {
          const [y, x] = [r + dr, c + dc];
          if (y < 0 || x < 0 || y >= rows || x >= columns || !known[y * columns + x]) continue;
          sum += paper[y * columns + x]!;
          count++;
        }
      if (count === 0) continue;
      nextPaper[r * columns + c] = sum / count;
      nextKnown[r * columns + c] = 1;
    }
  return [nextPaper, nextKnown];
};
