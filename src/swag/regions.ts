/**
 * The areas that one repeat makes and that can be filled: inside the innermost channel, each channel's band,
 * and the ground between the outermost line and the far margin. In the frame of the repeat's first half.
 *
 * Of two rows the near one has what is inside it and what lies between the two, the far one what lies beyond.
 *
 * Their edges are the channels' own lines, the stitching, and the edges of the repeat; together they make up
 * the repeat, without a gap and without an overlap.
 */

import { bandsOf, EMPTY_REGION, type Path, parallelIn, type Region } from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import {
  betweenArea,
  cellBeyond,
  groundArea,
  type MitredEnds,
  mitredEnds,
  NO_MITRES,
  swagArea,
  wholeSwag,
} from './cell-areas.ts';
import { CHANNEL_SIDES, type ChannelSide, ownChannels, reachesOf } from './channels.ts';
import type { Cell, Design, Placed } from './design.ts';

export type SwagRegion =
  | { readonly kind: 'swag' | 'between' | 'background'; readonly name: string; readonly region: Region }
  | {
      readonly kind: 'channel';
      /** `outward 1`, `inward 2`. */
      readonly name: string;
      readonly region: Region;
      readonly side: ChannelSide;
      /** Counted from 1, away from the stitching. */
      readonly number: number;
      /** mm from the stitching to its nearer edge, and its width. */
      readonly from: number;
      readonly width: number;
    };

/**
 * The regions of a repeat whose halves are copies of one cell; those in which nothing is left are empty. `ends`
 * are those of its first half.
 */
export const regionsOf = (
  cell: Cell,
  design: Design,
  wanted: Channels,
  ends: MitredEnds = NO_MITRES,
): readonly SwagRegion[] => {
  const swag = wholeSwag(cell);
  const channels = ownChannels(design, wanted);
  const beyond = cellBeyond(cell, design);
  const areas = {
    outward: beyond ? betweenArea(cell, design, beyond, ends) : groundArea(cell, design, ends),
    inward: swagArea(cell, design),
  };
  const reaches = { outward: reachesOf(channels.outward), inward: reachesOf(channels.inward) };
  const outward = bandsOf(areas.outward, swag, reaches.outward, channels.points);
  const inward = bandsOf(areas.inward, swag, reaches.inward, channels.points);
  const bands = { outward, inward };
  const inside: SwagRegion = { kind: 'swag', name: 'swag', region: inward.at(-1)! };
  const outside = beyond ? 'between' : 'background';
  return [
    ...(design.row > 1 ? [] : [inside]),
    ...CHANNEL_SIDES.flatMap((side) =>
      channels[side].map(
        (width, i): SwagRegion => ({
          kind: 'channel',
          name: `${side} ${i + 1}`,
          region: bands[side][i]!,
          side,
          number: i + 1,
          from: reaches[side][i]! - width,
          width,
        }),
      ),
    ),
    {
      kind: outside,
      name: outside,
      region: design.field.isBounded ? outward.at(-1)! : EMPTY_REGION,
    },
  ];
};

/** A band's middle line over the whole repeat; in several parts where the band is cut. */
export const bandMiddle = (
  { side, from, width }: SwagRegion & { readonly kind: 'channel' },
  cell: Cell,
  design: Design,
  channels: Channels,
  ends: MitredEnds = NO_MITRES,
): readonly Path[] => {
  const area = side === 'outward' ? groundArea(cell, design, ends) : swagArea(cell, design);
  return parallelIn([wholeSwag(cell)], from + width / 2, area, channels.points);
};

/** Repeats that look alike: copies of one cell that end alike, and so have the same regions. */
export interface Alike {
  readonly cell: Cell;
  /** Of the first half. */
  readonly ends: MitredEnds;
  /** First and second halves of all of them. */
  readonly halves: readonly Placed[];
}

/** Halves put together with all that belong to repeats like theirs. */
export const alikeRepeats = (design: Design, halves: readonly Placed[]): readonly Alike[] => {
  const found: { cell: Cell; ends: MitredEnds; halves: Placed[] }[] = [];
  for (const half of halves) {
    const seen = mitredEnds(half, design);
    const ends = half.half === 'first' ? seen : fromFirst(seen);
    const like = found.find((a) => a.cell === half.cell && endAlike(a.ends, ends));
    if (like) like.halves.push(half);
    else found.push({ cell: half.cell, ends, halves: [half] });
  }
  return found;
};

/** What a second half ends at, seen from the first. */
const fromFirst = ({ own, other, joins }: MitredEnds): MitredEnds => ({
  own: other,
  other: own,
  ...(joins && { joins: { own: joins.other, other: joins.own } }),
});

const endAlike = (a: MitredEnds, b: MitredEnds): boolean =>
  a.own === b.own &&
  a.other === b.other &&
  a.joins?.own === b.joins?.own &&
  a.joins?.other === b.joins?.other;
