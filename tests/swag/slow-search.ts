/**
 * The fit search over again, slow and plain: for given counts every tilt of a fine grid is laid by turning
 * points of the stitched path, and looked at point by point. It shares no code with the search but the path
 * of a half swag (which has tests of its own).
 */

import { type Path, type Point, pathLength, pointAlong, slicePath } from '../../src/geometry/index.ts';
import { pointsAlong } from './fit-helpers.ts';

export interface SlowWay {
  /** Points of the half swag from start to crown, the start at the origin, not tilted. */
  readonly points: readonly Point[];
  /** Those of them that are farther from the crown than its point is long. */
  readonly body: readonly Point[];
  /** Points of it every quarter of a millimetre along it, from the start. */
  readonly evenly: readonly Point[];
  /** A hundredth of a millimetre before its end. */
  readonly before: Point;
  /** mm that a corner's body keeps from the mitre: half of what its two halves keep from one another. */
  readonly neck: number;
}

export interface SlowGround {
  readonly lengths: readonly number[];
  /** The swag over each corner: none, half on either side, or one on a chord square to the mitre. */
  readonly corner: 'none' | 'turn' | 'across';
  readonly from: 'inner' | 'outer';
  /** mm that stitching may reach from the start line. */
  readonly room: number;
  readonly gap: number;
  /** Whether the plan says how deep its swags are, or how far they reach: then they may be all but flat. */
  readonly asksDepth?: boolean;
  /** Whether anything is asked of its swags: no corner is drawn out to a needle to come nearer to that. */
  readonly asks?: boolean;
  /** Whether a corner's halves are to meet on the mitre in one smooth curve. */
  readonly smooth?: boolean;
}

/** The program lays no swag flatter than this, depth over span, that nobody asked for, unless it finds nothing else. */
export const ALL_BUT_FLAT = 0.04;
/** Depth over span from which on an eye takes a corner's swag for a line. */
const NEEDLE = 1 / ALL_BUT_FLAT;

/** Closer together near the two ends, where the path leaves its start line and comes to its mirror. */
const slowPoints = (path: Path): Point[] => {
  const length = pathLength(path);
  return [
    ...pointsAlong(slicePath(path, 0, 2), 0.02),
    ...pointsAlong(slicePath(path, length - 2, length), 0.02),
    ...pointsAlong(path, 0.5),
  ];
};

/** A corner's halves stay two clearances apart, but for the crown's point: four clearances, or a third of a short half. */
export const slowWay = (path: Path, clearance: number): SlowWay => {
  const length = pathLength(path);
  const point = Math.min(4 * clearance, length / 3);
  const body = [...pointsAlong(slicePath(path, 0, length - point), 0.25), pointAlong(path, length - point)!];
  const before = pointAlong(path, length - 0.01)!;
  return { points: slowPoints(path), body, evenly: pointsAlong(path, EVENLY), before, neck: clearance };
};

/** Rounding of a turned point, mm. */
const EDGE = 1e-9;

/**
 * Points miss what happens between them: where a path sets out along its start line, a tilt this much too low
 * (radians) dips unseen. So a pose counts only where the tilts this far to either side are valid too.
 */
const PLAY = 1e-3;

export const isSafe = (way: SlowWay, rise: number, ground: SlowGround, corner: boolean): boolean =>
  [0, -PLAY, PLAY].every((play) => isValid(way, rise + play, ground, corner));

/** Whether a half swag, tilted so that its crown is `rise` over the start line, stays in its cell. */
const isValid = (way: SlowWay, rise: number, ground: SlowGround, corner: boolean): boolean => {
  const end = way.points.at(-1)!;
  const tilt = rise - Math.atan2(end.y, end.x);
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const lay = (p: Point): Point => ({ x: p.x * c - p.y * s, y: p.x * s + p.y * c });
  const crown = lay(end);
  if (!(crown.x > 0.1 && crown.y > 0.1)) return false;
  // The mitre through the crown: x − y is constant on it from the inner seam, x + y from the outer.
  const sense = ground.from === 'inner' ? -1 : 1;
  const fromMitre = (x: number, y: number): number =>
    (crown.x + sense * crown.y - (x + sense * y)) * Math.SQRT1_2;
  if (corner && ground.corner === 'turn')
    for (const { x, y } of way.body)
      if (!(fromMitre(x * c - y * s, x * s + y * c) >= way.neck - EDGE)) return false;
  if (ground.corner === 'across')
    return (
      way.points.every((p) => keepsBesideAcross(lay(p), crown, ground, corner)) &&
      !runsDoubled(way.evenly, lay, ground, corner)
    );
  if (!corner && isDoubledAtJoin(way.evenly, lay, ground)) return false;
  // A search over again spends most of its time here, so no point is made anew.
  for (const p of way.points) {
    const [x, y] = [p.x * c - p.y * s, p.x * s + p.y * c];
    if (y < -EDGE || y > ground.room + EDGE) return false;
    if (x < -ground.gap / 2 - EDGE) return false;
    if (corner ? !(fromMitre(x, y) >= -EDGE) : !(x <= crown.x + EDGE)) return false;
  }
  return true;
};

