/** Where each channel begins and stops: not where the swag does. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type ChannelStart, channelStarts, cornerSwag, type Design, rowsOf } from '../../swag/index.ts';
import type { CardBlock } from './block.ts';
import { lineName } from './mark-words.ts';
import { bandWords } from './setting-words.ts';

/** None where two kinds take turns: there each join is another. */
export const channelEndBlocks = (design: Design, plan: Plan): readonly CardBlock[] => {
  if (design.fit.pattern.kind === 'in turn') return [];
  return rowsOf(design).flatMap((row) => {
    const starts = new Map<string, Named[]>();
    for (const { name, channels } of channelStarts(row, plan.channels))
      for (const { side, number, start } of channels) {
        // Its neighbour is another swag, and not quite the same at each corner.
        if (name === 'corner' && start.kind === 'between') continue;
        const channel = `${side} ${number}`;
        starts.set(channel, [...(starts.get(channel) ?? []), { name, start }]);
      }
    return [...starts].map(
      ([channel, named]): CardBlock => ({
        kind: 'point',
        text:
          `${channel} begins and stops ${placesWords(named, row, plan.marks.style)}` +
          (cornerSwag(row) && named.some(({ start }) => start.kind === 'between')
            ? "; beside a corner where it meets the corner's."
            : '.'),
      }),
    );
  });
};

/** Where it begins on a side, or at the corners. */
interface Named {
  readonly name: string;
  readonly start: ChannelStart;
}

/** Sides whose channel begins on one line are told together, with the measure of each. */
const placesWords = (all: readonly Named[], design: Design, style: LengthStyle): string => {
  const lines = groupsBy(all, ({ start }) => lineWords(start, design, style).join());
  const words = lines.map((named) => {
    const [before, after] = lineWords(named[0]!.start, design, style);
    const measureText = ({ start }: Named): string => formatLength(Math.abs(measureOf(start)), style);
    const measures = groupsBy(named, measureText);
    const told = measures.map((those) => {
      const text = measureText(those[0]!);
      return measures.length === 1 ? text : `${text} (${namesOf(those)})`;
    });
    const place = after === undefined ? before : `${before}, ${told.join(' or ')} ${after}`;
    return lines.length === 1 ? place : `${namesOf(named)}: ${place}`;
  });
  return words.join('; ');
};

/** Those of one key together, in the order in which each key first comes. */
const groupsBy = (all: readonly Named[], keyOf: (one: Named) => string): readonly Named[][] => {
  const groups = new Map<string, Named[]>();
  for (const one of all) {
    const key = keyOf(one);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
};

const namesOf = (named: readonly Named[]): string => named.map(({ name }) => name).join(', ');

/** mm from the line that is named, or along it. */
const measureOf = (start: ChannelStart): number =>
  start.kind === 'between' ? start.up : start.kind === 'start-line' ? start.along : 0;

/** What is said before the measure and after it; nothing is measured of a line that comes to no mark. */
const lineWords = (
  start: ChannelStart,
  design: Design,
  style: LengthStyle,
): readonly [before: string, after?: string] => {
  switch (start.kind) {
    case 'between': {
      const touching = design.sides.every(({ fit }) => fit.seat.gap === 0);
      const where = touching ? 'in line with the mark where two swags touch' : 'midway between two swags';
      return [where, bandWords(design, style).up(start.up)];
    }
    case 'start-line': {
      const [own, other] = start.along >= 0 ? ['past', 'before'] : ['before', 'past'];
      return [`on the ${lineName(design.field)}`, `${own} the start mark and as far ${other} the stop mark`];
    }
    case 'inside':
      return ['within the swag and comes to no mark: follow the true-size sheets'];
    default:
      return start satisfies never;
  }
};
