/**
 * Which line of a sheet is laid on which seam, said beside that line on every sheet that shows it: a sheet is laid on
 * the quilt by itself, and its lines are the same to the eye.
 */

import {
  type Arc,
  type Box,
  boxesTouch,
  inverse,
  type Motion,
  move,
  movePiece,
  type Piece,
  type Point,
  pieceBox,
} from '../geometry/index.ts';
import { type Ink, type InkedItem, itemTouches } from './ink.ts';
import type { Sheet, SheetWords } from './sheet-plan.ts';

/** mm between the line and the letters, and clear of what the frame of a sheet has along its edges. */
const BESIDE = 0.8;
const CLEAR = 6;
/** Places that are tried along a line are so far apart, mm. */
const STEP = 6;
/** Of the letters, mm; and how wide one is of these few words at most, as a share of it (a plain sans serif: 0.50). */
const SIZE = 2.5;
const LETTER = 0.52;

/** A place for the words: where they begin, which way they go (radians), and the box that they take. */
interface Place {
  readonly at: Point;
  readonly angle: number;
  readonly box: Box;
}

/** Where a sheet's live area and its check square are, mm on paper, and what it shows. */
interface Shown {
  readonly live: Box;
  readonly check: Box;
  readonly sheet: Pick<Sheet, 'place' | 'edges' | 'window'>;
  readonly ink: Ink;
}

/** One for each seam that the sheet shows, and that has room for words beside it. */
export const seamWords = ({ live, check, sheet, ink }: Shown): readonly SheetWords[] => {
  const items = ink.items.filter((item) => itemTouches(item, sheet.window));
  const room = {
    minX: live.minX + CLEAR,
    maxX: live.maxX - CLEAR,
    minY: live.minY + CLEAR,
    maxY: live.maxY - CLEAR,
  };
  const back = inverse(sheet.place);
  const taken: Box[] = [check, ...sheet.edges.map(({ outer }) => outer)];
  const byName = new Map<string, Piece[]>();
  for (const { item } of items) {
    const called = calledOf(item);
    if (item.kind !== 'path' || called === undefined) continue;
    const pieces = item.path.pieces.map((piece) => movePiece(piece, sheet.place));
    byName.set(called, [...(byName.get(called) ?? []), ...pieces]);
  }
  return [...byName].flatMap(([called, pieces]): readonly SheetWords[] => {
    const text = `this line on the ${called}`;
    const width = LETTER * SIZE * text.length;
    const others = items.filter(({ item }) => calledOf(item) !== called);
    const crossed = ({ box }: Place): number =>
      others.filter((item) => itemTouches(item, boxBack(box, back))).length;
    const places = pieces
      .flatMap((piece) => placesAlong(piece, width, room))
      .filter(({ box }) => isWithin(box, room) && !taken.some((other) => boxesTouch(other, box)));
    const found = leastOf(places, crossed);
    if (!found) return [];
    taken.push(found.box);
    const { at, angle } = found;
    return [{ text, at, angle, size: SIZE }];
  });
};

/** Of a line that is laid on a seam, what a person calls it. */
const calledOf = (item: InkedItem['item']): string | undefined => {
  const { called } = (item.kind === 'text' ? undefined : item.facts) ?? {};
  return called;
};

/** The first that nothing crosses, or else the one that the fewest things do. */
const leastOf = (places: readonly Place[], crossed: (place: Place) => number): Place | undefined => {
  let best: Place | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const count = crossed(place);
    if (count >= least) continue;
    [best, least] = [place, count];
    if (count === 0) break;
  }
  return best;
};

/** Beside a straight line that runs along an edge of the sheet, on both sides of it; beside an arc where it runs so. */
const placesAlong = (piece: Piece, width: number, room: Box): readonly Place[] => {
  const box = pieceBox(piece);
  if (piece.kind === 'line') {
    if (box.maxX - box.minX < FLAT)
      return upwards(box.minX, startsBetween(box.minY, box.maxY, width, [room.minY, room.maxY]), width);
    if (box.maxY - box.minY < FLAT)
      return level(box.minY, startsBetween(box.minX, box.maxX, width, [room.minX, room.maxX]), width);
    return [];
  }
  return besideArc(piece, width);
};

