/** What a plan asks of two kinds of swag that take turns, and cannot have. */

import { closesRound, hasCorners } from './layout-kinds.ts';
import { type Found, madeSo, setOtherwise } from './made-so.ts';
import type { CornerTreatment, Plan } from './plan.ts';

/** A side begins and ends with the first kind: with a whole swag, or with half of one beside a free corner square. */
export const kindsInTurn = ({ swag, layout, rows, channels }: Plan): readonly Found[] => {
  const { alternate, repeats, gap } = swag;
  if (!alternate) return [];
  const own = ['swag', 'alternate'];
  if (closesRound(layout))
    return [
      {
        path: own,
        message:
          'a round frame has one kind of swag, because it closes where all take the same share of the circle',
        expected: 'a strip, a border or a frame round a block',
      },
    ];
  const shared = new Set(madeSo(swag, ['swag']).map(({ message }) => message));
  const otherwise = setOtherwise(swag, ['swag'], ON_CENTRE);
  const found: Found[] = [
    ...otherwise,
    ...alternate.flatMap((kind, i) => [
      ...madeSo(kind, [...own, i]).filter(({ message }) => !shared.has(message)),
      ...(otherwise.length > 0 ? [] : setOtherwise(kind, [...own, i], ON_CENTRE)),
    ]),
  ];
  if (rows.length > 0)
    found.push({
      path: own,
      message:
        'kinds that take turns stand in one row, because a second row has one kind, and their marks are of two widths',
      found: 'a second row under rows',
      expected: 'either alternate or rows',
    });
  if (gap === 'auto')
    found.push({
      path: ['swag', 'gap'],
      message:
        'kinds that take turns have the gap that is given and touch without one, because how wide both are depends on it',
      found: 'auto',
      expected: '0, or a length',
    });
  if (channels.outward.length > 0)
    found.push({
      path: ['channels', 'outward'],
      message: 'beyond two kinds that take turns no channels are laid yet',
      expected: 'inward channels, or swags of one kind',
    });
  const corners = hasCorners(layout) ? layout.corners : 'open';
  if (corners === 'turn' || corners === 'across')
    found.push({
      path: own,
      message: 'kinds that take turns end beside a corner, because a swag over it would be of neither kind',
      found: `corners: ${corners}`,
      expected: 'corners: meet, open or half',
    });
  else if (corners !== undefined)
    for (const wish of new Set(repeats ?? []))
      if (wish !== undefined && !mayBe(wish, corners))
        found.push({
          path: ['swag', 'repeats'],
          message:
            corners === 'half'
              ? 'with half a swag at both ends of a side two kinds that take turns are an even number'
              : 'a side that begins and ends with the same of two kinds has an odd number of swags',
          found: String(wish),
          expected: corners === 'half' ? 'an even number, 2 at least' : 'an odd number, 3 at least',
        });
  return found;
};

const ON_CENTRE =
  'kinds that take turns are set with their crowns on the centre line, because only so each takes the width that its share of the side leaves it';

const mayBe = (wish: NonNullable<Plan['swag']['repeats']>[number], corners: CornerTreatment): boolean => {
  const isEven = corners === 'half';
  if (typeof wish === 'number') return wish > 1 && (wish % 2 === 0) === isEven;
  return typeof wish !== 'string' || (wish === 'even') === isEven;
};
