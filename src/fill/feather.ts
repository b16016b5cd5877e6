/**
 * Feathers: a spine through the middle of the region, and plumes along both sides of it.
 *
 * How quilters draw them (common practice): the spine first; then a row of rounded heads along the outline,
 * and from where two heads meet a tail line that sweeps down and runs into the spine. So a plume is a
 * teardrop, narrow at the spine and full at the head. Tail lines (dividers) of one side are nearly copies of
 * one another moved along the spine, so that they nestle.
 *
 * Plumes reach as far as the region lets them, less a gap, and are as wide as suits their length, so that a
 * feather grows fuller where the region does. A region that is its own mirror image gets a feather from each
 * end, which meet in a bud on the axis; any other gets one feather that closes up to a bud at its tip.
 *
 * The whole is one line: along the spine, out along a divider, over the head, back along the next divider,
 * out along it again, and so on; dividers are stitched twice, which quilters call backtracking.
 */

import {
  add,
  arc,
  boxesTouch,
  crossings,
  distance,
  leftOf,
  line,
  mirror,
  movePath,
  mover,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pieceBox,
  pieceDirection,
  pieceLength,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  regionBox,
  reversePath,
  reversePiece,
  scale,
  slicePath,
  subtract,
  trimPiece,
  unit,
} from '../geometry/index.ts';
import { withDrops } from './feather-drops.ts';
import { restOf } from './feather-rest.ts';
import {
  budOver,
  growSide,
  keepsInside,
  pathsCross,
  type Side,
  type SideSpec,
  tipPlace,
} from './feather-side.ts';
import {
  type Axis,
  checked,
  type Fill,
  type FillContext,
  type FillOptions,
  type FillResult,
} from './fill.ts';
import { roomyParts } from './parts.ts';
import { spineOf } from './spine.ts';
import { axisOf, mirrorOf, offAxis } from './symmetry.ts';
import { teardrop } from './teardrop.ts';
import { biarc } from './two-arcs.ts';

/** Plumes keep this share of the spacing away from the region's edge. */
const EDGE_GAP = 0.3;

/** Where there is no room for plumes at the spacing asked for, smaller ones are tried: these shares of it. */
const SMALLER = [1, 0.7, 0.5] as const;

/**
 * Plumes closer than this (mm, a little under 1/16 in) are narrower than a stitch is long at ten to the inch: nobody
 * sews them, and a border of them takes half a minute to lay out. Common practice, no source.
 */
const FINEST = 1.5;

/** There are about as many plumes as squares as wide as the spacing, and each takes as long as three bends of a stipple. */
const CROWD = 3;

/**
 * A neck narrower than two of these shares of the spacing holds no plumes, and parts the region into two
 * feathers.
 */
const NARROW = 0.5;

/** How a feather is sewn, with one line of a spine or two. */
const SEWN =
  'start at the tail, sew the spine to its tip, then one side plume by plume (out along it, over its head, back along the next), and the other side the same way; between two plumes the needle goes back along the line just sewn, and at the end it stops at the tail';

export const feather: Fill = checked({
  name: 'feather',
  about: 'a spine with plumes on both sides, growing as full as the area allows',
  suits: 'area',
  sewn: SEWN,
  crowd: CROWD,
  finest: FINEST,
  takes: [],
  fill: (region, options, context) => featherFill(region, options, context, 0),
});

/** The two lines of a double spine are this share of the spacing apart. */
const DOUBLE = 0.45;

export const doubleFeather: Fill = checked({
  name: 'double feather',
  about: 'a feather whose spine is two lines, with plumes from both',
  suits: 'area',
  sewn: SEWN,
  crowd: CROWD,
  finest: FINEST,
  takes: [],
  fill: (region, options, context) => featherFill(region, options, context, DOUBLE),
});

/** `double` is how far apart two lines of the spine are, in spacings; 0 where it is one. */
const featherFill = (
  region: Region,
  { spacing }: FillOptions,
  context: FillContext | undefined,
  double: number,
): FillResult => {
  const parts = roomyParts(region, NARROW * spacing);
  const axis = axisOf(region, context);
  const messages = new Set<string>();
  let empty = 0;
  const paths = alikeAcross(parts, axis, spacing / 4, (part) => {
    const own = parts.length === 1 ? context : axis ? { axis } : undefined;
    const made = featherIn(part, spacing, own, double);
    if (!made) empty++;
    if (made && made.share < 1) messages.add('the area is narrow, so the plumes are smaller');
    return made ? completed(part, made, spacing, axisOf(part, own), double) : [];
  });
  if (empty > 0)
    messages.add(
      parts.length === 1
        ? 'the area has no room for plumes at this spacing'
        : `${empty} of ${parts.length} parts have no room for plumes at this spacing`,
    );
  return { paths, continuous: paths.length <= parts.length, messages: [...messages] };
};

