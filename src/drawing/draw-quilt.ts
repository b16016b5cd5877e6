/** Several designs where they lie on one quilt, to scale: an inner border in an outer one, blocks and frames in places. */

import {
  type Box,
  compose,
  EMPTY_BOX,
  joinBoxes,
  type Motion,
  move,
  movePath,
  pathBox,
  shift,
  TURN,
  turn,
} from '../geometry/index.ts';
import type { Part } from '../plan/index.ts';
import { type Drawing, type Item, LAYERS, type LayerId } from './drawing.ts';
import { uprightAngle } from './label.ts';

/** A part's whole design, wherever its own picture has its origin. */
export interface QuiltPart {
  readonly part: Part;
  readonly drawing: Drawing;
}

/** What brings a part's own picture to each of its places on the quilt. */
export const quiltPlaces = ({ part, drawing }: QuiltPart): readonly Motion[] => {
  const middle = middleOf(drawing);
  const turned = compose(turn(part.turn), shift(-middle.x, -middle.y));
  return part.places.map((at) => compose(shift(at.x, at.y), turned));
};

/** One picture of all parts, the quilt's middle at the origin. Each item says its part, and of copies which one. */
export const drawQuilt = (title: string, parts: readonly QuiltPart[]): Drawing => {
  const copies = parts.flatMap(({ part, drawing }) =>
    quiltPlaces({ part, drawing }).map((motion, i) => ({
      drawing,
      motion,
      facts: { part: part.name, ...(part.places.length > 1 && { copy: `${i + 1}` }) },
    })),
  );
  const layer = (id: LayerId): readonly Item[] =>
    copies.flatMap(({ drawing, motion, facts }) =>
      drawing.layers[id].map((item) => {
        const moved = moveItem(item, motion);
        return moved.kind === 'text' ? moved : { ...moved, facts: { ...facts, ...moved.facts } };
      }),
    );
  return {
    title,
    layers: Object.fromEntries(LAYERS.map((id) => [id, layer(id)])) as unknown as Drawing['layers'],
  };
};

/** The middle of a part is that of the cloth it takes: of its seams, its block, or its circles. */
const middleOf = ({ layers }: Drawing): { x: number; y: number } => {
  const box = layers.border.reduce<Box>(
    (b, item) => (item.kind === 'path' ? joinBoxes(b, pathBox(item.path)) : b),
    EMPTY_BOX,
  );
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
};

const moveItem = (item: Item, motion: Motion): Item => {
  switch (item.kind) {
    case 'path':
      return { ...item, path: movePath(item.path, motion) };
    case 'area':
      return { ...item, loops: item.loops.map((loop) => movePath(loop, motion)) };
    case 'text':
      return {
        ...item,
        at: move(motion, item.at),
        angle: uprightAngle(halfTurns(item.angle + motion.angle)),
      };
    default:
      return item satisfies never;
  }
};

/** The same angle, from half a turn back to half a turn on. */
const halfTurns = (angle: number): number => angle - TURN * Math.round(angle / TURN);
