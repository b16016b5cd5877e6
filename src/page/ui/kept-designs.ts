/** The designs that this browser keeps, each by itself, so that windows which keep some at once lose none. */

import { computed, signal } from '@preact/signals';
import { type Design, designFrom, designText, MOST_DESIGNS } from '../plan/designs.ts';
import { PREFIX } from './designs-there.ts';

const stored = (): ReadonlyMap<string, Design> => {
  const found = new Map<string, Design>();
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const key = localStorage.key(i) ?? '';
      const design = key.startsWith(PREFIX) ? designFrom(localStorage.getItem(key) ?? '') : undefined;
      if (design) found.set(design.id, design);
    }
  } catch {
    // A browser that keeps nothing has kept none.
  }
  return found;
};

const all = signal(stored());

/** The newest first. */
export const designs = computed<readonly Design[]>(() =>
  [...all.value.values()].sort((a, b) => b.at - a.at || (a.id < b.id ? -1 : 1)),
);

addEventListener('storage', ({ key }) => {
  if (key === null || key.startsWith(PREFIX)) all.value = stored();
});

/** Whether there was room for it, and it is kept. */
export const putDesign = (design: Design): 'kept' | 'full' | 'refused' => {
  if (!all.peek().has(design.id) && all.peek().size >= MOST_DESIGNS) return 'full';
  try {
    localStorage.setItem(PREFIX + design.id, designText(design));
  } catch {
    return 'refused';
  }
  all.value = new Map([...all.peek(), [design.id, design]]);
  return 'kept';
};

export const dropDesign = (id: string): void => {
  try {
    localStorage.removeItem(PREFIX + id);
  } catch {
    // Then it is not there.
  }
  all.value = new Map([...all.peek()].filter(([key]) => key !== id));
};

/** After all that are there. */
export const nextPlace = (): number => Math.max(0, ...designs.peek().map(({ at }) => at)) + 1;

export const newDesignId = (): string =>
  [...crypto.getRandomValues(new Uint32Array(3))].map((n) => n.toString(36)).join('');
