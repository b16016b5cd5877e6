/** Mistakes as the page tells them: of the field, in sentences. Expected are the sentences that a quilter asked for. */

import { describe, expect, test } from 'vitest';
import type { Question } from '../../src/page/engine/messages.ts';
import { QUICK } from '../../src/page/engine/quick.ts';
import { answer } from '../../src/page/engine/serve.ts';
import { needsLimit, plainWords } from '../../src/page/plan/plain-words.ts';
import { withValue, withValues } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';

const toldOf = async (path: readonly string[], value: string): Promise<readonly string[]> => {
  const input = { plan: withValue(FIRST_PLAN, path, value), own: [], taken: undefined };
  const question: Question = { kind: 'look', input };
  const answered = await answer(QUICK, { id: 1, question });
  if (!answered.ok) throw new Error('no answer');
  return (answered.answer as { problems: readonly { text: string }[] }).problems.map((p) => p.text);
};

const TOP = ['layout', 'border', 'inner', 'top'] as const;

describe('a figure that cannot be', () => {
  test('is told of its field, with what to type', async () => {
    expect(await toldOf(TOP, '0')).toContain(
      'The top side cannot be 0. Type a length, such as 5 1/2 or 140 mm.',
    );
    expect(await toldOf(['layout', 'border', 'width'], '-3')).toContain(
      'The border width cannot be less than 0. Type a length, such as 5 1/2 or 140 mm.',
    );
    expect(await toldOf(TOP, 'abc')).toContain(
      '“abc” cannot be read as the top side: no number. Type a length, such as 5 1/2 or 140 mm.',
    );
  });

  test('no sentence has the commands’ words for it', async () => {
    for (const value of ['0', '-1', 'abc', '12,5', '900000', '61 1'])
      for (const text of await toldOf(TOP, value)) {
        expect(text).not.toMatch(/\b(found|expected)\b/);
        expect(text).toMatch(/\.$/);
      }
  });

  test('an empty field is called empty', () => {
    const told = { code: 'not-a-length', message: 'nothing is written', found: '""', expected: 'such as 5' };
    expect(plainWords(told, 'top side')).toBe('The top side is empty. Type a length, such as 5.');
  });
});

describe('a frame round a block and its limit', () => {
  const lookAt = async (block: string, within: string | undefined, swag?: { readonly from: number }) => {
    const plan = withValues(FIRST_PLAN, [
      [['layout'], { frame: { block, clearance: '1/2', ...(within === undefined ? {} : { within }) } }],
      [['swag'], swag],
    ]);
    const question: Question = { kind: 'look', input: { plan, own: [], taken: undefined } };
    const answered = await answer(QUICK, { id: 1, question });
    if (!answered.ok) throw new Error('no answer');
    return answered.answer as {
      readonly found: number;
      readonly problems: readonly { readonly key?: string; readonly text: string }[];
    };
  };

  test('a limit that leaves no room is told by the name of its field', async () => {
    // 14 in and half an inch on both sides are 15 in: nothing is left.
    const { problems } = await lookAt('14', '15');
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ key: 'layout.frame.within' });
    expect(problems[0]!.text).toMatch(/^“Finished, at most” is 15 in, and must be .* in: /);
  });

  test('and so is one that leaves too little for a swag, with what would do', async () => {
    const { problems } = await lookAt('14', '15 1/2');
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ key: 'layout.frame.within' });
    expect(problems[0]!.text).toMatch(/within “Finished, at most”, 15 1\/2 in:/);
    const enough = /; with (.*) in there is something/.exec(problems[0]!.text)?.[1];
    expect((await lookAt('14', enough)).found).toBeGreaterThan(0);
  });

  test('what no limit helps is not laid on the limit', async () => {
    for (const { key, text } of (await lookAt('14', '18', { from: 9 })).problems) {
      expect(key).not.toBe('layout.frame.within');
      expect(text).not.toContain('Finished');
    }
  });

  test('an empty one is asked for', () => {
    expect(needsLimit('16')).toBe(
      'A frame round a block needs its greatest finished size, the longer way. Type a length, such as 16.',
    );
  });
});
