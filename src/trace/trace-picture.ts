/** From a picture to a template's outline in mm: one call for scans and for photographs of the capture sheet. */

import type { Problem } from '../document/index.ts';
import { containsPoint, distance, type Path, type Point, pointAlong, polyline } from '../geometry/index.ts';
import { numberApart } from '../length/index.ts';
import { type Blob, blobsOf } from './blobs.ts';
import { enclosesBody } from './body.ts';
import {
  CAPTURE_INSET,
  type Capture,
  type CaptureResult,
  findCapture,
  MARK_PLACES,
  MARK_SPAN,
  MIRRORED,
} from './capture-marks.ts';
import { contourFrom, ringArea } from './contour.ts';
import { ringLength, ringOf } from './corners.ts';
import { betterPhoto, MOST_EXPECTED } from './doubts.ts';
import { fitOutline, type Outline, type OutlineCorner } from './fit-outline.ts';
import { type LineSide, lineMiddle } from './line-middle.ts';
import { type OpenLine, openLine } from './open-line.ts';
import { isLineArt, type Picture, softened } from './picture.ts';
import { NO_RESOLUTION, resolutionProblem } from './resolution.ts';
import { findShape, OPEN_LINE } from './shape.ts';
import { evenlyLit, type Tone, toneOf } from './tone.ts';
import { alongNearest } from './working-edge.ts';

export interface TraceOptions {
  /** mm that the outline may lie from the smoothed picture. */
  readonly tolerance: number;
  /** Which side of a drawn line; undefined for its middle, and the outer side where it looks like the rim of acrylic. */
  readonly side: LineSide | undefined;
  /** The picture's resolution, pixels per mm; undefined where only a capture sheet can tell it. */
  readonly pixelsPerMm: number | undefined;
  /** Two marks of a ruler in the picture that told it, in pixels. */
  readonly marks?: Marks | undefined;
  /** What lengths on the capture sheet measure over what they should, along its width and its height. */
  readonly sheetScale: { readonly x: number; readonly y: number };
  /** Of acrylic that lies on the sheet itself: how thick it is, and how high over the sheet the lens was (mm). */
  readonly raised?: { readonly thickness: number; readonly height: number } | undefined;
}

export type Marks = readonly [Point, Point];

export interface Traced {
  readonly kind: 'solid' | 'line';
  /** Where smaller shapes lie that were left out, in pixels. */
  readonly leftOut: readonly Point[];
  /** The width of a drawn line, mm. */
  readonly lineWidth: number | undefined;
  /** Which side of it was taken. */
  readonly side: LineSide | undefined;
  /** Where other lines touch it, in pixels, so that it has neither a middle nor an inner side. */
  readonly touched: Point | undefined;
  readonly source: 'scan' | 'capture-sheet';
  /** Whether two marks told its size. */
  readonly byMarks: boolean;
  /** How well the capture sheet's marks agree; undefined for a scan. */
  readonly capture: Capture | undefined;
  /** The share by which the outline was made smaller, because the edge that is seen lies over the sheet; 0 for none. */
  readonly lowered: number;
  /** Whether what a drawn line encloses is darker than the paper: then it is the rim of acrylic. */
  readonly hasBody: boolean;
  /** Whether a drawn line is light on dark ground, as the rim of acrylic is. */
  readonly isLight: boolean;
  /** Of two greys and none between: a scan in line art, or a photograph that an app made one of. */
  readonly lineArt: boolean;
  /** In mm, y up, clockwise. */
  readonly outline: Outline;
  /** Small round marks inside the outline, beside its edge: places along it where someone wants a break. */
  readonly dots: readonly Dot[];
  /** Mean pixels per mm. */
  readonly pixelsPerMm: number;
  /** From mm back to pixels of the picture, y down. */
  readonly toPixels: (p: Point) => Point;
  readonly toMm: (p: Point) => Point;
}

interface Dot {
  readonly middle: Point;
  /** Along the outline, mm. */
  readonly at: number;
}

export type TraceResult =
  | { readonly ok: true; readonly traced: Traced }
  | { readonly ok: false; readonly problem: Problem };

