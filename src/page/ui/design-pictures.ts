/** Pictures of her designs, worked out one after the other when they are to be seen: kept, they would fill the store. */

import { signal } from '@preact/signals';
import { startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type { Picture } from '../engine/messages.ts';
import { type Design, designText } from '../plan/designs.ts';

/** By what the design is; undefined for one that does not work out. */
const drawn = signal<ReadonlyMap<string, Picture | undefined>>(new Map());

/** A worker of its own: what she works on waits for no picture. */
const drawer = startClient(() => hire('quick'));

/** Its name has no part in what it looks like. */
const keyOf = (design: Design): string => designText({ ...design, id: '', title: '', at: 0, words: [] });

export const pictureOf = (design: Design): Picture | undefined => drawn.value.get(keyOf(design));

let wanted: readonly Design[] = [];
let isDrawing = false;

/** Draws those that are not drawn yet. */
export const drawAll = (designs: readonly Design[]): void => {
  wanted = designs;
  if (!isDrawing) void draw();
};

const draw = async (): Promise<void> => {
  isDrawing = true;
  for (;;) {
    const next = wanted.find((design) => !drawn.peek().has(keyOf(design)));
    if (!next) break;
    const answered = await drawer.ask({ kind: 'look', input: next.state });
    const picture = answered.kind === 'answer' ? answered.answer.chosen?.quilt : undefined;
    drawn.value = new Map([...drawn.peek(), [keyOf(next), picture]]);
  }
  isDrawing = false;
};