/**
 * A feather with others in the large places that it leaves, and drops in the small ones. What lies on one side of a
 * mirrored region is the image of what lies on the other.
 */
const completed = (
  region: Region,
  made: Feathered,
  spacing: number,
  axis: Axis | undefined,
  double: number,
  depth = 0,
): readonly Path[] => {
  const own = spacing * made.share;
  const { paths, probe } = made;
  const rest =
    depth < 2
      ? alikeAcross(restOf(region, probe, paths, own), axis, own / 4, (part) =>
          featherWithin(part, own, axis, double, depth + 1),
        )
      : [];
  const all = [...paths, ...rest];
  return depth > 0 ? all : withDrops(all, region, probe, own, axis, made.share < 1);
};

const featherWithin = (
  region: Region,
  spacing: number,
  axis: Axis | undefined,
  double: number,
  depth: number,
): readonly Path[] => {
  const own = axis && axisOf(region, { axis });
  const made = featherIn(region, spacing, own ? { axis: own } : {}, double);
  return made ? completed(region, made, spacing, own, double, depth) : [];
};

/** What is made in each part; of two that are mirror images within `near` mm the second is the image of the first. */
const alikeAcross = (
  parts: readonly Region[],
  axis: Axis | undefined,
  near: number,
  make: (part: Region) => readonly Path[],
): readonly Path[] => {
  const done: { readonly at: Point; readonly paths: readonly Path[] }[] = [];
  for (const part of parts) {
    const box = regionBox(part);
    const at = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    // A box is no longer one when it is turned, but the middle of the one that is its image is near all the same.
    const twin = axis && done.find((d) => distance(mover(mirrorOf(axis))(d.at), at) < near);
    done.push({
      at,
      paths: twin ? twin.paths.map((p) => movePath(p, mirror(axis.at, axis.angle))) : make(part),
    });
  }
  return done.flatMap((d) => d.paths);
};

type Feathered = Made & { readonly share: number; readonly probe: RegionProbe };

const featherIn = (
  region: Region,
  spacing: number,
  context: FillContext | undefined,
  double: number,
): Feathered | undefined => {
  const axis = axisOf(region, context);
  const probe = probeRegion(region);
  const found = context?.spine ?? spineOf(region, EDGE_GAP * spacing * SMALLER.at(-1)!, axis, probe);
  if (!found) return undefined;
  // Round a ring the feather's tip comes to just behind its own first plumes.
  const spine = found.closed ? slicePath(found, 0, pathLength(found) - RING_GAP * spacing) : found;
  let fullest: Feathered | undefined;
  for (const share of SMALLER) {
    const made = featherOn(spine, probe, spacing * share, axis, double);
    if (made && made.cover > (fullest?.cover ?? 0) + GOOD_COVER / 4) fullest = { ...made, share, probe };
    if (fullest && fullest.cover >= GOOD_COVER) break;
  }
  return fullest;
};

/** A feather with plumes along this share of its spine (mean of both sides) is full enough. */
const GOOD_COVER = 0.6;

/** What is left open of a ring, in spacings. */
const RING_GAP = 2;

interface Made {
  readonly paths: readonly Path[];
  readonly cover: number;
}

const featherOn = (
  spine: Path,
  probe: RegionProbe,
  spacing: number,
  axis: Axis | undefined,
  double: number,
): Made | undefined => {
  const gap = EDGE_GAP * spacing;
  const mirrored = axis && crossesAxis(spine, axis);
  const stalk = mirrored ? slicePath(spine, 0, pathLength(spine) / 2) : spine;
  const grow = (until: SideSpec['until'], within: RegionProbe): (Side | undefined)[] =>
    ([-1, 1] as const).map((side) => growSide({ stalk, side, probe: within, spacing, gap, until }));
  const length = pathLength(stalk);
  // Before a bud on the axis the plumes lean over the spine's last stretch, and cover it too.
  const coverOf = (sides: readonly (Side | undefined)[], bud: boolean): number =>
    sides.reduce((sum, s) => sum + (s ? (bud ? length : s.bases.at(-1)!) - s.bases[0]! : 0), 0) /
    (2 * length);

  let best: Made | undefined;
  if (mirrored) {
    const sides = grow({ kind: 'axis', axis }, probe);
    const whole = mirroredWhole(stalk, axis);
    const beside = besideSpine(whole, double * spacing);
    const path = joinMirrored(whole, beside, startingOn(beside, sides), axis, probe, spacing);
    if (path) best = { paths: [path], cover: coverOf(sides, true) };
    // Where the middle is too narrow for a bud, each half may do better with a tip of its own.
    if (best && best.cover >= GOOD_COVER) return best;
  }
  const ownSide = mirrored ? shortOf(probe, axis) : probe;
  const at = tipPlace(stalk, ownSide, spacing, gap);
  const beside = besideSpine(stalk, double * spacing);
  const [right, left] = at === undefined ? [] : startingOn(beside, grow({ kind: 'tip', at }, ownSide));
  if (!left || !right) return best;
  const cover = coverOf([left, right], false);
  if (best && !(cover > best.cover + 0.1)) return best;
  const one = joinAtTip(stalk, beside, left, right, ownSide, gap);
  if (!mirrored) return { paths: [one], cover };
  const over = mirror(axis.at, axis.angle);
  return { paths: [one, movePath(one, over)], cover };
};

