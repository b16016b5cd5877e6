/** The cloth of a design as areas to be coloured. What lies round it, or is not told apart from it, is the picture's ground. */

import {
  boxHeight,
  boxWidth,
  closedPath,
  line,
  type Motion,
  movePath,
  type Path,
  pathBox,
  pathEnd,
  pathStart,
} from '../geometry/index.ts';
import { type Design, type PlacedSide, rowsShown } from '../swag/index.ts';
import { onRow, type Scope } from './scope.ts';
import { seamItems } from './seams.ts';

export interface ClothArea {
  readonly role: 'fabric' | 'middle';
  /** Closed, mm. */
  readonly loop: Path;
}

/** Of the whole of a design; a part of it lies on its fabric alone, and has none. */
export const clothOf = (design: Design, { halves, stretches }: Scope): readonly ClothArea[] => {
  const isWhole =
    stretches.length === design.sides.length &&
    stretches.every(({ side, from, to }) => from <= 0 && to >= side.run.drawn);
  if (!isWhole) return [];
  const { row } = rowsShown(design, halves).at(-1)!;
  const { field } = row;
  const lineOf = new Map(
    stretches.map((stretch) => [
      stretch.side.run.name,
      seamItems(row, onRow(stretch, row)).flatMap((item) => (item.kind === 'path' ? [item] : [])),
    ]),
  );
  /** The closed line of one kind round the design, from side to side. */
  const around = (index: number): Path =>
    closedThrough(inTurn(row.sides).map((s) => lineOf.get(s)![index]!.path));
  if (field.corners === 'none') {
    const motif = [...lineOf.values()].flat().find(({ role }) => role === 'motif');
    return motif ? [{ role: 'middle', loop: motif.path }] : [];
  }
  const [inner, outer] = field.from === 'inner' ? [0, 1] : [1, 0];
  return [
    // Round a block there is no telling how far its ground reaches.
    ...(field.around.kind === 'quilt' ? [{ role: 'fabric' as const, loop: around(outer) }] : []),
    { role: 'middle', loop: around(inner) },
  ];
};

/** The names of sides, each after the one that ends where it begins. */
const inTurn = (sides: readonly PlacedSide[]): readonly string[] => {
  const names = [sides[0]!.run.name];
  while (names.length < sides.length)
    names.push(sides.find(({ run }) => run.name === names.at(-1))!.run.next!);
  return names;
};

const closedThrough = (sides: readonly Path[]): Path => {
  const corners = sides.flatMap((side) => [pathStart(side)!, pathEnd(side)!]);
  return closedPath(corners.map((from, i) => line(from, corners[(i + 1) % corners.length]!)));
};

export const movedCloth = (areas: readonly ClothArea[], motion: Motion): readonly ClothArea[] =>
  areas.map(({ role, loop }) => ({ role, loop: movePath(loop, motion) }));

/** What lies in another comes after it: parts of a quilt lie in one another, and none across another's edge. */
export const fromTheBack = (parts: readonly (readonly ClothArea[])[]): readonly ClothArea[] =>
  parts.toSorted((a, b) => clothSize(b) - clothSize(a)).flat();

/** Of a part, whose first area is its largest (mm²); 0 where it has none. */
export const clothSize = ([first]: readonly ClothArea[]): number => {
  if (!first) return 0;
  const box = pathBox(first.loop);
  return boxWidth(box) * boxHeight(box);
};
