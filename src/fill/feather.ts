/**
 * Feathers: a spine through the middle of the region, and plumes along both sides of it.
 *
 * How quilters draw them (common practice): the spine first; then a row of rounded heads along the outline, and from where two
 * heads meet a tail line that sweeps down and runs into the spine. So a plume is a teardrop, narrow at the spine and full at the
 * head. Tail lines (dividers) of one side are nearly copies of one another moved along the spine, so that they nestle.
 *
 * Plumes reach as far as the region lets them, less a gap, and are as wide as suits their length, so that a feather grows fuller
 * where the region does. A region that is its own mirror image gets a feather from each end, which meet in a bud on the axis; any
 * other gets one feather that closes up to a bud at its tip.
 *
 * The whole is one line: along the spine, out along a divider, over the head, back along the next divider, out along it again, and so
 * on; dividers are stitched twice, which quilters call backtracking.
 */

import {
  distance,
  isEmptyRegion,
  mirror,
  movePath,
  mover,
  openPath,
  type Path,
  type Piece,
  pathLength,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  regionParts,
  reversePath,
  reversePiece,
  scale,
  slicePath,
} from '../geometry/index.ts';
import { growSide, keepsInside, pathsCross, type Side, tipPlace } from './feather-side.ts';
import { type Axis, badSpacing, type Fill, type FillContext, nothing } from './fill.ts';
import { spineOf } from './spine.ts';
import { axisOf, mirrorOf } from './symmetry.ts';
import { biarc } from './two-arcs.ts';

/** Plumes keep this share of the spacing away from the region's edge. */
const EDGE_GAP = 0.3;

/** Where there is no room for plumes at the spacing asked for, smaller ones are tried: these shares of it. */
const SMALLER = [1, 0.7, 0.5] as const;

export const feather: Fill = {
  name: 'feather',
  about: 'a spine with plumes on both sides, growing as full as the area allows',
  suits: 'area',
  fill: (region, { spacing }, context) => {
    const bad = badSpacing(spacing);
    if (bad) return nothing(bad);
    if (isEmptyRegion(region)) return nothing('feather: nothing to fill');
    const parts = regionParts(region);
    const paths: Path[] = [];
    const messages: string[] = [];
    let empty = 0;
    for (const part of parts) {
      const made = featherIn(part, spacing, parts.length === 1 ? context : undefined);
      if (!made) empty++;
      else paths.push(made.path);
      if (made && made.share < 1)
        messages.push('feather: the area is narrow, so the plumes are smaller than the spacing asks for');
    }
    if (empty > 0)
      messages.push(
        parts.length === 1
          ? 'feather: the area has no room for plumes at this spacing'
          : `feather: ${empty} of ${parts.length} parts have no room for plumes at this spacing`,
      );
    return { paths, continuous: true, messages };
  },
};

const featherIn = (
  region: Region,
  spacing: number,
  context: FillContext | undefined,
): { readonly path: Path; readonly share: number } | undefined => {
  const axis = axisOf(region, context);
  const spine = context?.spine ?? spineOf(region, EDGE_GAP * spacing * SMALLER.at(-1)!, axis);
  if (!spine) return undefined;
  const probe = probeRegion(region);
  for (const share of SMALLER) {
    const path = featherOn(spine, probe, spacing * share, axis);
    if (path) return { path, share };
  }
  return undefined;
};

const featherOn = (
  spine: Path,
  probe: RegionProbe,
  spacing: number,
  axis: Axis | undefined,
): Path | undefined => {
  const gap = EDGE_GAP * spacing;
  if (axis && crossesAxis(spine, axis)) {
    const stalk = slicePath(spine, 0, pathLength(spine) / 2);
    const [left, right] = ([1, -1] as const).map((side) =>
      growSide({ stalk, side, probe, spacing, gap, until: { kind: 'axis', axis } }),
    );
    return left || right ? joinMirrored(spine, [right, left], axis) : undefined;
  }
  const tip = tipPlace(spine, probe, spacing, gap);
  if (tip === undefined) return undefined;
  const [left, right] = ([1, -1] as const).map((side) =>
    growSide({ stalk: spine, side, probe, spacing, gap, until: { kind: 'tip', at: tip } }),
  );
  return left && right ? joinAtTip(spine, left, right, probe, gap) : undefined;
};

/** Whether the spine is its own mirror image, end to end. */
const crossesAxis = (spine: Path, axis: Axis): boolean => {
  const over = mover(mirrorOf(axis));
  const length = pathLength(spine);
  return [0, 0.2, 0.4].every((t) => {
    const [a, b] = [pointAlong(spine, t * length), pointAlong(spine, (1 - t) * length)];
    return a !== undefined && b !== undefined && distance(over(a), b) < 0.5;
  });
};

/** The plumes of a side as one stretch, from the spine at the first divider to the last divider's outer end. */
const chainOf = ({ dividers, heads }: Side): Piece[] =>
  dividers.flatMap((d, i) => {
    const [head, next] = [heads[i], dividers[i + 1]];
    return head && next ? [d, ...head, reversePiece(next)] : [d];
  });

/** Both feathers of a mirrored region: the spine from end to end, then one row of plumes back, and the other one there again. */
const joinMirrored = (spine: Path, sides: readonly (Side | undefined)[], axis: Axis): Path => {
  const over = mirror(axis.at, axis.angle);
  const turnOver = mover({ ...over, x: 0, y: 0 });
  const length = pathLength(spine);
  const pieces: Piece[] = [...spine.pieces];
  let at = length;
  for (const side of sides) {
    if (!side) continue;
    const chain = openPath(chainOf(side));
    const image = reversePath(movePath(chain, over));
    const [last, out] = [side.dividers.at(-1)!, side.ends.at(-1)!];
    const bud = biarc(last.to, out, image.pieces[0]!.from, scale(turnOver(out), -1));
    const row = openPath([...chain.pieces, ...bud, ...image.pieces]);
    // The row starts near one end of the spine and ends as near the other: take it from where the needle is.
    const first = side.bases[0]!;
    const backwards = at > length / 2;
    const start = backwards ? length - first : first;
    pieces.push(...along(spine, at, start), ...(backwards ? reversePath(row) : row).pieces);
    at = backwards ? first : length - first;
  }
  return openPath(pieces);
};

/** The way along the spine from one place to another, backwards if need be. */
const along = (spine: Path, from: number, to: number): readonly Piece[] =>
  from <= to ? slicePath(spine, from, to).pieces : reversePath(slicePath(spine, to, from)).pieces;

/** One feather: the spine to the tip and back, up one side, over the bud at the tip, and down the other side. */
const joinAtTip = (spine: Path, left: Side, right: Side, probe: RegionProbe, gap: number): Path => {
  const top = Math.max(left.bases.at(-1)!, right.bases.at(-1)!);
  const pieces: Piece[] = [...slicePath(spine, 0, top).pieces, ...along(spine, top, left.bases[0]!)];
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
  return openPath(pieces);
};
