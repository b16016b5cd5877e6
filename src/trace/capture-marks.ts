/**
 * The capture sheet's reference marks: where they stand, and how they are found in a photograph.
 *
 * A mark is a black disc with a white ring and a black middle: nothing else on a table looks so from any side. Eight
 * of them stand in a pattern that looks different from every other side up, the same on letter and on A4, so that
 * nobody has to say which paper it was. Mirrored, the pattern is itself again, turned by a quarter and stretched to fit;
 * what tells is that the discs are oblong in such a view. The middle of a disc seen aslant is off from the middle of its picture by
 * about r²·sin(tilt)/distance, 0.02 mm for these at 25° from 40 cm.
 */

import type { Problem } from '../document/index.ts';
import { distance, type Point } from '../geometry/index.ts';
import type { Blob } from './blobs.ts';
import { contourFrom, ringArea } from './contour.ts';
import { applyHomography, findHomography } from './homography.ts';
import { type SheetView, viewThroughLens } from './lens.ts';
import type { Picture } from './picture.ts';
import type { Tone } from './tone.ts';

/** Radii of a mark's disc, ring and middle, mm. */
export const MARK_RADII = { disc: 5, ring: 3.4, middle: 1.7 } as const;

/** Between the outer marks' middles, mm: fits the printable part of letter and of A4. */
export const MARK_SPAN = { width: 170, height: 238 } as const;

/**
 * The marks' middles, mm from the lower left one, y up: the four corners first, clockwise from the upper left. The
 * last two stand on the long sides: without them paper that curls looks like a lens that bends lines. Older sheets
 * have the first six.
 */
export const MARK_PLACES: readonly Point[] = [
  { x: 0, y: MARK_SPAN.height },
  { x: MARK_SPAN.width, y: MARK_SPAN.height },
  { x: MARK_SPAN.width, y: 0 },
  { x: 0, y: 0 },
  { x: MARK_SPAN.width / 2, y: MARK_SPAN.height },
  { x: MARK_SPAN.width / 4, y: 0 },
  { x: 0, y: MARK_SPAN.height / 2 },
  { x: MARK_SPAN.width, y: (3 * MARK_SPAN.height) / 4 },
];
const MARKS_BEFORE = 6;

/** Nearer to the sheet's edge than this inside the marks' frame (mm) nothing is looked at: there the marks stand. */
export const CAPTURE_INSET = 8;

export interface Capture {
  /** From pixels (y down) to mm on the sheet (y up), as `MARK_PLACES` has them, and back. */
  readonly view: SheetView;
  /** The farthest that a mark lies from its place after all, mm. */
  readonly misfit: number;
  /** As far as an outline measured by these marks may be off, in nine pictures of ten, mm. */
  readonly expected: number;
  /** An older sheet, whose marks cannot tell paper that curls from a lens that bends lines. */
  readonly old: boolean;
}

export type CaptureResult =
  | { readonly ok: true; readonly capture: Capture | undefined }
  | { readonly ok: false; readonly problem: Problem };

/** A disc of fewer pixels than this is too coarse to find its middle well. */
const LEAST_PIXELS = 60;
/** A mark's patches have their middles within this share of its size. */
const CENTRED = 0.12;
/**
 * Laid into its own frame by a quarter turn, the sheet's discs are this squared times as high as wide; in the right
 * view they are round, however the camera was tilted. This lies half-way between the two, as ratios go.
 */
const MOST_OBLONG = MARK_SPAN.height / MARK_SPAN.width;
/** Farther from its place (mm) it is no mark, or some are hidden: neither curled paper nor a lens does that. */
const MOST_MISFIT = 6;

/**
 * What nine in ten synthetic photographs with this misfit do not exceed, whatever the marks are off by: a lens, a cut
 * picture, paper that curls or has a corner up, blur and noise (`scripts/bench-pictures.ts` prints cases).
 */
const EXPECTED = { now: { least: 0.15, slope: 2.6 }, old: { least: 0.5, slope: 6 } } as const;

export const expectedError = (misfit: number, old: boolean): number => {
  const { least, slope } = EXPECTED[old ? 'old' : 'now'];
  return least + slope * misfit;
};

/** `capture` is undefined where there are no marks at all: then it is a scan. */
export const findCapture = (picture: Picture, tone: Tone, blobs: readonly Blob[]): CaptureResult => {
  const seen = marksIn(picture, tone, blobs);
  if (seen.length < LEAST_MARKS) return { ok: true, capture: undefined };
  const capture = captureOf(seen, picture);
  if (capture) return { ok: true, capture };
  return refuse(
    captureOf(
      seen.map((mark) => mirrored(mark, picture)),
      picture,
    )
      ? MIRRORED
      : {
          code: 'marks-hidden',
          message: 'not all marks of the capture sheet can be seen',
          found: `${seen.length} of ${MARK_PLACES.length}`,
          expected: 'every mark of the sheet, sharp, with nothing on it',
          hint: 'more light, and the whole sheet in the picture',
        },
  );
};

