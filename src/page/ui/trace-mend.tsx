/** A stretch of the outline that is set right: made straight, or taken again through places that she taps. */

import type { TracedOutline } from '../engine/messages.ts';
import { traceWords } from '../words/words.ts';
import { lineThrough, placeAlong } from './along-line.ts';
import { focusFirst, focusOn } from './focus-on.ts';
import { isThrough, pictureHand, STRETCH_FROM, stretch } from './tapping.ts';
import { say, traceTold, tracing } from './tracing.ts';

/** Of the edge's length, where the two ends of a stretch are put at first. */
const FIRST = [0.4, 0.5] as const;

export const MendPart = ({ outline }: { readonly outline: TracedOutline }) => {
  const now = tracing.value;
  const open = stretch.value;
  if (!now) return null;
  const begin = (): void => {
    const line = lineThrough(outline.edge ?? outline.points, outline.edge === undefined);
    const [from, to] = FIRST.map((share) => placeAlong(line, share * line.lengths.at(-1)!)) as [never, never];
    stretch.value = { from, to, through: [] };
    focusOn.value = STRETCH_FROM;
    traceTold.value = traceWords.mend.begun;
  };
  const close = (told: string): void => {
    stretch.value = undefined;
    isThrough.value = false;
    focusOn.value = undefined;
    traceTold.value = told;
    focusFirst('.mending');
  };
  return (
    <fieldset class="trace-part mending">
      <legend>{traceWords.mend.title}</legend>
      {open === undefined ? (
        <button type="button" onClick={begin}>
          {traceWords.mend.begin}
        </button>
      ) : (
        <>
          <p class="hint">{traceWords.mend.hint}</p>
          <div class="steps">
            <button
              type="button"
              onClick={() => {
                say({ mends: [...now.mends, { ...open, through: [] }] });
                close(traceWords.mend.isStraight);
              }}
            >
              {traceWords.mend.straight}
            </button>
            <button
              type="button"
              aria-pressed={isThrough.value}
              onClick={() => {
                pictureHand.tool.value = undefined;
                isThrough.value = !isThrough.value;
              }}
            >
              {traceWords.mend.tap}
            </button>
            <button
              type="button"
              onClick={() => {
                const middle = { x: (open.from.x + open.to.x) / 2, y: (open.from.y + open.to.y) / 2 };
                stretch.value = { ...open, through: [...open.through, middle] };
                traceTold.value = traceWords.mend.added;
              }}
            >
              {traceWords.mend.add}
            </button>
            <button
              type="button"
              disabled={open.through.length === 0}
              onClick={() => {
                say({ mends: [...now.mends, open] });
                close(traceWords.mend.isThrough({ count: open.through.length }));
              }}
            >
              {traceWords.mend.through({ count: open.through.length })}
            </button>
            <button type="button" onClick={() => close(traceWords.mend.left)}>
              {traceWords.mend.leave}
            </button>
          </div>
        </>
      )}
      {now.mends.length > 0 ? (
        <ol class="trace-list">
          {now.mends.map((mend, i) => {
            const of = { number: i + 1, count: mend.through.length };
            return (
              <li key={i}>
                {of.count === 0 ? traceWords.mend.listedStraight(of) : traceWords.mend.listedThrough(of)}{' '}
                <button
                  type="button"
                  onClick={() => {
                    say({ mends: now.mends.filter((_, k) => k !== i) });
                    traceTold.value = traceWords.mend.undone(of);
                  }}
                >
                  {traceWords.mend.undo(of)}
                </button>
              </li>
            );
          })}
        </ol>
      ) : null}
    </fieldset>
  );
};
