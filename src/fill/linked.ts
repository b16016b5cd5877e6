/**
 * Closed lines of one area made one line: where a place is too narrow for a line to wander through, the needle goes
 * through it to what lies behind and comes back the same way, beside its own line where that has room and else on it.
 *
 * Of the ways between lines (ways-between.ts) the shortest that close no circle are taken (J. B. Kruskal, Proceedings of
 * the American Mathematical Society 7, 1956).
 */

import {
  add,
  closedPath,
  cross,
  directionAlong,
  distance,
  leftOf,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathEnd,
  pathLength,
  pathStart,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  reversePath,
  scale,
  slicePath,
  subtract,
  unit,
} from '../geometry/index.ts';
import { forest } from './forest.ts';
import { gridOf, type PointGrid } from './point-grid.ts';
import { curveThrough, resample, smoothed } from './smooth-path.ts';
import { stitched } from './stitched.ts';
import { biarc } from './two-arcs.ts';
import { EDGE_GAP, GAP, type Port, portsOn, SHORT, STEP, type Way, waysBetween } from './ways-between.ts';

/** In spacings: how finely a way is followed. */
const FINE = 0.1;

/** In spacings: half of what is between the strands of a way, and how far beyond them its line is left open on both sides. */
const BESIDE = 0.23;
const ROUNDINGS = [0.5, 0.35, 0.22, 0.15] as const;

/**
 * Two strands from one line to the other, on the left and the right of the way. Both lines are left open so many mm to
 * both sides of their ports. On which side of each line, as it runs, the way lies: 1 for its left.
 */
interface Link extends Pick<Way, 'from' | 'to'> {
  readonly cut: number;
  readonly left: Path;
  readonly right: Path;
  readonly sides: readonly [1 | -1, 1 | -1];
}

/** The same lines, as few as they can be made: those that hang together by ways through the region are one. */
export const linked = (lines: readonly Path[], region: Region, spacing: number): readonly Path[] => {
  if (lines.length < 2 || !lines.every((l) => l.closed)) return lines;
  const probe = probeRegion(region);
  const ports = lines.map((path, line) => portsOn(path, line, STEP * spacing));
  const lengths = lines.map(pathLength);
  const grid = gridOf<Port>(spacing);
  for (const port of ports.flat()) grid.add(port.p, port);
  const laid = gridOf<Point>(spacing);
  const tree = forest(lines.length);
  const links: Link[][] = lines.map(() => []);
  for (const way of waysBetween(ports, region, spacing)) {
    const { from, to } = way;
    if (tree.find(from.line) === tree.find(to.line)) continue;
    const link = linkAlong(way, { lines, lengths, links, grid, laid, probe, spacing });
    if (!link) continue;
    tree.join(from.line, to.line);
    links[from.line]!.push(link);
    links[to.line]!.push(link);
    for (const strand of [link.left, link.right])
      for (const { p } of portsOn(strand, 0, STEP * spacing)) laid.add(p, p);
  }
  const done = new Set<number>();
  return lines.flatMap((line, i) => {
    const all = tree.find(i);
    if (done.has(all)) return [];
    done.add(all);
    if (links[i]!.length === 0) return [line];
    const pieces: Piece[] = [];
    walk({ line: i, way: 1 }, { lines, lengths, links }, pieces);
    return [closedPath(stitched(pieces))];
  });
};

interface Laid {
  readonly lines: readonly Path[];
  readonly lengths: readonly number[];
  readonly links: readonly (readonly Link[])[];
}

interface Surroundings extends Laid {
  readonly grid: PointGrid<Port>;
  readonly laid: PointGrid<Point>;
  readonly probe: RegionProbe;
  readonly spacing: number;
}

