/** Seeded randomness: nothing here may differ between two runs, or between a terminal and a browser. */

export interface Random {
  /** Uniform in [0, 1). */
  readonly next: () => number;
  /** Uniform in [low, high). */
  readonly between: (low: number, high: number) => number;
}

/**
 * mulberry32, a published 32-bit generator in the public domain (T. Ettinger, 2017): one word of state, 2³²
 * steps, passes the common test batteries well enough for where a pebble lies.
 */
export const randomOf = (seed: number): Random => {
  let state = Math.trunc(Number.isFinite(seed) ? seed : 0) | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return { next, between: (low, high) => low + (high - low) * next() };
};
