/**
 * What the browser keeps: the plan of each window by itself, the last one for the next visit, and one shelf of
 * templates for all windows.
 */

import { fingerprint } from '../../document/index.ts';
import { OPENED_FILE } from '../../jobs/one-file.ts';
import { isPlanSized } from '../../jobs/page-limits.ts';
import { heldText } from '../engine/held.ts';
import type { OwnTemplate } from '../engine/messages.ts';
import { beginning, type History } from '../plan/history.ts';
import { historyFrom, historyText } from '../plan/kept-history.ts';
import {
  doubledIn,
  EMPTY,
  joined,
  movedIn,
  ownOf,
  sharedFrom,
  sharedText,
  withOwnNow,
} from '../plan/shared-shelf.ts';
import { beside } from '../plan/shelf.ts';
import { FIRST_STATE, type State, stateFrom, stateText } from '../plan/state.ts';

/**
 * A page that is one file with a plan in it keeps the plan that became of it by itself: browsers take all files of a
 * disk for one place.
 */
const held = heldText(OPENED_FILE)?.trim();
const OF = held ? ` ${fingerprint([held])}` : '';

/** Of this window, as long as it is open; a reload finds it. */
const PLAN = `swagwright.window${OF}`;
/** Of the window that was changed last. */
const LAST = `swagwright.last${OF}`;
export const SHELF = 'swagwright.shelf';
/** Where what cannot be read is put, so that it is not written over. */
const UNREAD = { shelf: 'swagwright.shelf.unread', plan: 'swagwright.plan.unread' };
/** Where plan and shelf were kept together. A page of that time may still be open, and writes it anew: so it is looked for at each start. */
const OLD = 'swagwright.plan';

const local = (): Storage => localStorage;
const session = (): Storage => sessionStorage;

/** A browser may forbid its stores: then nothing was kept. */
const read = (store: () => Storage, key: string): string => {
  try {
    return store().getItem(key) ?? '';
  } catch {
    return '';
  }
};

/** Whether there was room for it, and it is kept. */
const write = (store: () => Storage, key: string, text: string): boolean => {
  try {
    store().setItem(key, text);
    return true;
  } catch {
    return false;
  }
};

const remove = (store: () => Storage, key: string): void => {
  try {
    store().removeItem(key);
  } catch {
    // Then there is none.
  }
};

/** Beside what was put there before; the same is there once. */
const putAside = (of: keyof typeof UNREAD, text: string): void => {
  for (let i = 1; i <= MOST_ASIDE; i++) {
    const key = i === 1 ? UNREAD[of] : `${UNREAD[of]} ${i}`;
    const there = read(local, key);
    if (there === '') write(local, key, text);
    if (there === '' || there === text) return;
  }
};

/** More than ever go wrong by themselves. */
const MOST_ASIDE = 9;

const stateIn = (text: string): State | undefined => {
  const found = stateFrom(text);
  return found && isPlanSized(found.plan) ? found : undefined;
};

const shelfText = read(local, SHELF);
/** This window's copy of the shelf: all that it has read and written. */
let copy = sharedFrom(shelfText) ?? EMPTY;
/** A reload is no change: another window's plan stays the last one. */
let isLast = read(session, PLAN) === '';

/** What cannot be read is put aside, and said. */
const unreadPlans = [read(session, PLAN), read(local, LAST)].filter((text) => text !== '' && !stateIn(text));
for (const text of unreadPlans) putAside('plan', text);
const isShelfUnread = shelfText !== '' && !sharedFrom(shelfText);
if (isShelfUnread) putAside('shelf', shelfText);
export const isUnread = { shelf: isShelfUnread, plan: unreadPlans.length > 0 };
/** Whether a shelf has ever been: then there is no telling what belongs to it. */
export const isPutAside = read(local, UNREAD.shelf) !== '';

