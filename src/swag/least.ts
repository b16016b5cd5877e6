/** The least of a function of one variable over windows in which it has several valleys, and may be infinite. */

import type { Window } from './windows.ts';

interface Least {
  readonly at: number;
  readonly value: number;
}

/** How closely a least is looked for. */
export interface Looking {
  /** Samples of each window; between two of them the function is taken to have one valley. */
  readonly samples: number;
  /** Golden sections of each valley, which narrow it by 0.618 each. */
  readonly steps: number;
}

/**
 * Where in the windows a function is least, and how much it is there; undefined where it is nowhere finite. The valleys
 * are searched in the order of how low they may go, so that most need not be. What does not come below `than` is not
 * wanted.
 */
export const leastIn = (
  windows: readonly Window[],
  valueAt: (x: number) => number,
  { samples, steps }: Looking,
  than = Number.POSITIVE_INFINITY,
): Least | undefined => {
  const valleys = windows.flatMap((w) => valleysIn(w, valueAt, samples)).sort((a, b) => a.bound - b.bound);
  let best: Least | undefined;
  for (const valley of valleys) {
    const known = best?.value ?? than;
    if (!(valley.bound <= known)) break;
    const found = goldenLeast(valueAt, valley, known, steps);
    if (found.value < known) best = found;
  }
  return best;
};

interface Valley {
  /** `middle` is the lowest of the samples. */
  readonly from: number;
  readonly middle: number;
  readonly to: number;
  /** The value at the middle, and what the samples show that it comes nowhere below. */
  readonly sample: number;
  readonly bound: number;
}

const valleysIn = (w: Window, valueAt: (x: number) => number, count: number): readonly Valley[] => {
  const step = (w.to - w.from) / count;
  const samples: number[] = [];
  for (let k = 0; k <= count; k++) samples.push(valueAt(w.from + k * step));
  const valleys: Valley[] = [];
  for (let k = 0; k <= count; k++) {
    if (!(isValley(samples, k) && Number.isFinite(samples[k]))) continue;
    const middle = w.from + k * step;
    const [from, to] = [Math.max(w.from, middle - step), Math.min(w.to, middle + step)];
    const sample = samples[k]!;
    valleys.push({ from, middle, to, sample, bound: sample - fallAt(samples, k) });
  }
  return valleys;
};

const isValley = (samples: readonly number[], k: number): boolean =>
  samples[k]! <= (samples[k - 1] ?? Number.POSITIVE_INFINITY) &&
  samples[k]! <= (samples[k + 1] ?? Number.POSITIVE_INFINITY);

/** By how much at most a function may fall beside its sample k, from how it falls towards it. */
const fallAt = (samples: readonly number[], k: number): number => {
  let fall = 0;
  for (let j = Math.max(1, k - 1); j <= Math.min(samples.length - 1, k + 2); j++) {
    const change = Math.abs(samples[j]! - samples[j - 1]!);
    // Beside an invalid sample nothing is known.
    if (!(change <= fall)) fall = Number.isFinite(change) ? change : Number.POSITIVE_INFINITY;
  }
  return fall;
};

/**
 * Golden-section search for the least in a valley (Kiefer, Proceedings of the American Mathematical Society 4, 1953).
 * Given up where it falls no faster than the samples did and so would not come below `than` in what is left.
 */
const goldenLeast = (
  valueAt: (x: number) => number,
  { from, middle, to, sample, bound }: Valley,
  than: number,
  steps: number,
): Least => {
  const ratio = (Math.sqrt(5) - 1) / 2;
  const fall = (2 * (sample - bound)) / (to - from);
  let a = from;
  let b = to;
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  let fc = valueAt(c);
  let fd = valueAt(d);
  for (let i = 0; i < steps; i++) {
    if (Math.min(fc, fd) - fall * (b - a) > than) break;
    // Where both are as high, and so where neither is finite, the lowest sample is on the side to stay on.
    if (fc < fd || (fc === fd && middle < (a + b) / 2)) {
      b = d;
      d = c;
      fd = fc;
      c = b - ratio * (b - a);
      fc = valueAt(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + ratio * (b - a);
      fd = valueAt(d);
    }
  }
  if (!(Math.min(fc, fd) < sample)) return { at: middle, value: sample };
  return fc < fd ? { at: c, value: fc } : { at: d, value: fd };
};
