/** The picture with its outline over it, and the two ends of the edge to be dragged along that. */

import { useSignal } from '@preact/signals';
import type { TracedOutline } from '../engine/messages.ts';
import { alongOf, lengthsOf, placeAlong } from './along-line.ts';
import { type Place, placeIn } from './pointer.ts';
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
  const edge = outline?.edge;
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
      <figure class="trace-window" aria-label="The picture with the outline that was found">
        {/* biome-ignore lint/a11y/noSvgWithoutTitle: the figure is labelled */}
        <svg
          viewBox={`0 0 ${width} ${height}`}
          style={{ width: `calc(${closer.value} * min(100%, ${((SEEN * width) / height).toFixed(1)}vh))` }}
          onPointerUp={(event) => {
            if (scale?.kind !== 'marks') return;
            const at = placeIn(event);
            say({ scale: { ...scale, marks: marks.length < 2 ? [...marks, at] : [at] } });
          }}
        >
          <image href={shownPicture.value} width={width} height={height} />
          {outline ? (
            <path class="traced" d={`${lineOf(outline.points)}Z`} stroke-width={1.5 * size} />
          ) : null}
          {edge ? <path class="traced-edge" d={lineOf(edge)} stroke-width={3 * size} /> : null}
          {outline?.dots.map((p) => (
            <circle key={`${p.x} ${p.y}`} class="traced" cx={p.x} cy={p.y} r={5 * size} />
          ))}
          {marks.map((p) => (
            <path
              key={`${p.x} ${p.y}`}
              class="tapped"
              stroke-width={2 * size}
              d={`M${p.x - 10 * size} ${p.y}h${20 * size}M${p.x} ${p.y - 10 * size}v${20 * size}`}
            />
          ))}
          {outline && edge
            ? ENDS.map(([name, label, nth]) => {
                const at = edge.at(nth)!;
                const isFarRight = at.x > 0.8 * width;
                return <End key={name} {...{ name, label, outline, at, size, isFarRight }} />;
              })
            : null}
        </svg>
      </figure>
    </div>
  );
};

/** Of the window's height, in hundredths, what the whole picture takes at most. */
const SEEN = 74;

/** Each by its place in the edge. */
const ENDS = [
  ['heel', 'Heel', 0],
  ['crown', 'Crown end', -1],
] as const;

const lineOf = (points: readonly Place[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

interface EndProps {
  readonly name: 'heel' | 'crown';
  readonly label: string;
  readonly outline: TracedOutline;
  readonly at: Place;
  readonly size: number;
  /** Whether there is no room for its name on its right. */
  readonly isFarRight: boolean;
}

/** An end of the edge, on the outline: dragged along it by hand, or moved by a millimetre with the arrow keys. */
const End = ({ name, label, outline, at, size, isFarRight }: EndProps) => {
  const isDragging = useSignal(false);
  const moving = useSignal<Place | undefined>(undefined);
  const { points, pixelsPerMm } = outline;
  const lengths = lengthsOf(points);
  const whole = lengths.at(-1)!;
  const here = moving.value ?? at;
  const along = alongOf(points, lengths, here);
  const putAt = (place: Place): void => {
    moving.value = place;
    say({ [name]: place, ...other(name) });
  };
  /** The other end stays where it is, also where it was found and not said. */
  const other = (own: EndProps['name']): Partial<{ heel: Place; crown: Place; foot: 'left' | 'right' }> => {
    const { edge, foot } = outline;
    if (!edge) return {};
    const rest = own === 'heel' ? { crown: edge.at(-1)! } : { heel: edge[0]! };
    return { ...rest, ...(foot && { foot }) };
  };
  return (
    <g
      class={`traced-end ${name}`}
      role="slider"
      // An SVG element knows this attribute in small letters only.
      {...{ tabindex: 0 }}
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={Math.round(whole / pixelsPerMm)}
      aria-valuenow={Math.round(along / pixelsPerMm)}
      aria-valuetext={`${Math.round(along / pixelsPerMm)} mm along the outline`}
      transform={`translate(${here.x.toFixed(1)} ${here.y.toFixed(1)})`}
      onKeyDown={(event) => {
        const step = STEPS[event.key];
        if (step === undefined) return;
        const by = step * (event.shiftKey ? 10 : 1) * pixelsPerMm;
        putAt(placeAlong(points, lengths, (((along + by) % whole) + whole) % whole));
        event.preventDefault();
      }}
      onTouchStart={(event) => event.preventDefault()}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        isDragging.value = true;
        event.preventDefault();
        event.currentTarget.focus();
      }}
      onPointerMove={(event) => {
        if (isDragging.value) putAt(placeAlong(points, lengths, alongOf(points, lengths, placeIn(event))));
      }}
      onPointerUp={(event) => {
        // It is no tap on the picture.
        event.stopPropagation();
        isDragging.value = false;
        moving.value = undefined;
      }}
      onPointerCancel={() => {
        isDragging.value = false;
        moving.value = undefined;
      }}
      onBlur={() => {
        moving.value = undefined;
      }}
    >
      <circle class="touch" r={18 * size} />
      <circle class="knob" r={6 * size} stroke-width={2 * size} />
      <text
        x={(isFarRight ? -12 : 12) * size}
        y={-10 * size}
        font-size={18 * size}
        stroke-width={4 * size}
        text-anchor={isFarRight ? 'end' : 'start'}
      >
        {label}
      </text>
    </g>
  );
};

/** Clockwise as the outline runs. */
const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
