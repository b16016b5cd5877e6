/** What is chosen and how it looks: the answers that the page needs at once. */

import { ProblemError } from '../../document/index.ts';
import { endedChannels } from '../../drawing/index.ts';
import { cardWithoutFills } from '../../jobs/card.ts';
import { excerpt } from '../../jobs/excerpt.ts';
import { takeFit } from '../../jobs/take-fit.ts';
import { formatLength } from '../../length/index.ts';
import type { CardSection } from '../../output/card/index.ts';
import { captionOf } from '../../output/contact-sheet/index.ts';
import { describeDesign, usualShow } from '../../output/mockup/index.ts';
import { answerWords, rangeWords } from '../../output/text/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  choicesOf,
  cornerSquares,
  cornerSwag,
  depthsOf,
  kindsIn,
  sidesOf,
  spansOf,
} from '../../swag/index.ts';
import { answersWords } from '../words/words.ts';
import {
  type ChosenFit,
  chosenFit,
  fitOfPart,
  kindsFound,
  nearestFit,
  type ReadQuilt,
  readQuilt,
  workedOut,
} from './desk.ts';
import type { Chosen, FitCard, Input, LookAnswer, PlanFacts, Trouble } from './messages.ts';
import { pictureOf } from './picture.ts';
import { wholePicture } from './quilt.ts';
import { troubleOf } from './trouble.ts';

/** `isMoving` is for a slider's moves: the nearest of what is known to fit, without a search of its own. */
export const look = (input: Input, isMoving = false): LookAnswer => {
  let quilt: ReadQuilt;
  try {
    quilt = readQuilt(input);
  } catch (error) {
    return { problems: troublesOf(error), facts: undefined, found: 0, chosen: undefined };
  }
  const facts = factsOf(quilt.open, quilt.title);
  try {
    const fit = isMoving ? nearestFit(input) : chosenFit(input);
    const notes = quilt.notes.map((note) => troubleOf(note).text);
    return { problems: [], facts, found: fit.results.length, chosen: chosenOf(fit, notes) };
  } catch (error) {
    return { problems: troublesOf(error), facts, found: 0, chosen: undefined };
  }
};

/** What a user can be told; anything else is a fault and goes on. */
const troublesOf = (error: unknown): readonly Trouble[] => {
  if (error instanceof ProblemError) return error.problems.map(troubleOf);
  throw error;
};

const factsOf = (plan: Plan, title: string): PlanFacts => {
  const widths = (list: readonly number[]): readonly string[] =>
    list.map((mm) => formatLength(mm, plan.marks.style));
  const { swag, fills } = plan;
  return {
    title,
    units: plan.units,
    paper: plan.paper,
    templates: plan.templates,
    outward: widths(plan.channels.outward),
    inward: widths(plan.channels.inward),
    outwardAt: widths(addedUp(plan.channels.outward)),
    inwardAt: widths(addedUp(plan.channels.inward)),
    hasFills: Boolean(fills.swag ?? fills.background ?? fills.corner) || fills.channels.length > 0,
    decides: Object.values(swag).some((choice) => choice !== undefined),
  };
};

const addedUp = (list: readonly number[]): readonly number[] => {
  let sum = 0;
  return list.map((width) => {
    sum += width;
    return sum;
  });
};

const chosenOf = (fit: ChosenFit, notes: readonly string[]): Chosen => {
  const { design, plan, ranked, key, index } = fit;
  const { style } = plan.marks;
  const length = (mm: number): string => formatLength(mm, style);
  const choices = choicesOf(ranked);
  const { shape } = ranked.fit.way;
  const corner = cornerSwag(design);
  const { picture, cloth, laid, channels, open } = wholePicture(design, plan);
  const total = ranked.fit.sides.reduce((sum, s) => sum + s.repeats, 0);
  return {
    key,
    number: index + 1,
    template: shape.stitching.template.title,
    summary: [
      corner
        ? answersWords.swagsAndCorners({
            count: total,
            corner: corner.kind === 'across' ? 'across' : 'round',
          })
        : answersWords.swags({ count: total }),
      ...kindsIn(sidesOf(ranked.fit)).flatMap((kind) => [
        answersWords.wide({ length: `${rangeWords(spansOf(kind), style)} ${style.unit}` }),
        answersWords.deep({ length: `${rangeWords(depthsOf(kind), style)} ${style.unit}` }),
      ]),
    ],
    lines: [...describeDesign(design, plan.marks.style, plan.channels), ...answerWords(ranked, style)],
    sides: design.fit.sides.map(({ run, repeats }) => ({
      name: run.name,
      repeats,
    })),
    corner: corner && length(corner.fit.seat.pose.depth),
    hasSquares: cornerSquares(design) !== undefined,
    name: design.field.name,
    round: design.field.around.kind,
    usualShow: usualShow(design),
    from: shape.from.label,
    to: shape.to.label,
    ends: { from: choices.from, to: choices.to },
    setting: choices.setting,
    side: choices.side,
    direction: choices.direction,
    quilt: picture,
    cloth,
    laid,
    messages: [...notes, ...endedChannels(channels, plan), ...open],
  };
};

/** Some of the fits, what looks alike as one, as small drawings with their captions. */
export const fits = (input: Input, from: number, count: number): readonly FitCard[] => {
  const { plan, results, keys } = workedOut(input);
  const kinds = kindsFound(input);
  const keyOf = new Map(results.map((ranked, i) => [ranked, keys[i]!]));
  return kinds.slice(from, from + count).map(({ first, like }, i) => {
    const { drawing } = excerpt(first, plan);
    return {
      key: keyOf.get(first)!,
      like: like.map((ranked) => keyOf.get(ranked)!),
      number: from + i + 1,
      of: kinds.length,
      caption: captionOf(first, plan.marks.style, like.length),
      picture: pictureOf(drawing, ['marks', 'notes', 'template']),
    };
  });
};

/** The marking card's words, for a plan without fills: those are for the thorough worker, and so is their length. */
export const words = (input: Input): readonly CardSection[] => cardWithoutFills(chosenFit(input)).sections;

/**
 * The plan with everything decided, in the visitor's own words where they say the same. Throws a ProblemError where
 * nothing fits the open part; another part that nothing fits stays as it is.
 */
export const decided = (input: Input): string => {
  const { plans, open, title } = readQuilt(input);
  return plans.reduce((text, plan) => {
    const fit = plan === open ? chosenFit(input) : fitOrNone(plan, title, input);
    return fit ? takeFit(text, fit, fit.ranked) : text;
  }, input.plan);
};

const fitOrNone = (plan: Plan, title: string, input: Input): ChosenFit | undefined => {
  try {
    return fitOfPart(plan, title, input);
  } catch (error) {
    troublesOf(error);
    return undefined;
  }
};
