/** The picture with its outline over it, and what a hand moves along that: ends, breaks, the ends of a stretch. */

import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { TracedLine, TracedOutline } from '../engine/messages.ts';
import { alongOf, lineThrough, placeAlong } from './along-line.ts';
import { chosen, focusOn } from './focus-on.ts';
import { FAR_RIGHT, Knob, Label } from './knob.tsx';
import { type Place, placeIn } from './pointer.ts';
import { STRETCH_FROM, stretch, tapped, tool } from './tapping.ts';
import { addBreak, breaksSaid, lit, moveBreak, placeInSaid, removeBreak } from './trace-breaks.tsx';
import { say, shownPicture, tracing } from './tracing.ts';

interface PicturedProps {
  readonly outline: TracedOutline | undefined;
  readonly width: number;
  readonly height: number;
}

export const Pictured = ({ outline, width, height }: PicturedProps) => {
  const closer = useSignal(1);
  const scale = tracing.value?.scale;
  const marks = scale?.kind === 'marks' ? scale.marks : [];
  /** The width of a line or a letter: pixels of the picture for a part of its longer side. */
  const size = Math.max(width, height) / 800 / closer.value;
  const seen = useRef<HTMLElement>(null);
  useEffect(() => {
    const at = chosen.peek() ?? outline?.edge?.[0];
    const drawn = seen.current?.querySelector('svg')?.getBoundingClientRect();
    if (!at || !drawn || !seen.current) return;
    const { clientWidth, clientHeight } = seen.current;
    seen.current.scrollTo(
      (at.x / width) * drawn.width - clientWidth / 2,
      (at.y / height) * drawn.height - clientHeight / 2,
    );
  }, [closer.value, lit.value]);
  return (
    <div class="trace-picture">
      <div class="steps">
        {[1, 2, 4].map((times) => (
          <button
            key={times}
            type="button"
            aria-pressed={closer.value === times}
            onClick={() => {
              closer.value = times;
            }}
          >
            {times === 1 ? 'Whole picture' : `${times} times closer`}
          </button>
        ))}
      </div>
      <figure
        ref={seen}
        class={`trace-window${tool.value ? ' tapping' : ''}`}
        aria-label="The picture with the outline that was found"
      >
        {/* biome-ignore lint/a11y/noSvgWithoutTitle: the figure is labelled */}
        <svg
          viewBox={`0 0 ${width} ${height}`}
          style={{ width: `calc(${closer.value} * min(100%, ${((SEEN * width) / height).toFixed(1)}vh))` }}
          onPointerUp={(event) => tapped(placeIn(event))}
        >
          <image href={shownPicture.value} width={width} height={height} />
          {outline ? <Found {...{ outline, width, size }} /> : null}
          {marks.map((p) => (
            <path
              key={`${p.x} ${p.y}`}
              class="tapped"
              stroke-width={2 * size}
              d={`M${p.x - 10 * size} ${p.y}h${20 * size}M${p.x} ${p.y - 10 * size}v${20 * size}`}
            />
          ))}
        </svg>
      </figure>
    </div>
  );
};

/** Of the window's height, in hundredths, what the whole picture takes at most. */
const SEEN = 74;

