/** Keeps what she does as she does it, says where that fails, and brings in what other windows do. */

import { computed, effect, signal } from '@preact/signals';
import { series } from '../../document/index.ts';
import { templatesOf, textAt } from '../plan/plan-text.ts';
import {
  forgetOld,
  isPutAside,
  isUnread,
  keepHistory,
  keepPlan,
  meet,
  onceAlone,
  planText,
  SHELF,
} from './keep.ts';
import { followNames, keptPictures } from './kept-pictures.ts';
import { wantPart } from './later.tsx';
import { complain, followShelf, history, say, state } from './store.ts';

/** What this browser cannot keep at present, and how it is not lost: said as long as it is so, whatever else is said. */
export const unkept = signal<readonly string[]>([]);

export const tell = (what: string, isKept: boolean, button: string): boolean => {
  const words = `This browser has no room for ${what}, or is set to keep nothing. What you change is here until you close this window: “${button}” puts it with your downloads.`;
  const before = unkept.peek();
  if (before.includes(words) === isKept)
    unkept.value = isKept ? before.filter((other) => other !== words) : [...before, words];
  return isKept;
};

/** The shelf as all windows have it, and what came of that. */
const meetOthers = (written?: string | null): boolean => {
  const before = state.peek();
  const { own, moved, doubled, isKept } = meet(before.own, written ?? '');
  followNames(moved);
  if (own !== before.own) {
    const used = templatesOf(before.plan);
    const names = new Set(own.map((t) => t.name));
    const taken = before.own.filter((t) => used.includes(t.name) && !names.has(t.name));
    if (followShelf(own, moved) && taken.length > 0)
      say(
        `${series(taken.map((t) => `“${textAt(t.text, ['title']) ?? t.name}”`))} ${taken.length > 1 ? 'were' : 'was'} taken off the shelf in another window, and so out of this plan. Undo brings it back.`,
      );
  }
  if (doubled.length > 0)
    complain(
      `Two windows changed a template at once, or each added one of the same name. Both are on the shelf: the second is ${series(doubled.map((title) => `“${title}”`))}.`,
    );
  return tell('your templates', isKept, 'Save all of mine in one file');
};

/** ms */
const REST = 500;

/** Called once. */
export const startKeeping = (): void => {
  if (isUnread)
    complain(
      'The shelf of your templates that this browser kept cannot be read. It is put aside, and the shelf begins anew; a file that you saved brings its templates back.',
    );
  const planNow = computed(() => planText(state.value));
  let isPlanKept = false;
  effect(() => {
    isPlanKept = tell('your plan', keepPlan(planNow.value), 'Save plan');
  });
  // Not at every step of a hand that drags; a window that closes still has time for it.
  let resting: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    void history.value;
    clearTimeout(resting);
    resting = setTimeout(() => keepHistory(history.peek()), REST);
  });
  addEventListener('pagehide', () => keepHistory(history.peek()));
  const ownNow = computed(() => state.value.own);
  let isShelfKept = false;
  ownNow.subscribe(() => {
    isShelfKept = meetOthers();
  });
  if (isPlanKept && isShelfKept) forgetOld();
  addEventListener('storage', ({ key, newValue }) => {
    if (key === SHELF) meetOthers(newValue);
  });
  // One that was put aside by the browser, and comes back, has been told nothing.
  addEventListener('pageshow', () => void meetOthers());
  void onceAlone(dropPictures).catch(() => {
    // Some browsers have no locks for a page from a folder: then pictures stay.
  });
};

/** Pictures of templates that are on no shelf any longer: she could take that back only in the visit in which she did it. */
const dropPictures = async (names: readonly string[]): Promise<void> => {
  if (isPutAside) return;
  const left = keptPictures.peek().filter(({ of }) => of !== undefined && !names.includes(of));
  if (left.length === 0) return;
  // Where it cannot be loaded they stay until the next start.
  const part = await wantPart('trace').catch(() => undefined);
  for (const { key } of left) part?.forget(key);
};
