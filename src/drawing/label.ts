/** Words on a drawing, set so that a person can read them. */

import { type Motion, move, type Point, subtract } from '../geometry/index.ts';
import type { TextItem } from './drawing.ts';
import type { WordRole } from './role.ts';

/** A line of words and the next, as a share of their size. */
const LEADING = 1.25;

/** mm, without a font at hand: wider than nearly all text of a plain sans serif comes out. */
export const roughTextWidth = (words: string, size: number): number => 0.7 * size * [...words].length;

/**
 * A label that stands upright for a reader whose seam is at the bottom, and never on its head: on its base line, or
 * with its middle at its place.
 */
export const label = (
  motion: Motion,
  at: Point,
  words: string,
  size: number,
  role: WordRole,
  bold: boolean,
  middled = false,
): TextItem => {
  const angle = uprightAngle(angleOf(motion, at));
  const upright: Motion = { flip: false, angle, ...move(motion, at) };
  // Letters stand on their base line: half their height is taken off on the side that is down.
  const base = move(upright, { x: 0, y: middled ? -0.35 * size : 0 });
  return { ...text(base, words, size, role), angle, ...(bold ? { bold } : {}) };
};

/** An angle from half a turn back to half a turn on, or the same line read from its other end. */
export const uprightAngle = (angle: number): number =>
  isOnItsHead(angle) ? angle - Math.sign(angle) * Math.PI : angle;

/** Several lines from `at` on downwards in the label’s own frame, in the order in which a reader takes them. */
export const labelLines = (
  motion: Motion,
  at: Point,
  lines: readonly string[],
  size: number,
  role: WordRole,
): readonly TextItem[] => {
  // A label that is turned to stand upright is read from its other end.
  const ordered = isOnItsHead(angleOf(motion, at)) ? lines.toReversed() : lines;
  return ordered.map((words, i) =>
    label(motion, { x: at.x, y: at.y - i * LEADING * size }, words, size, role, false),
  );
};

/** Which way the label's base line runs on the picture, radians. */
const angleOf = (motion: Motion, at: Point): number => {
  const along = subtract(move(motion, { x: at.x + 1, y: at.y }), move(motion, at));
  return Math.atan2(along.y, along.x);
};

const isOnItsHead = (angle: number): boolean => Math.abs(angle) > Math.PI / 2 + 1e-9;

/** Words centred on a point. */
export const text = (at: Point, words: string, size: number, role: WordRole): TextItem => ({
  kind: 'text',
  text: words,
  at,
  size,
  align: 'middle',
  angle: 0,
  role,
});
