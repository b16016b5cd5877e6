/**
 * The ground on which swags are laid: the lines that they start on, one for each side, how far they may reach,
 * and what happens at the corners.
 */

import type { Layout } from '../plan/index.ts';

/** The one line of a frame, which closes round its motif, is called by its own name. */
export type SideName = 'strip' | 'frame' | 'top' | 'right' | 'bottom' | 'left';
export type Corners = 'none' | 'turn' | 'meet' | 'open';

/** A line along the band, a level (mm) square from the line that the swags start on. */
export interface BandLine {
  readonly role: 'seam' | 'block' | 'motif' | 'limit' | 'startLine' | 'margin' | 'clear';
  /** What programs that read a drawing find it by: `inner seam`, `far seam`, `clear circle`. */
  readonly name: string;
  readonly level: number;
}

/** What a band lies round, or beside. All in mm. */
export type Around = { readonly kind: 'nothing' | 'quilt' | 'block' } | Motif;

/** A motif that a round frame closes round; radii are from its centre. */
export interface Motif {
  readonly kind: 'motif';
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

export interface Run {
  readonly name: SideName;
  /** mm of the line that the swags of this side start on, corner to corner. */
  readonly length: number;
  /** mm of the seam beside it. */
  readonly seam: number;
}

export interface Field {
  readonly runs: readonly Run[];
  readonly corners: Corners;
  readonly from: 'inner' | 'outer';
  /** mm from seam to seam. */
  readonly width: number;
  /** mm from the seam that the swags leave from to the line that they start on. */
  readonly startMargin: number;
  /** mm kept clear of the other seam. */
  readonly farMargin: number;
  /** mm from the start line to the far margin: what stitching and outward channels may use. */
  readonly room: number;
  /** The mitre's angle to the start line, seen from a swag that comes to the corner (radians). */
  readonly mitre: number;
  readonly around: Around;
  /** All lines of the band, from the near one. */
  readonly lines: readonly BandLine[];
  /** The levels between which cloth is quilted: swags leave the near one, or hold to it with their inward channels. */
  readonly near: number;
  readonly far: number;
  /** Whether the far level is the band's end, and not only as far as channels reach. */
  readonly isBounded: boolean;
}

const SIDES = ['top', 'right', 'bottom', 'left'] as const;

/** The field of a strip or a border. Every length in mm. */
export const fieldOf = (layout: Exclude<Layout, { kind: 'frame' }>): Field => {
  const isBlock = layout.kind === 'border' && layout.round === 'block';
  const fromOuter = layout.kind === 'border' && layout.from === 'outer';
  const startMargin = fromOuter ? layout.margin.outer : layout.margin.inner;
  const farMargin = fromOuter ? layout.margin.inner : layout.margin.outer;
  const ground = {
    from: fromOuter ? ('outer' as const) : ('inner' as const),
    width: layout.width,
    startMargin,
    farMargin,
    room: layout.width - startMargin - farMargin,
    mitre: fromOuter ? (3 * Math.PI) / 4 : Math.PI / 4,
    lines: straightLines(fromOuter ? 'outer' : 'inner', isBlock, layout.width, startMargin, farMargin),
    near: 0,
    far: layout.width - startMargin - farMargin,
    isBounded: true,
  };
  if (layout.kind === 'strip') {
    const run: Run = { name: 'strip', length: layout.length, seam: layout.length };
    return { ...ground, runs: [run], corners: 'none', around: { kind: 'nothing' } };
  }
  // The inner seam's corners and the start line's corners lie on the mitres: one width on, two widths longer.
  const outward = fromOuter ? layout.width - startMargin : startMargin;
  const runs = SIDES.map((name): Run => {
    const inner = layout.inner[name];
    const seam = fromOuter ? inner + 2 * layout.width : inner;
    // Where the corner square is left free, a run is as long as the inner side, whichever seam it leaves from.
    const length = layout.corners === 'open' ? inner : inner + 2 * outward;
    return { name, length, seam };
  });
  return { ...ground, runs, corners: layout.corners, around: { kind: layout.round } };
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