const lineOf = (points: readonly Place[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

interface FoundProps {
  readonly outline: TracedOutline;
  readonly width: number;
  readonly size: number;
}

const Found = ({ outline, width, size }: FoundProps) => {
  const { edge, points, pixelsPerMm: perMm } = outline;
  const whole = lineThrough(points, true);
  const common = { perMm, size, width };
  return (
    <>
      <path class="traced" d={`${lineOf(points)}Z`} stroke-width={1.5 * size} />
      {edge ? <path class="traced-edge" d={lineOf(edge)} stroke-width={3 * size} /> : null}
      {edge && tool.value === undefined ? (
        // A short cut of the button “Add a break”.
        <path
          class="traced-touch"
          d={lineOf(edge)}
          stroke-width={18 * size}
          onPointerUp={(event) => {
            event.stopPropagation();
            const line = lineThrough(edge, false);
            const along = alongOf(line, placeIn(event));
            addBreak(outline, placeAlong(line, along), along / perMm);
          }}
        />
      ) : null}
      {outline.dots.map((p) => (
        <circle key={`${p.x} ${p.y}`} class="traced" cx={p.x} cy={p.y} r={5 * size} />
      ))}
      {[...outline.across, ...outline.along].map((line: TracedLine, i) => (
        <path key={i} class="traced-etched" d={lineOf(line.points)} stroke-width={1.5 * size} />
      ))}
      {edge ? <Breaks {...{ outline, edge, width, size }} /> : null}
      {edge
        ? ENDS.map(([name, label, nth]) => (
            <Knob
              key={name}
              {...{ ...common, label, class: name, line: whole, along: 'along the outline' }}
              at={edge.at(nth)!}
              onPut={(place) => say({ [name]: place, ...otherEnd(outline, name) }, name)}
            />
          ))
        : null}
      <StretchEnds {...{ outline, width, size }} />
    </>
  );
};

/** Each by its place in the edge. */
const ENDS = [
  ['heel', 'Heel', 0],
  ['crown', 'Crown end', -1],
] as const;

/** The other end stays where it is, also where it was found and not said. */
const otherEnd = (
  { edge, foot }: TracedOutline,
  own: 'heel' | 'crown',
): Partial<{ heel: Place; crown: Place; foot: 'left' | 'right' }> => {
  if (!edge) return {};
  const rest = own === 'heel' ? { crown: edge.at(-1)! } : { heel: edge[0]! };
  return { ...rest, ...(foot && { foot }) };
};

/** Those on smooth stretches are moved; corners stay where the outline has them. */
const Breaks = ({ outline, edge, width, size }: FoundProps & { readonly edge: readonly Place[] }) => {
  const said = breaksSaid(outline);
  const line = lineThrough(edge, false);
  const corners = new Set(
    outline.breaks.filter((b) => b.kind !== 'mark').map((b) => placeInSaid(b, said, outline)),
  );
  return (
    <>
      {outline.breaks.map((b, i) => (
        <g
          key={i}
          class={`traced-corner${lit.value === i ? ' lit' : ''}`}
          transform={`translate(${b.at.x.toFixed(1)} ${b.at.y.toFixed(1)})`}
        >
          {b.kind === 'mark' ? null : <circle r={4 * size} stroke-width={2 * size} />}
          {lit.value === i ? <circle class="ring" r={14 * size} stroke-width={4 * size} /> : null}
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
            along="from the heel"
            isNew={focusOn.value === b.name}
            onPut={(place) => {
              focusOn.value = undefined;
              moveBreak(outline, i, place);
            }}
            onRemove={() => removeBreak(outline, i)}
          />
        ),
      )}
    </>
  );
};

const StretchEnds = ({ outline, width, size }: FoundProps) => {
  const now = stretch.value;
  if (!now) return null;
  const line = lineThrough(outline.points, true);
  const common = { width, size, class: 'stretch', perMm: outline.pixelsPerMm, along: 'along the outline' };
  return (
    <>
      <Knob
        {...{ ...common, line, label: STRETCH_FROM }}
        at={now.from}
        isNew={focusOn.value === STRETCH_FROM}
        onPut={(from) => {
          stretch.value = { ...now, from };
        }}
      />
      <Knob
        {...{ ...common, line, label: 'Stretch to' }}
        at={now.to}
        onPut={(to) => {
          stretch.value = { ...now, to };
        }}
      />
      {now.through.map((p, i) => (
        <Knob
          key={i}
          {...{ ...common, line: undefined, label: `${i + 1}` }}
          at={p}
          onPut={(at) => {
            stretch.value = { ...now, through: now.through.map((q, k) => (k === i ? at : q)) };
          }}
          onRemove={() => {
            stretch.value = { ...now, through: now.through.filter((_, k) => k !== i) };
          }}
        />
      ))}
    </>
  );
};
