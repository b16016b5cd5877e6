/**
 * What is the least that a person has to change so that a near miss of a round frame fits? As for runs, every
 * change is tried with the search itself.
 */

import { formatLength, roundLength, stepOf } from '../length/index.ts';
import type { Frame, Plan } from '../plan/index.ts';
import type { Search } from './search.ts';
import type { Change } from './smallest-change.ts';

type Tries = (plan: Plan) => Search;

const withFrame = (plan: Plan, layout: Frame, changes: Partial<Frame>): Plan => ({
  ...plan,
  layout: { ...layout, ...changes },
});

/** Another count, where the plan fixes it: the nearest that fits. */
export const otherCount = (base: Plan, layout: Frame, tries: Tries): Change | undefined => {
  const { count } = layout;
  if (count === undefined) return undefined;
  const open = withFrame(base, layout, { count: undefined });
  const counts = tries(open).results.flatMap(({ fit }) => fit.sides[0]?.repeats ?? []);
  if (counts.length === 0) return undefined;
  const nearest = counts.reduce((a, b) => (Math.abs(b - count) < Math.abs(a - count) ? b : a));
  return {
    text: `${nearest} swags instead of ${count}`,
    plan: withFrame(base, layout, { count: nearest }),
  };
};

/** A narrower band kept clear, by as few of the ruler's steps as will do. */
export const smallerClearance = (base: Plan, layout: Frame, tries: Tries): Change | undefined => {
  const { style } = base.marks;
  const changed = (steps: number): Plan =>
    withFrame(base, layout, {
      clearance: Math.max(0, roundLength(layout.clearance - steps * stepOf(style), style)),
    });
  const steps = fewestSteps(
    Math.ceil(layout.clearance / stepOf(style)),
    (n) => tries(changed(n)).results.length > 0,
  );
  if (steps === undefined) return undefined;
  const plan = changed(steps);
  const is = plan.layout.kind === 'frame' ? plan.layout.clearance : 0;
  const kept = is > 0 ? `a clearance of ${formatLength(is, style)}` : 'no clearance';
  return { text: `${kept} instead of ${formatLength(layout.clearance, style)}`, plan };
};

/** A wider limit, by quarter inches. */
export const widerLimit = (base: Plan, layout: Frame, tries: Tries): Change | undefined => {
  const { within } = layout;
  if (within === undefined) return undefined;
  const found = tries(withFrame(base, layout, { within: undefined })).results.flatMap(
    ({ field: { around } }) => (around.kind === 'motif' ? [2 * (around.farthest + around.away)] : []),
  );
  if (found.length === 0) return undefined;
  const wider = Math.ceil(Math.min(...found) / STEP - 1e-9) * STEP;
  const plan = withFrame(base, layout, { within: wider });
  if (tries(plan).results.length === 0) return undefined;
  const { style } = base.marks;
  return {
    text: `a limit of ${formatLength(wider, style)} across instead of ${formatLength(within, style)}`,
    plan,
  };
};

/** Another motif, for want of anything smaller: the largest smaller one that can be framed, or the smallest larger. */
export const otherMotif = (base: Plan, layout: Frame, tries: Tries): Change | undefined => {
  const { style } = base.marks;
  const changed = (around: number): Plan => withFrame(base, layout, { around });
  const serves = (sense: 1 | -1) => (steps: number) => {
    const around = layout.around + sense * steps * STEP;
    return around >= STEP && tries(changed(around)).results.length > 0;
  };
  for (const sense of [-1, 1] as const) {
    const steps = fewestSteps(MOST_STEPS, serves(sense));
    if (steps === undefined) continue;
    const around = layout.around + sense * steps * STEP;
    return {
      text: `a motif ${formatLength(around, style)} across instead of ${formatLength(layout.around, style)}`,
      plan: changed(around),
    };
  }
  return undefined;
};

/** Motifs and limits are changed by quarter inches (mm). */
const STEP = 6.35;
/** A motif so much larger or smaller (in steps) is another one altogether: 64 in. */
const MOST_STEPS = 256;

/**
 * Few steps from 1 to `most` that serve: doubled until they do, and then halved back to the last that did not. A
 * frame may also stop fitting when more is changed, so that fewer might be found by trying every one.
 */
const fewestSteps = (most: number, serves: (steps: number) => boolean): number | undefined => {
  let low = 0;
  for (let n = 1; low < most; n = Math.min(most, 2 * n)) {
    if (!serves(n)) {
      low = n;
      continue;
    }
    let high = n;
    while (high - low > 1) {
      const mid = (low + high) >> 1;
      if (serves(mid)) high = mid;
      else low = mid;
    }
    return high;
  }
  return undefined;
};
