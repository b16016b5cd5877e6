/** Where the focus goes when what had it is gone. */

import { signal } from '@preact/signals';
import type { Place } from './pointer.ts';

/** What is to have the focus once it is there: a break that was just added, or a place of a stretch, by its name. */
export const focusOn = signal<string | undefined>(undefined);

/** Where the handle or the break is that she took up last: what a closer look shows. */
export const chosen = signal<Place | undefined>(undefined);

/** The first button of a part of the page, once what has changed is drawn. */
export const focusFirst = (part: string): void => {
  setTimeout(() => document.querySelector<HTMLElement>(`${part} button:not(:disabled)`)?.focus());
};