/** A spine that is its own image to the last digit: its first half, and that half mirrored. */
const mirroredWhole = (half: Path, axis: Axis): Path => {
  const image = reversePath(movePath(half, mirror(axis.at, axis.angle))).pieces;
  const [end, start] = [half.pieces.at(-1)!.to, image[0]!.from];
  const link: Piece[] = distance(end, start) > 0 ? [{ kind: 'line', from: end, to: start }] : [];
  return openPath([...half.pieces, ...link, ...image]);
};

/** The region cut off at its axis, on the side where a distance to the axis is left. */
const shortOf = (probe: RegionProbe, axis: Axis): RegionProbe => ({
  ...probe,
  depth: (p) => Math.min(probe.depth(p), Math.abs(offAxis(p, axis))),
  nearer: (p, reach) => Math.abs(offAxis(p, axis)) < reach || probe.nearer(p, reach),
  distance: (p) => Math.min(probe.distance(p), Math.abs(offAxis(p, axis))),
});

/** Whether the spine is its own mirror image, end to end. */
const crossesAxis = (spine: Path, axis: Axis): boolean => {
  const over = mover(mirrorOf(axis));
  const length = pathLength(spine);
  return [0, 0.2, 0.4].every((t) => {
    const [a, b] = [pointAlong(spine, t * length), pointAlong(spine, (1 - t) * length)];
    return a !== undefined && b !== undefined && distance(over(a), b) < 0.5;
  });
};

/**
 * The plumes of a side as one stretch, from the spine at the first divider to the last divider's outer end.
 */
const chainOf = ({ dividers, heads }: Side): Piece[] =>
  dividers.flatMap((d, i) => {
    const [head, next] = [heads[i], dividers[i + 1]];
    return head && next ? [d, ...head, reversePiece(next)] : [d];
  });

/**
 * Both feathers of a mirrored region: the spine from end to end, then one row of plumes back, and the other
 * one there again. A side that does not come near enough to the axis for a bud spoils it: then undefined.
 */
const joinMirrored = (
  spine: Path,
  beside: Path | undefined,
  sides: readonly (Side | undefined)[],
  axis: Axis,
  probe: RegionProbe,
  spacing: number,
): Path | undefined => {
  const gap = EDGE_GAP * spacing;
  const over = mirror(axis.at, axis.angle);
  const length = pathLength(spine);
  if (!sides.some((s) => s && s.bases[0]! < length / 2)) return undefined;
  const rows: { readonly first: number; readonly row: Path }[] = [];
  const drops: Piece[] = [];
  const middle = pointAlong(spine, length / 2)!;
  for (const side of sides) {
    if (!side) continue;
    const chain = openPath(chainOf(side));
    const image = reversePath(movePath(chain, over));
    const bud = budOver(side, axis, spacing);
    if (!bud || !keepsInside(bud, probe, gap) || pathsCross(bud, spine.pieces)) return undefined;
    rows.push({ first: side.bases[0]!, row: openPath([...chain.pieces, ...bud, ...image.pieces]) });
    const crown = bud[0]!.to;
    const up = unit(subtract(crown, middle));
    const walls = [side.dividers.at(-1)!, ...bud, image.pieces[0]!];
    drops.push(...(teardrop(middle, up, walls, DROP_GAP * spacing) ?? []));
  }
  // The drops hang on the middle of the spine, and are stitched on the first way along it.
  const pieces: Piece[] = [
    ...slicePath(spine, 0, length / 2).pieces,
    ...drops,
    ...slicePath(spine, length / 2, length).pieces,
  ];
  let at = length;
  if (beside) {
    const [from, share] = [Math.min(...rows.map((r) => r.first)), pathLength(beside) / length];
    pieces.push(...along(spine, length, length - from));
    pieces.push(...reversePath(slicePath(beside, from * share, (length - from) * share)).pieces);
    at = from;
  }
  for (const { first, row } of rows) {
    // The row starts near one end of the spine and ends as near the other: take it from where the needle is.
    const backwards = at > length / 2;
    const start = backwards ? length - first : first;
    pieces.push(...along(spine, at, start), ...(backwards ? reversePath(row) : row).pieces);
    at = backwards ? first : length - first;
  }
  return openPath(linked(pieces));
};

