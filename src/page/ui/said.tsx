/** What the page says of what she asked for, where she asked for it. */

import { useEffect, useRef } from 'preact/hooks';
import { noticeWords } from '../words/words.ts';
import { Troubles } from './fields.tsx';
import { type Notice, notice } from './store.ts';

/** All that stands in the field is marked, to be typed over. */
const Next = ({ words, to }: NonNullable<Notice['next']>) => (
  <button
    type="button"
    onClick={() => {
      const field = document.getElementById(to);
      if (!(field instanceof HTMLInputElement)) return;
      field.scrollIntoView({ block: 'center' });
      field.focus();
      field.select();
    }}
  >
    {words}
  </button>
);

/** The place stands there before anything is said in it, so that screen readers notice when something is. */
export const Said = ({ at }: { readonly at: Notice['at'] }) => {
  const now = notice.value?.at === at ? notice.value : undefined;
  const place = useRef<HTMLDivElement>(null);
  // Buttons for paper, or a shelf, are more than a screen on a telephone: what became of one comes into sight.
  useEffect(() => {
    if (now && now.at !== 'head') place.current?.scrollIntoView({ block: 'nearest' });
  }, [now]);
  return (
    <div class="said" ref={place}>
      <div role="status" class={now ? `notice${now.isWrong ? ' wrong' : ''}` : ''}>
        {now ? (
          <>
            <p>{now.text}</p>
            {now.troubles.length > 0 ? <Troubles list={now.troubles} /> : null}
          </>
        ) : null}
      </div>
      {now?.next ? <Next {...now.next} /> : null}
      {now ? (
        <button
          type="button"
          class="dismiss"
          onClick={() => {
            notice.value = undefined;
          }}
        >
          {noticeWords.dismiss}
        </button>
      ) : null}
    </div>
  );
};
