/**
 * Which pictures of her templates this browser keeps, so that she can go on with one after a reload, or set a template
 * of the shelf right over its own. The pictures themselves come with the part of the page that shows them.
 */

import { signal } from '@preact/signals';

export interface KeptPicture {
  /** The template's name on the shelf, or one of its own while it is in work. */
  readonly key: string;
  /** The picture's file. */
  readonly called: string;
}

const KEY = 'swagwright.pictures';

const stored = (): readonly KeptPicture[] => {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    if (!Array.isArray(found)) return [];
    return found.filter(
      (k: Partial<KeptPicture> | null) => typeof k?.key === 'string' && typeof k.called === 'string',
    );
  } catch {
    return [];
  }
};

export const keptPictures = signal(stored());

/** `change` sees what every window of this browser has written. */
export const changeKept = (change: (before: readonly KeptPicture[]) => readonly KeptPicture[]): void => {
  const next = change(stored());
  keptPictures.value = next;
  try {
    localStorage.setItem(KEY, JSON.stringify(next));
  } catch {
    // Without a store they are kept as long as the page is open.
  }
};

addEventListener('storage', ({ key }) => {
  if (key === KEY) keptPictures.value = stored();
});

const IN_WORK = 'work ';

/** One that no kept picture has. */
export const workKey = (): string => {
  const taken = new Set(stored().map((k) => k.key));
  for (let n = 1; ; n++) if (!taken.has(`${IN_WORK}${n}`)) return `${IN_WORK}${n}`;
};
export const isInWork = ({ key }: KeptPicture): boolean => key.startsWith(IN_WORK);