/** A drop keeps this share of the spacing from the plumes round it. */
const DROP_GAP = 0.5;

/** The second line of a double spine, `apart` mm to the right of the first; undefined where it is single. */
const besideSpine = (spine: Path, apart: number): Path | undefined => {
  if (!(apart > 0)) return undefined;
  const moved = spine.pieces.flatMap((p): Piece[] => {
    if (pieceLength(p) < 1e-6) return [];
    if (p.kind === 'line') {
      const aside = scale(leftOf(pieceDirection(p, 0)), -apart);
      return [line(add(p.from, aside), add(p.to, aside))];
    }
    const radius = p.radius + Math.sign(p.sweep) * apart;
    return radius > 0 ? [arc(p.center, radius, p.start, p.sweep)] : [];
  });
  return openPath(linked(moved));
};

/** Both sides, the right one's dividers starting on the second line of the spine where there is one. */
const startingOn = (
  beside: Path | undefined,
  [right, left]: readonly (Side | undefined)[],
): readonly (Side | undefined)[] => {
  if (!beside || !right) return [right, left];
  const near = beside.pieces.map((piece) => ({ piece, box: pieceBox(piece) }));
  const dividers = right.dividers.map((d) => {
    const box = pieceBox(d);
    const meets = near
      .filter((b) => boxesTouch(b.box, box))
      .flatMap((b) => crossings(d, b.piece))
      .map((c) => c.a);
    const first = Math.min(1, ...meets);
    return first < 0.9 ? trimPiece(d, first, 1) : d;
  });
  return [{ ...right, dividers }, left];
};

/** Pieces in one line: where one does not begin at the end of the last, a straight stitch or two leads there. */
const linked = (pieces: readonly Piece[]): Piece[] =>
  pieces.flatMap((p, i): Piece[] => {
    const before = pieces[i - 1]?.to;
    if (!before || distance(before, p.from) < 1e-9) return [p];
    return distance(before, p.from) < 1e-6 ? [{ ...p, from: before }] : [line(before, p.from), p];
  });

/** The way along the spine from one place to another, backwards if need be. */
const along = (spine: Path, from: number, to: number): readonly Piece[] =>
  from <= to ? slicePath(spine, from, to).pieces : reversePath(slicePath(spine, to, from)).pieces;

/**
 * One feather: the spine to the tip and back, up one side, over the bud at the tip, and down the other side.
 */
const joinAtTip = (
  spine: Path,
  beside: Path | undefined,
  left: Side,
  right: Side,
  probe: RegionProbe,
  gap: number,
): Path => {
  const top = Math.max(left.bases.at(-1)!, right.bases.at(-1)!);
  const from = Math.min(left.bases[0]!, right.bases[0]!);
  const share = beside ? pathLength(beside) / pathLength(spine) : 1;
  const up = beside
    ? [...slicePath(spine, 0, from).pieces, ...slicePath(beside, from * share, top * share).pieces]
    : slicePath(spine, 0, top).pieces;
  const pieces: Piece[] = [...up, ...along(spine, top, left.bases[0]!)];
  const [l, r] = [left.dividers.at(-1)!, right.dividers.at(-1)!];
  const bud = biarc(l.to, left.ends.at(-1)!, r.to, scale(right.ends.at(-1)!, -1));
  const chains = [chainOf(left), reversePath(openPath(chainOf(right))).pieces] as const;
  const budFits = keepsInside(bud, probe, gap) && !chains.some((c) => pathsCross(bud, c.slice(-3)));
  if (budFits) pieces.push(...chains[0], ...bud, ...chains[1]);
  else {
    // Without a bud the needle goes back to the spine, and on from there.
    pieces.push(...chains[0], reversePiece(l), ...along(spine, left.bases.at(-1)!, right.bases.at(-1)!));
    pieces.push(reversePiece(chains[1][0]!), ...chains[1]);
  }
  return openPath(linked(pieces));
};
