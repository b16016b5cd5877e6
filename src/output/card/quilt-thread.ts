/** The thread of all parts of a quilt together, with what each part takes. */

import { plural } from '../../document/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type StitchedLength, threadFor } from '../../swag/index.ts';
import type { Card } from './card.ts';
import { addingUp, longLength, threadText } from './thread-words.ts';

export interface StitchedPart {
  readonly plan: Plan;
  /** Of one copy. */
  readonly length: StitchedLength;
}

/** A card without marks: `title` is the quilt's. All parts are in the same units. */
export const quiltThreadCard = (title: string, parts: readonly [StitchedPart, ...StitchedPart[]]): Card => {
  const { units } = parts[0].plan;
  const stitched = parts.map(({ plan, length }) => {
    const copies = plan.part?.places.length ?? 1;
    return { name: plan.part?.name ?? plan.title, copies, all: copies * allOf(length) };
  });
  const total = stitched.reduce((sum, { all }) => sum + all, 0);
  const shares = addingUp(
    stitched.map(({ all }) => all),
    units,
  );
  return {
    title,
    summary: [`All ${plural(parts.length, 'part')} of the quilt together.`],
    sections: [
      {
        id: 'thread',
        row: undefined,
        heading: 'Stitching and thread of the whole quilt',
        blocks: [
          {
            kind: 'text',
            text: `${longLength(units)(total)} of stitching in all. Thread, an estimate: ${threadWords(total, units)}; it is rounded for each part by itself.`,
          },
          ...stitched.map(({ name, copies, all }, i) => ({
            kind: 'point' as const,
            text: `${name}${copies > 1 ? `, ${copies} times` : ''}: ${longLength(units)(shares[i]!)} of stitching; ${threadWords(all, units)}`,
          })),
        ],
      },
    ],
    marks: [],
  };
};

const allOf = ({ swags, channels, fills }: StitchedLength): number => swags + channels + fills;

const threadWords = (mm: number, units: Plan['units']): string => {
  const { needle, bobbin } = threadFor(mm);
  return `${threadText(needle, units)} on top and ${threadText(bobbin, units)} in the bobbin`;
};
