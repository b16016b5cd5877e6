/** What this is, for whoever comes here first: until she puts it away. */

import { signal } from '@preact/signals';
import { isExample } from '../plan/first-figures.ts';
import { introWords } from '../words/words.ts';
import { state } from './store.ts';

const KEY = 'swagwright.intro';

const stored = (): boolean => {
  try {
    return localStorage.getItem(KEY) === null;
  } catch {
    return true;
  }
};

const isShown = signal(stored());

const putAway = (): void => {
  isShown.value = false;
  try {
    localStorage.setItem(KEY, 'read');
  } catch {
    // Without a store it is there again the next time.
  }
};

export const Intro = () =>
  isShown.value ? (
    <section class="intro" aria-label={introWords.label}>
      <p>
        {introWords.what} <strong>{isExample(state.value) ? introWords.example : introWords.hers}</strong>
      </p>
      <button type="button" onClick={putAway}>
        {introWords.putAway}
      </button>
    </section>
  ) : null;