/** A long template's outline is 2 m long; one of more than this (mm) is a comb's, or a scribble's. */
const LONGEST_OUTLINE = 6000;
/** Outlines that leave their lines and arcs by more than this (mm) are torn, or no template's. */
const MOST_ROUGHNESS = 0.35;
/** More corners than this, or more lines and arcs, and it is something else that was drawn. */
const MOST_CORNERS = 80;
const MOST_PIECES = 400;

export const tracePicture = (original: Picture, options: TraceOptions): TraceResult => {
  const scanned = softened(original);
  const tone = toneOf(scanned);
  if (!tone) return refuse(BLANK);
  const blobs = blobsOf(scanned, tone);
  if (!blobs) return refuse(NOISE);
  // The sheet's marks are dark on light, whatever the table is that the sheet lies on.
  const onSheet = tone.dark ? tone : { ...tone, dark: true };
  const marked = findCapture(scanned, onSheet, tone.dark ? blobs : (blobsOf(scanned, onSheet) ?? []));
  const lineArt = isLineArt(original);
  if (marked.ok && !marked.capture) return traceScan(scanned, tone, blobs, options, lineArt);
  return tracePhoto(scanned, marked, options, lineArt);
};

/** Light falls unevenly on what is photographed, so the marks are found again when that is taken out. */
const tracePhoto = (
  scanned: Picture,
  before: CaptureResult,
  options: TraceOptions,
  lineArt: boolean,
): TraceResult => {
  const lit = evenlyLit(scanned);
  const litTone = toneOf(lit, true);
  const litBlobs = litTone && blobsOf(lit, litTone);
  const again = litTone && litBlobs ? findCapture(lit, litTone, litBlobs) : before;
  const isMirrored = !again.ok && again.problem === MIRRORED;
  const found = (again.ok && again.capture) || isMirrored ? again : before;
  if (!found.ok) return refuse(found.problem);
  const { capture } = found;
  if (!capture) return refuse(NOISE);
  if (!(capture.expected <= MOST_EXPECTED)) return refuse(notTrusted(capture));
  const { toSheet, toPicture } = capture.view;
  const { x: kx, y: ky } = options.sheetScale;
  const toMm = (p: Point): Point => {
    const q = toSheet(p);
    return { x: q.x * kx, y: q.y * ky };
  };
  const toPixels = (p: Point): Point => toPicture({ x: p.x / kx, y: p.y / ky });
  const isInside = (x: number, y: number): boolean => {
    const q = toSheet({ x, y });
    const i = CAPTURE_INSET;
    return q.x > i && q.y > i && q.x < MARK_SPAN.width - i && q.y < MARK_SPAN.height - i;
  };
  const tone = toneOf(lit, true, isInside);
  if (!tone) return refuse(BLANK);
  const blobs = blobsOf(lit, tone);
  if (!blobs) return refuse(NOISE);
  const seen = MARK_PLACES.slice(0, 4).map(toPicture);
  const area = MARK_SPAN.width * kx * MARK_SPAN.height * ky;
  return traceShape(lit, tone, blobs, options, {
    toMm,
    toPixels,
    pixelsPerMm: Math.sqrt(Math.abs(ringArea(seen)) / area),
    // The table round the sheet reaches the picture's edge, and is left out by that.
    considered: (b) => isInside(b.x + 0.5, b.y + 0.5),
    mayLie: (p) => isInside(p.x, p.y),
    source: 'capture-sheet',
    capture,
    lineArt,
  });
};

const traceScan = (
  picture: Picture,
  tone: Tone,
  blobs: readonly Blob[],
  options: TraceOptions,
  lineArt: boolean,
): TraceResult => {
  const { pixelsPerMm, marks } = options;
  if (pixelsPerMm === undefined) return refuse(NO_RESOLUTION);
  const problem = resolutionProblem(pixelsPerMm, picture, marks !== undefined);
  if (problem) return refuse(problem);
  return traceShape(picture, tone, blobs, options, {
    toMm: (p) => ({ x: p.x / pixelsPerMm, y: (picture.height - p.y) / pixelsPerMm }),
    toPixels: (p) => ({ x: p.x * pixelsPerMm, y: picture.height - p.y * pixelsPerMm }),
    pixelsPerMm,
    considered: () => true,
    mayLie: () => true,
    source: 'scan',
    capture: undefined,
    lineArt,
  });
};

