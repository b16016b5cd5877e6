/**
 * The open areas of a design: what lies outside its swags and their channels, and what lies between two rows. Each is
 * one area for the whole band, as it is drawn on the quilt: through joins, gaps and marks, round the corners, and
 * closed round a frame. Only where corner squares are left free is there a part for each side.
 *
 * Where four square corners do not close (design.ts), the join that stands open is part of it, and lines go straight
 * over it: left out in sewing, they meet.
 */

import {
  chainPaths,
  compose,
  distance,
  EMPTY_REGION,
  intersectRegions,
  inverse,
  isEmptyRegion,
  joinRegions,
  type Motion,
  move,
  movePath,
  moveRegion,
  type Path,
  type Point,
  parallelIn,
  pathLength,
  polyline,
  type Region,
  regionOf,
  regionPieces,
  reversePath,
  shift,
  widestRadius,
} from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import { ownChannels, reachesOf } from './channels.ts';
import { centreMirror, type Design, type Placed, type PlacedSide, placedPath } from './design.ts';
import { type Field, leavesSquare } from './field.ts';
import { alikeRepeats, regionsOf } from './regions.ts';
import { windowOf } from './shown-lines.ts';
import { isAt, tearAt, tornPath } from './torn.ts';

/** One side of an open area, in whose own frame x runs along the line that marks are measured on. */
interface OpenSide {
  /** mm from corner to corner. */
  readonly length: number;
  /** Between which y (mm) it lies. */
  readonly from: number;
  readonly to: number;
  /** The mitre's angle to x (radians) where the side ends; undefined where it goes round no corner. */
  readonly mitre: number | undefined;
  /** A path of its own frame, as it is drawn on the quilt. */
  readonly lay: (path: Path) => Path;
}

/** What lies beyond repeats that are alike, in the frame of a repeat's first half. */
interface OpenRepeat {
  readonly region: Region;
  /** Its centre line; undefined where half of it is cut off. */
  readonly axis: { readonly at: Point /** radians */; readonly angle: number } | undefined;
  /** Where each of them lies on the quilt, by the repeats' names. */
  readonly places: ReadonlyMap<string, Motion>;
}

export interface OpenArea {
  readonly kind: 'background' | 'between';
  /** On the quilt, as drawn; empty where nothing says how far it goes. */
  readonly region: Region;
  /** The same, repeat by repeat: for what cannot be stitched along the whole. */
  readonly repeats: readonly OpenRepeat[];
  /** Undefined round a frame, which has no sides. */
  readonly sides: readonly OpenSide[] | undefined;
  /** All lines in it at whole multiples of a distance (mm) from the row's outermost line, away from its swags. */
  readonly echoed: (distance: number) => readonly Path[];
  /** mm, of the widest arc of the row's stitching. */
  readonly radius: number;
}

/**
 * What lies beyond a row: between it and the next, or the background. Where it is wanted `about` some repeats, by
 * their names, it is what lies there and beside them: a look at a fill need not wait for the whole of it.
 */
export const openAreaOf = (whole: Design, channels: Channels, about?: ReadonlySet<string>): OpenArea => {
  const row = about ? { ...whole, halves: withNeighbours(whole.halves, about) } : whole;
  const kind = row.beyond ? 'between' : 'background';
  const repeats = row.field.isBounded || row.beyond ? areasOf(row, channels, kind) : [];
  const byRepeat = new Map(
    repeats.flatMap(({ region, places }) => [...places].map(([name, at]) => [name, moveRegion(region, at)])),
  );
  const strips = row.sides.flatMap((side) => stripAt(side, byRepeat));
  const region = repeats.length > 0 ? joinRegions([...byRepeat.values(), ...strips]) : EMPTY_REGION;
  const isRound = row.sides.some(({ run }) => run.curvature !== 0);
  return {
    kind,
    region,
    repeats,
    sides: isRound ? undefined : row.sides.map((side) => openSide(side, row.field)),
    echoed: (apart) => echoedIn(region, row, channels, apart),
    radius: widestRadius(row.halves[0]!.cell.path),
  };
};

