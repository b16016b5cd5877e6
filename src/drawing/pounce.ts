/**
 * Lines as rows of holes, for a pattern that powder is rubbed or ink is dabbed through. Every corner and every end has
 * a hole, and what lies between two of them is divided evenly, so that holes are as far apart as asked or a little less.
 */

import {
  arc,
  closedPath,
  distance,
  type Path,
  type Point,
  pathLength,
  pointAlong,
  TURN,
} from '../geometry/index.ts';
import { cornersAlong } from './corners-along.ts';
import { LAYERS, type LayerId } from './drawing.ts';
import type { StyledDrawing, StyledItem, StyledPath } from './style.ts';

/** The width of a hole, mm: that of a stout needle or an awl's point. Common practice, no source. */
const POUNCE_HOLE = 1;

/** Holes nearer to one another than this (mm, middle to middle) leave paper that tears. */
export const LEAST_HOLES_APART = 2 * POUNCE_HOLE;

/** What is stitched comes first where two holes would run into one another, and fills give way to it. */
const FIRST: readonly LayerId[] = ['stitch', 'channel', 'fill'];

/** The lines of a drawing, joined before, as holes at most `every` mm apart along them; and nothing else. */
export const pounced = (drawing: StyledDrawing, every: number): StyledDrawing => {
  if (!(every >= LEAST_HOLES_APART)) throw new RangeError(`Holes ${every} mm apart`);
  const isFree = holesApart();
  const holes = new Map<LayerId, readonly StyledItem[]>(
    FIRST.map((id) => [id, drawing.layers[id].flatMap((item) => holesOf(item, every, isFree))]),
  );
  return {
    title: drawing.title,
    layers: Object.fromEntries(
      LAYERS.map((id) => [id, holes.get(id) ?? []]),
    ) as unknown as StyledDrawing['layers'],
  };
};

const holesOf = (item: StyledItem, every: number, isFree: (at: Point) => boolean): readonly StyledPath[] => {
  if (item.kind !== 'path') return [];
  const stroke = { width: RIM, color: item.stroke.color };
  return placesAlong(item.path, every)
    .map((at) => pointAlong(item.path, at)!)
    .filter(isFree)
    .map((at) => ({ ...item, stroke, path: closedPath([arc(at, POUNCE_HOLE / 2, 0, TURN)]) }));
};

/** The line round a hole, mm. */
const RIM = 0.2;

/** How far along a path (mm) its holes are. */
const placesAlong = (path: Path, every: number): readonly number[] => {
  const length = pathLength(path);
  const stops = [0, ...cornersAlong(path), length];
  const places = stops.slice(1).flatMap((to, i) => {
    const from = stops[i]!;
    const count = Math.max(1, Math.ceil((to - from) / every - NOISE));
    return Array.from({ length: count }, (_, k) => from + (k * (to - from)) / count);
  });
  // One that comes round ends where it begins, and that hole is left out for the first one.
  return [...places, length];
};

/** A share of a step that is rounding. */
const NOISE = 1e-9;

/** Tells of one place after another whether a hole there stays clear of all that are there already. */
const holesApart = (): ((at: Point) => boolean) => {
  const known = new Map<string, Point[]>();
  const cell = (at: Point, dx: number, dy: number): string =>
    `${Math.floor(at.x / POUNCE_HOLE) + dx} ${Math.floor(at.y / POUNCE_HOLE) + dy}`;
  return (at) => {
    for (let dx = -1; dx <= 1; dx++)
      for (let dy = -1; dy <= 1; dy++)
        if (known.get(cell(at, dx, dy))?.some((p) => distance(p, at) < POUNCE_HOLE)) return false;
    const key = cell(at, 0, 0);
    known.set(key, [...(known.get(key) ?? []), at]);
    return true;
  };
};
