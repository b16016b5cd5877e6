/** What the page says of what she asked for, where she asked for it. */

import { Troubles } from './fields.tsx';
import { type Notice, notice } from './store.ts';

/** The place stands there before anything is said in it, so that screen readers notice when something is. */
export const Said = ({ at }: { readonly at: Notice['at'] }) => {
  const now = notice.value?.at === at ? notice.value : undefined;
  return (
    <div class="said">
      <div role="status" class={now ? `notice${now.isWrong ? ' wrong' : ''}` : ''}>
        {now ? (
          <>
            <p>{now.text}</p>
            {now.troubles.length > 0 ? <Troubles list={now.troubles} /> : null}
          </>
        ) : null}
      </div>
      {now ? (
        <button
          type="button"
          class="dismiss"
          onClick={() => {
            notice.value = undefined;
          }}
        >
          Dismiss
        </button>
      ) : null}
    </div>
  );
};
