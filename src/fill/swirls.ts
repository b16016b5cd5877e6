/**
 * Swirls: hooked spirals that nestle, in one smooth line.
 *
 * Circles are packed so that they touch; a large one becomes a spiral of half circles, stitched in and out again, so
 * that its two strands lie one spacing apart everywhere; a small one a bud, stitched once round. Each grows from the back
 * of another one where their circles touch: the line leaves the other's outer strand in a smooth bend, and comes back to
 * it through a small arc that touches both circles, so that nowhere it has a corner. Neighbours turn opposite ways round,
 * like gears, so that every bend is an easy one. The line goes round a tree, each swirl on both its sides, as in
 * A. Carlson, A. Paley and J. Gray, "Algorithmic quilting", Bridges 2015.
 */

import {
  add,
  angleOf,
  arc,
  closedPath,
  distance,
  openPath,
  type Path,
  type Piece,
  pathLength,
  pieceAt,
  pieceDirection,
  polar,
  positiveAngle,
  probeRegion,
  type Region,
  regionParts,
  reversePath,
  scale,
  subtract,
  TURN,
} from '../geometry/index.ts';
import { barePlaces } from './bare-places.ts';
import { type Circle, contactsOf } from './contact-tour.ts';
import { checked, type Fill, ofParts } from './fill.ts';
import { linked } from './linked.ts';
import { packCircles } from './packing.ts';
import { type Random, randomOf } from './random.ts';
import { stitched } from './stitched.ts';
import { biarc } from './two-arcs.ts';

/**
 * The two strands of a swirl are this share of the spacing apart: between swirls there is more room, and the
 * spacing is what comes out on the whole.
 */
const STRANDS = 0.8;

/** Radii in strand distances: a swirl gains half a turn with each; what is smaller than a spiral can be is a bud. */
const SWIRL_RADII = { largest: 3.4, smallest: 2.15, spiral: 1.4, least: 0.55 } as const;

/** Swirls keep half this share of the spacing from one another, and all of it from the edge. */
const EDGE_GAP = 0.25;

/** The inner strand's last half circle is no smaller than this share of the spacing. */
const LEAST_INNER = 0.29;

/**
 * The arc between two swirls' backs has one of these radii, in strand distances: the first with which the neck between
 * the two, an arc on either side of it, is as wide as this share of a strand distance.
 */
const CROTCHES = [0.35, 0.45, 0.6, 0.8] as const;
const NECK = 0.6;

/** Each is stitched this share of the spacing inside its circle, so that strands of two that touch stay apart. */
const INSIDE = 0.21;

/** What grows from another may lie this share of the spacing away from touching it. */
const REACH = 0.45;

export const swirls: Fill = checked({
  name: 'swirls',
  about: 'hooked spirals that nestle, in one smooth line',
  suits: 'area',
  sewn: 'start at the mouth of the first swirl, sew in and out of each swirl in its turn, and stop where you began or beside it; only through a narrow place it may go there and back on one line',
  crowd: 1,
  takes: ['seed'],
  fill: (region, { spacing, seed }) => {
    const random = randomOf(seed);
    return ofParts(
      regionParts(region).map((part) => swirlsIn(part, spacing, random)),
      'area',
      'a swirl',
    );
  },
});

const swirlsIn = (region: Region, between: number, random: Random): readonly Path[] => {
  const spacing = STRANDS * between;
  const inside = INSIDE * between;
  const packed = packCircles(region, {
    largest: SWIRL_RADII.largest * spacing + inside,
    smallest: SWIRL_RADII.smallest * spacing + inside,
    least: SWIRL_RADII.least * spacing + inside,
    gap: EDGE_GAP * spacing - inside,
    random,
  });
  const touching = contactsOf(packed, REACH * between);
  const probe = probeRegion(region);
  const fits = (piece: Piece): boolean =>
    [0.25, 0.5, 0.75].every((t) => probe.depth(pieceAt(piece, t)) > LINK_EDGE_GAP * between);
  const circles = packed.map((c) => ({ ...c, radius: c.radius - inside }));
  // Where the first swirl sits and faces decides how many others can hang on it: the best of a few tries.
  let best: readonly Root[] = [];
  let covered = -1;
  for (let k = 0; k < TRIES && covered < circles.length; k++) {
    const roots = growAll({ circles, touching, spacing, fits }, random);
    const inFirst = roots.reduce((most, r) => Math.max(most, r.count), 0);
    if (inFirst > covered) {
      covered = inFirst;
      best = roots;
    }
  }
  const lines = best.map(({ root }) => openPath(loopOf(root, spacing)));
  const bare = barePlaces(region, probe, lines, BARE * between);
  if (best.length === 1 && bare.length === 0) return lines;
  const buds = bare.map(({ at, radius }): Swirl => {
    const circle = { center: at, radius: radius - BUD_GAP * between };
    return { circle, mouth: 0, turn: 1, children: [] };
  });
  const closed = [...best.map(({ root }) => root), ...buds].map((root) =>
    closedPath(isBud(root.circle, spacing) ? loopOf(root, spacing) : closedLoopOf(root, spacing)),
  );
  const made = linked(closed, region, between);
  // A small bud that hangs on nothing is left out rather than stitched on its own: its place is not bare.
  const isSmall = (line: Path): boolean => pathLength(line) <= TURN * LONE_BUD * between;
  return made.length === 1 ? made : made.filter((line) => !isSmall(line));
};

