/** Fills as a plan's text writes them, and the single keys that a slider changes in it. */

import { expect, test } from 'vitest';
import { figureAt, figureChanges, writtenFills } from '../../src/page/plan/fill-text.ts';
import { withValues } from '../../src/page/plan/plan-text.ts';

const PLAN = `template: baluster
fills:
  swag: feather # hers
  background: { kind: stipple, spacing: 3/8 }
  channels: [ pearls, { kind: ribbon candy, spacing: 1/4 }, pearls ]
`;

const changed = (
  text: string,
  place: string,
  key: 'spacing' | 'angle' | 'seed',
  value: string | undefined,
) => {
  const fill = writtenFills(text).find((one) => one.place === place)!;
  return withValues(text, figureChanges(text, fill, key, value));
};

test('lists each fill with its place, and channels that have the same fill as one', () => {
  expect(writtenFills(PLAN)).toEqual([
    { place: 'swag', kind: 'feather', at: [['fills', 'swag']] },
    { place: 'background', kind: 'stipple', at: [['fills', 'background']] },
    {
      place: 'channels',
      kind: 'pearls',
      at: [
        ['fills', 'channels', 0],
        ['fills', 'channels', 2],
      ],
    },
    { place: 'channels', kind: 'ribbon candy', at: [['fills', 'channels', 1]] },
  ]);
  expect(writtenFills('fills: { channels: pearls }\n')).toEqual([
    { place: 'channels', kind: 'pearls', at: [['fills', 'channels']] },
  ]);
  expect(writtenFills('template: baluster\n')).toEqual([]);
});

test('reads what is said of a fill, and nothing of one that is only named', () => {
  const [swag, background] = writtenFills(PLAN);
  expect(figureAt(PLAN, swag!, 'spacing')).toBeUndefined();
  expect(figureAt(PLAN, background!, 'spacing')).toBe('3/8');
  expect(figureAt(PLAN, background!, 'seed')).toBeUndefined();
});

test('changes one key, and leaves all else as she wrote it', () => {
  expect(changed(PLAN, 'background', 'spacing', '1/2')).toBe(PLAN.replace('3/8', '1/2'));
  expect(changed(PLAN, 'background', 'seed', '7')).toBe(PLAN.replace('3/8 }', '3/8, seed: 7 }'));
  expect(changed(PLAN, 'background', 'spacing', undefined)).toBe(PLAN.replace(', spacing: 3/8', ''));
  expect(changed(PLAN, 'swag', 'spacing', undefined)).toBe(PLAN);
});

test('gives a fill that is only named a group, numbers as numbers', () => {
  expect(changed(PLAN, 'swag', 'seed', '7')).toBe(PLAN.replace('feather', '{ kind: feather, seed: 7 }'));
  expect(changed('fills: { background: lines }\n', 'background', 'angle', '85')).toBe(
    'fills: { background: { kind: lines, angle: 85 } }\n',
  );
});

test('channels that have the same fill change together', () => {
  expect(changed(PLAN, 'channels', 'spacing', '3/16')).toBe(
    PLAN.replaceAll('pearls', '{ kind: pearls, spacing: 3/16 }'),
  );
});
