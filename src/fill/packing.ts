/**
 * Circles packed into a region so that they touch one another, from the edge inwards.
 *
 * Method: an advancing front. Each new circle is put where it touches two things already there, two circles
 * or a circle and the edge; these places have closed forms, and the one nearest to the region's edge is taken
 * first, from a heap. Then the gaps between three things are filled with the circle that touches all three
 * (Apollonius's problem, by Newton's method from the Delaunay triangles of centres and edge samples), largest
 * first, again and again until none of the least size fits.
 */

import { Delaunay } from 'd3-delaunay';
import FlatQueue from 'flatqueue';
import {
  add,
  arc,
  type BoxTree,
  boxTreeOf,
  crossings,
  distance,
  distanceToPiece,
  eachBoxed,
  flatten,
  leftOf,
  line,
  nearnessOf,
  norm,
  type Piece,
  type Point,
  pathLength,
  pieceAt,
  pieceDirection,
  pieceLength,
  probeRegion,
  type Region,
  regionPieces,
  scale,
  subtract,
  TURN,
} from '../geometry/index.ts';
import type { Circle } from './contact-tour.ts';
import { MOST_ELEMENTS } from './fill.ts';
import { gridOf } from './point-grid.ts';
import type { Random } from './random.ts';
import { resample } from './smooth-path.ts';

export interface PackingOptions {
  /** Radii (mm): the largest, the least of the first circles, and the least that still fills a gap. */
  readonly largest: number;
  readonly smallest: number;
  readonly least: number;
  /** Circles keep this far (mm) from the region's edge. */
  readonly gap: number;
  readonly random: Random;
}

/** Circles that overlap by less than this (mm) touch: rounding, far below a thread. */
const TOUCHING = 1e-7;

/**
 * Gaps are looked for again at most this many times. Open areas need four or five; along a strip each time
 * adds one circle at each end.
 */
const MOST_PASSES = 100;

/** Fewer circles than this are a small area. */
const FEW = 60;

export const packCircles = (region: Region, options: PackingOptions): Circle[] => {
  const { largest, smallest, least, gap, random } = options;
  const probe = probeRegion(region);
  const boundary = regionPieces(region).filter((p) => pieceLength(p) > 0);
  const edge: Edge = { pieces: boundary, tree: boxTreeOf(boundary) };
  const circles: Circle[] = [];
  const grid = gridOf<Circle>(2 * largest);
  const front = new FlatQueue<Circle>();

  // The cheap question first: most places are taken.
  const free = ({ center, radius }: Circle): boolean =>
    grid
      .near(center, radius + largest)
      .every((c) => distance(c.center, center) >= c.radius + radius - TOUCHING) &&
    !probe.nearer(center, gap + radius - TOUCHING) &&
    probe.contains(center);

  /** The places for a circle that touches circle `a` and what lies near it. */
  const offer = (a: Circle, size = (): number => random.between(smallest, largest)): void => {
    for (const b of grid.near(a.center, a.radius + 3 * largest)) {
      if (b === a) continue;
      const r = size();
      offerAll(whole(a.center, a.radius + r), whole(b.center, b.radius + r), r);
    }
    const reach = a.radius + gap + 2 * largest;
    eachBeside(edge, a.center, reach, (piece) => {
      if (!(distanceToPiece(piece, a.center) < reach)) return;
      const r = size();
      for (const inside of insideOf(piece, gap + r)) offerAll(whole(a.center, a.radius + r), inside, r);
    });
  };
  const offerAll = (a: Piece, b: Piece, radius: number): void => {
    for (const c of crossings(a, b)) {
      const circle = { center: c.point, radius };
      if (free(circle)) front.push(circle, probe.distance(c.point) + random.between(0, largest / 2));
    }
  };
  const put = (circle: Circle): void => {
    circles.push(circle);
    grid.add(circle.center, circle);
    offer(circle);
  };
  const advance = (): void => {
    while (circles.length < MOST_ELEMENTS) {
      const next = front.pop();
      if (!next) return;
      if (free(next)) put(next);
    }
  };

  // A first circle at the middle of a stretch of the edge starts the front. One is enough, so that all hang together;
  // others follow only where it did not come.
  const start = (radius: number): boolean => {
    if (circles.length >= MOST_ELEMENTS) return false;
    for (const piece of boundary) {
      const at = pieceAt(piece, 0.5);
      const center = add(at, scale(leftOf(pieceDirection(piece, 0.5)), gap + radius));
      if (!free({ center, radius })) continue;
      put({ center, radius });
      advance();
      return true;
    }
    return false;
  };
  const samples = edgeSamples(region, Math.max(least, largest / 2));
  const settled = new Set<number>();
  const fillGaps = (): void => {
    for (let pass = 0; pass < MOST_PASSES && circles.length < MOST_ELEMENTS; pass++) {
      const found = gapsIn(circles, edge, samples, gap, largest, least, grid, settled).filter(free);
      found.sort((a, b) => b.radius - a.radius);
      let added = 0;
      for (const circle of found) {
        if (circles.length >= MOST_ELEMENTS || !free(circle)) continue;
        put(circle);
        added++;
        if (circle.radius >= smallest) advance();
      }
      if (added === 0 && !offerSmaller()) break;
    }
  };
  /** In a small area gaps may lie between one circle and one edge, which no triangle tells: smaller circles find them. */
  const offerSmaller = (): boolean => {
    const before = circles.length;
    if (before > FEW) return false;
    for (let r = smallest; r >= least && circles.length === before; r *= 0.85) {
      for (const c of [...circles]) offer(c, () => r);
      advance();
    }
    return circles.length > before;
  };
  // Where none of the usual size has room, smaller ones do, so that a strip is not left empty.
  let radius = random.between(smallest, largest);
  while (radius >= least) {
    if (start(radius)) fillGaps();
    else radius = Math.min(smallest, radius) * (radius > smallest ? 1 : 0.9);
  }
  return circles;
};

