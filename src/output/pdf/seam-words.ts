/**
 * Which line of a sheet is laid on which seam, said beside that line on every sheet that shows it: a sheet is laid on
 * the quilt by itself, and its lines are the same to the eye.
 */

import {
  type Box,
  boxesTouch,
  inverse,
  type Motion,
  move,
  movePiece,
  type Piece,
  type Point,
  pieceBox,
} from '../../geometry/index.ts';
import { type InkedItem, itemTouches, type Sheet, type SheetPlan } from '../../pagination/index.ts';
import { INK, TYPE } from './look.ts';
import type { PageContent } from './page-content.ts';

/** mm between the line and the letters, and clear of what the frame of a sheet has along its edges. */
const BESIDE = 0.8;
const CLEAR = 6;
/** Places that are tried along a line are so far apart, mm. */
const STEP = 6;
const SIZE = TYPE.small;

/** A place for the words: where they begin, whether they go up the sheet, and the box that they take. */
interface Place {
  readonly at: Point;
  readonly upward: boolean;
  readonly box: Box;
}

export const drawSeamWords = (
  content: PageContent,
  plan: SheetPlan,
  sheet: Sheet,
  items: readonly InkedItem[],
): void => {
  const { live } = plan;
  const side = plan.check.side;
  const check = {
    minX: sheet.check.x,
    maxX: sheet.check.x + side,
    minY: sheet.check.y,
    maxY: sheet.check.y + side,
  };
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
  for (const [called, pieces] of byName) {
    const text = `this line on the ${called}`;
    const width = content.width(text, SIZE);
    const others = items.filter(({ item }) => calledOf(item) !== called);
    const crossed = ({ box }: Place): number =>
      others.filter((item) => itemTouches(item, boxBack(box, back))).length;
    const places = pieces
      .flatMap((piece) => placesAlong(piece, width, room))
      .filter(({ box }) => !taken.some((other) => boxesTouch(other, box)));
    const found = leastOf(places, crossed);
    if (!found) continue;
    taken.push(found.box);
    const { at, upward } = found;
    content.text({ text, at, size: SIZE, color: INK.text, angle: upward ? Math.PI / 2 : 0, halo: 0.35 });
  }
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
  const { center, radius } = piece;
  // Letters in a straight row stand off from an arc in their middle, where they lie within it.
  const off = radius - Math.sqrt(Math.max(0, radius ** 2 - (width / 2) ** 2));
  const along = (at: number, [least, most]: readonly [number, number]): readonly number[] =>
    at - width / 2 >= least && at + width / 2 <= most ? [at - width / 2] : [];
  const touches = (at: number, end: number): boolean => Math.abs(at - end) < FLAT;
  const rows = along(center.x, [room.minX, room.maxX]);
  const columns = along(center.y, [room.minY, room.maxY]);
  return [
    ...(touches(center.y + radius, box.maxY) ? level(box.maxY, rows, width, { before: off }) : []),
    ...(touches(center.y - radius, box.minY) ? level(box.minY, rows, width, { past: off }) : []),
    ...(touches(center.x + radius, box.maxX) ? upwards(box.maxX, columns, width, { before: off }) : []),
    ...(touches(center.x - radius, box.minX) ? upwards(box.minX, columns, width, { past: off }) : []),
  ];
};

/** Farther from the line, mm, on the side where a coordinate is less, and on the other. */
interface Off {
  readonly before?: number;
  readonly past?: number;
}

const sidesOf = (line: number, { before = 0, past = 0 }: Off): readonly number[] => [
  line + BESIDE + past,
  line - BESIDE - SIZE - before,
];

const level = (line: number, starts: readonly number[], width: number, off: Off = {}): readonly Place[] =>
  starts.flatMap((x) =>
    sidesOf(line, off).map(
      (y): Place => ({
        at: { x, y: y + DESCENT * SIZE },
        upward: false,
        box: { minX: x, maxX: x + width, minY: y, maxY: y + SIZE },
      }),
    ),
  );

const upwards = (line: number, starts: readonly number[], width: number, off: Off = {}): readonly Place[] =>
  starts.flatMap((y) =>
    sidesOf(line, off).map(
      (x): Place => ({
        at: { x: x + SIZE - DESCENT * SIZE, y },
        upward: true,
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
