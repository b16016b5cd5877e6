/** What a fit answers to each thing that was asked: its figures, how far off they are, and which wish they would meet. */

import { type LengthStyle, roundLength, stepOf } from '../length/index.ts';
import { type CountWish, isAbout, type Plan, type Wish } from '../plan/index.ts';
import { type Asked, boundsOf, missOf, onlyRanks } from './asked.ts';
import type { Fit } from './fit.ts';
import { figuresOfFit, isOf, type Measuring } from './wishes.ts';

export interface Answer extends Asked {
  /** The least and the most of all sides, and of depth and use of the corners too: mm, shares, or how many. */
  readonly least: number;
  readonly most: number;
  /** How far the farthest of them is from what is asked, in the same; of odd and even ones 1. */
  readonly off: number;
  /** Whether it is within the range; where it was asked about, so near that an eye sees no difference. */
  readonly meets: boolean;
}

export const answersOf = (fit: Fit, to: Measuring): readonly Answer[] => {
  const all = figuresOfFit(fit, to);
  return to.wishes.asked.map((asked): Answer => {
    const figures = all
      .filter((measured) => isOf(asked, measured))
      .flatMap((of) => of.figures[asked.key] ?? []);
    return {
      ...asked,
      least: Math.min(...figures),
      most: Math.max(...figures),
      off: Math.max(...figures.map((figure) => offBy(asked, figure))),
      meets: figures.every((figure) => missOf(asked, figure) === 0),
    };
  });
};

const offBy = (asked: Asked, figure: number): number => {
  const { wish } = asked;
  if (typeof wish === 'string') return missOf(asked, figure) > 0 ? 1 : 0;
  if (typeof wish === 'number') return Math.abs(figure - wish);
  if (isAbout(wish)) return Math.abs(figure - wish.about);
  const [least, most] = boundsOf(asked);
  return missOf(asked, figure) > 0 ? Math.max(least - figure, figure - most) : 0;
};

/** Whether an answer keeps a fit from being what was asked for. */
export const isUnmet = (answer: Answer): boolean => !answer.meets && !onlyRanks(answer);

/** Those worth telling of: how many, and what gap, is given and kept stands among the choices already. */
export const toldAnswers = (answers: readonly Answer[]): readonly Answer[] =>
  answers.filter(
    (answer) =>
      isUnmet(answer) ||
      typeof answer.wish !== 'number' ||
      (answer.key !== 'repeats' && answer.key !== 'gap'),
  );

/** The wish nearest to what was asked that its own figures meet, or are about; lengths in steps of the plan's marks. */
export const wishMetBy = ({ key, wish, least, most }: Answer, style: LengthStyle): CountWish => {
  const [step, scale] = key === 'repeats' ? [1, 1] : key === 'use' ? [1, 100] : [stepOf(style), 1];
  const down = (n: number): number => (Math.floor((n * scale) / step + TIGHT) * step) / scale;
  const up = (n: number): number => (Math.ceil((n * scale) / step - TIGHT) * step) / scale;
  const nearest = (n: number): number => (Math.round((n * scale) / step) * step) / scale;
  if (typeof wish === 'string') {
    const both = [...new Set([least, most].map((n) => (n % 2 === 1 ? 'odd' : 'even')))];
    return both.length === 1 ? (both[0] as CountWish) : { least, most };
  }
  if (isAbout(wish)) return { about: Math.max(step / scale, nearest((least + most) / 2)) };
  if (typeof wish !== 'number')
    return {
      ...wish,
      ...(wish.least !== undefined && least < wish.least && { least: down(least) }),
      ...(wish.most !== undefined && most > wish.most && { most: up(most) }),
    };
  const alike = (n: number): number => (key === 'use' ? Math.round(n * 100) / 100 : roundLength(n, style));
  if (key === 'repeats') return least === most ? least : { least, most };
  if (key !== 'gap' && alike(least) === alike(most)) return alike(least);
  const [low, high] = [down(least), up(most)];
  return low === high ? low : { least: low, most: high };
};

/** Rounding of what lies on a step, in steps. */
const TIGHT = 1e-6;

/** The plan that asks for this instead. */
export const asking = (
  plan: Plan,
  { key, on, of }: Pick<Asked, 'key' | 'on' | 'of'>,
  wish: CountWish | undefined,
): Plan => {
  const { swag } = plan;
  const { alternate } = swag;
  if (of !== undefined && alternate) {
    const [first, second] = alternate.map((kind, k) =>
      k === of ? { ...kind, [key]: wish as Wish | undefined } : kind,
    );
    return { ...plan, swag: { ...swag, alternate: [first!, second!] } };
  }
  if (key !== 'repeats') return { ...plan, swag: { ...swag, [key]: wish as Wish | undefined } };
  const repeats =
    on === undefined
      ? wish === undefined
        ? undefined
        : [wish]
      : (swag.repeats ?? []).map((was, i) => (i === on ? wish : was));
  return { ...plan, swag: { ...swag, repeats } };
};