const TRIES = 40;

/** Without a bud of this radius (in spacings) the lines round it still lie near enough. */
const LONE_BUD = 0.58;

/** A disc of this many spacings in radius that no line enters is bare, and gets a bud that keeps so far from what is round it. */
const BARE = 1.15;
const BUD_GAP = 0.55;

/** What links two swirls keeps this share of the spacing from the edge. */
const LINK_EDGE_GAP = 0.1;

interface Packing {
  readonly circles: readonly Circle[];
  readonly touching: readonly (readonly number[])[];
  readonly spacing: number;
  /** Whether a link stays in the region. */
  readonly fits: (piece: Piece) => boolean;
}

interface Root {
  readonly root: Swirl;
  readonly count: number;
}

const growAll = (packing: Packing, random: Random): readonly Root[] => {
  const { circles, spacing } = packing;
  const swirlOf = new Map<number, Swirl>();
  const roots: Root[] = [];
  // A swirl of full size begins, because buds carry few others.
  const order = circles
    .map((_, i) => i)
    .sort((i, j) => rank(circles[j]!, spacing) - rank(circles[i]!, spacing));
  const large = circles.filter((c) => rank(c, spacing) > 0).length || circles.length;
  const first = Math.floor(random.between(0, large));
  for (const i of [order[first]!, ...order]) {
    if (i === undefined || swirlOf.has(i)) continue;
    const before = swirlOf.size;
    const root = growFrom(i, packing, swirlOf, random);
    roots.push({ root, count: swirlOf.size - before });
  }
  return roots;
};

const rank = ({ radius }: Circle, spacing: number): number =>
  radius >= SWIRL_RADII.smallest * spacing ? 1 : 0;

const isBud = ({ radius }: Circle, spacing: number): boolean => radius < SWIRL_RADII.spiral * spacing;

/**
 * A circle with its spiral: where its mouth is (the angle seen from its centre), and which way round it winds
 * inwards.
 */
interface Swirl {
  readonly circle: Circle;
  readonly mouth: number;
  readonly turn: 1 | -1;
  /**
   * In the order of the outer strand from the mouth. The strand is left at the angle `from` from the mouth and taken up
   * again at `on`; the child's own outer strand begins at its angle `begin`.
   */
  readonly children: readonly Child[];
}

interface Child {
  readonly from: number;
  readonly on: number;
  readonly crotch: Piece;
  /** For a bud, the arc that leads on to it. */
  readonly lead: Piece | undefined;
  readonly begin: number;
  readonly swirl: Swirl;
}

const growFrom = (
  root: number,
  { circles, touching, spacing, fits }: Packing,
  swirlOf: Map<number, Swirl>,
  random: Random,
): Swirl => {
  const first: Swirl = {
    circle: circles[root]!,
    mouth: random.between(-Math.PI, Math.PI),
    turn: 1,
    children: [],
  };
  swirlOf.set(root, first);
  const startOf = new Map<Swirl, number>([[first, 0]]);
  for (let queue = [root]; queue.length > 0; ) {
    const later: number[] = [];
    for (const i of queue) {
      const swirl = swirlOf.get(i)!;
      const { center, radius } = swirl.circle;
      const offers = touching[i]!.filter((j) => !swirlOf.has(j))
        .map((j) => ({
          j,
          at: positiveAngle(swirl.turn * (angleOf(subtract(circles[j]!.center, center)) - swirl.mouth)),
        }))
        .sort((a, b) => a.at - b.at);
      let taken = startOf.get(swirl)! + LEAST_STRETCH;
      const last = lastOf(swirl.circle, spacing, startOf.get(swirl)!) - LEAST_STRETCH;
      for (const { j, at } of offers) {
        const other = circles[j]!;
        const crotch = crotchOf(radius, other.radius, distance(center, other.center), spacing);
        if (!crotch) continue;
        const bud = isBud(other, spacing);
        const from = at - (bud ? crotch.here : bendFor(radius, spacing) / radius);
        if (from < taken || at + crotch.here > last) continue;
        const back = crotchArc(swirl, at, other, crotch, 1);
        const lead = crotchArc(swirl, at, other, crotch, -1);
        if (!fits(back) || !fits(lead)) continue;
        const child: Swirl = {
          circle: other,
          mouth: angleOf(subtract(center, other.center)),
          turn: swirl.turn === 1 ? -1 : 1,
          children: [],
        };
        (swirl.children as Child[]).push({
          from,
          on: at + crotch.here,
          crotch: back,
          lead: bud ? lead : undefined,
          begin: crotch.there,
          swirl: child,
        });
        startOf.set(child, crotch.there);
        swirlOf.set(j, child);
        later.push(j);
        taken = at + crotch.here + LEAST_STRETCH;
      }
    }
    queue = later;
  }
  return first;
};