/** Whether a side's first swag, which starts so far (mm) from the corner of the start lines, comes over the line at 45° through it. */
const passesMitre = (way: SlowWay, rise: number, along: number): boolean => {
  const end = way.points.at(-1)!;
  const tilt = rise - Math.atan2(end.y, end.x);
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  return way.points.some(({ x, y }) => s * x + c * y > c * x - s * y + along + EDGE);
};

/** The angle between the chords of a corner's swag and of the side's last, 135°, is halved by the line between the two. */
const HALVED = (67.5 * Math.PI) / 180;

const keepsBesideAcross = (p: Point, crown: Point, { room, gap }: SlowGround, corner: boolean): boolean => {
  // The side runs down from the corner's chord at 45°, and the line stands in the middle of the gap.
  const middle = corner
    ? { x: -gap * Math.SQRT1_2 * 0.5, y: gap * Math.SQRT1_2 * 0.5 }
    : { x: -gap / 2, y: 0 };
  const past = Math.cos(HALVED) * (p.y - middle.y) - Math.sin(HALVED) * (p.x - middle.x);
  const level = corner ? (p.x + p.y) * Math.SQRT1_2 : p.y;
  const behind = corner ? true : p.x >= -gap / 2 - EDGE;
  return p.y >= -EDGE && level <= room + EDGE && p.x <= crown.x + EDGE && past <= EDGE && behind;
};

/**
 * Whether it sets out beside its neighbour's for more than an inch, as near as 1/16 in: a thick line, which the program
 * does not sew. The neighbour is the mirror image in the line between the two.
 */
const runsDoubled = (
  evenly: readonly Point[],
  lay: (p: Point) => Point,
  { gap }: SlowGround,
  corner: boolean,
): boolean => {
  if (gap >= 25.4 / 16) return false;
  const fromLine = (p: Point, angle: number): number => {
    const middle =
      corner && angle === HALVED
        ? { x: -gap * Math.SQRT1_2 * 0.5, y: gap * Math.SQRT1_2 * 0.5 }
        : { x: -gap / 2, y: 0 };
    return Math.abs(Math.sin(angle) * (p.x - middle.x) - Math.cos(angle) * (p.y - middle.y));
  };
  const angles = corner ? [HALVED] : [HALVED, Math.PI / 2];
  return angles.some((angle) => {
    const parts = evenly.findIndex((p, i) => i > 0 && fromLine(lay(p), angle) > 25.4 / 32);
    return (parts < 0 ? evenly.length : parts) * EVENLY > 25.4 + EVENLY;
  });
};
const EVENLY = 0.25;

/** Whether it keeps within 1/32 in of its join for more than an inch: with its like, or another as near, one thick line. */
const isDoubledAtJoin = (
  evenly: readonly Point[],
  lay: (p: Point) => Point,
  { gap }: SlowGround,
): boolean => {
  if (gap >= 25.4 / 16) return false;
  const parts = evenly.findIndex((p, i) => i > 0 && Math.abs(lay(p).x + gap / 2) > 25.4 / 32);
  return (parts < 0 ? evenly.length : parts) * EVENLY > 25.4 - 2 * EVENLY;
};

/**
 * From the outer seam two sides that meet point towards each other: where both reach deeper than they begin from the
 * corner, they may lie over the same cloth.
 */
const leansOver = ({ uses }: SlowFigures, start: number, { corner, from, room }: SlowGround): boolean =>
  corner === 'turn' &&
  from === 'outer' &&
  uses.some((use, i) => Math.min(use, uses[(i + 1) % uses.length]!) * room > start + EDGE);

/** Whether a corner's half comes to the mitre surely within half a degree of square to it. */
const comesSquare = ({ points, before }: SlowWay, rise: number, { corner, from }: SlowGround): boolean => {
  const end = points.at(-1)!;
  const tilt = rise - Math.atan2(end.y, end.x);
  const along = Math.atan2(end.y - before.y, end.x - before.x) + tilt;
  const square = corner === 'across' ? 0 : from === 'inner' ? -Math.PI / 4 : Math.PI / 4;
  return Math.cos(along - square) > Math.cos((0.45 * Math.PI) / 180);
};

/** What a pose makes of the sides, mm; the corner's depth is the last one, where there is a corner. */
export interface SlowFigures {
  readonly spans: readonly number[];
  readonly depths: readonly number[];
  /** How much of the room each reaches into, as shares; the corner's own are the last ones too. */
  readonly uses: readonly number[];
}