interface View extends Pick<Traced, 'toMm' | 'toPixels' | 'pixelsPerMm' | 'source' | 'capture' | 'lineArt'> {
  readonly considered: (blob: Blob) => boolean;
  /** Where a template's outline may run, in pixels. */
  readonly mayLie: (p: Point) => boolean;
}

const traceShape = (
  picture: Picture,
  tone: Tone,
  blobs: readonly Blob[],
  options: TraceOptions,
  seenAs: View,
): TraceResult => {
  const { marks } = options;
  const isRuler = ({ startX, startY }: Blob): boolean =>
    marks !== undefined && holds(contourFrom(picture, tone, startX, startY) ?? [], marks);
  const chosen = findShape(blobs, 1 / seenAs.pixelsPerMm, seenAs.considered, isRuler);
  if (!chosen.ok) return refuse(chosen.problem);
  const { shape } = chosen;
  const isRaised = seenAs.source === 'capture-sheet' && options.raised;
  const lowered = isRaised ? isRaised.thickness / isRaised.height : 0;
  const view = scaled(seenAs, 1 - lowered);
  const { toMm, pixelsPerMm, lineArt } = view;
  const ringFrom = (b: Blob): Point[] | undefined =>
    contourFrom(picture, tone, b.startX, b.startY)?.map(toMm);
  const seen = contourFrom(picture, tone, shape.outer.startX, shape.outer.startY);
  if (seen && !seen.every(view.mayLie)) return refuse(OFF_FIELD);
  const outer = seen?.map(toMm);
  const inner = shape.inner && ringFrom(shape.inner);
  if (!outer || (shape.inner && !inner) || !(ringLength(ringOf(outer)) <= LONGEST_OUTLINE))
    return refuse(RAGGED);
  const open = shape.inner ? undefined : openLine(outer);
  if (open) return refuse(notClosed(open, view.toPixels));
  const isLine = shape.kind === 'line';
  const middle = inner && lineMiddle(outer, inner);
  const lineWidth = middle?.width;
  const hasBody =
    isLine && seen !== undefined && enclosesBody(picture, seen, lineWidth ?? 0, seenAs.pixelsPerMm);
  const isLight = isLine && !tone.dark;
  // A line that is light on dark, or has something darker than the paper inside it, is no pencil's.
  const wanted = options.side ?? (hasBody || isLight ? 'outer' : 'middle');
  const parted = wanted === 'outer' ? undefined : middle?.parted;
  const side = parted ? 'outer' : wanted;
  const points = !middle || side === 'outer' ? outer : side === 'inner' ? inner : middle.points;
  const clockwise = ringArea(points) <= 0 ? points : [...points].reverse();
  const pixel = 1 / pixelsPerMm;
  const outline = fitOutline(clockwise, {
    tolerance: options.tolerance,
    gap: Math.max(LEAST_GAP, BLURRED[view.source] * pixel) + (isLine ? (lineWidth ?? 0) / 2 : 0),
    noise: Math.max(0.06, (lineArt ? 0.5 : 0.4) * pixel) * (isLine ? 2 : 1),
    steps: lineArt ? pixel : 0,
    fairness: Math.max(
      isLine || view.source === 'capture-sheet' ? PEN_FAIRNESS : FAIRNESS,
      lineArt ? STEPS_FAIRNESS * pixel : 0,
    ),
  });
  const isRagged =
    !(outline.roughness <= MOST_ROUGHNESS) ||
    outline.corners.length > MOST_CORNERS ||
    outline.path.pieces.length > MOST_PIECES;
  if (isRagged) return refuse(RAGGED);
  const { toPixels, source, capture } = view;
  return {
    ok: true,
    traced: {
      kind: shape.kind,
      leftOut: shape.leftOut.map((b) => ({ x: (b.minX + b.maxX) / 2, y: (b.minY + b.maxY) / 2 })),
      lineWidth,
      source,
      capture,
      lowered,
      side: middle && side,
      touched: parted && view.toPixels(parted),
      hasBody,
      isLight,
      lineArt,
      byMarks: source === 'scan' && options.marks !== undefined,
      outline,
      dots: dotsIn(shape.inside, outline.path, outline.corners, view),
      pixelsPerMm,
      toPixels,
      toMm,
    },
  };
};

