/**
 * Which pictures of her templates this browser keeps, so that she can go on with one after a reload, or set a template
 * of the shelf right over its own. The pictures themselves come with the part of the page that shows them. A template
 * that was typed has what she typed in place of a picture.
 */

import { signal } from '@preact/signals';

export interface KeptPicture {
  /** By which the store has it: each its own, whatever its template is called. */
  readonly key: string;
  /** The picture's file. */
  readonly called: string;
  /** The template's name on the shelf; none while it is in work. */
  readonly of?: string;
  /** Whether she has said anything of it. */
  readonly isSaid?: boolean;
  /** Of a template that was typed: its points and what else was said of it, as `pointing.ts` writes and reads it. */
  readonly typed?: string;
}

const KEY = 'swagwright.pictures';
const IN_WORK = 'work ';

const stored = (): readonly KeptPicture[] => {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    if (!Array.isArray(found)) return [];
    return found
      .filter((k: Partial<KeptPicture> | null) => typeof k?.key === 'string' && typeof k.called === 'string')
      .map(
        // A page of before kept the picture of a template under its name.
        (k: KeptPicture) => (k.of === undefined && !k.key.startsWith(IN_WORK) ? { ...k, of: k.key } : k),
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

/** One that no picture has, in this window or in another. */
export const newKey = (): string => {
  const drawn = crypto.getRandomValues(new Uint32Array(3));
  return IN_WORK + [...drawn].map((n) => n.toString(36)).join('');
};

export const isInWork = ({ of }: KeptPicture): boolean => of === undefined;

/** The picture of a template on the shelf. */
export const pictureOf = (name: string): KeptPicture | undefined =>
  keptPictures.value.find(({ of }) => of === name);

/** What this window has put on the shelf, by key, and what it is called there. */
const given = new Map<string, string>();

/** The picture is from now on that of a template on the shelf; of none, where there was no room for that. */
export const giveTo = (key: string, name: string | undefined): void => {
  if (name === undefined) given.delete(key);
  else given.set(key, name);
  changeKept((kept) =>
    kept.map((k) => {
      if (k.key !== key) return k;
      const { of: _, ...rest } = k;
      return name === undefined ? rest : { ...rest, of: name };
    }),
  );
};

/** What was typed of a template on the shelf, in place of what was typed of it before. */
export const keepTyped = (typed: string, of: string): void => {
  const key = newKey();
  given.set(key, of);
  changeKept((kept) => [...kept.filter((k) => k.of !== of), { key, called: 'its points', of, typed }]);
};

/** Templates of this window that have made room for another window's take their pictures along. */
export const followNames = (moved: ReadonlyMap<string, string>): void => {
  for (const [key, name] of given) if (moved.has(name)) giveTo(key, moved.get(name));
};

/** Pictures of which nothing is said that are kept: the newest. */
const MOST_UNSAID = 5;

/** Writes down that the browser has a picture. Returns the keys of those that it need not keep any longer. */
export const noteKept = (key: string, called: string, isSaid: boolean): readonly string[] => {
  let old: readonly string[] = [];
  changeKept((kept) => {
    const before = kept.find((k) => k.key === key);
    const of = given.get(key);
    const after = { ...before, key, called, ...(isSaid && { isSaid }), ...(of !== undefined && { of }) };
    const next = [...kept.filter((k) => k !== before), after];
    const unsaid = next.filter((k) => isInWork(k) && !k.isSaid);
    old = unsaid.slice(0, -MOST_UNSAID).map((k) => k.key);
    return next.filter((k) => !old.includes(k.key));
  });
  return old;
};
