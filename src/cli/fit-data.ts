/** What `fit` found, for programs: mm and degrees. */

import type { Plan } from '../plan/index.ts';
import { changeFor, choicesOf, describeMisfit, designOf, type Miss, type Ranked } from '../swag/index.ts';
import { designAsData, outwardReach } from './report-design.ts';

export const fitAsData = (ranked: Ranked, number: number, plan: Plan): object => {
  const { field, fit, score } = ranked;
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
    gap: plan.swag.gap ?? 'auto',
    ...designAsData(designOf(field, fit), outwardReach(plan.channels)),
    score: { spread: score.spread, use: score.use, gap: score.gap, cost: score.cost },
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
