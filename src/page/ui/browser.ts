/** The few things that are asked of the browser itself. */

import { signal } from '@preact/signals';

/** Whether the window is about as wide as a telephone. */
export const isNarrow = signal(false);

const NARROW = '(max-width: 40rem)';

export const watchWidth = (): void => {
  const narrow = matchMedia(NARROW);
  isNarrow.value = narrow.matches;
  narrow.addEventListener('change', () => {
    isNarrow.value = narrow.matches;
  });
};

/** What this browser keeps under a key: nothing, too, where it keeps nothing for anyone. */
export const readKept = (key: string): string | null => {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
};

/** Keeps what is soon said again. */
export const keep = (key: string, text: string): void => {
  try {
    localStorage.setItem(key, text);
  } catch {
    // Without a store it is said again at the next visit.
  }
};

/** Hands bytes to the browser's own downloads. */
export const saveAs = (name: string, type: string, content: string | Uint8Array): void => {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // Some browsers read the bytes only after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(address), KEPT_FOR);
};

/** ms */
const KEPT_FOR = 60_000;

/** The name by which a plan may call a dropped file: a path, beside the plan, on one line. One that is such a name stays. */
export const readOwnName = (fileName: string): string => {
  const plain =
    fileName
      .replace(/^\.\//, '')
      .replace(/[\p{Cc}\p{Cf}\\/]+/gu, ' ')
      .trim()
      .slice(-MOST_NAME) || 'template';
  return /\.(ya?ml|json)$/i.test(plain) ? `./${plain}` : `./${plain}.yaml`;
};

const MOST_NAME = 100;
