/** What this is, for whoever comes here first: until she puts it away. */

import { signal } from '@preact/signals';
import { isExample } from '../plan/first-figures.ts';
import { introWords } from '../words/words.ts';
import { keep, readKept } from './browser.ts';
import { state } from './store.ts';

const KEY = 'swagwright.intro';

const isShown = signal(readKept(KEY) === null);

const putAway = (): void => {
  isShown.value = false;
  keep(KEY, 'read');
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
