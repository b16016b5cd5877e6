/** Where the lines of channels begin, seen from the start mark of their half swag; they stop as far from the stop mark. */

import { distance, type Path, type Point, pathStart } from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import { cellLines } from './cell-lines.ts';
import { type Channel, rowChannels } from './channels.ts';
import type { Cell, Design, Placed } from './design.ts';
import { cornerSwag } from './fit.ts';
import { circlingOf } from './seat.ts';

export type ChannelStart =
  /** On the line midway to the next swag, so far (mm) up from the line that swags start on. */
  | { readonly kind: 'between'; readonly up: number }
  /** On the line that swags start on, so far (mm) past the start mark. */
  | { readonly kind: 'start-line'; readonly along: number }
  /** It comes to neither. */
  | { readonly kind: 'inside' };

interface StartedChannel extends Pick<Channel, 'side' | 'number'> {
  readonly start: ChannelStart;
}

interface StartsOf {
  /** A side's name, or `corner`. */
  readonly name: string;
  readonly channels: readonly StartedChannel[];
}

/** For each side a swag that has another beside it, where there is one; and the corner's. Channels of which nothing is left have no place. */
export const channelStarts = (design: Design, channels: Channels): readonly StartsOf[] => {
  const corner = cornerSwag(design)?.cell;
  const first = (name: string): Placed | undefined => {
    const own = design.halves.filter(
      (h) =>
        h.half === 'first' && (name === 'corner' ? h.cell === corner : h.side === name && h.cell !== corner),
    );
    return own[1] ?? own[0];
  };
  const names = [...design.sides.map(({ run }) => run.name), ...(corner ? ['corner'] : [])];
  return names.flatMap((name) => {
    const half = first(name);
    if (!half) return [];
    const found = rowChannels(design, channels, [half]).get(half) ?? [];
    return [
      {
        name,
        channels: found.flatMap(({ side, number, paths: [path] }) =>
          path ? [{ side, number, start: startOf(path, half.cell, design) }] : [],
        ),
      },
    ];
  });
};

const startOf = (path: Path, cell: Cell, design: Design): ChannelStart => {
  const at = pathStart(path)!;
  const up = levelOf(at, cell);
  if (distance(at, cellLines(cell, design).join(up)) < ON_LINE) return { kind: 'between', up };
  return Math.abs(up) < ON_LINE ? { kind: 'start-line', along: at.x } : { kind: 'inside' };
};

/** mm up from the line, or the circle, that swags start on. */
const levelOf = (point: Point, cell: Cell): number => {
  const circle = circlingOf(cell.centre, cell.crown);
  return circle ? circle.sense * (circle.startRadius - distance(circle.centre, point)) : point.y;
};

/** A line cut at another ends on it so nearly, mm. */
const ON_LINE = 1e-6;