/** The first of several ways to stitch it that keeps its distance from all else; undefined where none does. */
const linkAlong = (way: Way, around: Surroundings): Link | undefined => {
  const { spacing } = around;
  const { from, to, length } = way;
  const fits = (link: Link): boolean => {
    const isFree = [from, to].every((port) =>
      around.links[port.line]!.every((other) =>
        [other.from, other.to].every(
          (o) =>
            o.line !== port.line ||
            roundGap(o.at, port.at, around.lengths[o.line]!) > link.cut + other.cut + STEP * spacing,
        ),
      ),
    );
    return isFree && [link.left, link.right].every((strand) => hasRoom(strand, link, around));
  };
  if (length <= SHORT * spacing) {
    const link = bends(way, length / 2 + BESIDE * spacing, around);
    if (fits(link)) return link;
  }
  for (const beside of [BESIDE, 0])
    for (const smoothing of SMOOTHINGS)
      for (const rounding of ROUNDINGS) {
        const link = strands(way, { beside, smoothing, rounding }, around);
        if (link && fits(link)) return link;
      }
  return undefined;
};

/** Ends of the strands on both lines: where they are left and taken up, and in which direction. */
const endsOf = ({ from, to, points }: Way, cut: number, { lines, lengths }: Laid) => {
  const leaving = unit(subtract(points[1]!, points[0]!));
  const arriving = unit(subtract(points.at(-1)!, points.at(-2)!));
  const on = ({ line, at }: Port, by: number) => {
    const s = (((at + by) % lengths[line]!) + lengths[line]!) % lengths[line]!;
    return { p: pointAlong(lines[line]!, s)!, along: directionAlong(lines[line]!, s)! };
  };
  const side = (port: Port, toward: Point): 1 | -1 => (cross(on(port, 0).along, toward) > 0 ? 1 : -1);
  const sides = [side(from, leaving), side(to, scale(arriving, -1))] as const;
  // On the left a strand leaves where the line comes from, seen from where the way is on its left.
  const start = (left: 1 | -1) => {
    const { p, along } = on(from, -left * sides[0] * cut);
    return { p, along: scale(along, left * sides[0]) };
  };
  const end = (left: 1 | -1) => {
    const { p, along } = on(to, left * sides[1] * cut);
    return { p, along: scale(along, left * sides[1]) };
  };
  return { sides, start, end };
};

/** A bend from each line into the other. */
const bends = (way: Way, cut: number, laid: Laid): Link => {
  const { sides, start, end } = endsOf(way, cut, laid);
  const strand = (left: 1 | -1): Path => {
    const [a, b] = [start(left), end(left)];
    return openPath(biarc(a.p, a.along, b.p, b.along));
  };
  return { from: way.from, to: way.to, cut, sides, left: strand(1), right: strand(-1) };
};

/** Strands beside the middle of the way, rounded into both lines; all in spacings. */
const strands = (
  way: Way,
  { beside, smoothing, rounding }: { beside: number; smoothing: number; rounding: number },
  around: Surroundings,
): Link | undefined => {
  const { spacing } = around;
  const raw = resample(way.points, Math.max(5, Math.ceil(way.length / (FINE * spacing)) + 1));
  const middle = smoothed(raw, smoothing / FINE);
  const lasts = Math.ceil(rounding / FINE);
  const kept = middle.slice(lasts, middle.length - lasts);
  if (kept.length < 2) return undefined;
  const cut = (beside + rounding) * spacing;
  const { sides, start, end } = endsOf({ ...way, points: middle }, cut, around);
  const strand = (left: 1 | -1): Path | undefined => {
    const points = kept.map((p, i) => {
      const k = i + lasts;
      const across = leftOf(unit(subtract(middle[k + 1]!, middle[k - 1]!)));
      return add(p, scale(across, left * beside * spacing));
    });
    const line = curveThrough(points);
    const [a, b] = [start(left), end(left)];
    const [p, q] = [pathStart(line), pathEnd(line)];
    if (!p || !q) return undefined;
    const [first, last] = [directionAlong(line, 0)!, directionAlong(line, pathLength(line))!];
    return openPath([...biarc(a.p, a.along, p, first), ...line.pieces, ...biarc(q, last, b.p, b.along)]);
  };
  const [left, right] = [strand(1), strand(-1)];
  return left && right && { from: way.from, to: way.to, cut, sides, left, right };
};

