/** Words on a drawing, set so that a person can read them. */

import { type Motion, move, type Point, subtract } from '../geometry/index.ts';
import type { TextItem } from './drawing.ts';

/** A label that stands upright for a reader whose seam is at the bottom, and never on its head. */
export const label = (
  motion: Motion,
  at: Point,
  words: string,
  size: number,
  color: string,
  bold: boolean,
): TextItem => {
  const place = move(motion, at);
  const along = subtract(move(motion, { x: at.x + 1, y: at.y }), place);
  let angle = Math.atan2(along.y, along.x);
  if (Math.abs(angle) > Math.PI / 2 + 1e-9) angle -= Math.sign(angle) * Math.PI;
  return { ...text(place, words, size, color), angle, ...(bold ? { bold } : {}) };
};

/** Words centred on a point. */
export const text = (at: Point, words: string, size: number, color: string): TextItem => ({
  kind: 'text',
  text: words,
  at,
  size,
  align: 'middle',
  angle: 0,
  color,
});
