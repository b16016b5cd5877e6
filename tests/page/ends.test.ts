/** Ends of the swag as the page's buttons move them. What is to happen is what a quilter asked for. */

import { describe, expect, test } from 'vitest';
import type { LookAnswer, Question } from '../../src/page/engine/messages.ts';
import { QUICK } from '../../src/page/engine/quick.ts';
import { answer } from '../../src/page/engine/serve.ts';
import { endsNow, noneWithBoth, withEnd } from '../../src/page/plan/ends.ts';
import { withValues } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';

const lookAt = async (plan: string, taken?: string): Promise<LookAnswer> => {
  const question: Question = { kind: 'look', input: { plan, own: [], taken } };
  const answered = await answer(QUICK, { id: 1, question });
  if (!answered.ok) throw new Error('no answer');
  return answered.answer as LookAnswer;
};

const HEEL_TO_ONE = withValues(FIRST_PLAN, [[['swag'], { from: 1, to: 1 }]]);

describe('one end moved', () => {
  test('leaves the other where it was', async () => {
    const { chosen } = await lookAt(HEEL_TO_ONE);
    expect(chosen!.ends).toEqual({ from: 1, to: 1 });
    const plan = withValues(HEEL_TO_ONE, withEnd(endsNow(HEEL_TO_ONE, chosen!.ends), 'to', 'crown'));
    const after = await lookAt(plan, chosen!.key);
    expect(after.problems).toEqual([]);
    expect(after.chosen).toMatchObject({ ends: { from: 1, to: 'crown' }, from: chosen!.from });
  });

  test('also where the plan has said nothing of it yet', async () => {
    const { chosen } = await lookAt(FIRST_PLAN);
    const ends = endsNow(FIRST_PLAN, chosen!.ends);
    expect(withEnd(ends, 'to', 1)).toContainEqual([['swag', 'from'], chosen!.ends.from]);
    expect(withEnd(ends, 'from', 1)).toContainEqual([['swag', 'to'], chosen!.ends.to]);
  });

  test('past the other takes that along, and leaves some edge between them', () => {
    const moved = (
      which: 'from' | 'to',
      at: number | string,
      now: { from: number | string; to: number | string },
    ) => endsNow(withValues(HEEL_TO_ONE, withEnd(now, which, at)), { from: 1, to: 1 });
    expect(moved('from', 3, { from: 1, to: 1 })).toEqual({ from: 3, to: 3 });
    expect(moved('to', 1, { from: 2, to: 'crown' })).toEqual({ from: 1, to: 1 });
    expect(moved('from', 2, { from: 1, to: 2 })).toEqual({ from: 2, to: 2 });
    // Where a line lies, or the crown end, only the template knows.
    expect(moved('from', 3, { from: 1, to: 'crown' })).toEqual({ from: 3, to: 'crown' });
    expect(moved('from', 3, { from: 1, to: 'A' })).toEqual({ from: 3, to: 'A' });
  });

  test('to where nothing fits is told, and names both', async () => {
    const plan = withValues(HEEL_TO_ONE, [[['swag'], { from: 3, to: 1 }]]);
    const { problems } = await lookAt(plan);
    expect(noneWithBoth(problems, plan)).toMatch(
      /starts at section 3 and also ends at the end of section 1\./,
    );
  });

  test('another trouble is not laid on the ends', async () => {
    const wide = withValues(HEEL_TO_ONE, [[['layout', 'border', 'width'], '0']]);
    const { problems } = await lookAt(wide);
    expect(problems.length).toBeGreaterThan(0);
    expect(noneWithBoth(problems, wide)).toBeUndefined();
  });
});
