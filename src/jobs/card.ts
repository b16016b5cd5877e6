/** The marking cards for the sewing room: their content, and set as text. */

import {
  type Card,
  cardOf,
  cardWith,
  fillBlocks,
  lengthOf,
  quiltThreadCard,
  type StitchedPart,
  writeTextCard,
} from '../output/card/index.ts';
import { CAUTIONS } from '../output/mockup/index.ts';
import { type Design, stitchedLength } from '../swag/index.ts';
import type { Made } from './made.ts';
import { type Part, refuseUnknownFills, withPlaces } from './part.ts';

/** Characters of a line of the card as text. */
const LINE = 90;

/** A card, and the design that it is of. */
export interface CardFor {
  readonly card: Card;
  readonly design?: Design;
}

/** A card for each part, and of several one more for all together. Throws a ProblemError for fills that cannot be. */
export const cardsFor = (title: string, parts: readonly Part[]): readonly CardFor[] => {
  for (const part of parts) refuseUnknownFills(part);
  const cards = parts.map((part) => {
    const { plan, design } = part;
    const length = withPlaces(part, () => lengthOf(design, plan));
    return {
      card: cardWith(design, plan, CAUTIONS, { length, sewn: fillBlocks(plan, design) }),
      design,
      stitched: { plan, length },
    };
  });
  const [first, ...others] = cards.map(({ stitched }): StitchedPart => stitched);
  if (!first || others.length === 0) return cards;
  return [...cards, { card: quiltThreadCard(title, [first, ...others]) }];
};

/** The card of one design, with all that is stitched. */
export const cardFor = ({ design, plan }: Pick<Part, 'design' | 'plan'>): Card =>
  cardOf(design, plan, CAUTIONS);

/** Its content where the plan asks for no fills, without loading what makes them. */
export const cardWithoutFills = ({ design, plan }: Pick<Part, 'design' | 'plan'>): Card =>
  cardWith(design, plan, CAUTIONS, { length: stitchedLength(design, plan.channels), sewn: [] });

/** Throws a ProblemError for fills that cannot be. */
export const textCard = (title: string, parts: readonly Part[]): Made<string> => ({
  bytes: cardsFor(title, parts)
    .map(({ card }) => writeTextCard(card, LINE))
    .join('\n\n'),
  words: cardWords(parts.length),
});

/** What a file of cards holds. */
export const cardWords = (parts: number): string =>
  parts === 1 ? 'the marking card' : `${parts} marking cards, and the thread of the whole quilt`;
