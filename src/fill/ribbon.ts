/** Ribbon: a serpentine along a band, its turns rounded, in one line. */

import {
  add,
  directionAlong,
  distance,
  isEmptyRegion,
  leftOf,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  regionParts,
  scale,
} from '../geometry/index.ts';
import { badSpacing, type Fill, type FillContext, MOST_ELEMENTS, nothing } from './fill.ts';
import { BAND_SMOOTHING, spineOf } from './spine.ts';
import { axisOf } from './symmetry.ts';
import { biarc } from './two-arcs.ts';

/** Turns keep this share of the spacing from the band's edges. */
const EDGE_GAP = 0.12;

export const ribbon: Fill = {
  name: 'ribbon',
  about: 'a serpentine along a band',
  suits: 'band',
  fill: (region, { spacing }, context) => {
    const bad = badSpacing(spacing);
    if (bad) return nothing(bad);
    if (isEmptyRegion(region)) return nothing('ribbon: nothing to fill');
    const parts = regionParts(region);
    const paths = parts.flatMap((part) => ribbonIn(part, spacing, parts.length === 1 ? context : undefined));
    const empty = parts.length - paths.length;
    if (paths.length === 0) return nothing('ribbon: the band is too narrow for a ribbon at this spacing');
    const messages =
      empty > 0 ? [`ribbon: ${empty} of ${parts.length} parts are too narrow for a ribbon`] : [];
    return { paths, continuous: true, messages };
  },
};

/** Along the spine, for a direction across it. */
const rightOf = (across: Point): Point => ({ x: across.y, y: -across.x });

interface Leg {
  readonly at: Point;
  readonly across: Point;
  /** Room to the left and to the right, without the turns. */
  readonly left: number;
  readonly right: number;
}

const ribbonIn = (region: Region, spacing: number, context: FillContext | undefined): Path[] => {
  const gap = EDGE_GAP * spacing;
  const spine = context?.spine ?? spineOf(region, gap, axisOf(region, context), BAND_SMOOTHING);
  if (!spine) return [];
  const probe = probeRegion(region);
  const length = pathLength(spine);
  // Round a ring the spaces between legs must come out even; elsewhere odd, so that a turn lies in the
  // middle.
  const count = spine.closed
    ? Math.min(MOST_ELEMENTS, Math.max(2, 2 * Math.round(length / spacing / 2)))
    : Math.min(MOST_ELEMENTS, Math.max(3, 2 * Math.round((length / spacing - 1) / 2) + 1));
  const legs: Leg[] = [];
  for (let k = 0; k <= count; k++) {
    const s = (length * k) / count;
    const at = pointAlong(spine, s)!;
    const across = leftOf(directionAlong(spine, s)!);
    legs.push({
      at,
      across,
      left: roomAcross(at, across, probe, gap, spacing),
      right: roomAcross(at, scale(across, -1), probe, gap, spacing),
    });
  }
  const usable = legs.filter((l) => l.left > 0 && l.right > 0);
  if (usable.length < 3) return [];
  const pieces: Piece[] = [];
  let from = usable[0]!.at;
  for (let k = 0; k + 1 < usable.length; k++) {
    const [a, b] = [usable[k]!, usable[k + 1]!];
    const side = k % 2 === 0 ? 1 : -1;
    const room = side > 0 ? Math.min(a.left, b.left) : Math.min(a.right, b.right);
    const turnAt = (l: Leg): Point => add(l.at, scale(l.across, side * room));
    const half = distance(turnAt(a), turnAt(b)) / 2;
    // The turn is a half circle over the legs' ends where there is room for one, and a flatter bow where
    // there is not.
    const reach = Math.max(0, room - half);
    const steep = room >= half ? Math.PI / 2 : 2 * Math.atan(room / half);
    const [p, q] = [add(a.at, scale(a.across, side * reach)), add(b.at, scale(b.across, side * reach))];
    const leaning = (l: Leg, up: number): Point =>
      add(scale(rightOf(l.across), Math.cos(steep)), scale(l.across, side * up * Math.sin(steep)));
    if (distance(from, p) > 1e-9) pieces.push({ kind: 'line', from, to: p });
    pieces.push(...biarc(p, leaning(a, 1), q, leaning(b, -1)));
    from = q;
  }
  const end = usable.at(-1)!.at;
  if (distance(from, end) > 1e-9) pieces.push({ kind: 'line', from, to: end });
  const whole = spine.closed && usable.length === legs.length;
  return [{ pieces, closed: whole && distance(pieces[0]!.from, pieces.at(-1)!.to) < 1e-9 }];
};

/** How far one can go across before the edge is nearer than the gap. */
const roomAcross = (at: Point, toward: Point, probe: RegionProbe, gap: number, spacing: number): number => {
  const step = spacing / 20;
  let room = 0;
  for (let k = 1; k <= MOST_STEPS; k++) {
    if (!(probe.depth(add(at, scale(toward, k * step))) >= gap)) break;
    room = k * step;
  }
  return room;
};

/** Across a band of this many twentieths of a spacing; a wider area is not for a ribbon. */
const MOST_STEPS = 400;