/** Whether more than the figures to begin with was kept: a page that is closed while it opens its plan keeps those. */
export const isKept = [read(session, PLAN), read(local, LAST)]
  .map((text) => stateIn(text)?.plan ?? FIRST_STATE.plan)
  .some((plan) => plan !== FIRST_STATE.plan);

/** What was kept. */
const keptState = ((): State => {
  const own = ownOf(copy);
  const old = stateIn(read(local, OLD));
  const both = old && beside(own, old);
  const now = stateIn(read(session, PLAN)) ?? stateIn(read(local, LAST)) ?? both ?? FIRST_STATE;
  return { ...now, own: both?.own ?? own };
})();

/** Of this window, as its plan: what can be taken back. */
const STEPS = `swagwright.steps${OF}`;

/** The plan that was kept, and what can be taken back of it. */
export const keptHistory = (): History<State> =>
  historyFrom(read(session, STEPS), keptState) ?? beginning(keptState);

/** Where there is no room for it only what was done is kept, and not how to take it back. */
export const keepHistory = (history: History<State>): void => {
  const text = historyText(history);
  if (text === undefined || !write(session, STEPS, text)) remove(session, STEPS);
};

/** Whether it is kept. */
export const keepPlan = (text: string): boolean => {
  const isKept = [write(session, PLAN, text), !isLast || write(local, LAST, text)];
  isLast = true;
  return !isKept.includes(false);
};

/** All that belongs to one window: the shelf is kept by itself. */
export const planText = (state: State): string => stateText({ ...state, own: [] });

interface Met {
  /** The same list where nothing has changed. */
  readonly own: readonly OwnTemplate[];
  readonly moved: ReadonlyMap<string, string>;
  readonly doubled: readonly string[];
  readonly isKept: boolean;
  /** Whether what another program wrote there could not be read, and was put aside. */
  readonly isUnread: boolean;
}

/**
 * Puts this window's templates and those of the store together, and keeps what comes out. `written` is what another
 * window has written just now: by the time that this is read, a third may have written over it.
 */
export const meet = (own: readonly OwnTemplate[], written = ''): Met => {
  const before = withOwnNow(copy, own);
  const there = read(local, SHELF);
  const theirs = sharedFrom(there);
  // What could not be read at the start is put aside by now, and said.
  const isUnread = there !== '' && !theirs && there !== shelfText;
  if (isUnread) putAside('shelf', there);
  copy = [there, written].reduce((all, text) => joined(all, sharedFrom(text) ?? EMPTY), before);
  const text = sharedText(copy);
  const now = ownOf(copy);
  const isSame =
    now.length === own.length && now.every((t, i) => t.name === own[i]?.name && t.text === own[i].text);
  return {
    own: isSame ? own : now,
    moved: movedIn(copy, before),
    doubled: doubledIn(copy, before),
    // Two pages that write the same otherwise would answer each other for ever.
    isKept: (theirs && sharedText(theirs) === text) || write(local, SHELF, text),
    isUnread,
  };
};

/** Once plan and shelf are kept by themselves. A page of before that is still open loses nothing by it: what it writes is found at the next start. */
export const forgetOld = (): void => remove(local, OLD);

/** What each window that has the page open holds, together with all others. */
const OPEN = 'swagwright open';

/**
 * Does what may only be done where no other window has the page open, and with it what it could take back; from then on
 * this window is one of them. Where the browser cannot tell, it is not done. `work` is given the names on the shelf.
 */
export const onceAlone = async (work: (names: readonly string[]) => Promise<void>): Promise<void> => {
  const locks: LockManager | undefined = navigator.locks;
  await locks?.request(OPEN, { ifAvailable: true }, async (lock) => {
    if (lock === null) return;
    // No copy is left that could bring back what is gone.
    copy = { ...copy, gone: [] };
    write(local, SHELF, sharedText(copy));
    await work(copy.there.map(({ name }) => name));
  });
  await locks?.request(OPEN, { mode: 'shared' }, () => new Promise(() => {}));
};
