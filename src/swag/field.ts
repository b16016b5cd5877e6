/**
 * The ground on which swags are laid: the lines that they start on, one for each side, how far they may reach,
 * and what happens at the corners.
 */

import type { Motion } from '../geometry/index.ts';
import {
  type Border,
  type CornerTreatment,
  cornersFrom,
  hasCorners,
  hasEnds,
  layoutKey,
  liesRoundBlock,
  SIDES,
  type Side,
  type Strip,
} from '../plan/index.ts';
import { type Run, straightRun } from './run.ts';

/** A line along the band, a level (mm) square from the line that the swags start on. */
export interface BandLine {
  readonly role: 'seam' | 'block' | 'motif' | 'limit' | 'startLine' | 'margin' | 'clear';
  /** What programs that read a drawing find it by: `inner seam`, `far seam`, `clear circle`. */
  readonly name: string;
  readonly level: number;
}

/** What a band lies round, or beside. All in mm. */
type Around = { readonly kind: 'nothing' | 'quilt' | 'block' } | Motif;

/** A motif that a round frame closes round; radii are from its centre. */
export interface Motif {
  readonly kind: 'motif';
  /** How many swags close round it. */
  readonly count: number;
  readonly radius: number;
  /** Of the circle that is kept clear, and of the limit; Infinity where there is none. */
  readonly clear: number;
  readonly within: number;
  /** Of the nearest and the farthest stitching. */
  readonly nearest: number;
  readonly farthest: number;
  /** How far channels reach from the stitching towards the motif, and away from it. */
  readonly towards: number;
  readonly away: number;
}

interface Band {
  /** What a person calls the band. */
  readonly name: string;
  readonly from: 'inner' | 'outer';
  /** mm from seam to seam. */
  readonly width: number;
  /** mm from the seam that the swags leave from to the line that they start on. */
  readonly startMargin: number;
  /** The level of the line that marks are measured along: 0, but for a row that shares another's. Mitres pass its ends. */
  readonly marksAt: number;
  /** mm kept clear of the other seam. */
  readonly farMargin: number;
  /** mm from the start line to the far margin: what stitching and outward channels may use. */
  readonly room: number;
  readonly around: Around;
  /** All lines of the band, from the near one. */
  readonly lines: readonly BandLine[];
  /** The levels from which and to which centre lines are drawn. */
  readonly across: { readonly from: number; readonly to: number };
  /** The levels between which cloth is quilted: swags leave the near one, or hold to it with their inward channels. */
  readonly near: number;
  readonly far: number;
  /** Whether the far level is the band's end, and not only as far as channels reach. */
  readonly isBounded: boolean;
}

/** A band of one run, which is open or closes on itself, or of several that come to corners. */
export type Field = Band & ({ readonly corners: 'none'; readonly runs: readonly [Run] } | Cornered);

interface Cornered {
  readonly corners: CornerTreatment;
  readonly runs: readonly Run[];
  /** The mitre's angle to the start line, seen from a swag that comes to the corner (radians). */
  readonly mitre: number;
}

export type CorneredField = Band & Cornered;

/** What the swags fill, as a person calls it: of a frame it is no band that stands there before them. */
export const roomName = ({ name }: Pick<Field, 'name'>): string => (name === 'frame' ? 'room' : name);

/** Whether the corner squares are left free: runs end beside them, and are as long as the inner side. */
export const leavesSquare = ({ corners }: Pick<Field, 'corners'>): boolean =>
  corners === 'open' || corners === 'half';

/** The field of a strip or a border, and of a border whose corners are left open one for each way to treat them. */
export const fieldsOf = (layout: Strip | Border): readonly Field[] => {
  if (hasEnds(layout)) return [fieldOf(layout)];
  const { corners, from } = layout;
  return (corners ? [corners] : cornersFrom(from)).map((tried) => fieldOf({ ...layout, corners: tried }));
};

