/** Two windows and one shelf: whatever each does, and whenever it hears of the other, nothing that nobody took off is lost. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { OwnTemplate } from '../../src/page/engine/messages.ts';
import {
  doubledIn,
  EMPTY,
  joined,
  movedIn,
  ownOf,
  type SharedShelf,
  sharedFrom,
  sharedText,
  withOwnNow,
} from '../../src/page/plan/shared-shelf.ts';
import { runs } from '../support/runs.ts';

const corbel: OwnTemplate = { name: './corbel.yaml', text: 'title: Corbel\n# as bought\n' };
const newel: OwnTemplate = { name: './newel.yaml', text: 'title: Newel\n' };
const urn: OwnTemplate = { name: './urn.yaml', text: 'title: Urn\n' };

const shelfOf = (...own: readonly OwnTemplate[]): SharedShelf => withOwnNow(EMPTY, own);
const both = (a: SharedShelf, b: SharedShelf): readonly OwnTemplate[] => {
  expect(joined(b, a)).toEqual(joined(a, b));
  return ownOf(joined(a, b));
};

describe('what two windows did', () => {
  const before = shelfOf(corbel, newel);
  const with_ = (...own: readonly OwnTemplate[]): SharedShelf => withOwnNow(before, own);

  test('one adds, the other adds', () => {
    const names = both(with_(corbel, newel, urn), with_(corbel, newel, { ...urn, name: './bead.yaml' }));
    expect(names.map((t) => t.name).sort()).toEqual([
      './bead.yaml',
      './corbel.yaml',
      './newel.yaml',
      './urn.yaml',
    ]);
  });

  test('one adds, the other has not heard of it, and takes another off', () => {
    expect(both(with_(corbel, newel, urn), with_(newel))).toEqual([newel, urn]);
  });

  test('one renames, the other changes another', () => {
    const bracket = { ...corbel, text: 'title: Bracket\n# as bought\n' };
    const thick = { ...newel, text: 'title: Newel\nthickness: 1/4\n' };
    expect(both(with_(bracket, newel), with_(corbel, thick))).toEqual([bracket, thick]);
  });

  test('both change one: both stay, the second under names of its own', () => {
    const [a, b] = [
      with_({ ...corbel, text: 'title: Corbel\n# a\n' }, newel),
      with_({ ...corbel, text: 'title: Corbel\n# b\n' }, newel),
    ];
    const after = joined(a, b);
    expect(
      ownOf(after)
        .map((t) => t.name)
        .sort(),
    ).toEqual(['./corbel-2.yaml', './corbel.yaml', './newel.yaml']);
    expect(
      ownOf(after)
        .map((t) => /title: (.*)/.exec(t.text)?.[1])
        .sort(),
    ).toEqual(['Corbel', 'Corbel 2', 'Newel']);
    expect(
      ownOf(after)
        .map((t) => t.text)
        .join(''),
    ).toMatch(/# a|# b/);
    expect(both(a, b)).toEqual(ownOf(after));
    // Whose it is that has moved follows it; each hears of it once.
    const moved = [a, b].map((one) => [...movedIn(after, one)]);
    expect(moved.filter((m) => m.length > 0)).toEqual([[['./corbel.yaml', './corbel-2.yaml']]]);
    expect(doubledIn(after, a)).toEqual(['Corbel 2']);
    expect(doubledIn(after, after)).toEqual([]);
  });

  test('one renames and the other changes the same: both stay, each by its own title', () => {
    const a = with_({ ...corbel, text: 'title: Bracket\n# as bought\n' }, newel);
    const b = with_({ ...corbel, text: 'title: Corbel\n# mended\n' }, newel);
    const titles = both(a, b).map((t) => /title: (.*)/.exec(t.text)?.[1]);
    expect(titles.sort()).toEqual(['Bracket', 'Corbel', 'Newel']);
  });

  test('one takes off what the other changes: it stays as it was changed', () => {
    const mended = { ...corbel, text: 'title: Corbel\n# mended\n' };
    expect(both(with_(newel), with_(mended, newel))).toEqual([mended, newel]);
  });

  test('both bring the same: it is there once', () => {
    expect(both(with_(corbel, newel, urn), with_(corbel, newel, urn))).toEqual([corbel, newel, urn]);
  });

  test('one takes off, and takes that back where it stood, though the other has heard of the first alone', () => {
    const off = with_(newel);
    const heard = joined(before, off);
    expect(ownOf(heard)).toEqual([newel]);
    const back = withOwnNow(off, [corbel, newel]);
    expect(both(heard, back)).toEqual([corbel, newel]);
    // And again.
    const again = withOwnNow(withOwnNow(back, [newel]), [corbel, newel]);
    expect(both(joined(heard, back), again)).toEqual([corbel, newel]);
  });

  test('what nobody touched is the same shelf', () => {
    expect(withOwnNow(before, [corbel, newel])).toBe(before);
    expect(joined(before, before)).toEqual(before);
    expect(joined(EMPTY, before)).toEqual(before);
  });
});

describe('the shelf in the store', () => {
  test('comes back as it went', () => {
    const shelf = withOwnNow(shelfOf(corbel, newel), [newel, urn]);
    expect(sharedFrom(sharedText(shelf))).toEqual(shelf);
  });

  test.each([
    '',
    '{',
    'null',
    '[]',
    '{}',
    '{"there":[],"gone":3}',
    '{"there":[null],"gone":[]}',
    '{"there":[{"name":"a","text":"b","id":"c"}],"gone":[]}',
    '{"there":[{"name":"a","text":1,"id":"c","at":1}],"gone":[]}',
    '{"there":[],"gone":[1]}',
    '{"format":2,"there":[],"gone":[]}',
  ])('is none where it is anything else: %s', (text) => {
    expect(sharedFrom(text)).toBeUndefined();
  });
});

/** A window: what it shows, what it knows of the shelf, and what it reads of the store, which may be behind. */
interface Window {
  own: readonly OwnTemplate[];
  copy: SharedShelf;
  store: string;
  /** What others wrote, not yet told to this window. */
  coming: string[];
}

