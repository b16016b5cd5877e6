/** The places that a feather leaves bare and that are large enough for another feather. */

import {
  type Box,
  boxesTouch,
  boxOfPoints,
  growBox,
  insetRegion,
  joinBoxes,
  openPath,
  type Path,
  type Piece,
  pathLength,
  pieceAt,
  pieceBox,
  type Region,
  type RegionProbe,
  regionArea,
  regionBeside,
  regionParts,
} from '../geometry/index.ts';
import { type BarePlace, barePlaces } from './bare-places.ts';

/** Other feathers keep this share of the spacing from the first, in places of this width and length (spacings). */
const REST_GAP = 0.35;
const REST_WIDTH = 1.4;
const REST_LENGTH = 14;
/** Where no disc of this radius (spacings) is bare there are no such places. */
const REST_BARE = 1.3;
/** Lanes beside the plumes are no places: what comes back after shrinking by so many spacings is. */
const LANE = 0.7;

/**
 * It is looked only where bare discs lie one over another and come to the area of such a place. They overlap, so that
 * their areas add up to more than what they cover.
 */
export const restOf = (
  region: Region,
  probe: RegionProbe,
  lines: readonly Path[],
  spacing: number,
): readonly Region[] => {
  const places = barePlaces(region, probe, lines, (REST_GAP + LANE) * spacing);
  if (!places.some((p) => p.radius >= REST_BARE * spacing)) return [];
  const windows = windowsOf(places, 2 * spacing, REST_WIDTH * REST_LENGTH * spacing * spacing);
  if (windows.length === 0) return [];
  const pieces = sewnOnce(lines).map((path) => ({ path, box: pieceBox(path.pieces[0]!) }));
  return windows.flatMap((window) => {
    const around = growBox(window, spacing);
    const near = pieces.filter(({ box }) => boxesTouch(box, around)).map(({ path }) => path);
    const beside = insetRegion(regionBeside(region, near, REST_GAP * spacing, window), LANE * spacing);
    return regionParts(insetRegion(beside, -0.999 * LANE * spacing)).filter((part) => isRoomy(part, spacing));
  });
};

/** Boxes with `room` mm round every heap of bare discs that comes to an area (mm²); those that touch are one. */
const windowsOf = (places: readonly BarePlace[], room: number, area: number): readonly Box[] => {
  let heaps = places.map(({ at, radius }) => ({
    box: growBox(boxOfPoints([at]), radius),
    area: Math.PI * radius * radius,
  }));
  const merged = (apart: number): typeof heaps => {
    const found: typeof heaps = [];
    for (const heap of heaps) {
      let now = heap;
      // What it joins may bring it to others, which were looked at before.
      for (let k = 0; k < found.length; k++) {
        if (!boxesTouch(growBox(found[k]!.box, apart), now.box)) continue;
        now = { box: joinBoxes(found[k]!.box, now.box), area: found[k]!.area + now.area };
        found.splice(k, 1);
        k = -1;
      }
      found.push(now);
    }
    return found;
  };
  heaps = merged(0).filter((heap) => heap.area > area);
  return merged(2 * room).map(({ box }) => growBox(box, room));
};

/** Every piece of some lines by itself, and once where the needle goes over it again. */
const sewnOnce = (lines: readonly Path[]): readonly Path[] => {
  const once = new Map<string, Piece>();
  for (const piece of lines.flatMap((line) => line.pieces)) {
    const at = pieceAt(piece, 0.5);
    const reach = Math.abs(piece.from.x - piece.to.x) + Math.abs(piece.from.y - piece.to.y);
    once.set(`${at.x.toFixed(4)} ${at.y.toFixed(4)} ${reach.toFixed(4)}`, piece);
  }
  return [...once.values()].map((piece) => openPath([piece]));
};

/** Whether there is room for a feather of its own: by a region's mean width, and by its length. */
const isRoomy = (region: Region, spacing: number): boolean => {
  const area = regionArea(region);
  const width = (2 * area) / region.loops.reduce((sum, l) => sum + pathLength(l), 0);
  return width > REST_WIDTH * spacing && area / width > REST_LENGTH * spacing;
};
