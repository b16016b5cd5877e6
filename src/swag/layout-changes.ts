/** What of a layout may be changed so that a near miss fits: what is kept clear, a limit, and the size of the band. */

import { formatLength, roundLength, stepOf } from '../length/index.ts';
import { closesRound, hasCorners, inWidth, type Layout, liesRoundBlock, type Plan } from '../plan/index.ts';
import type { Search } from './search.ts';

export interface Change {
  /** In words and in the plan's own keys: `9 repeats instead of 8`. */
  readonly text: string;
  /** The plan with the change, and with the near miss's way fixed. */
  readonly plan: Plan;
}

/** A length (mm) that a layout gives, and how another is told. */
interface Measure {
  readonly is: number;
  readonly with: (mm: number) => Layout;
  /** `a width of 6 1/2 in instead of 6 in` */
  readonly told: (mm: number, was: number) => string;
}

/** What is kept clear of what lies beyond the swags, or round a motif. */
const keptClear = (layout: Layout, length: (mm: number) => string): Measure => {
  const kept = (name: string, where: string) => (mm: number, was: number) =>
    `${mm > 0 ? `a ${name} of ${length(mm)}` : `no ${name}`} instead of ${length(was)}${where}`;
  if (closesRound(layout)) {
    const told = kept('clearance', '');
    return { is: layout.clearance, with: (clearance) => ({ ...layout, clearance }), told };
  }
  const far = hasCorners(layout) && layout.from === 'outer' ? 'inner' : 'outer';
  const name = liesRoundBlock(layout) ? 'clearance' : 'margin';
  return {
    is: layout.margin[far],
    with: (mm) => ({ ...layout, margin: { ...layout.margin, [far]: mm } }),
    told: kept(name, ` at the ${far} seam`),
  };
};

/** How large the band is, and by which steps it may be made another, one sense after the other. */
const sizeOf = (
  layout: Layout,
  length: (mm: number) => string,
): Measure & { readonly senses: readonly (1 | -1)[]; readonly most: number } => {
  if (closesRound(layout))
    return {
      is: layout.around,
      with: (around) => ({ ...layout, around }),
      told: (mm, was) => `a motif ${length(mm)} across instead of ${length(was)}`,
      senses: [-1, 1],
      most: MOST_OTHER,
    };
  const isBlock = liesRoundBlock(layout);
  const across = (width: number): string =>
    isBlock ? length(Math.max(layout.inner.top, layout.inner.left) + 2 * width) : '';
  return {
    is: layout.width,
    with: (width) => (hasCorners(layout) ? inWidth(layout, width) : { ...layout, width }),
    told: (mm, was) =>
      isBlock
        ? `a limit of ${across(mm)} across instead of ${across(was)}`
        : `a width of ${length(mm)} instead of ${length(was)}`,
    senses: [1],
    most: MOST_WIDER,
  };
};

type Tries = (plan: Plan) => Search;

/** Less kept clear, by as few of the ruler's steps as will do. */
export const lessClear = (base: Plan, tries: Tries): Change | undefined => {
  const { style } = base.marks;
  const { is, with: changed, told } = keptClear(base.layout, (mm) => formatLength(mm, style));
  const step = stepOf(style);
  const less = (steps: number): number => Math.max(0, roundLength(is - steps * step, style));
  const planOf = (steps: number): Plan => ({ ...base, layout: changed(less(steps)) });
  const steps = leastSteps(Math.ceil(is / step), (n) => tries(planOf(n)).results.length > 0);
  return steps === undefined ? undefined : { text: told(less(steps), is), plan: planOf(steps) };
};

/** A band of another size, for want of anything smaller: the nearest in the sense in which one is found first. */
export const otherSize = (base: Plan, tries: Tries): Change | undefined => {
  const {
    is,
    with: changed,
    told,
    senses,
    most,
  } = sizeOf(base.layout, (mm) => formatLength(mm, base.marks.style));
  for (const sense of senses) {
    const other = (steps: number): number => is + sense * steps * WIDER;
    const planOf = (steps: number): Plan => ({ ...base, layout: changed(other(steps)) });
    const steps = leastSteps(most, (n) => other(n) >= WIDER && tries(planOf(n)).results.length > 0);
    if (steps !== undefined) return { text: told(other(steps), is), plan: planOf(steps) };
  }
  return undefined;
};

/** Another count, where a frame's is given: the nearest that fits. */
export const otherCount = (base: Plan, tries: Tries): Change | undefined => {
  const { layout } = base;
  if (!closesRound(layout) || layout.count === undefined) return undefined;
  const was = layout.count;
  const withCount = (count: number | undefined): Plan => ({ ...base, layout: { ...layout, count } });
  const counts = tries(withCount(undefined)).results.flatMap(({ fit }) => fit.sides[0]?.repeats ?? []);
  if (counts.length === 0) return undefined;
  const nearest = counts.reduce((a, b) => (Math.abs(b - was) < Math.abs(a - was) ? b : a));
  return { text: `${nearest} swags instead of ${was}`, plan: withCount(nearest) };
};

/** A wider limit, by quarter inches, where what fits without one says how wide. */
export const widerLimit = (base: Plan, tries: Tries): Change | undefined => {
  const { layout } = base;
  if (!closesRound(layout) || layout.within === undefined) return undefined;
  const within = (mm: number | undefined): Plan => ({ ...base, layout: { ...layout, within: mm } });
  const found = tries(within(undefined)).results.flatMap(({ field: { around } }) =>
    around.kind === 'motif' ? [2 * (around.farthest + around.away)] : [],
  );
  const wider = Math.ceil(Math.min(...found) / WIDER - 1e-9) * WIDER;
  if (found.length === 0 || tries(within(wider)).results.length === 0) return undefined;
  const length = (mm: number): string => formatLength(mm, base.marks.style);
  return {
    text: `a limit of ${length(wider)} across instead of ${length(layout.within)}`,
    plan: within(wider),
  };
};

/** Bands, motifs and limits are changed by quarter inches (mm). */
export const WIDER = 6.35;
/** A border is made up to eight inches wider. */
export const MOST_WIDER = 32;
/** A motif so much larger or smaller (in steps) is another one altogether: 64 in. */
const MOST_OTHER = 256;

/**
 * Few steps from 1 to `most` that serve: doubled until they do, and then halved back to the last that did not. Where
 * more steps may also serve less, fewer might be found by trying every one.
 */
export const leastSteps = (most: number, serves: (steps: number) => boolean): number | undefined => {
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
