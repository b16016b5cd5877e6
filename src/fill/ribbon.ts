/** Ribbon: a serpentine along a band, its turns rounded, in one line. */

import {
  add,
  directionAlong,
  distance,
  dot,
  leftOf,
  norm,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pieceAt,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  regionParts,
  scale,
  subtract,
} from '../geometry/index.ts';
import { checked, type Fill, type FillContext, MOST_ELEMENTS, ofParts } from './fill.ts';
import { BAND_SMOOTHING, spineOf } from './spine.ts';
import { axisOf } from './symmetry.ts';
import { biarc } from './two-arcs.ts';

/** Turns keep this share of the spacing from the band's edges. */
const EDGE_GAP = 0.12;

export const ribbon: Fill = checked({
  name: 'ribbon',
  about: 'a serpentine along a band',
  suits: 'band',
  takes: [],
  fill: (region, { spacing }, context) => {
    const parts = regionParts(region);
    return ofParts(
      parts.map((part) => ribbonIn(part, spacing, parts.length === 1 ? context : undefined)),
      'band',
      'a ribbon',
    );
  },
});

/** Along the spine, for a direction across it. */
const rightOf = (across: Point): Point => ({ x: across.y, y: -across.x });

interface Leg {
  readonly at: Point;
  readonly across: Point;
  /** Room to the left and to the right, without the turns. */
  left: number;
  right: number;
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
  const usable = keptApart(legs).filter((l) => l.left > 0 && l.right > 0);
  if (usable.length < 3) return [];
  const paths: Path[] = [];
  let pieces: Piece[] = [];
  let from = usable[0]!.at;
  const lineTo = (to: Point): void => {
    if (distance(from, to) > 1e-9) pieces.push({ kind: 'line', from, to });
  };
  for (let k = 0; k + 1 < usable.length; k++) {
    const [a, b] = [usable[k]!, usable[k + 1]!];
    const side = k % 2 === 0 ? 1 : -1;
    const turn = SHORTER.map((share) => turnBetween(a, b, side, share)).find((pieces) =>
      pieces.every((p) => [0.25, 0.5, 0.75, 1].every((t) => probe.depth(pieceAt(p, t)) >= gap * 0.5)),
    );
    if (turn) {
      lineTo(turn[0]!.from);
      pieces.push(...turn);
      from = turn.at(-1)!.to;
    } else {
      // No turn fits between these legs, at a notch perhaps: one ribbon ends and another begins.
      lineTo(a.at);
      if (pieces.length > 0) paths.push(openPath(pieces));
      pieces = [];
      from = b.at;
    }
  }
  lineTo(usable.at(-1)!.at);
  const whole = spine.closed && usable.length === legs.length && paths.length === 0;
  const closed = whole && distance(pieces[0]!.from, pieces.at(-1)!.to) < 1e-9;
  if (pieces.length > 0) paths.push({ pieces, closed });
  return paths;
};

/** Turns are tried at these shares of the room there is. */
const SHORTER = [1, 0.8, 0.6, 0.4, 0.2] as const;

const turnBetween = (a: Leg, b: Leg, side: 1 | -1, share: number): Piece[] => {
  const room = share * (side > 0 ? Math.min(a.left, b.left) : Math.min(a.right, b.right));
  const turnAt = (l: Leg): Point => add(l.at, scale(l.across, side * room));
  const half = distance(turnAt(a), turnAt(b)) / 2;
  // The turn is a half circle over the legs' ends where there is room for one, and a flatter bow where there
  // is not.
  const reach = Math.max(0, room - half);
  const steep = room >= half ? Math.PI / 2 : 2 * Math.atan(room / half);
  const [p, q] = [add(a.at, scale(a.across, side * reach)), add(b.at, scale(b.across, side * reach))];
  const leaning = (l: Leg, up: number): Point =>
    add(scale(rightOf(l.across), Math.cos(steep)), scale(l.across, side * up * Math.sin(steep)));
  return biarc(p, leaning(a, 1), q, leaning(b, -1));
};

/** Where the spine bends, legs on the inside run together: they end while they are still well apart. */
const keptApart = (legs: readonly Leg[]): Leg[] => {
  const kept = legs.map((l) => ({ ...l }));
  for (let k = 0; k + 1 < kept.length; k++) {
    const [a, b] = [kept[k]!, kept[k + 1]!];
    const between = subtract(b.at, a.at);
    const apart = norm(between);
    // How fast the two close up per mm to the left; to the right it is the opposite.
    const closing = -dot(subtract(b.across, a.across), between) / apart;
    const most = ((1 - LEAST_APART) * apart) / Math.abs(closing);
    if (closing > 0) {
      a.left = Math.min(a.left, most);
      b.left = Math.min(b.left, most);
    } else if (closing < 0) {
      a.right = Math.min(a.right, most);
      b.right = Math.min(b.right, most);
    }
  }
  return kept;
};

/** Legs come no nearer to each other than this share of their distance on the spine. */
const LEAST_APART = 0.4;

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
