/** Kept stretches of a parallel, linked end to start into loops with the free space on their left. */

import { distance, type Point, turnBetween } from './point.ts';

export interface Run {
  readonly from: Point;
  readonly to: Point;
  /** Unit directions of travel at the two ends. */
  readonly setOut: Point;
  readonly arrive: Point;
}

/** Ends this near (mm) are one crossing: what two nearly tangent arcs can be apart in closed form. */
export const LINK = 1e-6;

/**
 * Loops as lists of indices into `runs`. Where several runs start at the same place, the sharpest left turn
 * keeps to the same free space. A run that leads nowhere is in no loop.
 */
export const linkLoops = (runs: readonly Run[]): readonly (readonly number[])[] => {
  const byX = runs.map((_, i) => i).sort((i, j) => runs[i]!.from.x - runs[j]!.from.x);
  const next = runs.map((run) => follower(runs, byX, run));
  const seen = new Uint8Array(runs.length);
  const loops: number[][] = [];
  for (let i = 0; i < runs.length; i++) {
    const trail: number[] = [];
    let k = i;
    while (k >= 0 && !seen[k]) {
      seen[k] = 1;
      trail.push(k);
      k = next[k]!;
    }
    // A trail may run into a loop from outside: only what comes round again is one.
    const entry = trail.indexOf(k);
    if (entry >= 0) loops.push(trail.slice(entry));
  }
  return loops;
};

const follower = (runs: readonly Run[], byX: readonly number[], run: Run): number => {
  let low = 0;
  let high = byX.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (runs[byX[mid]!]!.from.x < run.to.x - LINK) low = mid + 1;
    else high = mid;
  }
  let best = -1;
  let bestTurn = Number.NEGATIVE_INFINITY;
  for (let k = low; k < byX.length; k++) {
    const candidate = runs[byX[k]!]!;
    if (candidate.from.x > run.to.x + LINK) break;
    if (!(distance(candidate.from, run.to) <= LINK)) continue;
    const turn = turnBetween(run.arrive, candidate.setOut);
    if (turn > bestTurn) {
      best = byX[k]!;
      bestTurn = turn;
    }
  }
  return best;
};
