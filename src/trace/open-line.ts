/**
 * A drawn line that is not closed has no ground inside it: what is found is the line's own rim, out on one side and back
 * on the other. It is far thinner than any template, and turns back on itself at two places, between which it is open.
 */

import { add, distance, type Point, scale } from '../geometry/index.ts';
import { ringArea } from './contour.ts';

/** Pens and pencils draw no wider (mm), and no template is so thin. */
const THINNEST = 3;
/** Two ends (mm) that are nearer along the rim than this are one. */
const ONE_END = 10;

export interface OpenLine {
  /** Half-way between the line's two ends. */
  readonly gap: Point;
  /** How far they are apart. */
  readonly wide: number;
}

/** `ring` in mm; undefined where it is no line's rim. */
export const openLine = (ring: readonly Point[]): OpenLine | undefined => {
  const along = [0];
  for (let i = 1; i < ring.length; i++) along.push(along[i - 1]! + distance(ring[i - 1]!, ring[i]!));
  const round = along.at(-1)! + distance(ring.at(-1)!, ring[0]!);
  // A strip so wide and as long as half its rim has that area.
  const width = (2 * Math.abs(ringArea(ring))) / round;
  if (!(width < THINNEST)) return undefined;
  const reach = Math.max(1, Math.round((2 * width * ring.length) / round));
  const turned = ring.map((_, i) => distance(ring.at(i - reach)!, ring[(i + reach) % ring.length]!));
  const order = turned.map((_, i) => i).sort((a, b) => turned[a]! - turned[b]!);
  const first = order[0]!;
  const isApart = (i: number): boolean => {
    const between = Math.abs(along[i]! - along[first]!);
    return Math.min(between, round - between) > ONE_END;
  };
  const [a, b] = [ring[first]!, ring[order.find(isApart) ?? first]!];
  return { gap: scale(add(a, b), 1 / 2), wide: distance(a, b) };
};
