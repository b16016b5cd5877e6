/**
 * Where the check square stands on each sheet. It carries the sheet's words too, so it should cover no ink: the
 * corner that is free on most sheets first, then the other corners, then anywhere, and where a sheet is full,
 * the place that hides least of the swags, of such the one that hides least of the fills, and then of all ink.
 */

import type { LayerId } from '../drawing/index.ts';
import { type Box, boxOfPoints, inverse, type Motion, mover, type Point } from '../geometry/index.ts';
import { MM_PER_INCH } from '../length/index.ts';
import { holdsInk, type Ink } from './ink.ts';
import { countInside, countTouched, type Occupancy, occupancyOf } from './occupancy.ts';
import type { SharedEdge } from './sheet-plan.ts';

/** 2 in: long enough to lay a ruler on, short enough to find a free corner. */
export const CHECK_SIDE = 2 * MM_PER_INCH;

/** Marked on two of the square's sides from the same corner, for a ruler in millimetres. */
export const CHECK_SECOND = 50;

/** Kept between the square and the drawing's ink, mm. */
const CLEARANCE = 2;

/** Kept between the square and the frame's ticks and numbers, or a band, mm. */
const OFF_FRAME = 7;
const OFF_BAND = 2;

/** Places between the corners are tried on a grid of this pitch, mm. */
const PITCH = 5;

export interface CheckPlace {
  readonly at: Point;
  readonly clear: boolean;
}

/** The least live area (mm) that holds the square between bands on both sides. */
export const leastLive = (overlap: number): number =>
  CHECK_SIDE + 2 * Math.max(OFF_FRAME, overlap + OFF_BAND);

interface Room {
  readonly place: Motion;
  readonly edges: readonly SharedEdge[];
}

export const placeChecks = (ink: Ink, grid: Occupancy, live: Box, sheets: readonly Room[]): CheckPlace[] => {
  const rooms = sheets.map((sheet) => roomFor(live, sheet.edges));
  const isClear = (sheet: number, at: Point): boolean => {
    const window = inDrawing(sheets[sheet]!.place, squareAt(at, CLEARANCE));
    // The grid knows most squares that are not, and every one that is by far.
    return countInside(grid, window) === 0 && !(countTouched(grid, window) > 0 && holdsInk(ink, window));
  };
  const corners = [0, 1, 2, 3].map((corner) => ({
    corner,
    free: rooms.filter((room, sheet) => isClear(sheet, cornersOf(room)[corner]!)).length,
  }));
  corners.sort((a, b) => b.free - a.free || a.corner - b.corner);
  const swags = ofLayers(ink, SWAGS);
  const fills = ofLayers(ink, FILLS);
  return rooms.map((room, sheet) => {
    const at = cornersOf(room);
    for (const { corner } of corners)
      if (isClear(sheet, at[corner]!)) return { at: at[corner]!, clear: true };
    const inkAt = (p: Point, of: Occupancy): number =>
      countTouched(of, inDrawing(sheets[sheet]!.place, squareAt(p, 0)));
    const places = stepsOf(room.minY, room.maxY).flatMap((y) =>
      stepsOf(room.minX, room.maxX).map((x): Point => ({ x, y })),
    );
    const clear = places.find((p) => inkAt(p, grid) === 0 && isClear(sheet, p));
    if (clear) return { at: clear, clear: true };
    // Of the places that hide least of one kind, those that hide least of the next.
    let best = [at[corners[0]!.corner]!, ...places];
    for (const kind of [swags(), fills(), grid]) {
      const hides = best.map((p) => inkAt(p, kind));
      const least = Math.min(...hides);
      best = best.filter((_, i) => hides[i] === least);
    }
    return { at: best[0]!, clear: false };
  });
};

/** The swags with their echoes, marks and words are what the paper is for; a fill goes on beside what is hidden of it. */
const SWAGS: ReadonlySet<LayerId> = new Set(['channel', 'stitch', 'marks', 'notes']);
const FILLS: ReadonlySet<LayerId> = new Set(['fill']);

/** Where some layers are inked; worked out when it is first asked for. */
const ofLayers = (ink: Ink, layers: ReadonlySet<LayerId>): (() => Occupancy) => {
  let known: Occupancy | undefined;
  return () => {
    known ??= occupancyOf({ ...ink, items: ink.items.filter(({ layer }) => layers.has(layer)) });
    return known;
  };
};

/** From one end to the other, both included: a free strip beside the frame is often just wide enough. */
const stepsOf = (from: number, to: number): readonly number[] => {
  const steps: number[] = [];
  for (let at = from; at < to; at += PITCH) steps.push(at);
  return [...steps, to];
};

/** The lower left corners that the square may have on a sheet. */
const roomFor = (live: Box, edges: readonly SharedEdge[]): Box => {
  const off = (side: SharedEdge['side']): number => {
    const edge = edges.find((e) => e.side === side);
    if (!edge) return OFF_FRAME;
    const level = side === 'top' || side === 'bottom';
    const depth = level ? edge.band.maxY - edge.band.minY : edge.band.maxX - edge.band.minX;
    return Math.max(OFF_FRAME, depth + OFF_BAND);
  };
  return {
    minX: live.minX + off('left'),
    minY: live.minY + off('bottom'),
    maxX: live.maxX - off('right') - CHECK_SIDE,
    maxY: live.maxY - off('top') - CHECK_SIDE,
  };
};

/** Lower left first: a reader's eye ends at the lower right, where a name is expected; a ruler lies well left. */
const cornersOf = (room: Box): Point[] => [
  { x: room.minX, y: room.minY },
  { x: room.maxX, y: room.minY },
  { x: room.maxX, y: room.maxY },
  { x: room.minX, y: room.maxY },
];

const squareAt = (at: Point, clearance: number): Box => ({
  minX: at.x - clearance,
  minY: at.y - clearance,
  maxX: at.x + CHECK_SIDE + clearance,
  maxY: at.y + CHECK_SIDE + clearance,
});

const inDrawing = (place: Motion, box: Box): Box => {
  const back = mover(inverse(place));
  return boxOfPoints([back({ x: box.minX, y: box.minY }), back({ x: box.maxX, y: box.maxY })]);
};