/** Along an arc the words stand across its radius, at places a little apart, outside it or within. */
const besideArc = ({ center, radius, start, sweep }: Arc, width: number): readonly Place[] => {
  // Letters in a straight row stand off from an arc in their middle, where they lie within it.
  const off = radius - Math.sqrt(Math.max(0, radius ** 2 - (width / 2) ** 2));
  const count = Math.max(1, Math.floor((Math.abs(sweep) * radius) / (3 * STEP)));
  return Array.from({ length: count }, (_, i) => start + ((i + 0.5) * sweep) / count).flatMap((angle) =>
    [radius + BESIDE, radius - BESIDE - SIZE - off].map((inner): Place => {
      // Read from below: on the lower half of a circle letters stand with their feet outward.
      const isLower = Math.sin(angle) < -1e-9;
      const turned = isLower ? angle + Math.PI / 2 : angle - Math.PI / 2;
      const foot = isLower ? inner + SIZE - DESCENT * SIZE : inner + DESCENT * SIZE;
      const on = (r: number, along: number): Point => ({
        x: center.x + r * Math.cos(angle) + along * Math.cos(turned),
        y: center.y + r * Math.sin(angle) + along * Math.sin(turned),
      });
      const corners = [inner, inner + SIZE].flatMap((r) => [on(r, -width / 2), on(r, width / 2)]);
      const [xs, ys] = [corners.map((p) => p.x), corners.map((p) => p.y)];
      return {
        at: on(foot, -width / 2),
        angle: turned,
        box: {
          minX: Math.min(...xs),
          maxX: Math.max(...xs),
          minY: Math.min(...ys),
          maxY: Math.max(...ys),
        },
      };
    }),
  );
};

const isWithin = (box: Box, room: Box): boolean =>
  box.minX >= room.minX && box.maxX <= room.maxX && box.minY >= room.minY && box.maxY <= room.maxY;

const sidesOf = (line: number): readonly number[] => [line + BESIDE, line - BESIDE - SIZE];

const level = (line: number, starts: readonly number[], width: number): readonly Place[] =>
  starts.flatMap((x) =>
    sidesOf(line).map(
      (y): Place => ({
        at: { x, y: y + DESCENT * SIZE },
        angle: 0,
        box: { minX: x, maxX: x + width, minY: y, maxY: y + SIZE },
      }),
    ),
  );

const upwards = (line: number, starts: readonly number[], width: number): readonly Place[] =>
  starts.flatMap((y) =>
    sidesOf(line).map(
      (x): Place => ({
        at: { x: x + SIZE - DESCENT * SIZE, y },
        angle: Math.PI / 2,
        box: { minX: x, maxX: x + SIZE, minY: y, maxY: y + width },
      }),
    ),
  );

/** How far letters reach under the base line, as a share of their size. */
const DESCENT = 0.24;
/** A line leans at most so much (mm) where it runs along an edge of the sheet. */
const FLAT = 0.01;

const startsBetween = (
  from: number,
  to: number,
  width: number,
  [least, most]: readonly [number, number],
): readonly number[] => {
  const first = Math.max(from, least);
  const last = Math.min(to, most) - width;
  if (!(last >= first)) return [];
  return Array.from({ length: Math.floor((last - first) / STEP) + 1 }, (_, i) => first + i * STEP);
};

/** On the drawing, which lies on a sheet straight or turned by a quarter. */
const boxBack = ({ minX, maxX, minY, maxY }: Box, back: Motion): Box => {
  const [a, b] = [move(back, { x: minX, y: minY }), move(back, { x: maxX, y: maxY })];
  return {
    minX: Math.min(a.x, b.x),
    maxX: Math.max(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxY: Math.max(a.y, b.y),
  };
};
