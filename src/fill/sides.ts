/**
 * Straight lines on the sides of an area that lies along a band, each at the same angle to its side, that meet on the
 * mitres.
 *
 * From one side to the next a family of lines is mirrored in the mitre between them, so that of every two sides beside
 * one another the second leans as the first does in a looking glass. Lines that come to a mitre keep their spacing
 * from its corner to the last digit: so both sides' lines end on it in the same places. What a side's length leaves
 * over is shared among the gaps in its middle. No line lies on a mitre, where two sides would both stitch it.
 */

import { clipperOf, type Path, polyline, type Region } from '../geometry/index.ts';
import { type FieldSide, MOST_ELEMENTS } from './fill.ts';

/** Lines flatter than this (radians) are level. */
const LEVEL = 1e-6;

/** Fewer gaps than this in a side's middle would show what they take up: there all gaps of the side share it. */
const FEWEST_GAPS = 4;

/** Undefined where there would be too many. */
export const linesOnSides = (
  region: Region,
  sides: readonly FieldSide[],
  angles: readonly number[],
  spacing: number,
): Path[] | undefined => {
  const across = sides.reduce((sum, s) => sum + s.length + 2 * Math.abs(s.to - s.from), 0);
  if (!((angles.length * across) / spacing < MOST_ELEMENTS)) return undefined;
  // What falls on a straight stretch of the edge would only be stitched over it.
  const clip = clipperOf(region, 'left out');
  const alternate = sides.length % 2 === 0;
  return sides.flatMap((side, i) =>
    angles.flatMap((angle) => {
      const leaning = alternate && i % 2 === 1 ? Math.PI - angle : angle;
      return familyOn(side, leaning, spacing).flatMap((path, k) =>
        clip(side.lay(k % 2 === 0 ? path : reversed(path))),
      );
    }),
  );
};

const reversed = ({ pieces }: Path): Path =>
  polyline([pieces.at(-1)!.to, ...pieces.toReversed().map((p) => p.from)]);

/** One family's lines in a side's own frame, cut to the side. */
const familyOn = (side: FieldSide, angle: number, spacing: number): readonly Path[] => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  if (Math.abs(s) < LEVEL) {
    const first = Math.ceil(side.from / spacing);
    const count = Math.floor(side.to / spacing) - first + 1;
    return Array.from({ length: Math.max(0, count) }, (_, k) => (first + k) * spacing).flatMap((y) =>
      cutToSide(side, 0, y, 1, 0),
    );
  }
  return startsOn(side, c / s, spacing / Math.abs(s)).flatMap((x) => cutToSide(side, x, 0, c, s));
};

/** Where lines meet the side's own x axis, `pitch` mm apart; each goes `slope` mm along for every mm across. */
const startsOn = (side: FieldSide, slope: number, pitch: number): readonly number[] => {
  const { length, mitre, from, to } = side;
  const lean = mitre === undefined ? 0 : 1 / Math.tan(mitre);
  const widest = Math.max(0, ...[from, to].map((y) => Math.max(y * (lean - slope), y * (lean + slope))));
  const beyond = Math.ceil(widest / pitch);
  if (mitre === undefined) {
    // From its middle on both ways, so that both its halves look alike.
    const half = Math.ceil(length / 2 / pitch) + beyond;
    return Array.from({ length: 2 * half + 1 }, (_, k) => length / 2 + (k - half) * pitch);
  }
  // How far along from its corner a line may start that comes to the mitre there.
  const reach = (towards: number): number => Math.max(0, ...[from, to].map((y) => -y * (lean + towards)));
  const [atStart, atEnd] = [reach(slope), reach(-slope)].map((r) => Math.ceil(r / pitch) + 0.5) as [
    number,
    number,
  ];
  const between = length - (atStart + atEnd) * pitch;
  if (between / pitch >= FEWEST_GAPS) {
    const gaps = Math.round(between / pitch);
    const before = Array.from({ length: atStart + 0.5 + beyond }, (_, k) => (k - beyond + 0.5) * pitch);
    const after = Array.from({ length: atEnd + 0.5 + beyond }, (_, k) => length - (atEnd - k) * pitch);
    const middle = Array.from({ length: gaps - 1 }, (_, k) => atStart * pitch + ((k + 1) * between) / gaps);
    return [...before, ...middle, ...after];
  }
  const gaps = Math.max(1, Math.round(length / pitch));
  return Array.from({ length: gaps + 2 * beyond }, (_, k) => ((k - beyond + 0.5) * length) / gaps);
};

/** The stretch within a side of the line through a point along (c, s). */
const cutToSide = (
  { length, from, to, mitre }: FieldSide,
  x: number,
  y: number,
  c: number,
  s: number,
): readonly Path[] => {
  const lean = mitre === undefined ? 0 : 1 / Math.tan(mitre);
  // What must not be negative, at the point and for every mm along the line.
  const bounds: readonly (readonly [number, number])[] = [
    [y - from, s],
    [to - y, -s],
    [x + lean * y, c + lean * s],
    [length - x + lean * y, lean * s - c],
  ];
  let [first, last] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [at, along] of bounds) {
    if (Math.abs(along) < 1e-12) {
      if (at < 0) return [];
    } else if (along > 0) first = Math.max(first, -at / along);
    else last = Math.min(last, -at / along);
  }
  if (!(last - first > LEAST_LENGTH)) return [];
  const place = (t: number) => ({ x: x + t * c, y: y + t * s });
  return [polyline([place(first), place(last)])];
};

/** Shorter ends of a line (mm) are none. */
const LEAST_LENGTH = 1e-3;
