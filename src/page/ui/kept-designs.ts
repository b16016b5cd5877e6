/** The designs that this browser keeps, each by itself, so that windows which keep some at once lose none. */

import { computed, signal } from '@preact/signals';
import { type Design, designFrom, designText, MOST_DESIGNS } from '../plan/designs.ts';
import { PREFIX } from './designs-there.ts';

interface Stored {
  readonly found: ReadonlyMap<string, Design>;
  /** How many are there that this page cannot read: they stay as they are. */
  readonly unread: number;
}

const stored = (): Stored => {
  const found = new Map<string, Design>();
  let unread = 0;
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const key = localStorage.key(i) ?? '';
      if (!key.startsWith(PREFIX)) continue;
      const design = designFrom(localStorage.getItem(key) ?? '');
      if (design) found.set(design.id, design);
      else unread++;
    }
  } catch {
    // A browser that keeps nothing has kept none.
  }
  return { found, unread };
};

const all = signal(stored());

export const unreadDesigns = computed(() => all.value.unread);

/** The newest first. */
export const designs = computed<readonly Design[]>(() =>
  [...all.value.found.values()].sort((a, b) => b.at - a.at || (a.id < b.id ? -1 : 1)),
);

addEventListener('storage', ({ key }) => {
  if (key === null || key.startsWith(PREFIX)) all.value = stored();
});

/** Whether there was room for it, and it is kept. */
export const putDesign = (design: Design): 'kept' | 'full' | 'refused' => {
  const { found } = all.peek();
  if (!found.has(design.id) && found.size >= MOST_DESIGNS) return 'full';
  try {
    localStorage.setItem(PREFIX + design.id, designText(design));
  } catch {
    return 'refused';
  }
  all.value = { ...all.peek(), found: new Map([...found, [design.id, design]]) };
  return 'kept';
};

export const dropDesign = (id: string): void => {
  try {
    localStorage.removeItem(PREFIX + id);
  } catch {
    // Then it is not there.
  }
  const { found, unread } = all.peek();
  all.value = { found: new Map([...found].filter(([key]) => key !== id)), unread };
};

/** After all that are there. */
export const nextPlace = (): number => Math.max(0, ...designs.peek().map(({ at }) => at)) + 1;

export const newDesignId = (): string =>
  [...crypto.getRandomValues(new Uint32Array(3))].map((n) => n.toString(36)).join('');
