/** How much paper is told before pages are made, beside how many pages are made. */

import { describe, expect, test } from 'vitest';
import { withValues } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';
import { FONTS, rawPages } from '../output/pdf/read-back.ts';
import { ask, inputOf } from './ask.ts';

const LAYOUTS = {
  border: FIRST_PLAN,
  // Its own fills stand first among the sets, which is one picture more.
  'border with fills': withValues(FIRST_PLAN, [
    [['paper'], 'a4'],
    [['fills', 'swag'], 'crosshatch'],
    [['fills', 'background'], 'lines'],
  ]),
  frame: FIRST_PLAN.replace(/layout:.*(?=channels)/s, 'layout: { frame: { around: 9, count: 8 } }\n'),
};

const WHAT = ['card', 'audition', 'frames', 'contact'] as const;

describe('what is told of each', () => {
  for (const [name, plan] of Object.entries(LAYOUTS))
    test(`is what it takes: ${name}`, { timeout: 240_000 }, async () => {
      const paper = plan.includes('paper: a4') ? 'a4' : 'letter';
      const choices = { paper, measured: undefined, show: undefined } as const;
      const input = inputOf(plan);
      const outlines = ['baluster', 'no such template'];
      const counted = await ask({ kind: 'count-pages', input, what: WHAT, outlines, choices, fonts: FONTS });
      expect(Object.keys(counted).toSorted()).toEqual([...WHAT, 'baluster'].toSorted());
      for (const what of WHAT) {
        const { bytes, words } = await ask({ kind: 'print', input, what, choices, fonts: FONTS });
        const pages = (await rawPages(bytes)).length;
        const told = `${pages} page${pages > 1 ? 's' : ''} of ${paper === 'a4' ? 'A4' : 'Letter'}`;
        expect(counted[what], what).toMatch(new RegExp(`^${told}, (portrait|landscape)$`));
        expect(words, what).toContain(counted[what]);
      }
      const { own } = input;
      const drawn = await ask({ kind: 'outline', name: 'baluster', own, choices, fonts: FONTS });
      const { baluster } = counted;
      expect(baluster).toMatch(
        new RegExp(`^${(await rawPages(drawn.bytes)).length} pages of .* with the cover$`),
      );
    });
});
