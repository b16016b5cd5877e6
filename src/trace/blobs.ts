/**
 * The connected patches of a picture, dark and light, with what lies inside what: one pass over the rows, runs of
 * equal pixels joined to the touching runs of the row above (union by smallest, Hoshen and Kopelman, "Percolation
 * and cluster distribution", Phys. Rev. B 14, 1976). Patches of the shape's tone touch also by their corners, those
 * of the ground only by their sides, so that a patch is either inside another or outside it.
 */

import type { Picture } from './picture.ts';
import type { Tone } from './tone.ts';

export interface Blob {
  /** Whether it has the shape's tone and not the ground's. */
  readonly inked: boolean;
  /** Pixels. */
  readonly area: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  /** The mean of its pixels' places. */
  readonly x: number;
  readonly y: number;
  /** A pixel of it that has the pixel above it outside it: the leftmost of its topmost row. */
  readonly startX: number;
  readonly startY: number;
  /** The index of the blob right round it; −1 at the picture's edge. */
  readonly around: number;
}

/** More runs than this come from noise, or from cloth or grass, and not from a page with a template on it. */
const MOST_RUNS = 6_000_000;

export const isInked = (grey: number, tone: Tone): boolean => grey < tone.level === tone.dark;

/** Undefined where there are too many: the picture is mostly noise. */
export const blobsOf = ({ width, height, grey }: Picture, tone: Tone): readonly Blob[] | undefined => {
  let room = 1 << 16;
  let parent = new Int32Array(room);
  let startOf = new Int32Array(room);
  let endOf = new Int32Array(room);
  let rowOf = new Int32Array(room);
  let count = 0;
  const root = (i: number): number => {
    let at = i;
    while (parent[at]! !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  const join = (a: number, b: number): void => {
    const [ra, rb] = [root(a), root(b)];
    if (ra < rb) parent[rb] = ra;
    else parent[ra] = rb;
  };
  let aboveFrom = 0;
  let aboveTo = 0;
  for (let y = 0; y < height; y++) {
    const rowFrom = count;
    let above = aboveFrom;
    for (let x = 0; x < width; ) {
      const inked = isInked(grey[y * width + x]!, tone);
      let end = x + 1;
      while (end < width && isInked(grey[y * width + end]!, tone) === inked) end++;
      if (count === room) {
        if (count >= MOST_RUNS) return undefined;
        room *= 2;
        [parent, startOf, endOf, rowOf] = [parent, startOf, endOf, rowOf].map((a) => {
          const larger = new Int32Array(room);
          larger.set(a);
          return larger;
        }) as [
          Int32Array<ArrayBuffer>,
          Int32Array<ArrayBuffer>,
          Int32Array<ArrayBuffer>,
          Int32Array<ArrayBuffer>,
        ];
      }
      parent[count] = count;
      startOf[count] = x;
      endOf[count] = end;
      rowOf[count] = inked ? y : ~y;
      // Inked runs also touch at their corners.
      const reach = inked ? 1 : 0;
      while (above < aboveTo && endOf[above]! + reach <= x) above++;
      for (let k = above; k < aboveTo && startOf[k]! < end + reach; k++)
        if (rowOf[k]! >= 0 === inked) join(k, count);
      // The run above may reach over the next run as well.
      while (above > aboveFrom && endOf[above - 1]! + 1 > end) above--;
      count++;
      x = end;
    }
    aboveFrom = rowFrom;
    aboveTo = count;
  }
  return gather({ parent, startOf, endOf, rowOf }, count, root, width);
};

interface Runs {
  readonly parent: Int32Array;
  readonly startOf: Int32Array;
  readonly endOf: Int32Array;
  readonly rowOf: Int32Array;
}

type Draft = { -readonly [K in keyof Blob]: Blob[K] };

const gather = (
  { startOf, endOf, rowOf }: Runs,
  count: number,
  root: (i: number) => number,
  width: number,
): readonly Blob[] => {
  const indexOf = new Map<number, number>();
  const blobs: Draft[] = [];
  for (let i = 0; i < count; i++) {
    const r = root(i);
    const inked = rowOf[i]! >= 0;
    const y = inked ? rowOf[i]! : ~rowOf[i]!;
    const from = startOf[i]!;
    const to = endOf[i]!;
    const area = to - from;
    const found = indexOf.get(r);
    if (found === undefined) {
      indexOf.set(r, blobs.length);
      // The first run of a blob is its topmost; the pixel left of it belongs to the blob round it.
      const left = from > 0 ? indexOf.get(root(i - 1)) : undefined;
      const around = y === 0 || left === undefined ? -1 : left;
      blobs.push({
        inked,
        area,
        minX: from,
        minY: y,
        maxX: to - 1,
        maxY: y,
        x: ((from + to - 1) / 2) * area,
        y: y * area,
        startX: from,
        startY: y,
        around,
      });
      continue;
    }
    const b = blobs[found]!;
    b.area += area;
    b.minX = Math.min(b.minX, from);
    b.maxX = Math.max(b.maxX, to - 1);
    b.maxY = y;
    b.x += ((from + to - 1) / 2) * area;
    b.y += y * area;
  }
  const last = width - 1;
  for (const b of blobs) {
    b.x /= b.area;
    b.y /= b.area;
    if (b.minX === 0 || b.maxX === last) b.around = -1;
  }
  return blobs;
};
