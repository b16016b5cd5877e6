/** What `fit` found, for programs: mm and degrees. */

import { plainSentence } from '../output/text/index.ts';
import { type Plan, SIDES } from '../plan/index.ts';
import {
  type Answer,
  askedWords,
  changeFor,
  changeOf,
  choicesOf,
  describeMisfit,
  designOf,
  givenGap,
  isUnmet,
  type Kind,
  type Miss,
  threadStarts,
  toldAnswers,
} from '../swag/index.ts';
import { designAsData, outwardReach } from './report-design.ts';

/** Of a kind the first, with how many look like it. */
export const fitAsData = ({ first: ranked, like }: Kind, number: number, plan: Plan): object => {
  const { field, fit, score, answers } = ranked;
  const told = toldAnswers(answers);
  const { template } = fit.way.shape.stitching;
  const { corners, laid, flat, ...choices } = choicesOf(ranked);
  return {
    number,
    template: template.name,
    title: template.title,
    corners: corners ?? null,
    ...choices,
    ...(laid === undefined ? {} : { laid }),
    ...(flat === undefined ? {} : { flat }),
    gap: givenGap(plan),
    ...(told.length > 0 && { wishes: told.map((answer) => answerAsData(answer, plan)) }),
    ...designAsData(designOf(field, fit), outwardReach(plan.channels)),
    like: like.length,
    words: plainSentence(ranked, plan.marks.style),
    starts: threadStarts({ field, fit }),
    score: { spread: score.spread, use: score.use, gap: score.gap, cost: score.cost },
  };
};

/** How far it is from one thing that the plan asks for; where it does not meet it, what it would meet. */
const answerAsData = (answer: Answer, plan: Plan): object => {
  const { style } = plan.marks;
  const { key, wish, on, least, most, off, meets } = answer;
  const isMet = !isUnmet(answer);
  return {
    of: key,
    ...(on === undefined ? {} : { on: SIDES[on] }),
    ...(answer.of === undefined ? {} : { swagKind: answer.of + 1 }),
    asked: wish,
    words: askedWords(answer, style),
    least,
    most,
    off,
    meets: isMet,
    // What is asked about binds nothing: it is met, near or far.
    ...(typeof wish === 'object' && 'about' in wish && { near: meets }),
    ...(isMet ? {} : { change: changeOf(answer, style).text }),
  };
};

export const missAsData = (miss: Miss, plan: Plan): object => {
  const { shape, setting } = miss.way;
  return {
    template: shape.stitching.template.name,
    from: shape.from.label,
    to: shape.to.label,
    setting: setting.kind,
    side: shape.side,
    direction: shape.direction,
    on: miss.run.name,
    repeats: miss.repeats ?? null,
    misfit: miss.misfit.kind,
    by: miss.misfit.by,
    why: describeMisfit(miss.misfit, plan, miss.repeats),
    change: changeFor(miss, plan),
  };
};