/** Between two that grow from one strand there is a stretch of it (radians). */
const LEAST_STRETCH = 0.02;

/** Where a strand may be left at the latest: only the first arc of a spiral lies on the circle itself. */
const lastOf = (circle: Circle, spacing: number, begin: number): number =>
  isBud(circle, spacing) ? TURN - begin : firstSweep(circle.radius, spacing) - 0.13;

/** How one grows from another: the radius of the arc between them, and where it touches both, from their centres. */
interface Crotch {
  readonly rho: number;
  readonly here: number;
  readonly there: number;
}

/** The circle that touches two circles from outside, with centres `d` apart; undefined where the neck is too thin. */
const crotchOf = (r: number, other: number, d: number, spacing: number): Crotch | undefined => {
  for (const share of CROTCHES) {
    const rho = share * spacing;
    const [a, b] = [r + rho, other + rho];
    const cosine = (a * a + d * d - b * b) / (2 * a * d);
    if (!(Math.abs(cosine) < 1)) continue;
    const here = Math.acos(cosine);
    if (2 * (a * Math.sin(here) - rho) >= NECK * spacing)
      return { rho, here, there: Math.acos((b * b + d * d - a * a) / (2 * b * d)) };
  }
  return undefined;
};

/** The arc from the child's circle back to this one (`side` 1, after the contact), or from this one to it (−1). */
const crotchArc = (
  { circle, mouth, turn }: Swirl,
  at: number,
  child: Circle,
  { rho, here }: Crotch,
  side: 1 | -1,
): Piece => {
  const toward = mouth + turn * (at + side * here);
  const center = add(circle.center, polar(toward, circle.radius + rho));
  const [own, its] = [positiveAngle(toward + Math.PI), angleOf(subtract(child.center, center))];
  const [from, to] = side === 1 ? [its, own] : [own, its];
  const sweep = -turn * positiveAngle(-turn * (to - from));
  return arc(center, rho, from, sweep);
};

/** How far before the contact (mm along the outer strand) a new swirl's strand begins to bend away. */
const bendFor = (radius: number, spacing: number): number => Math.min(1.5 * spacing, 0.75 * radius);

/**
 * How far the outer strand follows its circle, from the mouth on: three quarters round, less where that would
 * meet the mouth's own bend.
 */
const firstSweep = (radius: number, spacing: number): number =>
  Math.min(1.5 * Math.PI, 2 * Math.PI - (3 * spacing) / radius);

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

/** The whole line round a swirl that grows from none: its mouth is closed by half a circle. */
const closedLoopOf = (swirl: Swirl, spacing: number): Piece[] => {
  const { circle, mouth, turn } = swirl;
  const middle = add(circle.center, polar(mouth, circle.radius - spacing / 2));
  const cap = arc(middle, spacing / 2, mouth + Math.PI, turn * Math.PI);
  return stitched([...loopOf(swirl, spacing), cap]);
};

/**
 * The line round a swirl and all that grow from it: from `begin` (an angle from its mouth) in along the outer strand,
 * out along the inner one.
 */
const loopOf = (swirl: Swirl, spacing: number, begin = 0): Piece[] => {
  const { center, radius } = swirl.circle;
  const pieces: Piece[] = [];
  let at = begin;
  const outTo = (to: number): Piece =>
    arc(center, radius, swirl.mouth + swirl.turn * at, swirl.turn * (to - at));
  for (const { from, on, crotch, lead, begin: childBegin, swirl: child } of swirl.children) {
    const stretch = outTo(from);
    const row = reversePath(openPath(loopOf(child, spacing, childBegin))).pieces;
    const joined = lead
      ? [lead]
      : biarc(stretch.to, pieceDirection(stretch, 1), row[0]!.from, pieceDirection(row[0]!, 0));
    pieces.push(stretch, ...joined, ...row, crotch);
    at = on;
  }
  if (isBud(swirl.circle, spacing)) return stitched([...pieces, outTo(TURN - begin)]);
  const outer = strand(swirl, spacing, spacing / 2);
  const inner = strand(swirl, spacing, -spacing / 2);
  pieces.push(outTo(firstSweep(radius, spacing)), ...outer.slice(1));
  // The hook: half a circle from the outer strand's end round to the inner one's.
  const [a, b] = [outer.at(-1)!.to, inner.at(-1)!.to];
  const middle = scale(add(a, b), 0.5);
  pieces.push(arc(middle, distance(a, b) / 2, angleOf(subtract(a, middle)), swirl.turn * Math.PI));
  pieces.push(...reversePath(openPath(inner)).pieces);
  return stitched(pieces);
};
