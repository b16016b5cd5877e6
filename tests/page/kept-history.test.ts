/** Undo and redo through a reload: what comes back is what was there, with the shelf as it is by now. */

import { describe, expect, test } from 'vitest';
import { beginning, changed, type History, redone, undone } from '../../src/page/plan/history.ts';
import { historyFrom, historyText, MOST_KEPT } from '../../src/page/plan/kept-history.ts';
import type { State } from '../../src/page/plan/state.ts';

const URN = { name: './urn.yaml', text: 'title: Urn\n' };
const COVE = { name: './cove.yaml', text: 'title: Cove\n' };

const state = (title: string, own = [URN], more: Partial<State> = {}): State => ({
  plan: `title: ${title}\ntemplate: newel\n`,
  own,
  taken: undefined,
  ...more,
});

const through = (...states: readonly State[]): History<State> =>
  states.slice(1).reduce((h, next) => changed(h, next), beginning(states[0]!));

const titles = ({ past, now, future }: History<State>): readonly string[] =>
  [...past, now, ...future].map(({ plan }) => /title: (.*)/.exec(plan)![1]!);

describe('kept and read again', () => {
  const made = undone(
    through(
      state('one'),
      state('two', [URN, COVE]),
      state('three', [COVE], { taken: 'a key', part: 'wreath' }),
      state('four', [COVE]),
    ),
  );

  test('every step is as it was, forward and back', () => {
    const read = historyFrom(historyText(made)!, made.now)!;
    expect(read).toEqual({ ...made, about: undefined });
    expect(undone(undone(read)).now).toEqual(made.past[0]);
    expect(redone(read).now).toEqual(made.future[0]);
  });

  test('what was done after it was kept is one step', () => {
    const next = state('five', [COVE]);
    const read = historyFrom(historyText(made)!, next)!;
    expect(titles(read)).toEqual(['one', 'two', 'three', 'five']);
    expect(read.now).toEqual(next);
    expect(undone(read).now).toEqual(made.now);
  });

  test('what another window put on the shelf meanwhile is taken back by no step', () => {
    const bead = { name: './bead.yaml', text: 'title: Bead\n' };
    const read = historyFrom(historyText(made)!, { ...made.now, own: [COVE, bead] })!;
    for (const { own } of [...read.past, read.now, ...read.future]) expect(own).toContainEqual(bead);
    expect(read.past.map(({ own }) => own.length)).toEqual([2, 3]);
  });

  test('of a step that took nothing there is nothing to keep', () => {
    expect(historyText(beginning(state('one')))).toBeUndefined();
  });

  test.each(['', 'null', '{}', '[]', '{"own":[],"past":[],"future":[]}', historyText(made)!.slice(0, -9)])(
    'what cannot be read is none: %j',
    (text) => expect(historyFrom(text, made.now)).toBeUndefined(),
  );
});

test('the steps nearest to now are kept as far as there is room, and templates once', () => {
  const large = { name: './urn.yaml', text: 'x'.repeat(150_000) };
  const many = through(
    ...Array.from({ length: 150 }, (_, i) => state(`step ${i} ${'-'.repeat(5000)}`, [large])),
  );
  const text = historyText(many)!;
  expect(text.length).toBeLessThan(MOST_KEPT + 10_000);
  const read = historyFrom(text, many.now)!;
  const kept = read.past.length;
  expect(kept).toBeGreaterThan(50);
  expect(kept).toBeLessThan(149);
  expect(titles(read)).toEqual(titles(many).slice(-kept - 1));
});
