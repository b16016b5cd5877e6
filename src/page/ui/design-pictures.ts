/**
 * Pictures of her designs, worked out one after the other when they are to be seen: kept, they would fill the store. All
 * are drawn without their fills first.
 */

import { signal } from '@preact/signals';
import { startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type { Cloth, FillsAnswer, Picture } from '../engine/messages.ts';
import { type Design, designText } from '../plan/designs.ts';

export interface DrawnDesign {
  readonly picture: Picture;
  readonly cloth: Cloth;
  readonly hasFills: boolean;
  /** Undefined until they are made. */
  readonly fills: FillsAnswer['quilt'] | undefined;
}

/** By what the design is; undefined for one that does not work out. */
const drawn = signal<ReadonlyMap<string, DrawnDesign | undefined>>(new Map());

/** Workers of its own: what she works on waits for no picture. */
const drawer = startClient(() => hire('quick'));
const filler = startClient(() => hire('thorough'));

/** Its name has no part in what it looks like. */
const keyOf = (design: Design): string => designText({ ...design, id: '', title: '', at: 0, words: [] });

export const drawnOf = (design: Design): DrawnDesign | undefined => drawn.value.get(keyOf(design));

const keep = (design: Design, picture: DrawnDesign | undefined): void => {
  drawn.value = new Map([...drawn.peek(), [keyOf(design), picture]]);
};

let wanted: readonly Design[] = [];
let isSeen = false;
let isDrawing = false;

/** Draws those that are not drawn yet; and, once they are in sight, what they are filled with, in their order. */
export const drawAll = (designs: readonly Design[], areSeen: boolean): void => {
  wanted = designs;
  isSeen = areSeen;
  if (!isDrawing) void draw();
};

const isUnfilled = (design: Design): boolean => {
  const known = drawn.peek().get(keyOf(design));
  return known?.hasFills === true && known.fills === undefined;
};

const draw = async (): Promise<void> => {
  isDrawing = true;
  for (;;) {
    const next = wanted.find((design) => !drawn.peek().has(keyOf(design)));
    if (next) {
      await drawBare(next);
      continue;
    }
    const bare = isSeen ? wanted.find(isUnfilled) : undefined;
    if (!bare) break;
    await drawFills(bare);
  }
  isDrawing = false;
};

const drawBare = async (design: Design): Promise<void> => {
  const answered = await drawer.ask({ kind: 'look', input: design.state });
  const { chosen, facts } = answered.kind === 'answer' ? answered.answer : {};
  const picture = chosen && {
    picture: chosen.quilt,
    cloth: chosen.cloth,
    hasFills: facts?.hasFills ?? false,
    fills: undefined,
  };
  keep(design, picture);
};

/** One whose fills cannot be made stays without them. */
const drawFills = async (design: Design): Promise<void> => {
  const answered = await filler.ask({ kind: 'fills', input: design.state, side: '' });
  const fills = answered.kind === 'answer' ? answered.answer.quilt : [];
  keep(design, { ...drawn.peek().get(keyOf(design))!, fills });
};