/** The region's boundary, with a tree over its pieces. */
interface Edge {
  readonly pieces: readonly Piece[];
  readonly tree: BoxTree;
}

/** Calls `visit` for the pieces that may come within `reach` mm of a point, in their order. */
const eachBeside = ({ pieces, tree }: Edge, p: Point, reach: number, visit: (piece: Piece) => void): void =>
  eachBoxed(tree, p.x - reach, p.y - reach, p.x + reach, p.y + reach, (i) => visit(pieces[i]!));

const whole = (center: Point, radius: number): Piece => arc(center, radius, 0, TURN);

/**
 * Where the centre of a circle lies that touches a boundary piece from inside: the piece moved to its left,
 * and the circles about its ends.
 */
const insideOf = (piece: Piece, by: number): Piece[] => {
  const ends = [whole(piece.from, by)];
  if (piece.kind === 'line') {
    const n = scale(leftOf(pieceDirection(piece, 0)), by);
    return [line(add(piece.from, n), add(piece.to, n)), ...ends];
  }
  const radius = piece.radius - Math.sign(piece.sweep) * by;
  return radius > 0 ? [arc(piece.center, radius, piece.start, piece.sweep), ...ends] : ends;
};

interface EdgeSample {
  readonly at: Point;
  readonly piece: number;
}

const edgeSamples = (region: Region, step: number): EdgeSample[] => {
  const boundary = regionPieces(region).filter((p) => pieceLength(p) > 0);
  const nearest = nearnessOf(boundary);
  return region.loops.flatMap((loop) => {
    const count = Math.min(4000, Math.max(8, Math.ceil(pathLength(loop) / step)));
    return resample(flatten(loop, 0.01), count).map((at) => ({ at, piece: nearest.nearest(at) }));
  });
};

/** Circles and edge samples together are fewer; three such numbers make one exact integer. */
const MOST_IDS = 2 ** 17;

/** A thing that a gap's circle must touch: its distance from a point, and the direction away from it. */
type Wall = { readonly circle: Circle } | { readonly piece: Piece };

const wallDistance = (w: Wall, p: Point, gap: number): number =>
  'circle' in w ? distance(w.circle.center, p) - w.circle.radius : distanceToPiece(w.piece, p) - gap;

/** The direction in which the distance grows, by differences: pieces have no simpler common form. */
const awayFrom = (w: Wall, p: Point): Point => {
  if ('circle' in w) {
    const v = subtract(p, w.circle.center);
    const n = norm(v);
    return n > 0 ? scale(v, 1 / n) : { x: 1, y: 0 };
  }
  const h = 1e-5;
  const dx =
    distanceToPiece(w.piece, { x: p.x + h, y: p.y }) - distanceToPiece(w.piece, { x: p.x - h, y: p.y });
  const dy =
    distanceToPiece(w.piece, { x: p.x, y: p.y + h }) - distanceToPiece(w.piece, { x: p.x, y: p.y - h });
  const n = Math.hypot(dx, dy);
  return n > 0 ? { x: dx / n, y: dy / n } : { x: 1, y: 0 };
};

