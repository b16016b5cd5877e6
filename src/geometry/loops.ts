/** Kept stretches of a parallel, linked end to start into loops with the free space on their left. */

import { type Piece, pieceAt, pieceDirection } from './piece.ts';
import { distance, type Point, turnBetween } from './point.ts';

export interface Run {
  readonly from: Point;
  readonly to: Point;
  /** Unit directions of travel at the two ends, and how the way bends there: 1/mm, more than 0 to the left. */
  readonly setOut: Point;
  readonly arrive: Point;
  readonly bendOut: number;
  readonly bendIn: number;
}

/** The run that begins at a share of one piece and ends at a share of another, or of the same one. */
export const runOf = (first: Piece, last: Piece = first, t0 = 0, t1 = 1): Run => ({
  from: pieceAt(first, t0),
  to: pieceAt(last, t1),
  setOut: pieceDirection(first, t0),
  arrive: pieceDirection(last, t1),
  bendOut: bendOf(first),
  bendIn: bendOf(last),
});

const bendOf = (p: Piece): number => (p.kind === 'line' ? 0 : Math.sign(p.sweep) / p.radius);

/** Ends that are this much farther (mm) than the nearest are at the same place as the nearest. */
const SAME_PLACE = 1e-9;

/**
 * Loops as lists of indices into `runs`. A run leads on to the one that starts nearest to its end, within the slack (mm); where
 * several start at one place, the sharpest left turn keeps to the same free space. A run that leads nowhere, but to such
 * a run, or that nothing leads to, is in no loop, and where another starts beside it that one is taken.
 */
export const linkLoops = (runs: readonly Run[], slack: number): readonly (readonly number[])[] => {
  const byX = runs.map((_, i) => i).sort((i, j) => runs[i]!.from.x - runs[j]!.from.x);
  const next = followers(runs, byX, slack);
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

/** What each run leads on to, −1 for a dead end. */
const followers = (runs: readonly Run[], byX: readonly number[], slack: number): readonly number[] => {
  const next = runs.map((run) => follower(runs, byX, run, slack, NO_DEAD_ENDS));
  if (!next.includes(-1)) return next;
  const isDead = new Uint8Array(runs.length);
  for (let more = true; more; ) {
    more = false;
    for (let i = 0; i < next.length; i++) if (next[i]! < 0) isDead[i] = 1;
    for (let i = 0; i < next.length; i++) {
      if (isDead[i] || !isDead[next[i]!]) continue;
      next[i] = follower(runs, byX, runs[i]!, slack, isDead);
      if (next[i]! < 0) more = true;
    }
  }
  return next;
};

const NO_DEAD_ENDS: ArrayLike<number> = [];

const follower = (
  runs: readonly Run[],
  byX: readonly number[],
  run: Run,
  slack: number,
  isDead: ArrayLike<number>,
): number => {
  let low = 0;
  let high = byX.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (runs[byX[mid]!]!.from.x < run.to.x - slack) low = mid + 1;
    else high = mid;
  }
  const near: { readonly index: number; readonly away: number }[] = [];
  let least = slack;
  let self = -1;
  for (let k = low; k < byX.length; k++) {
    const index = byX[k]!;
    const { from } = runs[index]!;
    if (from.x > run.to.x + slack) break;
    if (isDead[index]) continue;
    const away = distance(from, run.to);
    if (!(away <= slack)) continue;
    // A run shorter than the slack ends near its own start; that alone does not make it a loop.
    if (away > SAME_PLACE && runs[index] === run) {
      self = index;
      continue;
    }
    near.push({ index, away });
    least = Math.min(least, away);
  }
  let best = self;
  let sharpest: Turn | undefined;
  for (const { index, away } of near) {
    if (away > least + SAME_PLACE) continue;
    const turn = turnInto(run, runs[index]!);
    if (sharpest && !isSharper(turn, sharpest)) continue;
    best = index;
    sharpest = turn;
  }
  return best;
};

/** How one run goes on into another: radians to the left, and how that bends on (1/mm). */
interface Turn {
  readonly angle: number;
  readonly bend: number;
}

/** Where lines touch and do not cross, the directions there (radians) are the same but for rounding. */
const TOUCHING = 1e-9;

/** Straight back is to that side on which the one that sets out runs beside the one that arrived. */
const turnInto = (run: Run, next: Run): Turn => {
  const angle = turnBetween(run.arrive, next.setOut);
  const bend = next.bendOut;
  const apart = run.bendIn + bend;
  if (Math.abs(angle) < Math.PI - TOUCHING || apart === 0) return { angle, bend };
  return { angle: apart < 0 ? Math.PI : -Math.PI, bend };
};

const isSharper = (a: Turn, b: Turn): boolean =>
  Math.abs(a.angle - b.angle) > TOUCHING ? a.angle > b.angle : a.bend > b.bend;
