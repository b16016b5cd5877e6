/** What only several parts of a quilt together can tell: that they lie on one another, or do not add up. */

import { keyName, type Problem, quoted } from '../document/index.ts';
import { exactLength, formatLength, MM_PER_INCH, stepOf } from '../length/index.ts';
import { groundsOf, overlapOf } from './ground.ts';
import { closesRound, hasCorners } from './layout-kinds.ts';
import type { PartReading } from './part-reading.ts';
import { type Border, type Plan, SIDES, type Side } from './plan.ts';

/** Seams of two borders that are nearer than this (mm) on all sides are meant to be one. */
const ONE_SEAM = MM_PER_INCH;
/** What is said to touch does, though halves are added up in another order, mm. */
const NOISE = 1e-6;

/** How wide a round frame without a limit comes out, mm: that is known once its swags are. */
export type Across = (plan: Plan) => number | undefined;

/** Parts that lie on one another: one line for two parts, with both places. */
export const overlaps = (
  parts: readonly PartReading[],
  across: Across = () => undefined,
): readonly Problem[] =>
  pairsOf(parts).flatMap(([a, b]) => {
    const by = a === b ? ownOverlap(a.plan, across) : overlapBetween(a.plan, b.plan, across);
    if (!(by > NOISE)) return [];
    const path = b.pathOf(['layout']);
    return [
      {
        code: 'parts-overlap',
        place: b.placeAt(['layout']),
        key: keyName(path),
        message:
          a === b
            ? `two copies of the part ${nameOf(b)} lie on one another`
            : `the part ${nameOf(b)} lies on the part ${nameOf(a)}${lineOf(a)}`,
        found: `${someLength(by, b.plan)} of overlap`,
        expected: 'parts beside or inside one another',
        hint: hintFor(a, b),
      },
    ];
  });

const hintFor = (a: PartReading, b: PartReading): string => {
  if (a !== b && nestedBorders(a.plan, b.plan))
    return 'compare the outer sides of the inner border with the inner sides of the outer one';
  const limited = [a, b].some(({ plan }) => closesRound(plan.layout) && plan.layout.within !== undefined);
  return `say where each part lies with at: right and up from the middle of the quilt${limited ? '; a frame takes all the room that within gives it' : ''}`;
};

/** What is said of two parts, and which they are. */
interface OfTwo {
  readonly of: readonly [PartReading, PartReading];
  readonly problem: Problem;
}

/** Two borders that share a seam were measured twice: what the measures differ by is said, and how bad that is. */
export const seamsApart = (parts: readonly PartReading[]): readonly OfTwo[] =>
  pairsOf(parts).flatMap(([a, b]) => {
    const nested = a === b ? undefined : nestedBorders(a.plan, b.plan);
    if (!nested || !isOneSeam(nested)) return [];
    const [inner, outer] = nested.isFirstInside ? [a, b] : [b, a];
    const off = SIDES.filter((side) => Math.abs(nested.gaps[side]) > NOISE);
    if (off.length === 0) return [];
    const say = (mm: number): string => exactLength(mm, outer.plan.marks.style);
    const path = ['layout', 'border', roundQuilt(outer.plan)?.measured ?? 'inner'];
    const problem: Problem = {
      code: 'seams-differ',
      place: outer.placeAt(path),
      key: keyName(outer.pathOf(path)),
      message: `the outer seam of the part ${nameOf(inner)}${lineOf(inner)} is the inner seam of the part ${nameOf(outer)}, and they do not measure the same: ${off
        .map((side) => `${side} ${say(nested.outerSeam[side])} and ${say(nested.innerSeam[side])}`)
        .join(', ')}`,
      hint: easing(nested, outer.plan),
    };
    return [{ of: [inner, outer], problem }];
  });

/** With cloth between two borders opposite sides differ alike; where one of a pair is as long, so is meant to be the other. */
const isOneSeam = ({ gaps }: Nested): boolean =>
  [[gaps.top, gaps.bottom] as const, [gaps.left, gaps.right] as const].every((pair) =>
    pair.some((gap) => Math.abs(gap) <= ONE_SEAM),
  );

/** What of a seam can be eased in while it is sewn, 1/8 in to the foot. Common practice, no source. */
const MOST_EASED = 1 / 96;

