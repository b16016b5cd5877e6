/**
 * Near-copies among what fits: other counts, directions, settings and stretches that look the same to an eye. Of each
 * kind the first stands for all, so that what a person is shown first differs.
 */

import { cornerSwag, hasGaps, kindsIn, ownCorner, seatsOf } from './fit.ts';
import { isClosed } from './run.ts';
import type { Probes } from './same-line.ts';
import type { Ranked } from './search.ts';
import type { Seat } from './seat.ts';
import type { Shape } from './shape.ts';
import { isLineAlike, isOfSize, SIZE_SEEN } from './to-an-eye.ts';

export interface Kind<R extends Ranked = Ranked> {
  readonly first: R;
  /** What looks like it, in order. */
  readonly like: readonly R[];
}

/** In the order of their firsts. What comes later in the order joins the first kind that it looks like. */
export const kindsOf = <R extends Ranked>(ranked: readonly R[]): readonly Kind<R>[] => {
  const kinds: { readonly first: R; readonly like: R[]; readonly look: Look }[] = [];
  // What is as deep to an eye lies in one step of depth or the next.
  const byStep = new Map<string, number[]>();
  const probes: Probes = new Map();
  for (const one of ranked) {
    const look = lookOf(one);
    const step = Math.floor(Math.log(look.seats[0]!.depth) / -Math.log(1 - SIZE_SEEN.depth));
    let found = Number.POSITIVE_INFINITY;
    for (const near of [step - 1, step, step + 1]) {
      const here = byStep.get(`${look.key} ${near}`) ?? [];
      const k = here.find((at) => at >= found || isAlike(kinds[at]!.look, look, probes));
      if (k !== undefined && k < found) found = k;
    }
    if (found < kinds.length) kinds[found]!.like.push(one);
    else {
      const key = `${look.key} ${step}`;
      byStep.set(key, [...(byStep.get(key) ?? []), kinds.length]);
      kinds.push({ first: one, like: [], look });
    }
  }
  return kinds;
};

/** What an eye goes by. */
interface Look {
  /** Of each kind one half, and of a corner of its own. */
  readonly halves: readonly Seat[];
  readonly seats: readonly Seat[];
  /** What must be the same: what happens at the corners, whether there are gaps, and how many swags close a frame. */
  readonly key: string;
}

const lookOf = ({ field, fit }: Ranked): Look => {
  const closes = field.runs.some(isClosed) ? fit.sides[0]!.repeats : '';
  return {
    halves: [
      ...kindsIn(fit).map((kind) => kind.sides[0]!.seat),
      ...(ownCorner(fit) ? [cornerSwag(fit)!.seat] : []),
    ],
    seats: [...seatsOf(fit), ...(fit.beyond ? seatsOf(fit.beyond.fit) : [])],
    key: `${field.corners} ${fit.corner.kind} ${fit.pattern.kind} ${hasGaps(fit)} ${closes}`,
  };
};

const isAlike = (a: Look, b: Look, probes: Probes): boolean => {
  if (a.seats.length !== b.seats.length) return false;
  for (let i = 0; i < a.seats.length; i++) if (!isOfSize(a.seats[i]!, b.seats[i]!)) return false;
  return a.halves.every((half, k) => {
    const other = b.halves[k]!;
    return isSamePart(half.way.shape, other.way.shape) || isLineAlike(half, other, probes);
  });
};

const isSamePart = (a: Shape, b: Shape): boolean =>
  a.stitching === b.stitching && a.from.label === b.from.label && a.to.label === b.to.label;
