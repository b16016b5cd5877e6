/** A design with everything that its plan asks for: channels, fills, and what a person should know about them. */

import type { Problem } from '../document/index.ts';
import { formatLength } from '../length/index.ts';
import type { Plan } from '../plan/index.ts';
import { type Channel, type Design, type Placed, placedChannels } from '../swag/index.ts';
import { type DrawOptions, drawDesign } from './draw-design.ts';
import type { Drawing } from './drawing.ts';
import { type Filled, type Filling, fillDesign } from './filling.ts';
import { openShown } from './open-fills.ts';
import type { Scope } from './scope.ts';
import { tearMessages, tearsInMiddle } from './tear.ts';

export interface DrawnPlan {
  readonly drawing: Drawing;
  /** A sentence each: channels of which nothing is left, regions left empty. */
  readonly messages: readonly string[];
  /** Fills that the plan asks for and that do not exist, with their keys in it. */
  readonly problems: readonly Problem[];
  readonly channels: ReadonlyMap<Placed, readonly Channel[]>;
  readonly fills: ReadonlyMap<Placed, readonly Filled[]>;
}

export interface DrawPlanOptions extends Pick<DrawOptions, 'labelSize' | 'ghosts'> {
  /** False leaves the fills out, and saves the time that they take. */
  readonly withFills?: boolean;
  /** For a picture that is looked at as a whole: what stands open only in it is said in its middle, too. */
  readonly asWhole?: boolean;
}

export const drawPlan = (
  design: Design,
  plan: Plan,
  scope: Scope,
  options: DrawPlanOptions = {},
): DrawnPlan => {
  const channels = placedChannels(design, plan.channels, scope.halves);
  const filling =
    options.withFills === false
      ? { byHalf: new Map<Placed, readonly Filled[]>(), open: [], messages: [], problems: [] }
      : fillDesign(design, scope.halves, plan);
  const shown = openShown(filling.open, design, scope.halves);
  const { withFills: _, asWhole, ...drawing } = options;
  const tooMany = tooManyLines({ byHalf: filling.byHalf, open: shown });
  const fills = tooMany ? new Map<Placed, readonly Filled[]>() : filling.byHalf;
  const open = tooMany ? [] : shown;
  const drawn = drawDesign(design, scope, { ...drawing, title: plan.title, channels, fills, open });
  const { style } = plan.marks;
  const { layers } = drawn;
  const notes = asWhole ? [...layers.notes, ...tearsInMiddle(design, scope, style)] : layers.notes;
  return {
    drawing: { ...drawn, layers: { ...layers, notes } },
    messages: [...endedChannels(channels, plan), ...tearMessages(scope, style), ...filling.messages],
    problems: tooMany ? [...filling.problems, tooMany] : filling.problems,
    channels,
    fills,
  };
};

/**
 * Lines and arcs of all fills of a picture: as many make a file of up to 100 MB and take 1 GB. The quilting of the
 * largest quilt's border, 1/8 in apart, comes to 400,000.
 */
export const MOST_FILL_LINES = 500_000;

/** Repeats share one fill in memory, but each is drawn for itself; both halves of a repeat name the whole of it. */
export const fillLinesOf = ({ byHalf, open }: Pick<Filling, 'byHalf' | 'open'>): number => {
  let count = 0;
  for (const { paths } of open) for (const path of paths) count += path.pieces.length;
  for (const filled of byHalf.values())
    for (const { paths } of filled) for (const path of paths) count += path.pieces.length / 2;
  return count;
};

const tooManyLines = (filling: Pick<Filling, 'byHalf' | 'open'>): Problem | undefined => {
  const count = fillLinesOf(filling);
  if (count <= MOST_FILL_LINES) return undefined;
  return {
    code: 'too-many-lines',
    key: 'fills',
    message: 'the fills are too fine for so large a picture',
    found: `${Math.round(count)} lines and arcs`,
    expected: `at most ${MOST_FILL_LINES}`,
    hint: 'take a wider spacing, or show less of the border',
  };
};

/** Channels of which nothing is left in any cell, or not in all of them, and why. */
export const endedChannels = (
  channels: ReadonlyMap<Placed, readonly Channel[]>,
  { marks, channels: wanted }: Plan,
): readonly string[] => {
  const messages: string[] = [];
  for (const side of ['outward', 'inward'] as const) {
    wanted[side].forEach((_, i) => {
      const ofAll = [...channels].flatMap(([half, list]) => {
        const channel = list.find((c) => c.side === side && c.number === i + 1);
        return channel ? [{ cell: half.cell, channel }] : [];
      });
      const cells = new Set(ofAll.map(({ cell }) => cell));
      const left = new Set(ofAll.filter((c) => c.channel.paths.length > 0).map((c) => c.cell));
      const ended = [...cells].filter((cell) => !left.has(cell));
      const first = ofAll[0]?.channel;
      if (ended.length === 0 || !first) return;
      const where = left.size > 0 ? ` on ${ended.map((cell) => cell.name).join(', ')}` : '';
      const away = formatLength(first.distance, marks.style);
      const why =
        side === 'inward'
          ? `no place inside the swag is ${away} from the stitching`
          : `${away} from the stitching is beyond the margin everywhere`;
      messages.push(`${side} channel ${i + 1}: nothing is left of it${where}; ${why}`);
    });
  }
  return messages;
};
