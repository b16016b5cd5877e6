/**
 * Stippling: one closed line that wanders through the region like the edge of a jigsaw piece and never
 * crosses itself.
 *
 * It goes round a random tree on evenly spread points (see tree-tour.ts), and is then made even (see relax.ts): stretches
 * beside one another lie about one spacing apart; nowhere do two come nearer than the stated gap.
 */

import {
  add,
  distance,
  flatten,
  leftOf,
  type Path,
  type Point,
  pathLength,
  probeRegion,
  type Region,
  regionParts,
  scale,
  subtract,
  unit,
} from '../geometry/index.ts';
import { barePlaces } from './bare-places.ts';
import { checked, type Fill, ofParts } from './fill.ts';
import { linked } from './linked.ts';
import { gridOf } from './point-grid.ts';
import { type Random, randomOf } from './random.ts';
import { relaxedRound } from './relax.ts';
import { closedCurveThrough, resample, smoothedRound } from './smooth-path.ts';
import { spreadPoints } from './spread.ts';
import { componentsOf, growTree, type Tree } from './tree.ts';
import { tourBeside } from './tree-tour.ts';

/** No two stretches of the line are nearer than this share of the spacing. */
export const STIPPLE_GAP = 0.4;

/** The line is nowhere nearer to the region's edge than this share of the spacing. */
export const STIPPLE_EDGE_GAP = 0.15;

/** The gap that branches are first given; they close up only where a point would be left out. */
const ROOMY_GAP = 0.55;
const CLOSEST_GAP = 0.42;

/**
 * What the tour keeps of the region's edge before it sways: at the tree's points, and beside its branches.
 */
const EDGE_ROOM = 0.4;
const BRANCH_EDGE_ROOM = 0.28;

/** The line runs this share of the spacing beside its tree, whose points are this many spacings apart. */
const AWAY = 0.43;
const APART = 1.65;

const degrees = Math.PI / 180;

export const stipple: Fill = checked({
  name: 'stipple',
  about: 'one line that wanders and never crosses itself',
  suits: 'area',
  sewn: 'start and stop at the same place, anywhere on the line; it never crosses itself, and only through a narrow place it may go there and back on one line',
  crowd: 1,
  takes: ['seed'],
  fill: (region, { spacing, seed }) => {
    const random = randomOf(seed);
    return ofParts(
      regionParts(region).map((part) => meandersIn(part, spacing, random)),
      'area',
      'a line',
    );
  },
});

/** The lines of a stipple in one part of a region: closed, smooth, and all over it. */
export const meandersIn = (region: Region, spacing: number, random: Random): readonly Path[] => {
  const away = AWAY * spacing;
  const margin = away + EDGE_ROOM * spacing;
  const edge = away + BRANCH_EDGE_ROOM * spacing;
  const { points, onEdge } = spreadPoints(region, APART * spacing, margin * 1.001, random);
  const probe = probeRegion(region);
  const tree = growTree(
    points,
    {
      passes: [
        { angle: 80 * degrees, apart: 2 * away + ROOMY_GAP * spacing, longest: 2 * APART * spacing },
        { angle: 58 * degrees, apart: 2 * away + CLOSEST_GAP * spacing, longest: 2 * APART * spacing },
        { angle: 50 * degrees, apart: 2 * away + CLOSEST_GAP * spacing, longest: 3 * APART * spacing },
      ],
      // Along the edge the line should come and go in fingers rather than run beside it.
      reluctance: (a, b) => (a < onEdge && b < onEdge ? ALONG_EDGE : 0),
      allowed: (a, b) => {
        for (let k = 1; k < 12; k++) {
          const t = k / 12;
          const p = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
          if (!(probe.distance(p) >= edge) || !probe.contains(p)) return false;
        }
        return true;
      },
    },
    random,
  );
  const deepEnough = (p: Point): boolean =>
    probe.distance(p) >= STIPPLE_EDGE_GAP * spacing && probe.contains(p);
  const walls = region.loops.flatMap((loop) => sampled(loop, STEP * spacing));
  const lines: Path[] = [];
  const laid: Point[] = [];
  // Between two points that are looked at a line comes a little nearer than they are.
  const gap = Math.hypot(STIPPLE_GAP * spacing, STEP * spacing) + 0.01 * spacing;
  const lay = (tour: Path, kept: readonly Point[], isSure: boolean): void => {
    const others = gridOf<Point>(spacing);
    for (const p of [...laid, ...kept]) others.add(p, p);
    const hasRoom = (p: Point): boolean =>
      deepEnough(p) && others.near(p, gap).every((q) => distance(p, q) >= gap);
    const line = meandering(tour, spacing, [...walls, ...laid, ...kept], hasRoom, random);
    const points = sampled(line, STEP * spacing);
    // The lines before have swayed into its place: they fill it.
    if (!isSure && !points.every(hasRoom)) return;
    lines.push(line);
    // There may be more of them than a call takes as arguments.
    for (const p of points) laid.push(p);
  };
  const parts = worthwhile(tree, ALONE * spacing);
  const tours = parts.map((part) => tourBeside(tree, part[0]!, away, Number.POSITIVE_INFINITY));
  // The way of a long line is kept free by those before it; their branches left room for both.
  const long = tours.map((tour, i) => (parts[i]!.length >= LONG ? sampled(tour, STEP * spacing) : []));
  tours.forEach((tour, i) => {
    lay(tour, long.slice(i + 1).flat(), parts[i]!.length >= LONG || i === 0);
  });
  // A point near others that has no branch to them, or no point at all: there the line did not come.
  for (const { at } of barePlaces(region, probe, lines, BARE * spacing))
    lay(tourBeside({ points: [at], next: [[]] }, 0, away, Number.POSITIVE_INFINITY), [], false);
  return linked(lines, region, spacing);
};