/** Every length in mm. */
const fieldOf = (layout: Strip | (Border & { readonly corners: CornerTreatment })): Field => {
  const isBlock = liesRoundBlock(layout);
  const fromOuter = hasCorners(layout) && layout.from === 'outer';
  const startMargin = fromOuter ? layout.margin.outer : layout.margin.inner;
  const farMargin = fromOuter ? layout.margin.inner : layout.margin.outer;
  const ground = {
    name: layoutKey(layout),
    from: fromOuter ? ('outer' as const) : ('inner' as const),
    width: layout.width,
    startMargin,
    marksAt: 0,
    farMargin,
    room: layout.width - startMargin - farMargin,
    lines: straightLines(fromOuter ? 'outer' : 'inner', isBlock, layout.width, startMargin, farMargin),
    across: { from: -startMargin, to: layout.width - startMargin },
    near: 0,
    far: layout.width - startMargin - farMargin,
    isBounded: true,
  };
  if (hasEnds(layout))
    return {
      ...ground,
      runs: [straightRun('strip', layout.length - 2 * layout.ends, startMargin, layout.ends)],
      corners: 'none',
      around: { kind: 'nothing' },
    };
  const { corners, inner, round } = layout;
  return {
    ...ground,
    runs: borderRuns({ ...ground, corners }, inner),
    corners,
    mitre: fromOuter ? (3 * Math.PI) / 4 : Math.PI / 4,
    around: { kind: round },
  };
};

/** Which corner each side begins at, seen from the seam that its swags leave from: clockwise from the inner one. */
const BEGINS: Readonly<Record<Field['from'], Readonly<Record<Side, string>>>> = {
  inner: { top: 'top left', right: 'top right', bottom: 'bottom right', left: 'bottom left' },
  outer: { top: 'top right', right: 'bottom right', bottom: 'bottom left', left: 'top left' },
};

/**
 * The four runs of a border whose inner sides are so long (mm), on four square corners. The inner rectangle's lower
 * left corner is the quilt's origin; of two opposite sides that differ both are drawn as long as the longer.
 */
export const borderRuns = (
  { from, width, startMargin, corners }: Pick<Field, 'from' | 'width' | 'startMargin' | 'corners'>,
  inner: Readonly<Record<Side, number>>,
): readonly Run[] => {
  const fromOuter = from === 'outer';
  // The inner seam's corners and the start line's corners lie on the mitres: one width on, two widths longer.
  const out = fromOuter ? width - startMargin : startMargin;
  // Where the corner square is left free, a run is as long as the inner side, whichever seam it leaves from.
  const over = leavesSquare({ corners }) ? 0 : out;
  const w = Math.max(inner.top, inner.bottom);
  const h = Math.max(inner.left, inner.right);
  const quarter = Math.PI / 2;
  const at = (x: number, y: number, angle: number): Motion => ({ flip: false, angle, x, y });
  const placesAt = (w: number, h: number): Readonly<Record<Side, Motion>> =>
    fromOuter
      ? {
          top: at(w + over, h + out, 2 * quarter),
          right: at(w + out, -over, quarter),
          bottom: at(-over, -out, 0),
          left: at(-out, h + over, -quarter),
        }
      : {
          top: at(-over, h + out, 0),
          right: at(w + out, h + over, -quarter),
          bottom: at(w + over, -out, 2 * quarter),
          left: at(-out, -over, quarter),
        };
  return SIDES.map((name, i): Run => {
    const isAcross = name === 'top' || name === 'bottom';
    return {
      name,
      length: inner[name] + 2 * over,
      seam: fromOuter ? inner[name] + 2 * width : inner[name],
      ends: 0,
      curvature: 0,
      begins: BEGINS[from][name],
      next: SIDES[(i + (fromOuter ? 3 : 1)) % 4],
      place: placesAt(w, h)[name],
      alone: (isAcross ? placesAt(inner[name], h) : placesAt(w, inner[name]))[name],
      drawn: (isAcross ? w : h) + 2 * over,
    };
  });
};

/** The two seams, and where there are margins the start line and the far one. */
const straightLines = (
  from: 'inner' | 'outer',
  isBlock: boolean,
  width: number,
  startMargin: number,
  farMargin: number,
): readonly BandLine[] => {
  const far = width - startMargin;
  const edges = isBlock ? (['block', 'limit'] as const) : (['seam', 'seam'] as const);
  const [nearRole, farRole] = from === 'inner' ? edges : edges.toReversed();
  const name = (role: BandLine['role'], seam: string): string => (role === 'seam' ? seam : role);
  return [
    { role: nearRole!, name: name(nearRole!, `${from} seam`), level: -startMargin },
    { role: farRole!, name: name(farRole!, 'far seam'), level: far },
    ...(startMargin > 0 ? [{ role: 'startLine' as const, name: 'start line', level: 0 }] : []),
    ...(farMargin > 0 ? [{ role: 'margin' as const, name: 'margin', level: far - farMargin }] : []),
  ];
};
