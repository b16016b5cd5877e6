/** The fills of a plan, which take longer than all the rest and come after it. */

import { ProblemError } from '../../document/index.ts';
import { drawPlan, type Filled, fillDesign } from '../../drawing/index.ts';
import { FILLS } from '../../fill/index.ts';
import { STAY } from '../../geometry/index.ts';
import { cardFor, cardWithoutFills } from '../../jobs/card.ts';
import type { CardSection } from '../../output/card/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Design } from '../../swag/index.ts';
import { takenIn } from '../plan/state.ts';
import { chosenFit, keepLast, uncoloured } from './desk.ts';
import { type LoneSwag, loneSwag, seatNamed } from './lone-swag.ts';
import type { FillFacts, FillsAnswer, Input } from './messages.ts';
import { dataOf, placeOf } from './picture.ts';
import { troubleOf } from './trouble.ts';

export const fillList = (): readonly FillFacts[] =>
  FILLS.map(({ name, about, suits, takes, usualAngle }) => ({
    name,
    about,
    suits,
    takes,
    usualAngle: usualAngle && Math.round((usualAngle * 180) / Math.PI),
  }));

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

/**
 * A plan's fills in shares that have nothing to do with one another: while the figures of one move, the others are not
 * made again. Corners are filled as the swags are where nothing is said of them, so the two are one.
 */
const SHARES: readonly (readonly (keyof Plan['fills'])[])[] = [
  ['swag', 'corner'],
  ['channels'],
  ['background'],
  ['between'],
];

interface Share {
  readonly input: Input;
  readonly side: string;
  /** With the fills of this share alone. */
  readonly plan: Plan;
}

const shareOf = (input: Input, side: string, keys: (typeof SHARES)[number]): Share => {
  const { plan } = chosenFit(input);
  const own = Object.fromEntries(keys.map((key) => [key, plan.fills[key]]));
  return { input, side, plan: { ...uncoloured(plan), fills: { ...NO_FILLS, ...own } } };
};

const NO_FILLS: Plan['fills'] = {
  swag: undefined,
  background: undefined,
  corner: undefined,
  between: undefined,
  channels: [],
};

type OnQuilt = Omit<FillsAnswer, 'swag'>;

const onQuilt = SHARES.map(() =>
  keepLast(
    ({ input, plan }: Share): OnQuilt => quiltFills(chosenFit(input).design, plan),
    ({ input, plan }) => JSON.stringify([plan, input.own, takenIn(input)]),
  ),
);

const onOneSwag = SHARES.map(() =>
  keepLast(
    ({ input, side, plan }: Share): string => {
      const { ranked } = chosenFit(input);
      const here = seatNamed(ranked, side);
      return here ? loneFill(loneSwag(ranked, side, here, plan), plan) : '';
    },
    ({ input, side, plan }) => JSON.stringify([plan, input.own, takenIn(input), side]),
  ),
);

/** What cannot be on the quilt is shown neither there nor on one swag, and nothing else of it: so it is on paper. */
export const fills = (input: Input, side: string): FillsAnswer => {
  const shares = SHARES.map((keys) => shareOf(input, side, keys));
  const made = shares.map((share, i) => onQuilt[i]!(share));
  const problems = made.flatMap((m) => m.problems);
  if (problems.length > 0) return { quilt: [], swag: '', messages: [], problems };
  return {
    quilt: made.flatMap(({ quilt }) => quilt),
    swag: shares.map((share, i) => onOneSwag[i]!(share)).join(' '),
    messages: [...new Set(made.flatMap(({ messages }) => messages))],
    problems,
  };
};

/** A repeat's fill is worked out once, and goes to every place of the repeat; the background is one for all. */
const quiltFills = (design: Design, plan: Plan): OnQuilt => {
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
  return {
    quilt: quilt.filter((copies) => copies.d !== ''),
    messages: filling.messages,
    problems: filling.problems.map(troubleOf),
  };
};

const loneFill = ({ design, scope }: LoneSwag, plan: Plan): string => {
  const { drawing } = drawPlan(design, plan, scope, { ghosts: false });
  return drawing.layers.fill.map((item) => (item.kind === 'path' ? dataOf([item.path]) : '')).join(' ');
};
