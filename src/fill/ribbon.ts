/**
 * Ribbon candy: a line that goes to and fro across a band, in turns that touch both the band's lines and are wider than
 * the legs between them are apart, all in one smooth line.
 */

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
  unit,
} from '../geometry/index.ts';
import { checked, type Fill, type FillContext, MOST_ELEMENTS, ofParts } from './fill.ts';
import { withoutCorners } from './smooth-path.ts';
import { BAND_SMOOTHING, spineOf } from './spine.ts';
import { axisOf } from './symmetry.ts';
import { biarc } from './two-arcs.ts';

/** Corners of the band's middle are rounded over this many spacings. */
const ROUNDING = 0.8;

/** A turn comes this near (mm) to its line, which is less than a thread is thick. */
const TOUCHES = 0.04;

/** The ribbon begins and ends this share of the spacing before the band does. */
const END_GAP = 0.12;

/** Legs slant by this much of the way between them, so that turns are wider than legs are apart, as in candy. */
const SLANT = 0.35;

/** A turn begins this share of the way between legs before it touches its line. */
const TURN_DEPTH = 0.8;

/** Legs come no nearer to each other than this share of their distance on the spine. */
const LEAST_APART = 0.45;

export const ribbon: Fill = checked({
  name: 'ribbon',
  about: 'ribbon candy along a band, its turns touching both lines',
  suits: 'band',
  sewn: 'start at one end of the band and follow the ribbon to the other end; nothing is sewn twice',
  crowd: 1,
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

/** A place where the spine is crossed, or where a turn touches beside it: the spine's direction there, and its left. */
interface Place {
  readonly at: Point;
  readonly along: Point;
  readonly left: Point;
}

interface Turn extends Place {
  /** The unit direction out to the line that it touches, and how far that is (mm). */
  readonly out: Point;
  reach: number;
}

const ribbonIn = (region: Region, spacing: number, context: FillContext | undefined): Path[] => {
  const found =
    context?.spine ?? spineOf(region, END_GAP * spacing, axisOf(region, context), undefined, BAND_SMOOTHING);
  if (!found) return [];
  const spine = withoutCorners(found, ROUNDING * spacing);
  const probe = probeRegion(region);
  const length = pathLength(spine);
  // Round a ring the turns must come out even; elsewhere odd, so that one lies in the middle.
  const count = spine.closed
    ? Math.max(2, 2 * Math.round(length / spacing / 2))
    : Math.max(3, 2 * Math.round((length / spacing - 1) / 2) + 1);
  if (!(count < MOST_ELEMENTS)) return [];
  const placeAt = (s: number): Place => {
    const along = directionAlong(spine, s)!;
    return { at: pointAlong(spine, s)!, along, left: leftOf(along) };
  };
  const pitch = length / count;
  const turns = Array.from({ length: count }, (_, k): Turn => {
    const place = placeAt((k + 0.5) * pitch);
    const out = k % 2 === 0 ? place.left : scale(place.left, -1);
    return { ...place, out, reach: reachOut(place.at, out, probe, spacing) };
  });
  keepApart(turns, pitch);
  const crossed = Array.from({ length: count + 1 }, (_, k) => placeAt(k * pitch));
  return linked(turns, crossed, pitch, probe, spine.closed);
};

/** Each turn in its order, and a straight leg from one to the next; a turn that fits nowhere parts the ribbon. */
const linked = (
  turns: readonly Turn[],
  crossed: readonly Place[],
  pitch: number,
  probe: RegionProbe,
  closed: boolean,
): Path[] => {
  const paths: Path[] = [];
  let pieces: Piece[] = [];
  const lineTo = (to: Point): void => {
    const from = pieces.at(-1)?.to;
    if (from && distance(from, to) > 1e-9) pieces.push({ kind: 'line', from, to });
  };
  const part = (): void => {
    if (pieces.length > 0) paths.push(openPath(pieces));
    pieces = [];
  };
  turns.forEach((turn, k) => {
    const heights = [turns[k - 1], turns[k + 1]].map((t) => turn.reach + (t?.reach ?? turn.reach));
    const made = SHORTER.map((share) =>
      turnOver(turn, crossed[k]!, crossed[k + 1]!, heights, pitch, share),
    ).find((m) => m?.every((p) => TRIED.every((t) => probe.depth(pieceAt(p, t)) >= -TOUCHES / 4)));
    if (made) {
      lineTo(made[0]!.from);
      pieces.push(...made);
    } else part();
  });
  if (closed && paths.length === 0 && pieces.length > 0) {
    lineTo(pieces[0]!.from);
    return [{ pieces, closed: true }];
  }
  part();
  return paths;
};

/** Turns are tried at these shares of the room there is, and looked at in these places. */
const SHORTER = [1, 0.9, 0.8, 0.6, 0.4, 0.2] as const;
const TRIED = [0, 0.25, 0.5, 0.75, 1] as const;

/** Four arcs and what is left of two legs: from the spine before a turn, over the place where it touches, and back. */
const turnOver = (
  { at, out, along, reach }: Turn,
  before: Place,
  after: Place,
  [before2, after2]: readonly number[],
  pitch: number,
  share: number,
): Piece[] | undefined => {
  const far = reach * share;
  if (!(far > pitch * LEAST_REACH)) return undefined;
  const top = add(at, scale(out, far));
  const outAt = (p: Place): Point => (dot(p.left, out) > 0 ? p.left : scale(p.left, -1));
  // Legs lean away from the middle of the turn on their way out.
  const leaning = (p: Place, height: number, away: 1 | -1): Point =>
    unit(add(scale(outAt(p), height), scale(p.along, away * SLANT * pitch)));
  const [up, down] = [leaning(before, before2!, -1), leaning(after, after2!, 1)];
  const depth = Math.min(TURN_DEPTH * pitch, far);
  const straight = (p: Place, toward: Point): Point =>
    add(p.at, scale(toward, Math.max(0, dot(subtract(top, p.at), out) - depth) / dot(toward, out)));
  const [a, b] = [straight(before, up), straight(after, down)];
  return [...biarc(a, up, top, along), ...biarc(top, along, b, scale(down, -1))];
};

/** A turn that reaches less far than this share of the way between legs is none. */
const LEAST_REACH = 0.15;

/** How far it is to the line on one side of the spine: exact, by steps as long as the nearest edge is far. */
const reachOut = (at: Point, out: Point, probe: RegionProbe, spacing: number): number => {
  let far = 0;
  for (let k = 0; k < MOST_STEPS && far < MOST_REACH * spacing; k++) {
    const room = probe.distance(add(at, scale(out, far)));
    if (room < TOUCHES / 2) break;
    far += room - TOUCHES / 4;
  }
  return far;
};
const MOST_STEPS = 200;
/** A wider area than this many spacings is not for a ribbon. */
const MOST_REACH = 40;

/** Where the spine bends, turns on the inside come together: they end while their legs are still well apart. */
const keepApart = (turns: readonly Turn[], pitch: number): void => {
  for (let k = 1; k + 1 < turns.length; k++) {
    const [a, b] = [turns[k - 1]!, turns[k + 1]!];
    const between = subtract(b.at, a.at);
    const apart = norm(between);
    const side = dot(turns[k]!.out, turns[k]!.left);
    // How fast neighbours on this side close up per mm outwards.
    const closing = (-side * dot(subtract(b.left, a.left), between)) / apart;
    if (closing > 0) turns[k]!.reach = Math.min(turns[k]!.reach, ((1 - LEAST_APART) * 2 * pitch) / closing);
  }
};