/** Points along a line, at most `step` apart. */
const sampled = (path: Path, step: number): readonly Point[] =>
  resample(flatten(path, 0.02), Math.ceil(pathLength(path) / step) + 1);

/**
 * The tour as a hand would stitch it: nowhere straight and nowhere square. A sway of random numbers smoothed along the
 * line sets it going, and it is made even from there; where that would bring two stretches too near, it is done less.
 */
const meandering = (
  tour: Path,
  spacing: number,
  walls: readonly Point[],
  deepEnough: (p: Point) => boolean,
  random: Random,
): Path => {
  const step = STEP * spacing;
  const count = Math.ceil(pathLength(tour) / step);
  if (count < 12) return tour;
  const points = resample(flatten(tour, 0.01), 2 * Math.ceil(count / 2) + 1).slice(0, -1);
  const noise = points.map(() => ({ x: random.between(-1, 1), y: 0 }));
  const sway = smoothedRound(noise, SWAY_LENGTH / STEP).map((p) =>
    Math.max(-1, Math.min(1, p.x * SWAY_GAIN)),
  );
  for (const share of [1, 0.6, 0.3]) {
    const moved = points.map((p, i) => {
      const before = points[(i + points.length - 1) % points.length]!;
      const after = points[(i + 1) % points.length]!;
      const across = leftOf(unit(subtract(after, before)));
      return add(p, scale(across, share * sway[i]! * SWAY * spacing));
    });
    const rounds = Math.round(share * ROUNDS);
    const soft = relaxedRound(moved, walls, { spacing, step, rounds, fromWalls: FROM_WALLS * spacing });
    if (soft.every(deepEnough) && keepsGap(soft, STIPPLE_GAP * spacing, 2 * spacing, step))
      return closedCurveThrough(soft.filter((_, i) => i % 2 === 0));
  }
  return tour;
};

/**
 * Whether points of a closed line, `step` apart, that are more than `along` apart on it are more than `gap`
 * apart.
 */
const keepsGap = (points: readonly Point[], gap: number, along: number, step: number): boolean => {
  const grid = gridOf<number>(2 * gap);
  points.forEach((p, i) => {
    grid.add(p, i);
  });
  const apart = Math.ceil(along / step);
  // Between two points a line comes a little nearer than they are.
  const needed = Math.hypot(gap, step / 2) + 0.01 * gap;
  return points.every((p, i) =>
    grid.near(p, needed).every((j) => {
      const steps = Math.abs(i - j);
      return Math.min(steps, points.length - steps) < apart || distance(p, points[j]!) >= needed;
    }),
  );
};

/** Steps along the line, over how long it sways, how far at most, and how far it aims to be from the edge; in spacings. */
const STEP = 0.22;
const SWAY_LENGTH = 0.8;
const SWAY = 0.25;
const FROM_WALLS = 0.7;

/** Points this many spacings from all others are a place of their own. */
const ALONE = 1.9;

/** A tree of so many points has a line of its own in any case. */
const LONG = 4;

/** A disc of this many spacings in radius that no line enters is bare. */
const BARE = 1.2;

/** Rounds in which the line is made even. */
const ROUNDS = 24;

/** Smoothing takes most of the noise away; this brings it back to about one. */
const SWAY_GAIN = 3.2;

/** How much later than others branches along the edge are taken. */
const ALONG_EDGE = 0.8;

/**
 * Trees large enough for a line of their own; points left alone inside the region are where the others had no
 * room.
 */
const worthwhile = (tree: Tree, alone: number): number[][] => {
  const parts = componentsOf(tree);
  const large = parts.filter((p, i) => i === 0 || p.length >= LONG);
  const taken = gridOf<Point>(alone);
  const take = (part: readonly number[]): void => {
    for (const k of part) taken.add(tree.points[k]!, tree.points[k]!);
  };
  large.forEach(take);
  // A small one far from all others has a place of its own, behind a neck that no line goes through.
  const lone = parts.slice(1).filter((part) => {
    const isAlone =
      part.length < LONG &&
      part.every((k) =>
        taken.near(tree.points[k]!, alone).every((p) => distance(p, tree.points[k]!) >= alone),
      );
    if (isAlone) take(part);
    return isAlone;
  });
  return [...large, ...lone];
};
