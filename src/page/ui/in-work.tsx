/** Pictures that are no templates yet: gone on with, or thrown away one by one, with a way back as long as the page is open. */

import { useSignal } from '@preact/signals';
import { ownWords } from '../words/words.ts';
import { focusFirst } from './focus-on.ts';
import { isInWork, keptPictures } from './kept-pictures.ts';
import { openKept } from './own-pictures.ts';
import { throwOut } from './tracing.ts';

export const InWork = () => {
  const thrown = useSignal<readonly { readonly called: string; readonly back: () => Promise<void> }[]>([]);
  const kept = keptPictures.value.filter(isInWork);
  return (
    <ul class="steps">
      {kept.map(({ key, called }) => (
        <li key={key} class="steps">
          <button type="button" onClick={() => void openKept(key)}>
            {ownWords.goOn({ name: called })}
          </button>
          <button
            type="button"
            aria-label={ownWords.throwAwayOf({ name: called })}
            onClick={async () => {
              const back = await throwOut(key);
              if (!back) return;
              thrown.value = [...thrown.value, { called, back }];
              focusFirst('.thrown:last-child');
            }}
          >
            {ownWords.throwAway}
          </button>
        </li>
      ))}
      {thrown.value.map((one, i) => (
        <li key={i} class="steps thrown">
          <button
            type="button"
            onClick={async () => {
              await one.back();
              thrown.value = thrown.value.filter((other) => other !== one);
            }}
          >
            {ownWords.takeBack({ name: one.called })}
          </button>
        </li>
      ))}
    </ul>
  );
};
