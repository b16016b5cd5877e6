/** The fills of a plan, which take longer than all the rest and come after it. */

import { ProblemError } from '../../document/index.ts';
import { drawPlan, type Filled, fillDesign } from '../../drawing/index.ts';
import { FILLS } from '../../fill/index.ts';
import { STAY } from '../../geometry/index.ts';
import { cardFor, cardWithoutFills } from '../../jobs/card.ts';
import type { CardSection } from '../../output/card/index.ts';
import type { Plan } from '../../plan/index.ts';
import { chosenFit } from './desk.ts';
import { type LoneSwag, loneSwag, seatNamed } from './lone-swag.ts';
import type { FillFacts, FillsAnswer, Input } from './messages.ts';
import { dataOf, placeOf } from './picture.ts';
import { troubleOf } from './trouble.ts';

export const fillList = (): readonly FillFacts[] =>
  FILLS.map(({ name, about, suits }) => ({ name, about, suits }));

/** The marking card's words, the thread for the fills among them; where a fill cannot be, which is said with the fills, without. */
export const filledWords = (input: Input): readonly CardSection[] => {
  const chosen = chosenFit(input);
  try {
    return cardFor(chosen).sections;
  } catch (error) {
    if (error instanceof ProblemError) return cardWithoutFills(chosen).sections;
    throw error;
  }
};

/** A repeat's fill is worked out once, and goes to every place of the repeat; the background is one for all. */
export const fills = (input: Input, side: string): FillsAnswer => {
  const { design, ranked, plan } = chosenFit(input);
  const filling = fillDesign(design, design.halves, plan);
  const places = new Map<readonly Filled[], (readonly number[])[]>();
  for (const [half, filled] of filling.byHalf) {
    if (half.half !== 'first') continue;
    const known = places.get(filled) ?? [];
    known.push(placeOf(half.motion));
    places.set(filled, known);
  }
  const quilt = [
    ...filling.open.map(({ paths }) => ({ d: dataOf(paths), places: [placeOf(STAY)] })),
    ...[...places].map(([filled, to]) => ({
      d: filled.map((f) => dataOf(f.paths)).join(' '),
      places: to,
    })),
  ];
  // What cannot be on the quilt is not shown on one swag either.
  const here = filling.problems.length > 0 ? undefined : seatNamed(ranked, side);
  return {
    quilt: quilt.filter((copies) => copies.d !== ''),
    swag: here ? loneFill(loneSwag(ranked, side, here, plan), plan) : '',
    messages: filling.messages,
    problems: filling.problems.map(troubleOf),
  };
};

const loneFill = ({ design, scope }: LoneSwag, plan: Plan): string => {
  const { drawing } = drawPlan(design, plan, scope, { ghosts: false });
  return drawing.layers.fill.map((item) => (item.kind === 'path' ? dataOf([item.path]) : '')).join(' ');
};
