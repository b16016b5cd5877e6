/** A working edge as a screen shows it. */

import type { Point } from '../../geometry/index.ts';
import type { Template } from '../../template/index.ts';
import type { TracedBreak } from './messages.ts';

/** mm that what is drawn on the screen may leave the outline. */
export const SCREEN = 0.05;

/** `shown` tells where a place of the template is on the screen. */
export const breaksShown = (
  { breaks }: Pick<Template, 'breaks'>,
  shown: (p: Point) => Point,
): readonly TracedBreak[] =>
  breaks.map(({ point, at, kind, name }) => ({ at: shown(point), along: at, kind, name }));
