/** What cannot go together in how one half swag is made. */

import type { KeyPath, Problem } from '../document/index.ts';
import type { HowMade } from './plan.ts';

export type Found = Pick<Problem, 'message'> & Partial<Problem> & { readonly path: KeyPath };

/** What cannot go together in how a half swag is made, of the row whose swag stands at `own`. */
export const madeSo = ({ from, to, setting, laid, flat }: HowMade, own: KeyPath): Found[] => {
  const found: Found[] = [];
  if (from?.kind === 'crown')
    found.push({
      path: [...own, 'from'],
      message: 'nothing of the edge is left after the crown end',
      found: 'crown',
      expected: 'a section, or heel',
      hint: 'to begin at the crown end write direction: crown-first',
    });
  if (to?.kind === 'heel')
    found.push({
      path: [...own, 'to'],
      message: 'nothing of the edge lies before the heel',
      found: 'heel',
      expected: 'a section, or crown',
      hint: 'to end at the heel write direction: crown-first',
    });
  if (from?.kind === 'section' && to?.kind === 'section' && from.number > to.number)
    found.push({
      path: [...own, 'to'],
      message: 'the swag ends before it starts',
      found: `from ${from.number} to ${to.number}`,
      expected: 'sections counted from the heel',
    });
  if (laid && setting !== undefined && setting !== 'alignment-line')
    found.push({
      path: [...own, 'laid'],
      message: 'no alignment line is laid in this setting',
      found: `setting: ${setting}`,
      expected: 'setting: alignment-line',
    });
  if (laid && flat !== undefined && setting === undefined)
    found.push({
      path: [...own, 'flat'],
      message: 'either an alignment line is laid or a flat, and not both',
      found: `laid: ${laid} and flat: ${flat}`,
      expected: 'one of them',
    });
  if (flat !== undefined && setting !== undefined && setting !== 'flat-on-guide')
    found.push({
      path: [...own, 'flat'],
      message: 'no flat is laid in this setting',
      found: `setting: ${setting}`,
      expected: 'setting: flat-on-guide',
    });
  return found;
};

/** Where a half swag is set otherwise than with its crown on the centre line, and `message` says that it cannot be. */
export const setOtherwise = (
  { setting, laid, flat }: HowMade,
  path: Found['path'],
  message: string,
): readonly Found[] => {
  const found =
    setting !== undefined
      ? setting === 'crown-on-centre'
        ? undefined
        : `setting: ${setting}`
      : laid !== undefined
        ? `laid: ${laid}`
        : flat !== undefined
          ? `flat: ${flat}`
          : undefined;
  return found === undefined ? [] : [{ path, message, found, expected: 'setting: crown-on-centre' }];
};
