/**
 * Where the foot is halted while it stitches a half swag (needle down, hands and template moved on), and the
 * parts of the edge that it cannot reach.
 */

import { endAlong, startAlong } from '../geometry/index.ts';
import { type Cell, cellContacts } from './design.ts';
import { telling } from './stitching.ts';

export interface Pause {
  /** `the notch before section 2 (vase)`, in the order of the edge. */
  readonly label: string;
  readonly kind: 'notch' | 'corner' | 'mark';
  /** The section that starts at this break, counted from the heel. */
  readonly section: number;
  /** mm of stitching from the start mark. */
  readonly after: number;
}

export interface OutOfReach {
  /** mm along the edge from the heel. */
  readonly from: number;
  readonly to: number;
  /** mm from the deepest place to the stitching. */
  readonly away: number;
}

/** A pause nearer to the start or the crown than this (mm) is the start or the crown itself. */
const SAME_PLACE = 0.5;

/** The breaks that a half swag passes, in the order of its stitching. */
export const pausesOf = (cell: Cell): readonly Pause[] => {
  const { shape } = cell.seat;
  const { template, stitched, sections } = shape.stitching;
  const length = shape.to.along - shape.from.along;
  const pauses = template.breaks.flatMap((b, i): readonly Pause[] => {
    const forward = shape.direction === 'heel-first';
    const after = forward
      ? endAlong(stitched, b.at) - shape.from.along
      : shape.to.along - startAlong(stitched, b.at);
    if (!(after > SAME_PLACE && after < length - SAME_PLACE)) return [];
    const section = sections[i + 1];
    const name = section?.name === undefined ? '' : ` (${section.name})`;
    return [
      { label: `the ${b.kind} at the start of section ${i + 2}${name}`, kind: b.kind, section: i + 2, after },
    ];
  });
  return pauses.sort((a, b) => a.after - b.after);
};

/** The places within the stretch that a half swag uses which the foot cannot touch, from the heel on. */
export const outOfReach = (cell: Cell): readonly OutOfReach[] => {
  const contacts = cellContacts(cell);
  const low = Math.min(...contacts.map((c) => c.from));
  const high = Math.max(...contacts.map((c) => c.to));
  return telling(cell.seat.shape.stitching.stitched)
    .filter((u) => u.from >= low - CONTACT_NOISE && u.to <= high + CONTACT_NOISE)
    .map(({ from, to, away }) => ({ from, to, away }));
};

/** Rounding of lengths along an edge, mm. */
const CONTACT_NOISE = 1e-6;
