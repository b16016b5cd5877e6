/** Where a plan fixes so much that no way is left to set a template at all, and so nothing that could come near. */

import type { Plan } from '../plan/index.ts';

/** What to change in the plan's swag. */
export const noWayHint = ({ swag, corner }: Plan): string => {
  if (swag.setting === 'alignment-line' && swag.direction === 'crown-first')
    return 'etched lines stand near the heel: with an alignment line write direction: heel-first, or leave it out';
  if (swag.alternate)
    return 'no two kinds together make up the sides: give a gap such as gap: 1/2, leave more of a kind open, or name another template';
  if (corner?.smooth)
    return 'no swag that is smooth on the mitre goes with such swags on the sides: leave smooth out under corner, leave more open there or under swag, or name another template';
  if (corner)
    return 'no such swag over the corner goes with such swags on the sides: leave more open under corner or swag, or name another template';
  const fixed = (
    ['from', 'to', 'setting', 'laid', 'flat', 'side', 'direction', 'repeats', 'gap'] as const
  ).filter((key) => swag[key] !== undefined);
  return fixed.length === 0
    ? 'try a wider border, or another template'
    : `try without what the swag fixes: ${fixed.join(', ')}`;
};
