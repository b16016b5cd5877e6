/**
 * Regions joined, cut out of one another, and cut down to what they share.
 *
 * paper decides which parts are kept. Its curves are cubics, within 1e-6 mm of the arcs they stand for; each
 * piece of the answer is then put back on the line or circle that it came from, so that edges stay exact, and
 * joints are the exact crossings of their neighbours.
 *
 * Where edges touch without crossing, or a corner lies on the other edge, paper may take regions that overlap for
 * apart, or for one inside the other. So its answer is tried at places beside both edges, where what must come out
 * is known from the two regions themselves; where it is wrong, paper is asked again with one region moved by a
 * hair, which parts what coincides, and the answer is put back where it belongs as before.
 */

import paper from 'paper/dist/paper-core.js';
import { type Cubic, ellipseCubics } from './cubic.ts';
import type { Path } from './path.ts';
import { type Piece, pieceAt, pieceDirection } from './piece.ts';
import { add, leftOf, type Point, scale, subtract } from './point.ts';
import { type Carrier, type Corner, carrierOf, carriersFrom, recoverLoop } from './recover.ts';
import {
  EMPTY_REGION,
  isEmptyRegion,
  probeRegion,
  type Region,
  regionOf,
  regionPieces,
  windsRound,
} from './region.ts';

/** How far (mm) the cubics handed to paper may lie from their arcs: below its own tolerance for crossings. */
const PAPER_TOLERANCE = 1e-6;

/** How far (mm) a point of paper's answer may lie from the line or circle that it came from. */
const RECOVER_TOLERANCE = 1e-3;

/** The area that is in either. */
export const uniteRegions = (a: Region, b: Region): Region => combine(a, b, 'unite');

/** The area of `a` that is not in `b`. */
export const subtractRegion = (a: Region, b: Region): Region => combine(a, b, 'subtract');

/** The area that is in both. */
export const intersectRegions = (a: Region, b: Region): Region => combine(a, b, 'intersect');

const combine = (a: Region, b: Region, how: 'unite' | 'subtract' | 'intersect'): Region => {
  if (isEmptyRegion(a)) return how === 'unite' ? b : EMPTY_REGION;
  if (isEmptyRegion(b)) return how === 'intersect' ? EMPTY_REGION : a;
  const scope = sharedScope();
  const carriers = carriersFrom([...regionPieces(a), ...regionPieces(b)], carriersOf, 0);
  const whole = toPaper(a, scope);
  const places = placesBeside(a, b, how);
  let first: Region | undefined;
  for (let k = 0; k <= MOST_NUDGES; k++) {
    const other = toPaper(b, scope);
    if (k > 0) other.translate(new scope.Point(k * NUDGE.x, k * NUDGE.y));
    const polygons = polygonsOf(whole[how](other, { insert: false }));
    const found = regionOf(polygons.map((p) => recoverLoop(p, carriers, RECOVER_TOLERANCE)));
    if (places.every(({ at, isIn }) => windsRound(found.loops, at) === (isIn ? 1 : 0))) return found;
    first ??= found;
  }
  return first!;
};

const carriersOf = (piece: Piece): readonly Carrier[] => {
  const carrier = carrierOf(piece);
  return carrier ? [carrier] : [];
};

/**
 * By how much (mm) one region is moved at each new attempt: some thirty times what paper takes for one point (1e-7,
 * its GEOMETRIC_EPSILON), and along no line that people draw; a hundredth of what a point is recovered within.
 */
const NUDGE: Point = { x: 3.1e-6, y: -2.3e-6 };
const MOST_NUDGES = 3;

/** A place (mm) of which it is known whether it is in the answer. */
interface Place {
  readonly at: Point;
  readonly isIn: boolean;
}

/**
 * Places to both sides of the edges of two regions, clear of every edge. An edge that is not cut is right or wrong
 * from end to end, so that a few on every loop tell.
 */
const placesBeside = (a: Region, b: Region, how: 'unite' | 'subtract' | 'intersect'): readonly Place[] => {
  const [inA, inB] = [probeRegion(a), probeRegion(b)];
  const places: Place[] = [];
  for (const { pieces } of [...a.loops, ...b.loops]) {
    const every = Math.max(1, Math.ceil(pieces.length / PLACES_PER_LOOP));
    for (let i = 0; i < pieces.length; i += every) {
      const middle = pieceAt(pieces[i]!, 0.5);
      const aside = scale(leftOf(pieceDirection(pieces[i]!, 0.5)), BESIDE);
      for (const at of [add(middle, aside), subtract(middle, aside)]) {
        if (inA.nearer(at, BESIDE / 2) || inB.nearer(at, BESIDE / 2)) continue;
        const [isInA, isInB] = [inA.contains(at), inB.contains(at)];
        const isIn = how === 'unite' ? isInA || isInB : how === 'subtract' ? isInA && !isInB : isInA && isInB;
        places.push({ at, isIn });
      }
    }
  }
  return places;
};

/** How far (mm) beside an edge to look: ten times what a point is recovered within, and less than a needle's width. */
const BESIDE = 0.01;

/** Pieces of a loop beside which it is looked, spread evenly over it. */
const PLACES_PER_LOOP = 12;

/** paper keeps its items in a project; one, never drawn, serves all calls. */
let scope: paper.PaperScope | undefined;
const sharedScope = (): paper.PaperScope => {
  if (!scope) {
    scope = new paper.PaperScope();
    scope.setup(new scope.Size(1, 1));
  }
  scope.activate();
  return scope;
};

const toPaper = (region: Region, s: paper.PaperScope): paper.CompoundPath => {
  const children = region.loops.map((loop) => loopToPaper(loop, s));
  return new s.CompoundPath({ children, insert: false, fillRule: 'nonzero' });
};

const loopToPaper = (loop: Path, s: paper.PaperScope): paper.Path => {
  const path = new s.Path({ insert: false });
  const at = (p: Point): paper.Point => new s.Point(p.x, p.y);
  path.moveTo(at(loop.pieces[0]!.from));
  for (const piece of loop.pieces)
    for (const q of cubicsOf(piece)) {
      if (q.p1 === q.p0) path.lineTo(at(q.p3));
      else path.cubicCurveTo(at(q.p1), at(q.p2), at(q.p3));
    }
  path.closePath();
  return path;
};

const cubicsOf = (p: Piece): Cubic[] => {
  if (p.kind === 'line') return [{ p0: p.from, p1: p.from, p2: p.to, p3: p.to }];
  const cubics = ellipseCubics(p.center, [p.radius, p.radius], 0, p.start, p.sweep, PAPER_TOLERANCE);
  // The stored ends, to the last bit, so that neighbours meet.
  return cubics.map((q, i) => ({ ...q, p3: i === cubics.length - 1 ? p.to : q.p3 }));
};

const polygonsOf = (item: paper.PathItem): Corner[][] => {
  const paths = item.children ? (item.children as paper.Path[]) : [item as paper.Path];
  return paths.map((p) =>
    (p.curves ?? []).map((c) => {
      const point = { x: c.point1.x, y: c.point1.y };
      if (c.isStraight()) return { point };
      const middle = c.getPointAtTime(0.5);
      return { point, middle: { x: middle.x, y: middle.y } };
    }),
  );
};
