/** Keeps what she does as she does it, says where that fails, and brings in what other windows do. */

import { computed, effect, signal } from '@preact/signals';
import { templatesOf, textAt } from '../plan/plan-text.ts';
import { noticeWords, templatesWords } from '../words/words.ts';
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
  const words = noticeWords.noRoom({ what, button });
  const before = unkept.peek();
  if (before.includes(words) === isKept)
    unkept.value = isKept ? before.filter((other) => other !== words) : [...before, words];
  return isKept;
};

/** The shelf as all windows have it, and what came of that. */
const meetOthers = (written?: string | null): boolean => {
  const before = state.peek();
  const { own, moved, doubled, isKept, isUnread } = meet(before.own, written ?? '');
  if (isUnread) complain(noticeWords.shelfUnread);
  followNames(moved);
  if (own !== before.own) {
    const used = templatesOf(before.plan);
    const names = new Set(own.map((t) => t.name));
    const taken = before.own.filter((t) => used.includes(t.name) && !names.has(t.name));
    if (followShelf(own, moved) && taken.length > 0)
      say(noticeWords.takenOff({ titles: taken.map((t) => textAt(t.text, ['title']) ?? t.name) }));
  }
  if (doubled.length > 0) complain(noticeWords.doubled({ titles: doubled }));
  return tell(noticeWords.templates, isKept, templatesWords.saveAll);
};

/** ms */
const REST = 500;

/** Called once. */
export const startKeeping = (): void => {
  const unread = [isUnread.plan ? noticeWords.planUnread : '', isUnread.shelf ? noticeWords.shelfUnread : ''];
  if (isUnread.plan || isUnread.shelf) complain(unread.join(' ').trim());
  const planNow = computed(() => planText(state.value));
  let isPlanKept = false;
  effect(() => {
    isPlanKept = tell(noticeWords.plan, keepPlan(planNow.value), noticeWords.savePlan);
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
