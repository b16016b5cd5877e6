/** What is kept and sent: undo and redo, the store, links, and the screen's scale. */

import { describe, expect, test } from 'vitest';
import { isPlanSized, MOST_PLAN, MOST_PLAN_LINES } from '../../src/jobs/page-limits.ts';
import { FORMAT } from '../../src/page/plan/format.ts';
import { beginning, changed, MOST_STEPS, redone, undone } from '../../src/page/plan/history.ts';
import { fragmentOf, stateInFragment } from '../../src/page/plan/link.ts';
import {
  FIRST_STATE,
  MOST_OWN,
  MOST_TEXT,
  type State,
  stateFrom,
  stateText,
} from '../../src/page/plan/state.ts';
import {
  CARD,
  calibrationFrom,
  calibrationText,
  NOMINAL,
  pixelsPerMm,
} from '../../src/page/plan/true-size.ts';

describe('undo and redo', () => {
  test('go back and forth, and a change forgets what was undone', () => {
    const c = changed(changed(beginning('a'), 'b'), 'c');
    expect(undone(c).now).toBe('b');
    expect(redone(undone(c)).now).toBe('c');
    const d = changed(undone(c), 'd');
    expect(redone(d)).toBe(d);
    expect(undone(undone(undone(d))).now).toBe('a');
  });

  test('typing on in one field is one step, and undo ends it', () => {
    const typed = changed(changed(changed(beginning('a'), 'b', 'top'), 'c', 'top'), 'd', 'left');
    expect(undone(typed).now).toBe('c');
    expect(undone(undone(typed)).now).toBe('a');
    const again = changed(undone(typed), 'e', 'top');
    expect(undone(again).now).toBe('c');
  });

  test('keep no more than they can', () => {
    let h = beginning(0);
    for (let i = 1; i <= MOST_STEPS + 50; i++) h = changed(h, i);
    expect(h.past.length).toBe(MOST_STEPS);
  });
});

const STATE: State = {
  plan: 'title: ½″ “Ünïcode” 🧵\n',
  own: [
    { name: './a.yaml', text: 'edge: []' },
    { name: './b.yaml', text: 'edge: []' },
  ],
  taken: 'newel|turn|1',
};

describe('what comes from a store or a link', () => {
  test('comes back as it went', () => {
    expect(stateFrom(stateText(STATE))).toEqual(STATE);
    expect(stateFrom(stateText(FIRST_STATE))).toEqual(FIRST_STATE);
  });

  test.each([
    ['x'.repeat(MOST_PLAN), true],
    ['x'.repeat(MOST_PLAN + 1), false],
    ['#\n'.repeat(MOST_PLAN_LINES - 1), true],
    ['#\n'.repeat(MOST_PLAN_LINES), false],
    ['\r'.repeat(MOST_PLAN_LINES), false],
    ['\r\n'.repeat(MOST_PLAN_LINES - 1), true],
    ['#\n'.repeat(90_000), false],
    [FIRST_STATE.plan, true],
  ])('is of a size that can be parsed where she types (%#)', (plan, fits) => {
    expect(isPlanSized(plan)).toBe(fits);
  });

  test('is refused where it is anything else', () => {
    const odd: readonly unknown[] = [
      null,
      1,
      'text',
      [],
      {},
      { plan: 1 },
      { plan: 'x'.repeat(MOST_TEXT + 1) },
      { plan: '', own: [{ name: 'a', text: 'x'.repeat(MOST_TEXT + 1) }] },
      { plan: '', own: {} },
      { plan: '', own: [1] },
      { plan: '', own: [{ name: 'a' }] },
      { plan: '', own: Array.from({ length: MOST_OWN + 1 }, () => ({ name: 'a', text: '' })) },
    ];
    for (const value of odd) expect(stateFrom(JSON.stringify(value))).toBeUndefined();
    expect(stateFrom('{')).toBeUndefined();
    expect(odd.length).toBe(12);
  });

  test('is not read where a later page wrote it, whose words may mean something else', () => {
    const written = JSON.parse(stateText(STATE)) as object;
    expect(written).toMatchObject({ format: FORMAT });
    expect(stateFrom(JSON.stringify({ ...written, format: undefined }))).toEqual(STATE);
    for (const format of [FORMAT + 1, 'two', null])
      expect(stateFrom(JSON.stringify({ ...written, format }))).toBeUndefined();
  });

  test('has no prototype of its own to bring along', () => {
    const state = stateFrom('{"plan":"","own":[],"__proto__":{"taken":"x"},"taken":5}');
    expect(state).toEqual({ plan: '', own: [], taken: undefined });
  });
});

describe('links', () => {
  test('carry the plan and the templates that it uses, in characters that survive an address', async () => {
    const fragment = await fragmentOf(STATE, ['./b.yaml']);
    expect(fragment).toMatch(/^#plan=[A-Za-z0-9_-]+$/);
    expect(await stateInFragment(fragment)).toEqual({ ...STATE, own: [STATE.own[1]] });
  });

  test('say what they are not', async () => {
    expect(await stateInFragment('')).toBe('none');
    expect(await stateInFragment('#measure')).toBe('none');
    for (const bad of ['#plan=', '#plan=abc', '#plan=%%%', `#plan=${'A'.repeat(2_000_000)}`])
      expect(await stateInFragment(bad)).toBe('broken');
  });
});

describe('the screen’s own millimetre', () => {
  test('a card 300 px wide means 300 / 85.60 px to the mm, at the zoom at which it was measured', () => {
    // ISO/IEC 7810:2019, ID-1: 85.60 mm by 53.98 mm.
    expect(CARD).toEqual({ width: 85.6, height: 53.98 });
    const found = { pixelsPerMm: 300 / 85.6, ratio: 2 };
    expect(pixelsPerMm(found, 2)).toBe(300 / 85.6);
    // Zoomed to twice the size a CSS pixel is twice as large: half as many make a millimetre.
    expect(pixelsPerMm(found, 4)).toBe(150 / 85.6);
    expect(calibrationFrom(calibrationText(found))).toEqual(found);
  });

  test('without a card, CSS’s own 96 px to the inch', () => {
    expect(pixelsPerMm(undefined, 1)).toBe(96 / 25.4);
    expect(NOMINAL).toBe(96 / 25.4);
  });

  test('what no screen can be is not believed', () => {
    for (const text of [null, '', '0 1', '-3 1', 'NaN 1', '1e9 1', '4 0', '4'])
      expect(calibrationFrom(text)).toBeUndefined();
  });
});