/** Whether marks lie on it: then it is the ruler. */
const holds = (ring: readonly Point[], marks: Marks): boolean => {
  const region = { loops: [polyline(ring, true)] };
  return marks.every((mark) => containsPoint(region, mark));
};

/**
 * The upper edge of acrylic lies over the sheet by its thickness. From the lens one plane is seen on another parallel to
 * it as a figure similar to itself (central projection), larger by height over height less thickness.
 */
const scaled = (view: View, share: number): View => ({
  ...view,
  toMm: (p) => {
    const q = view.toMm(p);
    return { x: q.x * share, y: q.y * share };
  },
  toPixels: (p) => view.toPixels({ x: p.x / share, y: p.y / share }),
  pixelsPerMm: view.pixelsPerMm / share,
});

/** What a corner loses to the pixels: a scanner blurs by one or two, a camera by more. At least so much, mm. */
const BLURRED = { scan: 3, 'capture-sheet': 4 } as const;
const LEAST_GAP = 0.35;

/** Waves shorter than six times this (mm) are the scanner's noise, or a pen's. */
const FAIRNESS = 0.5;
const PEN_FAIRNESS = 0.8;
/** In steps of line art, whose waves are as long as many of them. */
const STEPS_FAIRNESS = 6;

/** A dot that marks a break: its size, and how near to the edge its middle is (mm). */
const DOT = { least: 0.8, most: 4, near: 6 } as const;
/** A dot beside a corner (mm) says nothing new. */
const DOT_CORNER = 3;

const dotsIn = (
  inside: readonly Blob[],
  path: Path,
  corners: readonly OutlineCorner[],
  { toMm, pixelsPerMm }: View,
): readonly Dot[] =>
  inside
    .flatMap((b): Dot[] => {
      const width = (b.maxX - b.minX + 1) / pixelsPerMm;
      const height = (b.maxY - b.minY + 1) / pixelsPerMm;
      const isRound = b.area >= 0.6 * (b.maxX - b.minX + 1) * (b.maxY - b.minY + 1);
      const isDot = Math.min(width, height) >= DOT.least && Math.max(width, height) <= DOT.most && isRound;
      if (!isDot || Math.max(width, height) > 2 * Math.min(width, height)) return [];
      const middle = toMm({ x: b.x + 0.5, y: b.y + 0.5 });
      const at = alongNearest(path, middle);
      const place = pointAlong(path, at);
      if (!place || distance(place, middle) > DOT.near) return [];
      if (corners.some((c) => distance(c.point, place) < DOT_CORNER)) return [];
      return [{ middle, at }];
    })
    .sort((a, b) => a.at - b.at);

const refuse = (problem: Problem): TraceResult => ({ ok: false, problem });

const notTrusted = (capture: Capture): Problem => ({
  code: 'photo-not-trusted',
  message: "the capture sheet's marks do not lie where they should, so the outline cannot be trusted",
  found: `marks ${capture.misfit.toFixed(2)} mm off, by which the outline may be ${numberApart(capture.expected, MOST_EXPECTED, 1)} mm off`,
  expected: `an outline ${MOST_EXPECTED} mm off at most`,
  hint: betterPhoto(capture),
});

const notClosed = ({ gap, wide }: OpenLine, toPixels: Traced['toPixels']): Problem => {
  const { x, y } = toPixels(gap);
  return {
    ...OPEN_LINE,
    found: `a gap of ${wide.toFixed(1)} mm near ${Math.round(x)},${Math.round(y)} in the picture`,
  };
};

const BLANK: Problem = {
  code: 'blank-picture',
  message: 'the picture is blank, or nothing in it stands out from its ground',
  expected: 'a dark shape or line on light ground, or the other way round',
};
const NOISE: Problem = {
  code: 'noisy-picture',
  message: 'the picture shows no clear shape',
  expected: 'one template, or one closed line, on a plain ground',
};
const OFF_FIELD: Problem = {
  code: 'shape-runs-off',
  message: 'the shape runs off the field of the capture sheet',
  expected: 'the whole template between the corner ticks',
  hint: 'one that is too long for them can be scanned, or measured off a cutting mat as edge: { points }',
};
const RAGGED: Problem = {
  code: 'ragged-outline',
  message: "the shape's outline is too ragged for a template",
  expected: 'one template, or one closed line, on a plain ground',
};
