/** What a plan asks of a corner whose swag has a part or a template of its own, and cannot have. */

import { closesRound, hasCorners, layoutKey } from './layout-kinds.ts';
import { type Found, madeSo, setOtherwise } from './made-so.ts';
import { cornersFrom, type Plan } from './plan.ts';

export const cornerOfItsOwn = ({ swag, corner, layout, rows }: Plan): readonly Found[] => {
  if (!corner) return [];
  const path = ['corner'];
  if (!hasCorners(layout))
    return [
      {
        path,
        message: `a ${closesRound(layout) ? 'round ' : ''}${layoutKey(layout)} has no corners`,
        expected: 'a border, or a frame round a block',
      },
    ];
  const over = cornersFrom(layout.from).filter((one) => one === 'turn' || one === 'across');
  const { corners } = layout;
  if (corners !== undefined && corners !== 'turn' && corners !== 'across')
    return [
      {
        path,
        message: 'no swag lies over the corners',
        found: `corners: ${corners}`,
        expected: over.map((one) => `corners: ${one}`).join(' or '),
      },
    ];
  if (swag.alternate)
    return [
      {
        path,
        message: 'kinds that take turns end beside a corner, and no swag lies over it',
        expected: 'either corner or alternate',
      },
    ];
  const otherwise = setOtherwise(swag, ['swag'], ON_CENTRE);
  const found: Found[] = [
    ...madeSo(corner, path),
    ...(otherwise.length > 0 ? otherwise : setOtherwise(corner, path, ON_CENTRE)),
  ];
  if (rows.length > 0)
    found.push({
      path,
      message:
        'a corner with a swag of its own has one row, because a second row is fitted only to corners that are made as the sides are',
      found: 'a second row under rows',
      expected: 'either corner or rows',
    });
  return found;
};

/** What a fixed tilt leaves of a side is a gap, and no corner makes up for it. */
const ON_CENTRE =
  'where the corner has a swag of its own, all are set with their crowns on the centre line, because only so both can be as deep';