const meet = (windows: readonly Window[], at: Window, written = ''): void => {
  const before = withOwnNow(at.copy, at.own);
  at.copy = [at.store, written].reduce((all, text) => joined(all, sharedFrom(text) ?? EMPTY), before);
  at.own = ownOf(at.copy);
  const text = sharedText(at.copy);
  if (text === at.store) return;
  at.store = text;
  for (const other of windows) if (other !== at) other.coming.push(text);
};

const hear = (windows: readonly Window[], at: Window): boolean => {
  const written = at.coming.shift();
  if (written === undefined) return false;
  at.store = written;
  meet(windows, at, written);
  return true;
};

type Step = readonly [window: number, what: 'add' | 'change' | 'remove' | 'hear', which: number];

/** Plays it, and then tells everyone everything. Each text has a mark of its own; the marks that nobody took off or replaced. */
const play = (count: number, steps: readonly Step[]) => {
  const windows: Window[] = Array.from({ length: count }, () => ({
    own: [],
    copy: EMPTY,
    store: '',
    coming: [],
  }));
  const left = new Set<string>();
  const markOf = (t: OwnTemplate): string => /# (\d+)/.exec(t.text)![1]!;
  let marks = 0;
  const written = (title: string): string => {
    left.add(String(++marks));
    return `title: ${title}\n# ${marks}\n`;
  };
  for (const [w, what, which] of steps) {
    const window = windows[w % count]!;
    const { own } = window;
    const one = own[which % Math.max(own.length, 1)];
    if (what === 'hear') hear(windows, window);
    else if (what === 'add') {
      const name = `./${which % 4}.yaml`;
      if (own.some((t) => t.name === name)) continue;
      window.own = [...own, { name, text: written(`T${which % 4}`) }];
    } else if (one) {
      left.delete(markOf(one));
      window.own =
        what === 'remove'
          ? own.filter((t) => t !== one)
          : own.map((t) => (t === one ? { ...t, text: written('T') } : t));
    }
    if (what !== 'hear') meet(windows, window);
  }
  let rounds = 0;
  while (windows.some((w) => w.coming.length > 0)) {
    for (const window of windows) hear(windows, window);
    if (++rounds > 1000) throw new Error('They never come to an end');
  }
  return { windows, left, markOf };
};

const stepsOf = (count: number): fc.Arbitrary<Step[]> =>
  fc.array(
    fc.tuple(
      fc.nat(count - 1),
      fc.constantFrom('add', 'add', 'change', 'remove', 'hear', 'hear') as fc.Arbitrary<Step[1]>,
      fc.nat(11),
    ),
    { maxLength: 40 },
  );

describe('whatever they do', () => {
  test.each([2, 3])(
    '%i windows end with the same shelf, and all on it that nobody took off or replaced',
    (count) => {
      fc.assert(
        fc.property(stepsOf(count), (steps) => {
          const { windows, left, markOf } = play(count, steps);
          const [first, ...others] = windows;
          for (const other of others) expect(other.own).toEqual(first!.own);
          const names = first!.own.map((t) => t.name);
          expect(new Set(names).size).toBe(names.length);
          expect([...new Set(first!.own.map(markOf))].sort()).toEqual([...left].sort());
          if (count === 2) expect(names.length).toBe(left.size);
        }),
        runs(300, 1),
      );
    },
  );

  test('it makes no difference which of two shelves is put to the other, nor how often', () => {
    fc.assert(
      fc.property(stepsOf(2), (steps) => {
        const { windows } = play(2, steps);
        const [a, b] = windows.map((w) => w.copy) as [SharedShelf, SharedShelf];
        const c = withOwnNow(a, a.there.slice(1));
        for (const [x, y] of [
          [a, b],
          [b, c],
          [withOwnNow(b, [urn]), c],
        ] as const) {
          const once = joined(x, y);
          expect(joined(y, x)).toEqual(once);
          expect(joined(once, x)).toEqual(once);
          expect(joined(y, once)).toEqual(once);
        }
      }),
      runs(200, 2),
    );
  });
});
