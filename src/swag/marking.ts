/**
 * Where every mark goes: running distances along each side's start line from a named corner.
 *
 * Running distances are rounded once, each by itself, so that rounding never adds up along a side. A mark at
 * the side's own end is not rounded at all: it is the corner, wherever that lies.
 */

import { type LengthStyle, roundLength, stepOf } from '../length/index.ts';
import type { Design, PlacedSide } from './design.ts';
import type { SideName } from './field.ts';
import { roundFrame } from './ring-marks.ts';

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
  readonly side: SideName;
  /** Where the distances start: `top left`, or for a strip its left end. */
  readonly corner: string;
  /** mm along the start line. */
  readonly length: number;
  readonly marks: readonly Mark[];
}

/**
 * The marks of every side, in the order in which a person meets them. `style` says how they are rounded. A round
 * frame has no sides to lay a tape along: its marks are `ringMarks`.
 */
export const marksOf = (design: Design, style: LengthStyle): readonly SideMarks[] =>
  roundFrame(design) ? [] : design.sides.map((side) => sideMarks(design, side, style));

const sideMarks = (design: Design, side: PlacedSide, style: LengthStyle): SideMarks => {
  const { length, name } = side.run;
  const { pose, gap } = side.fit.seat;
  const share = 2 * pose.halfSpan + gap;
  const marks: Mark[] = [];
  const put = (kind: MarkKind, at: number, repeat?: number): void => {
    const isEnd = Math.abs(at - length) < SAME_MARK;
    const last = marks.at(-1);
    if (isEnd) marks.push({ kind, repeat, at: length, rounded: length });
    // The corner's mark and the last stop come from two chains of sums: one place has one number.
    else if (last && Math.abs(at - last.at) < SAME_MARK) marks.push({ ...last, kind, repeat });
    else marks.push({ kind, repeat, at, rounded: roundLength(at, style) });
  };
  const toCorner = design.corner?.fit.toCorner;
  if (toCorner !== undefined) put('corner stop', toCorner);
  for (let i = 0; i < side.fit.repeats; i++) {
    // From join to join, so that without a gap a stop mark and the next start mark are one number.
    put('start', side.inset + i * share + gap / 2, i + 1);
    put('centre', side.inset + (i + 0.5) * share, i + 1);
    put('stop', side.inset + (i + 1) * share - gap / 2, i + 1);
  }
  if (toCorner !== undefined) put('corner start', length - toCorner);
  put('end', length);
  return { side: name, corner: startCorner(design, name), length, marks };
};

/** Marks nearer than this (mm) are one mark: rounding of a chain of closed forms. */
const SAME_MARK = 1e-6;

/** The corner at a side's left end, seen from the seam that its swags leave from. */
const startCorner = (design: Design, name: SideName): string => {
  if (name === 'strip' || name === 'frame') return 'left end';
  const fromInner = { top: 'top left', right: 'top right', bottom: 'bottom right', left: 'bottom left' };
  const fromOuter = { top: 'top right', right: 'bottom right', bottom: 'bottom left', left: 'top left' };
  return (design.field.from === 'outer' ? fromOuter : fromInner)[name];
};

/** The most that a mark is away from its true place, mm: half the rounding step. */
export const markError = (style: LengthStyle): number => stepOf(style) / 2;
