/**
 * Regions joined, cut out of one another, and cut down to what they share.
 *
 * paper decides which parts are kept. Its curves are cubics, within 1e-6 mm of the arcs they stand for; each
 * piece of the answer is then put back on the line or circle that it came from, so that edges stay exact, and
 * joints are the exact crossings of their neighbours.
 */

import paper from 'paper/dist/paper-core.js';
import { type Cubic, ellipseCubics } from './cubic.ts';
import type { Path } from './path.ts';
import type { Piece } from './piece.ts';
import type { Point } from './point.ts';
import { type Carrier, type Corner, carrierOf, recoverLoop } from './recover.ts';
import { EMPTY_REGION, isEmptyRegion, type Region, regionOf, regionPieces } from './region.ts';

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
  const [first, second] = [toPaper(a, scope), toPaper(b, scope)];
  const result = first[how](second, { insert: false });
  const carriers = [...regionPieces(a), ...regionPieces(b)].map(carrierOf).filter((c) => c !== undefined);
  return regionOf(polygonsOf(result).map((p) => recoverLoop(p, carriers as Carrier[], RECOVER_TOLERANCE)));
};

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
