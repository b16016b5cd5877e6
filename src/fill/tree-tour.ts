/**
 * The way round a tree at a distance from it: one closed line of lines and arcs that never crosses itself,
 * without corners.
 *
 * It is the tour of a spanning tree (each branch once on each side; A. Carlson, A. Paley and J. Gray,
 * "Algorithmic quilting", Bridges 2015), drawn beside the branches instead of on them. Round an outer corner
 * it is an arc about the tree's point; an inner corner is rounded as far as its branches allow.
 */

import {
  add,
  angleOf,
  arcBetween,
  distance,
  leftOf,
  type Path,
  type Piece,
  type Point,
  polar,
  positiveAngle,
  scale,
  subtract,
  TURN,
  unit,
} from '../geometry/index.ts';
import type { Tree } from './tree.ts';

/** A stretch beside one branch, walked with the tree on the left. */
interface Step {
  readonly from: number;
  readonly to: number;
}

/**
 * The closed line at `away` mm from the branches that hang on point `start`; inner corners get radii up to
 * `rounding` mm.
 */
export const tourBeside = (tree: Tree, start: number, away: number, rounding: number): Path => {
  const { points, next } = tree;
  if (next[start]!.length === 0) {
    const p = points[start]!;
    const at = add(p, { x: away, y: 0 });
    return {
      closed: true,
      pieces: [{ kind: 'arc', center: p, radius: away, start: 0, sweep: TURN, from: at, to: at }],
    };
  }
  const first: Step = { from: start, to: next[start]![0]! };
  const steps: Step[] = [];
  let step = first;
  do {
    steps.push(step);
    step = { from: step.to, to: nextRight(tree, step) };
  } while ((step.from !== first.from || step.to !== first.to) && steps.length <= 2 * points.length);

  const corners = steps.map((s, i) => cornerAfter(tree, s, steps[(i + 1) % steps.length]!, away, rounding));
  const pieces: Piece[] = [];
  corners.forEach((corner, i) => {
    const before = corners[(i + corners.length - 1) % corners.length]!;
    const from = before.to;
    if (distance(from, corner.from) > 1e-9) pieces.push({ kind: 'line', from, to: corner.from });
    if (corner.piece) pieces.push(corner.piece);
  });
  return { closed: true, pieces };
};

/** The branch to the right at the end of a step: the first one counterclockwise from the way back. */
const nextRight = ({ points, next }: Tree, { from, to }: Step): number => {
  const at = points[to]!;
  const back = angleOf(subtract(points[from]!, at));
  let best = from;
  let least = TURN;
  for (const n of next[to]!) {
    if (n === from) continue;
    const turn = positiveAngle(angleOf(subtract(points[n]!, at)) - back);
    if (turn < least) {
      least = turn;
      best = n;
    }
  }
  return best;
};

interface Corner {
  /** Where the line beside the branch before ends, and where that beside the next begins. */
  readonly from: Point;
  readonly to: Point;
  readonly piece: Piece | undefined;
}

const cornerAfter = (tree: Tree, a: Step, b: Step, away: number, rounding: number): Corner => {
  const at = tree.points[a.to]!;
  const back = unit(subtract(tree.points[a.from]!, at));
  const on = unit(subtract(tree.points[b.to]!, at));
  const open = a.from === b.to ? TURN : positiveAngle(angleOf(on) - angleOf(back));
  // The line runs on the right of the way there: left of the way back.
  const from = add(at, scale(leftOf(back), away));
  const to = add(at, scale(leftOf(on), -away));
  if (Math.abs(open - Math.PI) < 1e-9) return { from, to: from, piece: undefined };
  if (open > Math.PI) {
    const piece = arcBetween(at, from, to, true);
    return { from, to, piece };
  }
  const tan = Math.tan(open / 2);
  const shortest = Math.min(distance(at, tree.points[a.from]!), distance(at, tree.points[b.to]!));
  const radius = Math.max(0, Math.min(rounding, (tan * shortest) / 2 - away));
  const center = add(at, polar(angleOf(back) + open / 2, (away + radius) / Math.sin(open / 2)));
  const along = (away + radius) / tan;
  const [p, q] = [add(from, scale(back, along)), add(to, scale(on, along))];
  if (!(radius > 1e-6)) return { from: p, to: p, piece: undefined };
  return { from: p, to: q, piece: arcBetween(center, p, q, false) };
};
