/**
 * The marking card as plain content, before it is set as text or as pages: so that both say the same. The words
 * themselves are made in the files beside this one.
 */

import { capital, ProblemError } from '../../document/index.ts';
import { fillDesign, fillLengths } from '../../drawing/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  cornerSwag,
  type Design,
  kindDesigns,
  ownCorner,
  rowsOf,
  type SideMarks,
  type StitchedLength,
  stitchedLength,
} from '../../swag/index.ts';
import type { CardBlock } from './block.ts';
import { channelEndBlocks } from './channel-ends.ts';
import { channelBlocks } from './channel-words.ts';
import { fillBlocks } from './fill-words.ts';
import { tapesOf } from './mark-words.ts';
import { bandWords, pauseBlocks, setBlocks } from './setting-words.ts';
import { standingBlocks } from './standing-words.ts';
import { summaryLines } from './summary-words.ts';
import { threadBlocks } from './thread-words.ts';
import { prepareBlocks, sewBlocks } from './work-words.ts';

export interface CardSection {
  /** A stable word: what the section is about. */
  readonly id:
    | 'prepare'
    | 'set'
    | 'stands'
    | 'marks'
    | 'sew'
    | 'pauses'
    | 'channels'
    | 'fills'
    | 'thread'
    | 'cautions';
  /** Of a design with several rows, the one that it is about; undefined where it is about all. */
  readonly row: number | undefined;
  /** Of a design with two kinds of swag, the one that it is about. */
  readonly kind?: number;
  /** Where the corners have swags of their own, whether it is about these. */
  readonly on?: 'sides' | 'corners';
  readonly heading: string;
  readonly blocks: readonly CardBlock[];
}

export interface Card {
  readonly title: string;
  /** What is made, in a few lines. */
  readonly summary: readonly string[];
  readonly sections: readonly CardSection[];
  readonly marks: readonly SideMarks[];
}

/**
 * All that is stitched, fills included. Without fills in the plan none are made. Throws a ProblemError for a fill that
 * cannot be: without it the thread would not be what is sewn.
 */
export const lengthOf = (design: Design, plan: Plan): StitchedLength => {
  const filling = fillDesign(design, design.halves, plan);
  if (filling.problems.length > 0) throw new ProblemError(filling.problems);
  return stitchedLength(design, plan.channels, fillLengths(filling, design));
};

/** The card of a design that was made from `plan`. */
export const cardOf = (design: Design, plan: Plan, cautions: readonly string[]): Card =>
  cardWith(design, plan, cautions, { length: lengthOf(design, plan), sewn: fillBlocks(plan, design) });

/** What is told of fills: without any, nothing that makes them is loaded. */
interface Quilted {
  readonly length: StitchedLength;
  /** How each is sewn. */
  readonly sewn: CardSection['blocks'];
}

/** The same where what is told of fills is known already, so that none has to be made for it. */
export const cardWith = (
  design: Design,
  plan: Plan,
  cautions: readonly string[],
  { length, sewn }: Quilted,
): Card => {
  const { style } = plan.marks;
  const marks = tapesOf(design, style);
  const rows = rowsOf(design);
  const ofOne = (
    one: Design,
    id: CardSection['id'],
    heading: string,
    blocks: CardSection['blocks'],
  ): CardSection => {
    const under = (what: string): string => `${what}: ${heading.charAt(0).toLowerCase()}${heading.slice(1)}`;
    if (design.fit.pattern.kind === 'in turn') {
      const { kind } = one.cells[0]!;
      return { id, row: undefined, kind, heading: under(`Kind ${kind}`), blocks };
    }
    if (ownCorner(design.fit)) {
      const on = cornerSwag(one) ? 'corners' : 'sides';
      return { id, row: undefined, on, heading: under(capital(on)), blocks };
    }
    return rows.length === 1
      ? { id, row: undefined, heading, blocks }
      : { id, row: one.row, heading: under(`Row ${one.row}`), blocks };
  };
  const each = rows.flatMap(kindDesigns);
  const ofAll = (id: CardSection['id'], heading: string, blocks: CardSection['blocks']): CardSection => ({
    id,
    row: undefined,
    heading,
    blocks,
  });
  const channels = [...channelBlocks(design, plan), ...channelEndBlocks(design, plan)];
  const then = [...(channels.length > 0 ? ['channels'] : []), ...(sewn.length > 0 ? ['fills'] : [])];
  const sections: readonly CardSection[] = [
    ofAll('prepare', 'Before you sew', prepareBlocks()),
    ...each.flatMap((one) => [
      ofOne(one, 'set', 'Set the template', setBlocks(one, plan)),
      ofOne(one, 'stands', 'Where the template stands', standingBlocks(one, plan)),
    ]),
    ofAll('marks', 'Marks', bandWords(design, style).marks),
    ofAll('sew', 'Sew', sewBlocks(design, then)),
    ...each.map((one) => ofOne(one, 'pauses', 'Where to pause', pauseBlocks(one, plan))),
    ofAll('channels', 'Channels', channels),
    ofAll('fills', 'How the fills are sewn', sewn),
    ofAll('thread', 'Stitching and thread', threadBlocks(length, plan)),
    ofAll(
      'cautions',
      'Take care',
      cautions.map((text) => ({ kind: 'point', text })),
    ),
  ];
  return {
    title: plan.title,
    summary: summaryLines(design, plan),
    sections: sections.filter((s) => s.blocks.length > 0),
    marks,
  };
};
