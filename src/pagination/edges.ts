/**
 * Where two sheets join: the band that both show, the line down its middle where the upper sheet is cut, and
 * registration crosses on that line. The sheet to the right and the sheet below are cut and lie on top, so that
 * sheets go down in reading order. Crosses are points of the drawing, taken once per join and put on both sheets.
 */

import { type Box, boxHeight, boxWidth, type Motion, middle, mover, type Point } from '../geometry/index.ts';
import type { Cross, Rule, SharedEdge, Side } from './sheet-plan.ts';

/** Shares of a join's length at which crosses stand: far apart, so that a small turn shows; more on long joins. */
const CROSSES = [1 / 6, 5 / 6];
const CROSSES_LONG = [1 / 8, 3 / 8, 5 / 8, 7 / 8];
const LONG_JOIN = 300;

/** The registration points of the overlap between two windows of the drawing, mm. */
export const crossPoints = (a: Box, b: Box): Point[] => {
  const band: Box = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
  const upright = boxHeight(band) > boxWidth(band);
  const length = upright ? boxHeight(band) : boxWidth(band);
  const center = { x: (band.minX + band.maxX) / 2, y: (band.minY + band.maxY) / 2 };
  return (length > LONG_JOIN ? CROSSES_LONG : CROSSES).map((share) =>
    upright ? { x: center.x, y: band.minY + share * length } : { x: band.minX + share * length, y: center.y },
  );
};

export const sharedEdge = (
  live: Box,
  overlap: number,
  rule: Rule,
  neighbour: string,
  place: Motion,
  crosses: readonly Point[],
): SharedEdge => {
  const { side } = rule;
  const band = stripAt(live, side, overlap);
  const outer = stripAt(live, side, overlap / 2);
  const put = mover(place);
  return {
    side,
    neighbour,
    cut: side === 'left' || side === 'top',
    band,
    outer,
    trim: innerSide(outer, side),
    crosses: crosses.map((drawing): Cross => ({ drawing, paper: put(drawing) })),
    labelAt: labelPlace(outer, rule),
  };
};

/** Room that a number at a tick takes before the tick, mm. */
const NUMBER_ROOM = 4.5;

/** The middle of the strip, moved along it to the nearest gap between two numbers of the rule. */
const labelPlace = (outer: Box, rule: Rule): Point => {
  const center = middle({ x: outer.minX, y: outer.minY }, { x: outer.maxX, y: outer.maxY });
  const level = rule.along.x !== 0;
  const half = level ? center.x - rule.zero.x : center.y - rule.zero.y;
  const numbered = [0, ...rule.ticks.filter((t) => t.label !== undefined).map((t) => t.at)];
  const gaps = numbered.slice(1).map((at, i) => (numbered[i]! + at - NUMBER_ROOM) / 2);
  const along = gaps.reduce((best, gap) => (Math.abs(gap - half) < Math.abs(best - half) ? gap : best), 0);
  return level ? { ...center, x: rule.zero.x + along } : { ...center, y: rule.zero.y + along };
};

/** The strip of a given depth along one side of a box. */
const stripAt = (box: Box, side: Side, depth: number): Box => {
  switch (side) {
    case 'left':
      return { ...box, maxX: box.minX + depth };
    case 'right':
      return { ...box, minX: box.maxX - depth };
    case 'top':
      return { ...box, minY: box.maxY - depth };
    case 'bottom':
      return { ...box, maxY: box.minY + depth };
  }
};

const innerSide = (strip: Box, side: Side): SharedEdge['trim'] => {
  const { minX, minY, maxX, maxY } = strip;
  switch (side) {
    case 'left':
      return { from: { x: maxX, y: minY }, to: { x: maxX, y: maxY } };
    case 'right':
      return { from: { x: minX, y: minY }, to: { x: minX, y: maxY } };
    case 'top':
      return { from: { x: minX, y: minY }, to: { x: maxX, y: minY } };
    case 'bottom':
      return { from: { x: minX, y: maxY }, to: { x: maxX, y: maxY } };
  }
};