/** Undefined where the marks do not fit their places. */
const captureOf = (seen: readonly Mark[], { width, height }: Picture): Capture | undefined => {
  const old = seen.length === MARKS_BEFORE;
  if (!old && seen.length !== MARK_PLACES.length) return undefined;
  const places = MARK_PLACES.slice(0, seen.length);
  const frame = { middle: { x: width / 2, y: height / 2 }, half: Math.hypot(width, height) / 2 };
  let best: Capture | undefined;
  const corners = cornersOfHull(seen);
  for (let start = 0; start < corners.length; start++) {
    const four = [0, 1, 2, 3].map((k) => corners[(start + k) % 4]!);
    const rough = findHomography(four, places.slice(0, 4));
    if (!rough) continue;
    const rest = places
      .slice(4)
      .map((place) =>
        seen.reduce((a, b) =>
          distance(applyHomography(rough, b), place) < distance(applyHomography(rough, a), place) ? b : a,
        ),
      );
    const all = [...four, ...rest];
    if (new Set(all).size !== all.length) continue;
    const view = viewThroughLens(all, places, frame);
    if (!view || !areRound(all, view)) continue;
    const misfit = Math.max(...view.offs);
    if (!best || misfit < best.misfit) best = { view, misfit, expected: expectedError(misfit, old), old };
  }
  return best && best.misfit <= MOST_MISFIT ? best : undefined;
};

/** Whether the marks' discs are not much higher than wide on the sheet. */
const areRound = (marks: readonly Mark[], { toSheet }: SheetView): boolean => {
  let [wide, high] = [0, 0];
  for (const { ring } of marks) {
    const places = ring.map(toSheet);
    wide += extent(places.map((p) => p.x));
    high += extent(places.map((p) => p.y));
  }
  return high < MOST_OBLONG * wide;
};

const extent = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

const mirrored = ({ x, y, ring }: Mark, { width }: Picture): Mark => ({
  x: width - x,
  y,
  ring: ring.map((p) => ({ x: width - p.x, y: p.y })),
});

/** A camera, an app or a glass has exchanged the picture's sides: what is traced from it would be another template. */
export const MIRRORED: Problem = {
  code: 'picture-mirrored',
  message: 'the picture of the capture sheet is mirrored',
  expected: 'the sheet as it looks from above, so that its words can be read',
  hint: 'flip the picture back, or take it again without a mirror setting',
};

/** Fewer than this by chance is nothing; a capture sheet with more than half its marks hidden is not guessed at. */
const LEAST_MARKS = 3;

const refuse = (problem: Problem): CaptureResult => ({ ok: false, problem });

/** The middle of a disc with a ring and a middle, and the disc's outline, in pixels. */
interface Mark extends Point {
  readonly ring: readonly Point[];
}

const marksIn = (picture: Picture, tone: Tone, blobs: readonly Blob[]): readonly Mark[] => {
  const children = new Map<number, number[]>();
  blobs.forEach((b, i) => {
    if (b.around < 0 || b.area < 4) return;
    const list = children.get(b.around);
    if (list) list.push(i);
    else children.set(b.around, [i]);
  });
  const found: Mark[] = [];
  blobs.forEach((disc, i) => {
    if (!disc.inked || disc.area < LEAST_PIXELS) return;
    const rings = children.get(i) ?? [];
    const middles = rings.length === 1 ? (children.get(rings[0]!) ?? []) : [];
    if (middles.length !== 1) return;
    const ring = blobs[rings[0]!]!;
    const middle = blobs[middles[0]!]!;
    const size = Math.min(disc.maxX - disc.minX, disc.maxY - disc.minY) + 1;
    const isCentred = [ring, middle].every((b) => Math.hypot(b.x - disc.x, b.y - disc.y) <= CENTRED * size);
    const shares = [disc.area, ring.area, middle.area].map((a) => a / (disc.area + ring.area + middle.area));
    const { disc: d, ring: r, middle: m } = MARK_RADII;
    const wanted = [d * d - r * r, r * r - m * m, m * m].map((a) => a / (d * d));
    const isAlike = shares.every((s, k) => Math.abs(s - wanted[k]!) <= SHARE_WITHIN);
    const long = Math.max(disc.maxX - disc.minX, disc.maxY - disc.minY) + 1;
    if (!isCentred || !isAlike || long > 3 * size) return;
    const outline = contourFrom(picture, tone, disc.startX, disc.startY);
    const at = outline && middleOf(outline);
    if (at) found.push({ ...at, ring: outline });
  });
  return found;
};

/** How far the shares of black and white of a mark may be off: small marks are blurred. */
const SHARE_WITHIN = 0.15;

/** The centroid of the area inside a ring. */
const middleOf = (ring: readonly Point[]): Point | undefined => {
  if (ring.length < 3) return undefined;
  const area = ringArea(ring);
  if (!(Math.abs(area) > 0)) return undefined;
  const o = ring[0]!;
  let x = 0;
  let y = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = { x: ring[i]!.x - o.x, y: ring[i]!.y - o.y };
    const n = ring[(i + 1) % ring.length]!;
    const b = { x: n.x - o.x, y: n.y - o.y };
    const c = a.x * b.y - a.y * b.x;
    x += (a.x + b.x) * c;
    y += (a.y + b.y) * c;
  }
  return { x: o.x + x / (6 * area), y: o.y + y / (6 * area) };
};

/**
 * Four of the points that make the largest four-cornered figure, clockwise as seen. Marks between two corners lie
 * on a side of it. Eight points have seventy choices of four.
 */
const cornersOfHull = (points: readonly Mark[]): readonly Mark[] => {
  let best: readonly Mark[] = [];
  let most = 0;
  const n = points.length;
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      for (let c = b + 1; c < n; c++)
        for (let d = c + 1; d < n; d++) {
          const four = [points[a]!, points[b]!, points[c]!, points[d]!];
          const x = four.reduce((s, p) => s + p.x, 0) / 4;
          const y = four.reduce((s, p) => s + p.y, 0) / 4;
          // With y down, growing angles run clockwise as seen.
          const round = [...four].sort((p, q) => Math.atan2(p.y - y, p.x - x) - Math.atan2(q.y - y, q.x - x));
          const area = Math.abs(ringArea(round));
          if (area > most) {
            most = area;
            best = round;
          }
        }
  return best;
};