/** How far (mm) a half swag reaches from its own start line. */
const topOf = ({ points }: SlowWay, rise: number): number => {
  const end = points.at(-1)!;
  const tilt = rise - Math.atan2(end.y, end.x);
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  let top = Number.NEGATIVE_INFINITY;
  for (const { x, y } of points) top = Math.max(top, x * s + y * c);
  return top;
};

const spread = ({ depths }: SlowFigures): number => Math.max(...depths) - Math.min(...depths);

/** The least spread of depths for these counts over a grid of the corner's tilts; undefined where no tilt is valid. */
export const slowSpread = (
  way: SlowWay,
  ground: SlowGround,
  counts: readonly number[],
  step: number,
): number | undefined => slowLeast(way, ground, counts, step, () => 0)?.spread;

interface SlowFound {
  readonly missed: number;
  readonly spread: number;
}

/**
 * Of the tilts of a grid with the least of what is missed, the least spread of depths. What is missed of a pose is for
 * the caller to say: undefined leaves it out. The corner's swag may be made in a way of its own. Where the grid has only
 * what is all but flat and not asked for, or needles, anything that is found is as good: between its tilts there may be
 * more.
 */
export const slowLeast = (
  way: SlowWay,
  ground: SlowGround,
  counts: readonly number[],
  step: number,
  missed: (figures: SlowFigures) => number | undefined,
  over = way,
): SlowFound | undefined => {
  const of = (flattest: number, steepest: number) =>
    leastOverGrid(way, ground, counts, step, missed, over, flattest, steepest);
  const flattest = ground.asksDepth ? 0 : ALL_BUT_FLAT;
  const steepest = ground.asks ? NEEDLE : Number.POSITIVE_INFINITY;
  return of(flattest, steepest) ?? (of(0, Number.POSITIVE_INFINITY) && ANY);
};

const ANY: SlowFound = { missed: Number.POSITIVE_INFINITY, spread: Number.POSITIVE_INFINITY };

const leastOverGrid = (
  way: SlowWay,
  ground: SlowGround,
  counts: readonly number[],
  step: number,
  missed: (figures: SlowFigures) => number | undefined,
  over: SlowWay,
  flattest: number,
  steepest: number,
): SlowFound | undefined => {
  const end = way.points.at(-1)!;
  const chord = Math.hypot(end.x, end.y);
  const crown = over.points.at(-1)!;
  const ofCorner = Math.hypot(crown.x, crown.y);
  // Sides that are as long and have as many swags need looking at once.
  const seen = new Map<number, boolean>();
  const isSafeOnSide = (rise: number): boolean => {
    const known = seen.get(rise) ?? isSafe(way, rise, ground, false);
    seen.set(rise, known);
    return known;
  };
  const sidesAt = (a: number): SlowFigures | undefined => {
    const depths: number[] = [];
    const spans: number[] = [];
    const uses: number[] = [];
    for (let i = 0; i < counts.length; i++) {
      const h = ((ground.lengths[i]! - 2 * a) / counts[i]! - ground.gap) / 2;
      if (!(h > 0 && h < chord)) return undefined;
      if (Math.sqrt(chord * chord - h * h) < flattest * 2 * h) return undefined;
      const rise = Math.acos(h / chord);
      if (!isSafeOnSide(rise)) return undefined;
      if (ground.corner === 'across' && passesMitre(way, rise, a + ground.gap / 2)) return undefined;
      depths.push(chord * Math.sin(rise));
      spans.push(2 * h);
      uses.push(topOf(way, rise) / ground.room);
    }
    return { spans, depths, uses };
  };
  let best: SlowFound | undefined;
  const look = (figures: SlowFigures): void => {
    const miss = missed(figures);
    if (miss === undefined) return;
    const one = { missed: miss, spread: spread(figures) };
    if (!best || miss < best.missed || (miss === best.missed && one.spread < best.spread)) best = one;
  };
  if (ground.corner === 'none') {
    const figures = sidesAt(0);
    if (figures) look(figures);
    return best;
  }
  for (let rise = step; rise < Math.PI / 2; rise += step) {
    const h = ofCorner * Math.cos(rise);
    const d = ofCorner * Math.sin(rise);
    if (d < flattest * 2 * h || d > steepest * 2 * h) continue;
    const start = ground.corner === 'across' ? Math.SQRT2 * h : ground.from === 'inner' ? h - d : h + d;
    if (start < 0 || (ground.smooth && !comesSquare(over, rise, ground))) continue;
    const figures = sidesAt(start + ground.gap / 2);
    if (!figures || !isSafe(over, rise, ground, true)) continue;
    if (leansOver(figures, start, ground)) continue;
    const spans = ground.corner === 'across' ? [...figures.spans, 2 * h] : figures.spans;
    const uses = [...figures.uses, topOf(way, rise) / ground.room];
    look({ spans, depths: [...figures.depths, d], uses });
  }
  return best;
};
