/** What lies along a working edge, as a screen shows it. */

import { flatten, openPath, type Path, type Point, subtract, unit } from '../../geometry/index.ts';
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

/** A line beside the edge, so far inside it, in the edge's own frame. */
export const insideBy = ({ pieces }: Path, at: number): readonly Point[] =>
  pieces.flatMap((piece) => {
    const points = flatten(openPath([piece]), SCREEN);
    return points.map((p, i) => {
      const way = unit(subtract(points[i + 1] ?? p, points[i + 1] ? p : points[i - 1]!));
      return { x: p.x + at * way.y, y: p.y - at * way.x };
    });
  });
