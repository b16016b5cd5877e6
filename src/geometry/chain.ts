/** Paths that follow on one another, as one. */

import { openPath, type Path, pathEnd, pathStart, reversePath } from './path.ts';
import { distance, type Point } from './point.ts';

/**
 * Open paths joined end to start as long as they go, over gaps of up to `slack` mm; one that comes round is closed. Closed
 * ones stay as they are.
 */
export const chainPaths = (paths: readonly Path[], slack = 1e-5): Path[] => {
  const open = paths.filter((p) => !p.closed && p.pieces.length > 0);
  const starts = new Map<string, number[]>();
  open.forEach((path, i) => {
    const key = keyAt(pathStart(path)!, 0, 0);
    const known = starts.get(key);
    if (known) known.push(i);
    else starts.set(key, [i]);
  });
  const after = open.map((path) => nearestStart(pathEnd(path)!, open, starts, slack));
  const hasBefore = new Uint8Array(open.length);
  for (const k of after) if (k >= 0) hasBefore[k] = 1;
  const used = new Uint8Array(open.length);
  const found: Path[] = paths.filter((p) => p.closed);
  // Open ones from their beginnings first; what is left comes round.
  for (const first of [...open.keys()].sort((i, k) => hasBefore[i]! - hasBefore[k]!)) {
    if (used[first]) continue;
    const pieces: Path['pieces'][number][] = [];
    let k = first;
    while (k >= 0 && !used[k]) {
      used[k] = 1;
      const before = pieces.at(-1);
      const [head, ...rest] = open[k]!.pieces;
      pieces.push(before ? { ...head!, from: before.to } : head!, ...rest);
      k = after[k]!;
    }
    if (k === first) {
      pieces[0] = { ...pieces[0]!, from: pieces.at(-1)!.to };
      found.push({ pieces, closed: true });
    } else found.push(openPath(pieces));
  }
  return found;
};

const CELL = 1e-3;
const keyAt = ({ x, y }: Point, dx: number, dy: number): string =>
  `${Math.floor(x / CELL) + dx} ${Math.floor(y / CELL) + dy}`;

const nearestStart = (
  end: Point,
  open: readonly Path[],
  starts: ReadonlyMap<string, readonly number[]>,
  slack: number,
): number => {
  let [best, least] = [-1, slack];
  for (let dx = -1; dx <= 1; dx++)
    for (let dy = -1; dy <= 1; dy++)
      for (const k of starts.get(keyAt(end, dx, dy)) ?? []) {
        const away = distance(pathStart(open[k]!)!, end);
        if (away <= least) [best, least] = [k, away];
      }
  return best;
};

/**
 * Open paths joined wherever two ends lie within `slack` mm, whichever way each runs, so that one line is drawn without
 * lifting the pen; one that comes round is closed. Of several that may go on from a place, the first in order does.
 * Closed ones stay as they are, and paths without pieces are left out.
 */
export const joinPaths = (paths: readonly Path[], slack = 1e-5): Path[] => {
  const open = paths.filter((p) => !p.closed && p.pieces.length > 0);
  const ends = new Map<string, number[]>();
  open.forEach((path, i) => {
    for (const at of [pathStart(path)!, pathEnd(path)!]) {
      const key = keyAt(at, 0, 0);
      const known = ends.get(key);
      if (known) known.push(i);
      else ends.set(key, [i]);
    }
  });
  const used = new Uint8Array(open.length);
  /** The first path that is left with an end here, as it runs from here. */
  const goingOnFrom = (at: Point): Path | undefined => {
    let found = open.length;
    for (let dx = -1; dx <= 1; dx++)
      for (let dy = -1; dy <= 1; dy++)
        for (const k of ends.get(keyAt(at, dx, dy)) ?? [])
          if (k < found && !used[k] && reach(open[k]!, at) <= slack) found = k;
    const path = open[found];
    if (!path) return undefined;
    used[found] = 1;
    return distance(pathStart(path)!, at) <= slack ? path : reversePath(path);
  };
  /** All that follow on one another from a place. */
  const walkFrom = (at: Point): Path[] => {
    const walk: Path[] = [];
    for (let next = goingOnFrom(at); next; next = goingOnFrom(pathEnd(next)!)) walk.push(next);
    return walk;
  };
  const joined: Path[] = paths.filter((p) => p.closed);
  open.forEach((path, i) => {
    if (used[i]) return;
    used[i] = 1;
    const after = walkFrom(pathEnd(path)!);
    const before = walkFrom(pathStart(path)!).map(reversePath).reverse();
    const pieces: Path['pieces'][number][] = [];
    for (const each of [...before, path, ...after]) {
      const last = pieces.at(-1);
      const [head, ...rest] = each.pieces;
      pieces.push(last ? { ...head!, from: last.to } : head!, ...rest);
    }
    const comesRound = pieces.length > 1 && distance(pieces[0]!.from, pieces.at(-1)!.to) <= slack;
    if (comesRound) pieces[0] = { ...pieces[0]!, from: pieces.at(-1)!.to };
    joined.push({ pieces, closed: comesRound });
  });
  return joined;
};

const reach = (path: Path, at: Point): number =>
  Math.min(distance(pathStart(path)!, at), distance(pathEnd(path)!, at));
