/** What a plan asks of rows beyond the first, and cannot have. */

import { type LengthStyle, lengthsApart } from '../length/index.ts';
import { closesRound, hasCorners } from './layout-kinds.ts';
import { LEAST_ROOM } from './limits.ts';
import { type Found, madeSo } from './made-so.ts';
import type { Plan } from './plan.ts';

export const rowsBeyond = ({ rows, layout }: Plan, style: LengthStyle): readonly Found[] =>
  rows.flatMap(({ at, apart, swag }, i): readonly Found[] => {
    const own = ['rows', i];
    if (closesRound(layout))
      return [
        {
          path: own,
          message: 'a round frame has one row of swags',
          expected: 'a strip, a border or a frame round a block',
          hint: 'lay a second frame round the first, as a part of its own',
        },
      ];
    const found = madeSo(swag, [...own, 'swag']);
    if (hasCorners(layout) && layout.corners === 'across')
      found.push({
        path: own,
        message: 'a second row goes round a corner, and not across it',
        found: 'corners: across',
        expected: 'corners: turn, half, meet or open',
      });
    if (at > 0 && at < apart) {
      const [is, least] = lengthsApart(at, apart, style);
      found.push({
        path: [...own, 'at'],
        message: 'the rows start nearer to each other than they are to keep apart',
        found: `${is}, to be ${least} apart`,
        expected: `at least ${least}, or 0 to start both on one mark`,
      });
    }
    const room = layout.width - layout.margin.inner - layout.margin.outer;
    if (at > room - LEAST_ROOM) {
      const [is, most] = lengthsApart(at, Math.max(0, room - LEAST_ROOM), style);
      found.push({
        path: [...own, 'at'],
        message: 'the row starts where the margin leaves no room for it',
        found: is,
        expected: `at most ${most}`,
      });
    }
    return found;
  });
