/** What a hand does along an edge, in the picture or over the points: breaks are tapped, moved and taken out. */

import type { EdgeShown } from '../engine/messages.ts';
import { handWords } from '../words/words.ts';
import { alongOf, lineThrough, placeAlong } from './along-line.ts';
import type { Hand } from './by-hand.ts';
import { focusOn } from './focus-on.ts';
import { FAR_RIGHT, Knob, Label } from './knob.tsx';
import { type Place, placeIn } from './pointer.ts';
import { addBreak, breaksSaid, moveBreak, placeInSaid, removeBreak } from './trace-breaks.tsx';

interface EdgeProps {
  readonly hand: Hand;
  readonly outline: EdgeShown;
  readonly width: number;
  readonly size: number;
  /** Whether a tap means something else. */
  readonly isBusy?: boolean;
}

export const lineOf = (points: readonly Place[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('');

export const EdgeByHand = ({ hand, outline, width, size, isBusy = false }: EdgeProps) => {
  const { edge, across, along: inside, pixelsPerMm } = outline;
  return (
    <>
      {edge && !isBusy && hand.tool.value === undefined ? (
        // A short cut of the button that adds a break.
        <path
          class="traced-touch"
          d={lineOf(edge)}
          stroke-width={18 * size}
          onPointerUp={(event) => {
            event.stopPropagation();
            const line = lineThrough(edge, false);
            const along = alongOf(line, placeIn(event));
            addBreak(hand, outline, placeAlong(line, along), along / pixelsPerMm);
          }}
        />
      ) : null}
      {[...across, ...inside].map((line, i) => (
        <path key={i} class="traced-etched" d={lineOf(line.points)} stroke-width={1.5 * size} />
      ))}
      {edge ? <Breaks {...{ hand, outline, edge, width, size }} /> : null}
    </>
  );
};

/** Those on smooth stretches are moved; corners stay where the outline has them. */
const Breaks = ({ hand, outline, edge, width, size }: EdgeProps & { readonly edge: readonly Place[] }) => {
  const said = breaksSaid(hand, outline);
  const line = lineThrough(edge, false);
  const corners = new Set(
    outline.breaks.filter((b) => b.kind !== 'mark').map((b) => placeInSaid(b, said, outline)),
  );
  return (
    <>
      {outline.breaks.map((b, i) => (
        <g key={i} class="traced-corner" transform={`translate(${b.at.x.toFixed(1)} ${b.at.y.toFixed(1)})`}>
          {b.kind === 'mark' ? null : <circle r={4 * size} stroke-width={2 * size} />}
          {hand.lit.value === i ? <circle class="ring" r={14 * size} stroke-width={4 * size} /> : null}
          {b.kind === 'mark' || b.name === undefined ? null : (
            <Label {...{ size, text: b.name, isFarRight: b.at.x > FAR_RIGHT * width }} />
          )}
        </g>
      ))}
      {said.map((b, i) =>
        corners.has(i) ? null : (
          <Knob
            key={i}
            {...{ width, size, line, label: b.name, class: 'break', perMm: outline.pixelsPerMm }}
            at={placeAlong(line, alongOf(line, b.at))}
            along={handWords.fromHeel}
            isNew={focusOn.value === b.name}
            onPut={(place) => {
              focusOn.value = undefined;
              moveBreak(hand, outline, i, place);
            }}
            onRemove={() => removeBreak(hand, outline, i)}
          />
        ),
      )}
    </>
  );
};
