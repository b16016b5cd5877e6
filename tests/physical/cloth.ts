/**
 * The cloth as it lies before a person: its seams by the names that a card gives them, each side as she sees it with
 * the seam of the swags towards her. All of it is made from the plan's own measures.
 */

import type { Border, Plan } from '../../src/plan/index.ts';
import { minus, plus, type Spot } from './acrylic.ts';

/** A place on the cloth with two ways from it: on along the marks, and away from her. */
export interface Stand {
  readonly at: Spot;
  readonly along: Spot;
  readonly up: Spot;
}

export const from = ({ at, along, up }: Stand, a: number, u: number): Spot => plus(plus(at, along, a), up, u);
/** How far a place lies along and up. */
export const seenFrom = ({ at, along, up }: Stand, p: Spot): { along: number; up: number } => {
  const d = minus(p, at);
  return { along: d.x * along.x + d.y * along.y, up: d.x * up.x + d.y * up.y };
};

type Name = 'top' | 'right' | 'bottom' | 'left';
const AWAY: Readonly<Record<Name, Spot>> = {
  top: { x: 0, y: 1 },
  right: { x: 1, y: 0 },
  bottom: { x: 0, y: -1 },
  left: { x: -1, y: 0 },
};
const OPPOSITE = { top: 'bottom', right: 'left', bottom: 'top', left: 'right' } as const;

/** The cloth round an inner rectangle whose lower left corner is the origin. */
export class BorderCloth {
  private readonly layout: Border;
  private readonly size: { readonly w: number; readonly h: number };

  /** With sides that differ the side that is looked at has its own length. */
  constructor(layout: Border, looked: Name) {
    this.layout = layout;
    const { inner } = layout;
    const of = (a: Name, b: Name): number =>
      looked === a || looked === b ? inner[looked] : Math.max(inner[a], inner[b]);
    this.size = { w: of('top', 'bottom'), h: of('left', 'right') };
  }

  /** A corner of one of the two seams, or of any line so far (mm) outside the inner one. */
  corner(name: string, out: number): Spot {
    const [high, side] = name.split(' ');
    if (!/^(top|bottom) (left|right)$/.test(name)) throw new Error(`No corner is called ${name}`);
    return {
      x: side === 'right' ? this.size.w + out : -out,
      y: high === 'top' ? this.size.h + out : -out,
    };
  }

  /** mm outside the inner seam; a frame round a block has names of its own for both. */
  out(seam: string): number {
    const names =
      this.layout.round === 'block'
        ? ['edge of the block', 'outer edge of the frame']
        : ['inner seam', 'outer seam'];
    const i = names.indexOf(seam);
    if (i < 0) throw new Error(`Nothing here is called ${seam}`);
    return i * this.layout.width;
  }

  /** From the named corner of a side along it, away from a seam into the border. */
  ways(side: Name, corner: string, seam: string): Pick<Stand, 'along' | 'up'> {
    if (!corner.includes(side)) throw new Error(`${corner} is no corner of ${side}`);
    const up = this.out(seam) === 0 ? AWAY[side] : AWAY[OPPOSITE[side]];
    const other = corner.replace(side, '').trim() as Name;
    return { along: AWAY[OPPOSITE[other]], up };
  }
}

export const borderOf = ({ layout }: Plan): Border => {
  if (layout.kind !== 'border') throw new Error('Not a border');
  return layout;
};
