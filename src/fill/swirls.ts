/**
 * Swirls: hooked spirals that nestle, in one line.
 *
 * Circles are packed so that they touch; each becomes a spiral of half circles, stitched in and out again, so
 * that its two strands lie one spacing apart everywhere. A swirl grows from the back of another one where
 * their circles touch: one strand leaves the other swirl's outer strand in a smooth bend, the other comes
 * back to the contact and turns there in a point, as quilters do it. Neighbours turn opposite ways round,
 * like gears, so that every bend is an easy one.
 */

import {
  add,
  angleOf,
  arc,
  distance,
  openPath,
  type Path,
  type Piece,
  type Point,
  pieceDirection,
  polar,
  positiveAngle,
  type Region,
  regionArea,
  regionParts,
  reversePath,
  scale,
  subtract,
} from '../geometry/index.ts';
import { type Circle, contactsOf } from './contact-tour.ts';
import { checked, type Fill, MOST_ELEMENTS, nothing, ofParts } from './fill.ts';
import { packCircles } from './packing.ts';
import { type Random, randomOf } from './random.ts';
import { biarc } from './two-arcs.ts';

/**
 * The two strands of a swirl are this share of the spacing apart: between swirls there is more room, and the
 * spacing is what comes out on the whole.
 */
const STRANDS = 0.8;

/** Radii of the swirls in strand distances: a swirl gains half a turn with each spacing. */
const SWIRL_RADII = { largest: 3.4, smallest: 2.15, least: 1.3 } as const;

/** Swirls keep half this share of the spacing from one another, and all of it from the edge. */
const EDGE_GAP = 0.25;

/** The inner strand's last half circle is no smaller than this share of the spacing. */
const LEAST_INNER = 0.12;

/** Contacts whose gap is below this (mm) touch. */
const CONTACT = 1e-6;

export const swirls: Fill = checked({
  name: 'swirls',
  about: 'hooked spirals that nestle, in one line',
  suits: 'area',
  takes: ['seed'],
  fill: (region, { spacing, seed }) => {
    if (!(regionArea(region) / (spacing * spacing) < MOST_ELEMENTS))
      return nothing('the spacing is too fine for this area');
    const random = randomOf(seed);
    return ofParts(
      regionParts(region).map((part) => swirlsIn(part, spacing, random)),
      'area',
      'a swirl',
    );
  },
});

const swirlsIn = (region: Region, between: number, random: Random): Path[] => {
  const spacing = STRANDS * between;
  const circles = packCircles(region, {
    largest: SWIRL_RADII.largest * spacing,
    smallest: SWIRL_RADII.smallest * spacing,
    least: SWIRL_RADII.least * spacing,
    gap: EDGE_GAP * spacing,
    random,
  });
  const touching = contactsOf(circles, CONTACT);
  // Where the first swirl sits and faces decides how many others can hang on it: the best of a few tries.
  // Small swirls that hang on no other are left out rather than stitched on their own.
  let best: Swirl[] = [];
  let covered = -1;
  for (let k = 0; k < TRIES && covered < circles.length; k++) {
    const roots = growAll(circles, touching, spacing, random);
    const inFirst = roots.reduce((most, r) => Math.max(most, r.count), 0);
    if (inFirst > covered) {
      covered = inFirst;
      best = roots
        .filter(
          (r) => r.count > 1 || r.root.circle.radius >= SWIRL_RADII.smallest * spacing || roots.length === 1,
        )
        .map((r) => r.root);
    }
  }
  return best.map((root) => openPath(loopOf(root, spacing)));
};

const TRIES = 40;

const growAll = (
  circles: readonly Circle[],
  touching: readonly (readonly number[])[],
  spacing: number,
  random: Random,
): { readonly root: Swirl; readonly count: number }[] => {
  const swirlOf = new Map<number, Swirl>();
  const roots: { root: Swirl; count: number }[] = [];
  const first = Math.floor(random.between(0, circles.length));
  for (let k = 0; k < circles.length; k++) {
    const i = (first + k) % circles.length;
    if (swirlOf.has(i)) continue;
    const before = swirlOf.size;
    const root = growFrom(i, circles[i]!, circles, touching, swirlOf, spacing, random);
    roots.push({ root, count: swirlOf.size - before });
  }
  return roots;
};

/**
 * A circle with its spiral: where its mouth is (the angle seen from its centre), and which way round it winds
 * inwards.
 */
interface Swirl {
  readonly circle: Circle;
  readonly mouth: number;
  readonly turn: 1 | -1;
  /**
   * In the order of the outer strand from the mouth; `at` is the angle from the mouth, and `from` where the
   * strand is left.
   */
  readonly children: { readonly at: number; readonly from: number; readonly swirl: Swirl }[];
}

