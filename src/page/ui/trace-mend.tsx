/** A stretch of the outline that is set right: made straight, or taken again through places that she taps. */

import { plural } from '../../document/index.ts';
import type { TracedOutline } from '../engine/messages.ts';
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
    traceTold.value = 'Put the two violet places at the ends of the stretch.';
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
      <legend>Where the line is wrong</legend>
      {open === undefined ? (
        <button type="button" onClick={begin}>
          Set a stretch right
        </button>
      ) : (
        <>
          <p class="hint">
            Drag the two violet places to where the stretch begins and ends. Then make it straight; or tap
            places that the edge runs through, and take it through them.
          </p>
          <div class="steps">
            <button
              type="button"
              onClick={() => {
                say({ mends: [...now.mends, { ...open, through: [] }] });
                close('The stretch is straight.');
              }}
            >
              Make it straight
            </button>
            <button
              type="button"
              aria-pressed={isThrough.value}
              onClick={() => {
                pictureHand.tool.value = undefined;
                isThrough.value = !isThrough.value;
              }}
            >
              Tap places on it
            </button>
            <button
              type="button"
              onClick={() => {
                const middle = { x: (open.from.x + open.to.x) / 2, y: (open.from.y + open.to.y) / 2 };
                stretch.value = { ...open, through: [...open.through, middle] };
                traceTold.value = 'A place is added in the middle. Arrow keys move it.';
              }}
            >
              Add a place in its middle
            </button>
            <button
              type="button"
              disabled={open.through.length === 0}
              onClick={() => {
                say({ mends: [...now.mends, open] });
                close(`The stretch runs through ${plural(open.through.length, 'place')}.`);
              }}
            >
              Take it through {plural(open.through.length, 'place')}
            </button>
            <button type="button" onClick={() => close('The stretch stays as it is.')}>
              Leave it
            </button>
          </div>
        </>
      )}
      {now.mends.length > 0 ? (
        <ol class="trace-list">
          {now.mends.map((mend, i) => {
            const words =
              mend.through.length === 0 ? 'made straight' : `through ${plural(mend.through.length, 'place')}`;
            return (
              <li key={i}>
                Stretch {i + 1}, {words}{' '}
                <button
                  type="button"
                  onClick={() => {
                    say({ mends: now.mends.filter((_, k) => k !== i) });
                    traceTold.value = `Stretch ${i + 1} is as it was traced.`;
                  }}
                >
                  As it was traced, stretch {i + 1}
                </button>
              </li>
            );
          })}
        </ol>
      ) : null}
    </fieldset>
  );
};
