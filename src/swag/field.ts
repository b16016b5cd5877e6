/**
 * The ground on which swags are laid: the lines that they start on, one for each side, how far they may reach,
 * and what happens at the corners.
 */

import type { Layout } from '../plan/index.ts';

/** The one line of a frame, which closes round its motif, is called by its own name. */
export type SideName = 'strip' | 'frame' | 'top' | 'right' | 'bottom' | 'left';
export type Corners = 'none' | 'turn' | 'meet' | 'open';

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
  /** What a border lies round: it frames a block, or edges a quilt. */
  readonly round?: 'quilt' | 'block';
}

const SIDES = ['top', 'right', 'bottom', 'left'] as const;

/** The field of a strip or a border. Every length in mm. */
export const fieldOf = (layout: Exclude<Layout, { kind: 'frame' }>): Field => {
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
  };
  if (layout.kind === 'strip') {
    const run: Run = { name: 'strip', length: layout.length, seam: layout.length };
    return { ...ground, runs: [run], corners: 'none' };
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
  return { ...ground, runs, corners: layout.corners, round: layout.round };
};
