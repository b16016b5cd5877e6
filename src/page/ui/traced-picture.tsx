/** The picture with its outline over it, and what a hand moves along that: ends, breaks, the ends of a stretch. */

import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { TracedOutline } from '../engine/messages.ts';
import { traceWords } from '../words/words.ts';
import { lineThrough } from './along-line.ts';
import { EdgeByHand, lineOf } from './edge-by-hand.tsx';
import { chosen, focusOn } from './focus-on.ts';
import { Knob } from './knob.tsx';
import { type Place, placeIn } from './pointer.ts';
import { isThrough, pictureHand, STRETCH_FROM, stretch, tapped } from './tapping.ts';
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
  }, [closer.value, pictureHand.lit.value]);
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
            {times === 1 ? traceWords.whole : traceWords.closer({ times })}
          </button>
        ))}
      </div>
      <figure
        ref={seen}
        class={`trace-window${pictureHand.tool.value || isThrough.value ? ' tapping' : ''}`}
        aria-label={traceWords.picture}
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
      {outline.dots.map((p) => (
        <circle key={`${p.x} ${p.y}`} class="traced" cx={p.x} cy={p.y} r={5 * size} />
      ))}
      <EdgeByHand {...{ outline, width, size }} hand={pictureHand} isBusy={isThrough.value} />
      {edge
        ? ENDS.map(([name, label, nth]) => (
            <Knob
              key={name}
              {...{ ...common, label, class: name, line: whole, along: traceWords.alongOutline }}
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
  ['heel', traceWords.heel, 0],
  ['crown', traceWords.crown, -1],
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

const StretchEnds = ({ outline, width, size }: FoundProps) => {
  const now = stretch.value;
  if (!now) return null;
  const line = lineThrough(outline.points, true);
  const common = {
    width,
    size,
    class: 'stretch',
    perMm: outline.pixelsPerMm,
    along: traceWords.alongOutline,
  };
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
        {...{ ...common, line, label: traceWords.mend.to }}
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
