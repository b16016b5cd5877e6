/**
 * A swag of its own over each corner: for each way to make the sides' swags and each count of the longest side, the way
 * to make the corner's that costs least with it, by the very cost that ranks (turns.ts lays the two).
 *
 * Method: best first, as branch and bound goes (counts.ts). Of each pair of ways, and then of each of its counts, it is
 * known what it costs at least (own-corners-least.ts); the least of all is tried next, until it costs more than enough
 * that has been found.
 */

import FlatQueue from 'flatqueue';
import type { Counts } from './counts.ts';
import type { CorneredField } from './field.ts';
import type { Fit } from './fit.ts';
import { type Candidate, candidatesOf, leastOfPair, leastWithCounts } from './own-corners-least.ts';
import type { SeatRules } from './seat.ts';
import type { Way } from './setting.ts';
import { type Turns, turnsByCrown } from './turns.ts';
import { wishedScore } from './wished.ts';

/** A band with what is asked of it. */
export interface CorneredGround {
  readonly field: CorneredField;
  readonly rules: SeatRules;
  readonly counts: readonly Counts[];
}

/** The best of all grounds together. */
export const fitOwnCorners = (
  ways: readonly [sides: readonly Way[], corners: readonly Way[]],
  grounds: readonly CorneredGround[],
  outward: number,
): { readonly found: readonly Omit<Found, 'cost'>[]; readonly tried: number } => {
  const pairs = grounds.flatMap((ground) => pairsOf(ways, ground, outward)).sort((a, b) => a.least - b.least);
  const waiting = new FlatQueue<Counted>();
  const best = new Map<Candidate, Map<number, Found>>();
  let found: readonly Found[] = [];
  let enough = Number.POSITIVE_INFINITY;
  let tried = 0;
  for (let next = 0; ; ) {
    const pair = pairs[next];
    const counted = waiting.peekValue() ?? Number.POSITIVE_INFINITY;
    const least = Math.min(pair?.least ?? Number.POSITIVE_INFINITY, counted);
    if (!(least <= enough && least < Number.POSITIVE_INFINITY)) return { found, tried };
    if (pair?.least === least) {
      next++;
      for (const one of countsOf(pair, outward, enough)) waiting.push(one, one.least);
      continue;
    }
    const { turns, repeats, leastWith, of } = waiting.pop()!;
    const { side, ground, made } = of;
    const known = best.get(side) ?? new Map<number, Found>();
    best.set(side, known);
    const most = Math.min(enough, known.get(repeats)?.cost ?? enough);
    if (least > most) continue;
    const laid = turns.with(repeats, most, made, (all) => leastWith(all, enough));
    tried += laid.tried;
    for (const fit of laid.fits) {
      const score = wishedScore(fit, ground.field, outward, ground.rules.wishes);
      if (!score || score.cost >= (known.get(repeats)?.cost ?? Number.POSITIVE_INFINITY)) continue;
      known.set(repeats, { fit, field: ground.field, cost: score.cost });
      found = [...best.values()]
        .flatMap((ofSide) => [...ofSide.values()])
        .sort((a, b) => a.cost - b.cost)
        .slice(0, MOST_FOUND);
      if (found.length === MOST_FOUND) enough = found.at(-1)!.cost;
    }
  }
};

interface Found {
  readonly fit: Fit;
  readonly field: CorneredField;
  readonly cost: number;
}

/** More than anyone looks through. */
const MOST_FOUND = 40;

/** A way for the sides and one for the corners, and what they cost at least: in all, and for all but how they fit together. */
interface Pair {
  readonly ground: CorneredGround;
  readonly side: Candidate;
  readonly corner: Candidate;
  readonly least: number;
  readonly made: number;
}

/** The same with so many swags on the longest side. */
interface Counted {
  readonly of: Pair;
  readonly turns: Turns;
  readonly leastWith: ReturnType<typeof leastWithCounts>;
  readonly repeats: number;
  readonly least: number;
}

const pairsOf = (
  ways: readonly [sides: readonly Way[], corners: readonly Way[]],
  ground: CorneredGround,
  outward: number,
): readonly Pair[] => {
  const [sides, corners] = candidatesOf(ways, ground.field, ground.rules, outward);
  return sides.flatMap((side) =>
    corners.map((corner) => ({ ground, side, corner, ...leastOfPair(side, corner) })),
  );
};

/** Its counts that may cost so much at most. */
const countsOf = (pair: Pair, outward: number, most: number): readonly Counted[] => {
  const { side, corner, ground } = pair;
  const { field, rules, counts } = ground;
  const turns = turnsByCrown(side.rising, corner.rising, field, rules, counts, outward);
  if (!turns) return [];
  const leastWith = leastWithCounts(side, corner, field, rules);
  const lengths = field.runs.map((run) => run.length);
  const longest = lengths.indexOf(Math.max(...lengths));
  return turns.longest.flatMap((repeats) => {
    const least = Math.max(
      pair.least,
      leastWith(
        lengths.map((_, i) => (i === longest ? repeats : 0)),
        most,
      ),
    );
    return least <= most ? [{ of: pair, turns, leastWith, repeats, least }] : [];
  });
};
