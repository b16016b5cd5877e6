/**
 * How long a stranger's plan may hold the thread that the page draws on. What takes time is mistakes: each is a
 * problem of its own to the parser. So a text is read in the worker first, and one with mistakes goes no further.
 */

import { describe, expect, test, vi } from 'vitest';
import { parseDocument } from 'yaml';
import { isPlanSized, MOST_PLAN, MOST_PLAN_LINES } from '../../src/jobs/page-limits.ts';
import type { Hand } from '../../src/page/engine/client.ts';
import { textAt } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';
import { openFrom } from '../../src/page/ui/store.ts';
import { readPlan } from '../../src/plan/index.ts';

vi.mock('yaml', async (original) => {
  const yaml = await original<typeof import('yaml')>();
  return { ...yaml, parseDocument: vi.fn(yaml.parseDocument) };
});

/** A worker that lives elsewhere: what it finds wrong costs this thread nothing. */
vi.mock('../../src/page/engine/hire.ts', () => ({
  hire: async (): Promise<Hand> => {
    const hand: Hand = {
      onmessage: null,
      onerror: null,
      terminate: () => {},
      postMessage: ({ id }) => {
        const wrong = { text: 'a comma too many', key: undefined, where: undefined };
        hand.onmessage?.({ data: { id, ok: false, problems: [wrong] } });
      },
    };
    return hand;
  },
}));

/** As often between the two as the limits let it stand there. */
const filled = (before: string, unit: string, after = ''): string => {
  const left = MOST_PLAN - before.length - after.length;
  const lines = (text: string): number => text.split(/\r\n|\r|\n/).length - 1;
  const ofLines = (MOST_PLAN_LINES - 1 - lines(before) - lines(after)) / lines(unit);
  return before + unit.repeat(Math.floor(Math.min(left / unit.length, ofLines))) + after;
};

const REST = FIRST_PLAN.replace('title: My border\n', '');

/** Mistakes without end, of the kinds that took longest among some thousand tried. */
const MISTAKES = [
  filled(`${FIRST_PLAN}swag: [`, ','),
  filled(`${FIRST_PLAN}swag: {`, ']'),
  filled(FIRST_PLAN, ']'),
  filled(FIRST_PLAN, '! '),
  filled(FIRST_PLAN, '* '),
  filled(`${FIRST_PLAN}swag: [`, '1,', ']'),
  filled(`${FIRST_PLAN}swag: [`, '!a 1,', ']'),
];

/** Plans without a mistake that give the parser most to do. */
const LONG_PLANS = [
  filled(FIRST_PLAN, '#\n'),
  filled(FIRST_PLAN, '# some words of it\n'),
  filled(FIRST_PLAN, '\n'),
  filled(FIRST_PLAN, `${' '.repeat(18)}\n`),
  filled('', '%YAML 1.2\n', `---\n${FIRST_PLAN}`),
  filled('', '%TAG ! !\n', `---\n${FIRST_PLAN}`),
  filled('title: &', 'a', ` b\n${REST}`),
  filled(`template: [ baluster,\n`, '#\n', `]\n${FIRST_PLAN.replace(/^template.*\n/m, '')}`),
];

describe('a text that comes from a stranger', () => {
  test.each(MISTAKES)(
    'with mistakes is refused before the page’s own thread parses it (%#)',
    async (plan) => {
      expect(isPlanSized(plan)).toBe(true);
      expect(readPlan(plan, 'plan.yaml').ok).toBe(false);
      vi.mocked(parseDocument).mockClear();
      expect(await openFrom({ plan, own: [], taken: undefined }, 'the link')).toBe(false);
      expect(vi.mocked(parseDocument).mock.calls.filter(([text]) => text === plan)).toEqual([]);
    },
  );

  test.each(LONG_PLANS)('without any is parsed in a tenth of a second at most (%#)', (plan) => {
    expect(isPlanSized(plan)).toBe(true);
    expect(readPlan(plan, 'plan.yaml')).toMatchObject({ ok: true });
    const before = process.cpuUsage();
    expect(textAt(plan, ['units'])).toBe('in');
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(100);
  });
});