/** A way is smoothed over so many spacings, and over fewer where that would bring it too near to something. */
const SMOOTHINGS = [0.5, 0.2, 0.06] as const;

/** How far apart two places of a closed line are along it. */
const roundGap = (a: number, b: number, length: number): number => {
  const apart = Math.abs(a - b);
  return Math.min(apart, length - apart);
};

/** Whether a strand keeps clear of the edge, of all lines but where it comes from and goes to, and curls nowhere. */
const hasRoom = (
  strand: Path,
  { from, to, cut }: Link,
  { grid, laid, lengths, probe, spacing }: Surroundings,
): boolean => {
  if (
    strand.pieces.some((p) => p.kind === 'arc' && (p.radius < TIGHTEST * spacing || Math.abs(p.sweep) > CURL))
  )
    return false;
  const gap = Math.hypot(GAP, STEP / 2) * spacing;
  const own = cut + NEIGHBOURS * spacing;
  const isOwn = ({ line, at }: Port): boolean =>
    [from, to].some((port) => port.line === line && roundGap(port.at, at, lengths[line]!) <= own);
  return portsOn(strand, 0, (STEP * spacing) / 2).every(
    ({ p }) =>
      probe.depth(p) >= EDGE_GAP * spacing * 0.9 &&
      laid.near(p, gap).every((q) => distance(p, q) >= gap) &&
      grid.near(p, gap).every((q) => isOwn(q) || distance(p, q.p) >= gap),
  );
};

/** In spacings: the least radius of a bend, and how far beyond what is left open a line may be near. In radians: the longest bend. */
const TIGHTEST = 0.1;
const NEIGHBOURS = 0.7;
const CURL = 1.2 * Math.PI;

/** Where a line is walked from: the link that it was reached by, and whether as it runs. */
interface Visit {
  readonly line: number;
  readonly way: 1 | -1;
  readonly by?: Link;
}

/** A line and all that hangs on it, from beyond the link that it was reached by, round to before it. */
const walk = ({ line, way, by }: Visit, known: Laid, pieces: Piece[]): void => {
  const { lines, lengths, links } = known;
  const [path, length] = [lines[line]!, lengths[line]!];
  const placeOf = (link: Link): number => (link.from.line === line ? link.from.at : link.to.at);
  const first = by ?? links[line]![0]!;
  const origin = placeOf(first);
  const along = (link: Link): number => (((way * (placeOf(link) - origin)) % length) + length) % length;
  const stretch = (from: number, to: number): void => {
    const [a, b] = way === 1 ? [origin + from, origin + to] : [origin - to, origin - from];
    const part = roundSlice(path, length, a, b);
    for (const piece of (way === 1 ? part : reversePath(part)).pieces) pieces.push(piece);
  };
  const visit = (link: Link): void => {
    const forth = link.from.line === line;
    const [own, its] = forth ? link.sides : [link.sides[1], link.sides[0]];
    const isLeft = own * way > 0 === forth;
    const [out, home] = isLeft ? [link.left, link.right] : [link.right, link.left];
    for (const piece of (forth ? out : reversePath(out)).pieces) pieces.push(piece);
    walk(
      { line: (forth ? link.to : link.from).line, way: own === its ? way : way === 1 ? -1 : 1, by: link },
      known,
      pieces,
    );
    for (const piece of (forth ? reversePath(home) : home).pieces) pieces.push(piece);
  };
  if (!by) visit(first);
  let at = first.cut;
  const others = links[line]!.filter((link) => link !== first).sort((a, b) => along(a) - along(b));
  for (const link of others) {
    stretch(at, along(link) - link.cut);
    visit(link);
    at = along(link) + link.cut;
  }
  stretch(at, length - first.cut);
};

/** Of a closed line what lies between two places, counted on beyond its beginning and its end. */
const roundSlice = (path: Path, length: number, from: number, to: number): Path => {
  const a = ((from % length) + length) % length;
  const b = a + to - from;
  if (b <= length) return slicePath(path, a, b);
  return openPath([...slicePath(path, a, length).pieces, ...slicePath(path, 0, b - length).pieces]);
};