const growFrom = (
  root: number,
  circle: Circle,
  circles: readonly Circle[],
  touching: readonly (readonly number[])[],
  swirlOf: Map<number, Swirl>,
  spacing: number,
  random: Random,
): Swirl => {
  const first: Swirl = { circle, mouth: random.between(-Math.PI, Math.PI), turn: 1, children: [] };
  swirlOf.set(root, first);
  for (let queue = [root]; queue.length > 0; ) {
    const later: number[] = [];
    for (const i of queue) {
      const swirl = swirlOf.get(i)!;
      const { center, radius } = swirl.circle;
      const bend = bendFor(radius, spacing) / radius;
      const offers = touching[i]!.filter((j) => !swirlOf.has(j))
        .map((j) => ({
          j,
          at: positiveAngle(swirl.turn * (angleOf(subtract(circles[j]!.center, center)) - swirl.mouth)),
        }))
        .sort((a, b) => a.at - b.at);
      let taken = 0.05;
      for (const { j, at } of offers) {
        // Only the first arc of the outer strand lies on the circle itself.
        if (at - bend < taken || at > firstSweep(radius, spacing) - 0.15) continue;
        const child: Swirl = {
          circle: circles[j]!,
          mouth: angleOf(subtract(center, circles[j]!.center)),
          turn: swirl.turn === 1 ? -1 : 1,
          children: [],
        };
        swirl.children.push({ at, from: at - bend, swirl: child });
        swirlOf.set(j, child);
        later.push(j);
        taken = at + 0.02;
      }
    }
    queue = later;
  }
  return first;
};

/** How far before the contact (mm along the outer strand) a new swirl's strand begins to bend away. */
const bendFor = (radius: number, spacing: number): number => Math.min(1.8 * spacing, 0.75 * radius);

/**
 * How far the outer strand follows its circle, from the mouth on: three quarters round, less where that would
 * meet the mouth's own bend.
 */
const firstSweep = (radius: number, spacing: number): number =>
  Math.min(1.5 * Math.PI, 2 * Math.PI - (2.4 * spacing) / radius);

/**
 * The arcs of the strand `out` mm outside the spiral's middle line, from the mouth inwards. After three
 * quarters of the circle the spiral tightens at once, so that it passes two spacings inside its own mouth;
 * half circles follow, each a spacing smaller.
 */
const strand = ({ circle, mouth, turn }: Swirl, spacing: number, out: number): Piece[] => {
  const { center: c0, radius: r0 } = circle;
  const sweep = firstSweep(r0, spacing);
  const pieces = [arc(c0, r0 - spacing / 2 + out, mouth, turn * sweep)];
  let outer = r0;
  let center = c0;
  let angle = mouth + turn * sweep;
  // The radius at which a quarter circle, tangent to the first arc at its end, comes two spacings inside the
  // mouth.
  let next = r0 - 2 * spacing + (2 * spacing * spacing) / r0;
  while (next >= (1 + LEAST_INNER) * spacing - 1e-9 && pieces.length < MOST_HALVES) {
    center = add(center, polar(angle, outer - next));
    outer = next;
    pieces.push(arc(center, outer - spacing / 2 + out, angle, turn * Math.PI));
    angle += turn * Math.PI;
    next = outer - spacing;
  }
  return pieces;
};

/** More turns than any swirl has; the radius gives the true end. */
const MOST_HALVES = 50;

/**
 * The line round a swirl and all that grow from it: from its contact in along the outer strand, out along the
 * inner one.
 */
const loopOf = (swirl: Swirl, spacing: number): Piece[] => {
  const outer = strand(swirl, spacing, spacing / 2);
  const inner = strand(swirl, spacing, -spacing / 2);
  const { center, radius } = swirl.circle;
  const pieces: Piece[] = [];
  let at = 0;
  for (const child of swirl.children) {
    const stretch = arc(center, radius, swirl.mouth + swirl.turn * at, swirl.turn * (child.from - at));
    const row = reversePath(openPath(loopOf(child.swirl, spacing))).pieces;
    const leaving = pieceDirection(stretch, 1);
    const first = row[0]!;
    const joined = biarc(stretch.to, leaving, first.from, pieceDirection(first, 0));
    pieces.push(stretch, ...joined, ...row);
    at = child.at;
  }
  pieces.push(
    arc(center, radius, swirl.mouth + swirl.turn * at, swirl.turn * (firstSweep(radius, spacing) - at)),
  );
  pieces.push(...outer.slice(1));
  // The hook: half a circle from the outer strand's end round to the inner one's.
  const [a, b] = [outer.at(-1)!.to, inner.at(-1)!.to];
  const middle = scale(add(a, b), 0.5);
  pieces.push(arc(middle, distance(a, b) / 2, angleOf(subtract(a, middle)), swirl.turn * Math.PI));
  pieces.push(...reversePath(openPath(inner)).pieces);
  return stitched(pieces);
};

/**
 * Pieces computed by different ways round meet to rounding; the line takes the one before's end as the next
 * one's start.
 */
const stitched = (pieces: readonly Piece[]): Piece[] => {
  let last: Point | undefined;
  return pieces.map((p) => {
    const next = last ? { ...p, from: last } : p;
    last = p.to;
    return next;
  });
};
