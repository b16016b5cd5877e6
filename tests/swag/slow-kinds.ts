/** Two kinds that take turns over again, slow and plain: a grid of tilts of the first kind, both laid point by point. */

import { readPlan } from '../../src/plan/index.ts';
import {
  ALIKE,
  crownPose,
  type Field,
  fieldsOf,
  type Seat,
  type Shape,
  scoreOf,
  searchPlan,
  straightSeat,
} from '../../src/swag/index.ts';
import { PROFILES } from './fit-helpers.ts';
import { type AnyPart, CLEARANCE, crownOnCentre, partOf } from './random-parts.ts';
import { ALL_BUT_FLAT, isSafe, slowWay } from './slow-search.ts';

/** Radians between tilts of the first kind: an eighth of a degree. */
const STEP = Math.PI / 1440;
export interface KindsQuestion {
  readonly first: AnyPart;
  readonly second: AnyPart;
  readonly width: number;
  /** Two sides, mm, and by how much shorter those across from them are, as a share. */
  readonly sides: readonly [number, number, number];
  readonly gap: number;
  /** How wide swags are to be about, in shares of twice their chord. */
  readonly share: number;
}

/** What such kinds cost at least by the search, and over the grid, each undefined where it finds none; undefined where a part makes no swag. */
export const kindsBothWays = (
  q: KindsQuestion,
): { readonly found: number | undefined; readonly slow: number | undefined } | undefined => {
  const [first, second] = [partOf(q.first), partOf(q.second)];
  if (!first || !second) return undefined;
  const [across, up, less] = q.sides;
  const sides = [across, up, Math.round(across * less), Math.round(up * less)];
  const pitch = q.share * (first.shape.chord + second.shape.chord) + q.gap;
  // Opposite sides have as many, as the program wants them where they are as long to an eye.
  const counts = sides.map((_, i) => 2 * Math.max(1, Math.round(sides[i % 2]! / pitch / 2 - 0.25)) + 1);
  const reading = readPlan(
    `units: mm\ntemplate: [baluster, finial, newel]\nlayout: { border: { width: ${q.width}, inner: { top: ${sides[0]}, right: ${sides[1]}, bottom: ${sides[2]}, left: ${sides[3]} }, corners: open } }
swag: { gap: ${q.gap}, repeats: [${counts}], alternate: [{ template: ${first.template}, ${first.words} }, { template: ${second.template}, ${second.words} }] }\n`,
    'plan.yaml',
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { plan } = reading.parts[0];
  if (plan.layout.kind !== 'border') throw new Error('a border');
  const [field] = fieldsOf(plan.layout);
  const searched = searchPlan(plan, PROFILES);
  if (!searched.ok) throw new Error(JSON.stringify(searched.problems));
  const slow = (flattest: number) => slowest(first.shape, second.shape, field!, counts, q.gap, flattest);
  // Where the grid has only what is all but flat, anything that is found is as good: between its tilts there may be more.
  return {
    found: searched.search.results[0]?.score.cost,
    slow: slow(ALL_BUT_FLAT) ?? (slow(0) && Number.POSITIVE_INFINITY),
  };
};

/** The least that two kinds cost over the grid; undefined where no tilt of it is valid on all sides. */
const slowest = (
  first: Shape,
  second: Shape,
  field: Field,
  counts: readonly number[],
  gap: number,
  flattest: number,
): number | undefined => {
  const ways = [first, second].map((shape) => ({ shape, slow: slowWay(shape.path, CLEARANCE) })) as [
    Laid,
    Laid,
  ];
  const valid = new Map<string, boolean>();
  const seated = (k: 0 | 1, span: number): Seat | undefined => {
    const { shape, slow } = ways[k];
    const pose = span > 0 ? crownPose(shape, span / 2) : undefined;
    if (!pose || pose.depth < flattest * span) return undefined;
    const rise = Math.atan2(pose.depth, pose.halfSpan);
    const key = `${k} ${rise.toFixed(6)}`;
    const ground = { lengths: [], corner: 'none', from: field.from, room: field.room, gap } as const;
    if (!valid.has(key)) valid.set(key, isSafe(slow, rise, ground, false));
    return valid.get(key) ? straightSeat(crownOnCentre(shape), shape, pose, gap) : undefined;
  };
  let least: number | undefined;
  for (let rise = STEP; rise < Math.PI / 2; rise += STEP) {
    const [n] = counts as [number];
    const b = (n - 1) / 2;
    const a0 = 2 * first.chord * Math.cos(rise);
    const b0 = (field.runs[0]!.length - (b + 1) * (a0 + gap)) / b - gap;
    const wider = a0 - b0;
    const seats: [Seat, Seat][] = [];
    for (const [i, run] of field.runs.entries()) {
      // a·s + b·(s − wider) + (a + b)·gap = L
      const s = (run.length + ((counts[i]! - 1) / 2) * wider) / counts[i]! - gap;
      const [one, two] = [seated(0, s), seated(1, s - wider)];
      if (!one || !two || isOneKind(one, two)) break;
      seats.push([one, two]);
    }
    if (seats.length < field.runs.length) continue;
    const costs = [0, 1].map((k) => {
      const sides = field.runs.map((run, i) => ({ run, repeats: counts[i]!, seat: seats[i]![k]! }));
      const { way } = sides[0]!.seat;
      return scoreOf({ way, sides, corner: { kind: 'none' }, pattern: ALIKE }, field, 0).cost;
    });
    const cost = (costs[0]! + costs[1]!) / 2;
    if (least === undefined || cost < least) least = cost;
  }
  return least;
};

interface Laid {
  readonly shape: Shape;
  readonly slow: ReturnType<typeof slowWay>;
}

/** The program wants a third more width, or a quarter more depth, for kinds of one template; of two that is left aside here. */
const isOneKind = (a: Seat, b: Seat): boolean => {
  const like = (x: number, y: number, share: number): boolean =>
    Math.min(x, y) >= (1 - share) * Math.max(x, y) * 0.999;
  return like(a.span, b.span, 1 / 3) && like(a.depth, b.depth, 1 / 4);
};