/** All halves of some repeats, and those next to them: whose middles lie within three quarters of a span of one of theirs. */
const withNeighbours = (halves: readonly Placed[], about: ReadonlySet<string>): readonly Placed[] => {
  const middleOf = ({ motion, cell: { crown } }: Placed): Point =>
    move(motion, { x: crown.x / 2, y: crown.y / 2 });
  const shown = halves.filter(({ repeat }) => about.has(repeat));
  return halves.filter((half) =>
    shown.some((s) => distance(middleOf(s), middleOf(half)) <= 0.75 * s.cell.seat.span),
  );
};

const areasOf = (row: Design, channels: Channels, kind: OpenArea['kind']): readonly OpenRepeat[] =>
  alikeRepeats(row, row.halves).flatMap(({ cell, ends, halves }): readonly OpenRepeat[] => {
    const region = regionsOf(cell, row, channels, ends).find((r) => r.kind === kind)?.region;
    if (!region || isEmptyRegion(region)) return [];
    const whole = new Map<string, Motion>();
    const halved: OpenRepeat[] = [];
    for (const [repeat, both] of byName(halves)) {
      const [half] = both as [Placed];
      const place = wholeMotion(half);
      if (both.length > 1) whole.set(repeat, place);
      else
        halved.push({
          region: intersectRegions(region, moveRegion(windowOf(half, row), inverse(place))),
          axis: undefined,
          places: new Map([[repeat, place]]),
        });
    }
    return [{ region, axis: { at: cell.crown, angle: cell.mirror }, places: whole }, ...halved];
  });

const byName = (halves: readonly Placed[]): ReadonlyMap<string, readonly Placed[]> => {
  const found = new Map<string, Placed[]>();
  for (const half of halves) found.set(half.repeat, [...(found.get(half.repeat) ?? []), half]);
  return found;
};

/** From the frame of a repeat's first half to the quilt's, seen from either half. */
const wholeMotion = ({ half, motion, cell }: Placed): Motion =>
  half === 'first' ? motion : compose(motion, centreMirror(cell));

/** What of the join that stands open is open area: as high as the area is beside it. */
const stripAt = (side: PlacedSide, byRepeat: ReadonlyMap<string, Region>): readonly Region[] => {
  const torn = tearAt(side);
  const before = torn && byRepeat.get(`${side.run.name} ${side.tear!.after}`);
  if (!before) return [];
  const { at, by } = torn;
  const back = inverse(side.run.place);
  return regionPieces(moveRegion(before, back)).flatMap((p) =>
    p.kind === 'line' && isAt(p.from, at) && isAt(p.to, at)
      ? [
          moveRegion(
            regionOf([
              polyline([p.from, p.to, { x: at + by, y: p.to.y }, { x: at + by, y: p.from.y }], true),
            ]),
            side.run.place,
          ),
        ]
      : [],
  );
};

const openSide = (side: PlacedSide, field: Field): OpenSide => {
  const { run } = side;
  const place = compose(run.place, shift(0, field.marksAt));
  const torn = tearAt(side);
  return {
    length: run.length,
    from: field.near - field.marksAt,
    to: field.far - field.marksAt,
    mitre: field.corners === 'none' || leavesSquare(field) ? undefined : field.mitre,
    lay: (path) => movePath(torn ? tornPath(path, torn) : path, place),
  };
};

/** As by further channels beyond the row's last, but by the distance from all its stitching, from swag to swag. */
const echoedIn = (region: Region, row: Design, channels: Channels, apart: number): readonly Path[] => {
  if (isEmptyRegion(region)) return [];
  const stitched = chainPaths(
    row.halves.map((half) => (half.half === 'first' ? placedPath(half) : reversePath(placedPath(half)))),
  );
  const from = reachesOf(ownChannels(row, channels).outward).at(-1) ?? 0;
  const found: Path[] = [];
  for (let k = 1; ; k++) {
    const lines = parallelIn(stitched, from + k * apart, region, channels.points);
    if (lines.length === 0) return found;
    found.push(...lines.filter((line) => pathLength(line) > LEAST_ECHO * apart));
  }
};

/** Shorter lines (in spacings) are what an edge leaves of a point: nobody sews them. */
const LEAST_ECHO = 0.4;
