/** Mistakes as the page tells them: of the field, in sentences. Expected are the sentences that a quilter asked for. */

import { describe, expect, test } from 'vitest';
import type { Question } from '../../src/page/engine/messages.ts';
import { QUICK } from '../../src/page/engine/quick.ts';
import { answer } from '../../src/page/engine/serve.ts';
import { plainWords } from '../../src/page/plan/plain-words.ts';
import { withValue } from '../../src/page/plan/plan-text.ts';
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