const easing = ({ gaps, innerSeam }: Nested, { units }: Plan): string => {
  const share = units === 'in' ? '1/8 in to the foot' : '1 cm to the metre';
  return SIDES.some(
    (side) => Math.abs(gaps[side]) > Math.min(ONE_SEAM - NOISE, MOST_EASED * innerSeam[side]) + NOISE,
  )
    ? `more than ${share} cannot be eased in: one of the two measures is a mistake; measure that seam again before you mark or cut`
    : `up to ${share} can be eased in when the border is sewn on; measure that seam again all the same`;
};

/** Each with each, and with itself. */
const pairsOf = (parts: readonly PartReading[]): readonly (readonly [PartReading, PartReading])[] =>
  parts.flatMap((b, i) => parts.slice(0, i + 1).map((a) => [a, b] as const));

const nameOf = ({ plan }: PartReading): string => quoted(plan.part?.name ?? plan.title);

/** Rounded as marks are, and never to nothing. */
const someLength = (mm: number, { marks: { style } }: Plan): string =>
  formatLength(Math.max(mm, stepOf(style)), style);

const lineOf = ({ placeAt }: PartReading): string => {
  const { line } = placeAt(['layout']);
  return line === undefined ? '' : ` (line ${line})`;
};

const ownOverlap = (plan: Plan, across: Across): number => {
  const grounds = groundsOf(plan, across(plan));
  let most = 0;
  grounds.forEach((b, i) => {
    for (const a of grounds.slice(0, i)) most = Math.max(most, overlapOf(a, b));
  });
  return most;
};

const overlapBetween = (a: Plan, b: Plan, across: Across): number => {
  const nested = nestedBorders(a, b);
  if (nested) {
    // Measured twice, a seam differs by a little: that is said, and is no overlap.
    const least = Math.min(...SIDES.map((side) => nested.gaps[side]));
    return least < -ONE_SEAM ? -least / 2 : 0;
  }
  const others = groundsOf(b, across(b));
  return groundsOf(a, across(a)).reduce(
    (most, x) => others.reduce((m, y) => Math.max(m, overlapOf(x, y)), most),
    0,
  );
};

interface Nested {
  /** Whether the first of the two is the inner one. */
  readonly isFirstInside: boolean;
  /** mm, of the inner border's outer seam, and of the outer border's inner seam. */
  readonly outerSeam: Readonly<Record<Side, number>>;
  readonly innerSeam: Readonly<Record<Side, number>>;
  /** mm by which the second is longer. */
  readonly gaps: Readonly<Record<Side, number>>;
}

const roundQuilt = ({ layout }: Plan): Border | undefined =>
  hasCorners(layout) && layout.round === 'quilt' ? layout : undefined;

/** Two borders round one middle. */
const nestedBorders = (a: Plan, b: Plan): Nested | undefined => {
  const [x, y] = [roundQuilt(a), roundQuilt(b)];
  const quarters = quarterTurns(a, b);
  if (!x || !y || quarters === undefined) return undefined;
  const isFirstInside = outwardOf(x) <= outwardOf(y);
  const [inner, outer] = isFirstInside ? [x, y] : [y, x];
  // Sides are those of the outer border: an inner one that is turned lies with another of its sides there.
  const on = (side: Side): Side => {
    const turned = SIDES.indexOf(side) + (isFirstInside ? -quarters : quarters);
    return SIDES[((turned % SIDES.length) + SIDES.length) % SIDES.length]!;
  };
  const outerSeam = bySide((side) => inner.inner[on(side)] + 2 * inner.width);
  const innerSeam = outer.inner;
  return { isFirstInside, outerSeam, innerSeam, gaps: bySide((side) => innerSeam[side] - outerSeam[side]) };
};

const bySide = (of: (side: Side) => number): Record<Side, number> => ({
  top: of('top'),
  right: of('right'),
  bottom: of('bottom'),
  left: of('left'),
});

/** All round, to the outer seam. */
const outwardOf = ({ inner, width }: Border): number =>
  SIDES.reduce((sum, side) => sum + inner[side], 0) + 8 * width;

/** How many quarter turns counterclockwise the second lies from the first, round the same middle; else undefined. */
const quarterTurns = (a: Plan, b: Plan): number | undefined => {
  if (JSON.stringify(a.part?.places) !== JSON.stringify(b.part?.places)) return undefined;
  const quarters = ((b.part?.turn ?? 0) - (a.part?.turn ?? 0)) / (Math.PI / 2);
  return Math.abs(quarters - Math.round(quarters)) < NOISE ? Math.round(quarters) : undefined;
};
