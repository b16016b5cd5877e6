/**
 * Where every mark goes: running distances along each side's start line from a named corner.
 *
 * Running distances are rounded once, each by itself, so that rounding never adds up along a side. A mark at
 * the side's own end is not rounded at all: it is the corner, wherever that lies.
 */

import { type LengthStyle, roundLength, stepOf } from '../length/index.ts';
import { type Design, halvesAt, type PlacedSide, repeatMarks } from './design.ts';
import { cornerSwag } from './fit.ts';
import { isClosed } from './run.ts';

export type MarkKind = 'corner stop' | 'start' | 'centre' | 'stop' | 'corner start' | 'end';

export interface Mark {
  readonly kind: MarkKind;
  /** The repeat it belongs to, counted from 1; undefined for the corner swags' marks and the end. */
  readonly repeat: number | undefined;
  /** Running distance, mm, exact. */
  readonly at: number;
  /** The same, rounded once; mm. */
  readonly rounded: number;
}

export interface SideMarks {
  readonly side: string;
  /** Where the distances start: `top left`, a strip's left end, a closed run's first centre line. */
  readonly corner: string;
  /** mm along the start line, with what is kept clear at its ends. */
  readonly length: number;
  /** Of the start line, 1/mm: a distance times this is an angle seen from the centre it is bent about. */
  readonly curvature: number;
  /** How many kinds of swag take turns on it: 1 where all are alike. */
  readonly kinds: number;
  readonly marks: readonly Mark[];
}

/** The marks of every side, in the order in which a person meets them. `style` says how they are rounded. */
export const marksOf = (design: Design, style: LengthStyle): readonly SideMarks[] =>
  design.sides.map((side) => sideMarks(design, side, style));

const sideMarks = (design: Design, side: PlacedSide, style: LengthStyle): SideMarks => {
  const { name, begins, curvature, ends } = side.run;
  const length = side.run.length + 2 * ends;
  const asMeasured = { ...side, tear: undefined };
  // A closed run has no end to begin at: it is measured from its first crown, all the way round.
  const zero = isClosed(side.run) ? repeatMarks(asMeasured, 0).centre : undefined;
  const marks: Mark[] = [];
  const put = (kind: MarkKind, along: number, repeat?: number): void => {
    const at = zero === undefined ? ends + along : roundTo(along - zero, length);
    const last = marks.at(-1);
    const isEnd = Math.abs(at - length) < SAME_MARK;
    if (isEnd) marks.push({ kind, repeat, at: length, rounded: length });
    // The corner's mark and the last stop come from two chains of sums: one place has one number.
    else if (last && Math.abs(at - last.at) < SAME_MARK) marks.push({ ...last, kind, repeat });
    else marks.push({ kind, repeat, at, rounded: roundLength(at, style) });
  };
  const toCorner = cornerSwag(design)?.fit.toCorner;
  if (toCorner !== undefined) put('corner stop', toCorner);
  for (let i = 0; i < side.places; i++) {
    const { start, centre, stop } = repeatMarks(asMeasured, i);
    const halves = halvesAt(side, i);
    if (halves.includes('first')) put('start', start, i + 1);
    put('centre', centre, i + 1);
    if (halves.includes('second')) put('stop', stop, i + 1);
  }
  if (toCorner !== undefined) put('corner start', side.run.length - toCorner);
  if (zero === undefined) put('end', side.run.length + ends);
  return { side: name, corner: begins, length, curvature, kinds: side.cells.length, marks };
};

/** Marks nearer than this (mm) are one mark: rounding of a chain of closed forms. */
const SAME_MARK = 1e-6;

/** A distance round a closed run of a length: a hair before the full turn is none at all. */
const roundTo = (along: number, length: number): number => {
  const at = along - length * Math.floor(along / length);
  return at < SAME_MARK || length - at < SAME_MARK ? 0 : at;
};

/** The most that a mark is away from its true place, mm: half the rounding step. */
export const markError = (style: LengthStyle): number => stepOf(style) / 2;