const gapsIn = (
  circles: readonly Circle[],
  edge: Edge,
  samples: readonly EdgeSample[],
  gap: number,
  largest: number,
  least: number,
  grid: { readonly near: (p: Point, reach: number) => Circle[] },
  settled: Set<number>,
): Circle[] => {
  const walls: Wall[] = [
    ...circles.map((circle) => ({ circle })),
    ...samples.map((s) => ({ piece: edge.pieces[s.piece]! })),
  ];
  const points = [...circles.map((c) => c.center), ...samples.map((s) => s.at)];
  if (points.length < 3) return [];
  const { triangles } = Delaunay.from(
    points,
    (p) => p.x,
    (p) => p.y,
  );
  const found: Circle[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    // What touches edges alone would hang on no other circle.
    if (Math.min(a, b, c) >= circles.length) continue;
    // A triangle that was there before is no gap now if it was none then: only new ones are worked on.
    // Samples count from the end, because circles are added before them.
    const ids = [a, b, c]
      .map((i) => (i < circles.length ? i : MOST_IDS - 1 - (i - circles.length)))
      .sort((i, j) => i - j);
    const key = (ids[0]! * MOST_IDS + ids[1]!) * MOST_IDS + ids[2]!;
    if (settled.has(key)) continue;
    settled.add(key);
    const three = [walls[a]!, walls[b]!, walls[c]!];
    const start = scale(add(add(points[a]!, points[b]!), points[c]!), 1 / 3);
    const circle = touchingThree(three, start, gap, largest, edge, grid);
    if (circle && circle.radius >= least) found.push(circle);
  }
  return found;
};

/**
 * Newton's method for distance = radius to three walls at once; a wall found nearer replaces the one it
 * hides.
 */
const touchingThree = (
  walls: Wall[],
  start: Point,
  gap: number,
  largest: number,
  edge: Edge,
  grid: { readonly near: (p: Point, reach: number) => Circle[] },
): Circle | undefined => {
  let p = start;
  let radius = 0;
  for (let swap = 0; swap < 5; swap++) {
    const solved = newton(walls, p, gap);
    if (!solved) return undefined;
    ({ center: p, radius } = solved);
    if (!(radius > 0) || !(radius < 4 * largest)) return undefined;
    const nearer = intruder(p, radius, gap, largest, edge, grid);
    if (!nearer) return { center: p, radius: Math.min(radius, largest) };
    // Keep the two walls that, with the intruder, leave the least room.
    const tries = [0, 1, 2].map((k) => walls.map((w, i) => (i === k ? nearer : w)));
    let best: Wall[] | undefined;
    let bestRadius = Number.POSITIVE_INFINITY;
    for (const t of tries) {
      const s = newton(t, p, gap);
      if (s && s.radius > 0 && s.radius < bestRadius && distance(s.center, p) < 2 * largest) {
        bestRadius = s.radius;
        best = t;
      }
    }
    if (!best) return undefined;
    walls = best;
  }
  return undefined;
};

const intruder = (
  p: Point,
  radius: number,
  gap: number,
  largest: number,
  edge: Edge,
  grid: { readonly near: (p: Point, reach: number) => Circle[] },
): Wall | undefined => {
  let worst = radius - TOUCHING;
  let found: Wall | undefined;
  for (const circle of grid.near(p, radius + largest)) {
    const d = distance(circle.center, p) - circle.radius;
    if (d < worst) {
      worst = d;
      found = { circle };
    }
  }
  eachBeside(edge, p, worst + gap, (piece) => {
    const d = distanceToPiece(piece, p) - gap;
    if (d < worst) {
      worst = d;
      found = { piece };
    }
  });
  return found;
};

const newton = (walls: readonly Wall[], start: Point, gap: number): Circle | undefined => {
  let { x, y } = start;
  let r = walls.reduce((sum, w) => sum + wallDistance(w, start, gap), 0) / 3;
  for (let k = 0; k < 30; k++) {
    const p = { x, y };
    const rows = walls.map((w) => ({ n: awayFrom(w, p), miss: wallDistance(w, p, gap) - r }));
    const [a, b, c] = [rows[0]!, rows[1]!, rows[2]!];
    // Rows n·d − dr = −miss; subtracting the first leaves two equations for the step.
    const [ax, ay, am] = [b.n.x - a.n.x, b.n.y - a.n.y, a.miss - b.miss];
    const [bx, by, bm] = [c.n.x - a.n.x, c.n.y - a.n.y, a.miss - c.miss];
    const det = ax * by - ay * bx;
    if (!(Math.abs(det) > 1e-9)) return undefined;
    const dx = (am * by - ay * bm) / det;
    const dy = (ax * bm - am * bx) / det;
    const dr = a.miss + a.n.x * dx + a.n.y * dy;
    x += dx;
    y += dy;
    r += dr;
    if (!Number.isFinite(x + y + r)) return undefined;
    if (Math.abs(dx) + Math.abs(dy) + Math.abs(dr) < 1e-12) break;
  }
  const p = { x, y };
  const worst = Math.max(...walls.map((w) => Math.abs(wallDistance(w, p, gap) - r)));
  return worst < 1e-9 ? { center: p, radius: r } : undefined;
};
