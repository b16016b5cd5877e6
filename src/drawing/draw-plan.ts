/** A design with everything that its plan asks for: channels, fills, and what a person should know about them. */

import type { Problem } from '../document/index.ts';
import type { Plan } from '../plan/index.ts';
import { type Cell, type Channel, channelsOf, type Design } from '../swag/index.ts';
import { type DrawOptions, drawDesign } from './draw-design.ts';
import type { Drawing } from './drawing.ts';
import { type Filled, fillDesign } from './filling.ts';
import type { Scope } from './scope.ts';

export interface DrawnPlan {
  readonly drawing: Drawing;
  /** A sentence each: channels of which nothing is left, regions left empty. */
  readonly messages: readonly string[];
  /** Fills that the plan asks for and that do not exist. */
  readonly problems: readonly Problem[];
  readonly channels: ReadonlyMap<Cell, readonly Channel[]>;
  readonly fills: ReadonlyMap<Cell, readonly Filled[]>;
}

export interface DrawPlanOptions extends Pick<DrawOptions, 'labelSize' | 'ghosts'> {
  /** False leaves the fills out, and saves the time that they take. */
  readonly withFills?: boolean;
}

export const drawPlan = (
  design: Design,
  plan: Plan,
  scope: Scope,
  options: DrawPlanOptions = {},
): DrawnPlan => {
  const cells = design.cells.filter((cell) => scope.halves.some((h) => h.cell === cell));
  const channels = new Map(cells.map((cell) => [cell, channelsOf(cell, design, plan.channels)]));
  const filling =
    options.withFills === false
      ? { byCell: new Map<Cell, readonly Filled[]>(), messages: [], problems: [] }
      : fillDesign(design, cells, plan);
  const { withFills: _, ...drawing } = options;
  return {
    drawing: drawDesign(design, scope, { ...drawing, title: plan.title, channels, fills: filling.byCell }),
    messages: [...endedChannels(channels), ...filling.messages],
    problems: filling.problems,
    channels,
    fills: filling.byCell,
  };
};

/** Channels of which nothing is left in any cell, or not in all of them. */
const endedChannels = (channels: ReadonlyMap<Cell, readonly Channel[]>): readonly string[] => {
  const ended = new Map<string, string[]>();
  for (const [cell, list] of channels) {
    for (const channel of list) {
      if (channel.paths.length > 0) continue;
      const name = `${channel.side} channel ${channel.number}`;
      ended.set(name, [...(ended.get(name) ?? []), cell.name]);
    }
  }
  return [...ended].map(([name, cells]) =>
    cells.length === channels.size
      ? `${name}: nothing is left of it, the channels before it fill the swag`
      : `${name}: nothing is left of it on ${cells.join(', ')}`,
  );
};
