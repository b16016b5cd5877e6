/**
 * What a template can make, whatever the border: swags over its sections, from both sides and in both directions,
 * each at a few spans. Every one is laid as the fit search would lay it, crown on centre, with no margin in the way.
 */

import { pathLength } from '../geometry/index.ts';
import { type Design, designOf } from './design.ts';
import type { Field } from './field.ts';
import { ALIKE, type Fit, WITHOUT_SWAG } from './fit.ts';
import { straightRun } from './run.ts';
import { withoutRepeats } from './same-line.ts';
import { scoreOf } from './score.ts';
import { NEIGHBOUR_ROOM, type Seat, seat } from './seat.ts';
import type { Way } from './setting.ts';
import { type Direction, type Shape, shapeOf, type TemplateSide } from './shape.ts';
import { endStops, type Stitching, startStops } from './stitching.ts';

export interface GallerySwag {
  readonly shape: Shape;
  readonly seat: Seat;
  /** Two repeats side by side. */
  readonly design: Design;
}

const SIDES: readonly TemplateSide[] = ['inside', 'outside'];
const DIRECTIONS: readonly Direction[] = ['heel-first', 'crown-first'];

/** Spans that are tried where none is asked for, as shares of the widest: shallow, middling, deep. */
const SHARES = [0.94, 0.78, 0.58];

/** Two repeats show a swag and its join. */
const REPEATS = 2;

/** A swag shallower than this (mm) is a line. */
const SHALLOWEST = 3;

/**
 * Lines and arcs that are laid at most, those of every span counted: some 5 s. A template of 499 sections has 500,000
 * stretches, of which no more than the first pages are ever looked at.
 */
const MOST_LAID = 2_000_000;

export interface Gallery {
  /**
   * Stretch by stretch of the edge, first the stretch with the best swag; each stretch's best first, judged as the
   * fit search judges. What two ways stitch alike is there once.
   */
  readonly swags: readonly GallerySwag[];
  /** Why there may be more: as many were found as were asked for, or looking for them would have taken too long. */
  readonly cutShort: 'enough' | 'too-long' | undefined;
}

/** At most `most` swags. `spans` in mm, start mark to stop mark; a few unless given. */
export const galleryOf = (
  stitching: Stitching,
  spans: readonly number[] = [],
  most = Number.POSITIVE_INFINITY,
): Gallery => {
  const swags: GallerySwag[] = [];
  let laid = 0;
  for (const { shape, size } of shapesOf(stitching)) {
    laid += size;
    if (laid > MOST_LAID) return { swags: inOrder(swags), cutShort: 'too-long' };
    if (!shape) continue;
    const wanted = spans.length > 0 ? spans : SHARES.map((s) => 2 * shape.chord * s);
    for (const span of wanted) {
      laid += size;
      const made = swagAt(shape, span);
      if (!made) continue;
      if (swags.length >= most) return { swags: inOrder(swags), cutShort: 'enough' };
      swags.push(made);
    }
  }
  return { swags: inOrder(swags), cutShort: undefined };
};

const inOrder = (swags: readonly GallerySwag[]): readonly GallerySwag[] => {
  const judged = swags.map((swag) => {
    const { fit, field } = swag.design;
    return { swag, fit, field, cost: scoreOf(fit, field, 0).cost };
  });
  // Of two ways that stitch alike the plainer one stays, because it comes first.
  const best = withoutRepeats(judged.sort((a, b) => a.cost - b.cost));
  const stretches = new Map<string, GallerySwag[]>();
  for (const { swag } of best) {
    const stretch = `${swag.shape.from.label} ${swag.shape.to.label}`;
    const known = stretches.get(stretch);
    if (known) known.push(swag);
    else stretches.set(stretch, [swag]);
  }
  return [...stretches.values()].flat();
};

/** Every stretch from each section to each, with about how many pieces it has; undefined where it makes no swag. */
function* shapesOf(stitching: Stitching): Generator<{ shape: Shape | undefined; size: number }> {
  const { path } = stitching.stitched;
  const density = path.pieces.length / pathLength(path);
  const ends = endStops(stitching);
  for (const from of startStops(stitching))
    for (const to of ends) {
      if (!(to.along > from.along)) continue;
      const size = 1 + density * (to.along - from.along);
      for (const side of SIDES)
        for (const direction of DIRECTIONS)
          yield { shape: shapeOf(stitching, from, to, side, direction), size };
    }
}

const swagAt = (shape: Shape, span: number): GallerySwag | undefined => {
  const setting = { kind: 'crown-on-centre' } as const;
  const way: Way = { shape, setting, tilt: undefined, laid: undefined, mayStopSooner: false };
  const rules = { room: Number.POSITIVE_INFINITY, gap: 'auto' } as const;
  // The span is what is asked for; a bulge adds a gap, which makes the share wider by as much.
  let share = span;
  for (let round = 0; round < ROUNDS; round++) {
    const laid = seat(way, share, rules);
    if (!laid.ok) return undefined;
    const missing = span - 2 * laid.value.pose.halfSpan;
    if (Math.abs(missing) > EXACT && round < ROUNDS - 1) {
      share += missing;
      continue;
    }
    if (!(laid.value.pose.depth >= SHALLOWEST)) return undefined;
    return { shape, seat: laid.value, design: stripOf(way, laid.value, share) };
  }
  return undefined;
};

/** The span is met to this (mm) or as near as the rounds bring it. */
const EXACT = 0.01;
const ROUNDS = 12;

const stripOf = (way: Way, laid: Seat, share: number): Design => {
  const length = REPEATS * share;
  const run = straightRun('strip', length, 0);
  const width = laid.pose.top + NEIGHBOUR_ROOM;
  const field: Field = {
    name: 'strip',
    runs: [run],
    corners: 'none',
    from: 'inner',
    width,
    startMargin: 0,
    marksAt: 0,
    farMargin: 0,
    room: width,
    around: { kind: 'nothing' },
    lines: [
      { role: 'seam', name: 'inner seam', level: 0 },
      { role: 'seam', name: 'far seam', level: width },
    ],
    across: { from: 0, to: width },
    near: 0,
    far: width,
    isBounded: true,
  };
  const fit: Fit = {
    way,
    sides: [{ run, repeats: REPEATS, seat: laid }],
    corner: WITHOUT_SWAG,
    pattern: ALIKE,
  };
  return designOf(field, fit);
};
