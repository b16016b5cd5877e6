/** What the page itself knows of her designs: whether there are any, how one is kept, and which file holds some. */

import { NO_START } from '../engine/client.ts';
import { workWords } from '../words/words.ts';
import { wantPart } from './later.tsx';
import { complain, during } from './store.ts';

/** Under which the browser keeps each. */
export const PREFIX = 'swagwright.design ';

export const hasDesigns = (): boolean => {
  try {
    return Object.keys(localStorage).some((key) => key.startsWith(PREFIX));
  } catch {
    return false;
  }
};

/** Called once: they are shown where there are any, be it that another window has kept the first. */
export const showDesigns = (): void => {
  // Where they cannot be loaded now they can be when one is kept.
  const show = (): void => void wantPart('designs').catch(() => {});
  if (hasDesigns()) show();
  addEventListener('storage', ({ key }) => {
    if (key?.startsWith(PREFIX)) show();
  });
};

const designsPart = () =>
  during(workWords.designs, wantPart('designs')).catch(() => {
    complain(NO_START.text);
    return undefined;
  });

/** Keeps what is open as a design. */
export const keepThis = async (): Promise<void> => (await designsPart())?.keep();

/** What a file of designs begins with. */
export const isDesigns = (text: string): boolean => /^\s*\{\s*"swagwright":\s*"designs"/.test(text);

export const takeDesigns = async (fileName: string, text: string): Promise<void> =>
  (await designsPart())?.take(fileName, text);
