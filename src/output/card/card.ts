/**
 * The marking card as plain content, before it is set as text or as pages: so that both say the same. The words
 * themselves are made in the files beside this one.
 */

import { fillDesign, fillLengths } from '../../drawing/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type Design, type SideMarks, type StitchedLength, stitchedLength } from '../../swag/index.ts';
import type { CardBlock } from './block.ts';
import { channelBlocks } from './channel-words.ts';
import { tapesOf } from './mark-words.ts';
import { bandWords, guideBlocks, pauseBlocks, setBlocks } from './setting-words.ts';
import { summaryLines } from './summary-words.ts';
import { threadBlocks } from './thread-words.ts';

export interface CardSection {
  /** A stable word: what the section is about. */
  readonly id: 'set' | 'guides' | 'marks' | 'pauses' | 'channels' | 'thread' | 'cautions';
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

/** All that is stitched, fills included. Without fills in the plan none are made. */
export const lengthOf = (design: Design, plan: Plan): StitchedLength =>
  stitchedLength(design, plan.channels, fillLengths(fillDesign(design, design.halves, plan)));

/** The card of a design that was made from `plan`. */
export const cardOf = (design: Design, plan: Plan, cautions: readonly string[]): Card =>
  cardWith(design, plan, cautions, lengthOf(design, plan));

/** The same where all that is stitched is known already, so that no fill has to be made for it. */
export const cardWith = (
  design: Design,
  plan: Plan,
  cautions: readonly string[],
  length: StitchedLength,
): Card => {
  const { style } = plan.marks;
  const marks = tapesOf(design, style);
  const sections: readonly CardSection[] = [
    { id: 'set', heading: 'Set the template', blocks: setBlocks(design, plan) },
    {
      id: 'guides',
      heading: 'Guide lines: where the template stands',
      blocks: guideBlocks(design, plan),
    },
    {
      id: 'marks',
      heading: 'Marks',
      blocks: bandWords(design, style).marks,
    },
    { id: 'pauses', heading: 'Where to pause', blocks: pauseBlocks(design, plan) },
    { id: 'channels', heading: 'Channels', blocks: channelBlocks(design, plan) },
    {
      id: 'thread',
      heading: 'Stitching and thread',
      blocks: threadBlocks(length, plan),
    },
    {
      id: 'cautions',
      heading: 'Take care',
      blocks: cautions.map((text) => ({ kind: 'point', text })),
    },
  ];
  return {
    title: plan.title,
    summary: summaryLines(design, plan),
    sections: sections.filter((s) => s.blocks.length > 0),
    marks,
  };
};
