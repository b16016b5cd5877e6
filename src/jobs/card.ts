/** The marking card for the sewing room: its content, and set as text. */

import { type Card, cardOf, cardWith, writeTextCard } from '../output/card/index.ts';
import { CAUTIONS } from '../output/mockup/index.ts';
import { stitchedLength } from '../swag/index.ts';
import type { Made } from './made.ts';
import { type Part, refuseUnknownFills } from './part.ts';

/** Characters of a line of the card as text. */
const LINE = 90;

export const cardFor = ({ design, plan }: Pick<Part, 'design' | 'plan'>): Card =>
  cardOf(design, plan, CAUTIONS);

/** Its content where the plan asks for no fills, without loading what makes them. */
export const cardWithoutFills = ({ design, plan }: Pick<Part, 'design' | 'plan'>): Card =>
  cardWith(design, plan, CAUTIONS, stitchedLength(design, plan.channels));

/** Throws a ProblemError for fills that are not known. */
export const textCard = (part: Part): Made<string> => {
  refuseUnknownFills(part);
  return {
    bytes: writeTextCard(cardFor(part), LINE),
    words: 'the marking card',
    notices: [],
    summary: [],
    corrections: [],
  };
};
