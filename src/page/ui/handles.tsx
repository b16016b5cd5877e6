/** Knobs on the large swag: dragged, the template follows; let go, the swag snaps to the nearest fit. */

import { useSignal } from '@preact/signals';
import type { SwagAnswer, SwagPose, SwagStop } from '../engine/messages.ts';
import { swagWords } from '../words/words.ts';
import { type Place, placeIn } from './pointer.ts';
import { quick, shown, side, state, take } from './store.ts';

interface Props {
  readonly answer: SwagAnswer;
  readonly pose: SwagPose;
  /** Which of the stops it stands at; −1 where it stands at none. */
  readonly at: number;
  readonly moving: { value: SwagPose | undefined };
}

interface Knob {
  readonly name: 'depth' | 'span';
  /** Undefined for the second of two that do the same: it is for hands only, and no screen reader needs it. */
  readonly label: string | undefined;
  readonly place: Place;
  /** The direction that it moves in. */
  readonly way: Place;
  /** The half span (mm) that it asks for when it is held there. */
  readonly halfSpanFor: (at: Place) => number;
}

export const nearestStop = (stops: readonly SwagStop[], halfSpan: number): number => {
  let best = 0;
  stops.forEach((stop, i) => {
    if (Math.abs(stop.halfSpan - halfSpan) < Math.abs(stops[best]!.halfSpan - halfSpan)) best = i;
  });
  return best;
};

export const Handles = ({ answer, pose, at, moving }: Props) => {
  const { stops } = answer;
  /** Knobs grow with the view, so that a finger finds them on any screen. */
  const size = (answer.box.maxX - answer.box.minX) / VIEW;
  const isDragging = useSignal(false);
  const show = (halfSpan: number): void => {
    const input = state.value;
    void quick.ask({ kind: 'drag', input, side: side.value, halfSpan }).then((answered) => {
      if (answered.kind === 'answer' && answered.answer && isDragging.value) moving.value = answered.answer;
    });
  };
  const settle = (halfSpan: number): void => {
    const stop = stops[nearestStop(stops, halfSpan)];
    if (!stop || stop.key === shown.value?.key) moving.value = undefined;
    else take(stop.key);
  };
  const step = (by: number): void => {
    const stop = stops[at + by];
    if (stop) take(stop.key);
  };
  return (
    <>
      {knobsOf(answer, pose).map((knob) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: a slider, but for the knob that repeats another
        <g
          key={knob.label ?? knob.name}
          class={`handle ${knob.name}`}
          {...(knob.label === undefined
            ? { 'aria-hidden': 'true' as const }
            : sliderOf(knob, stops, at, pose))}
          transform={`translate(${knob.place.x.toFixed(3)} ${knob.place.y.toFixed(3)})`}
          onKeyDown={(event) => {
            const by = stepFor(event.key, knob.name, at, stops.length);
            if (by === undefined) return;
            step(by);
            event.preventDefault();
          }}
          // A finger on a knob drags it, and not the page under it.
          onTouchStart={(event) => event.preventDefault()}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            isDragging.value = true;
            event.preventDefault();
            if (knob.label !== undefined) event.currentTarget.focus();
          }}
          onPointerMove={(event) => {
            if (isDragging.value) show(knob.halfSpanFor(placeIn(event)));
          }}
          onPointerUp={(event) => {
            if (!isDragging.value) return;
            isDragging.value = false;
            settle(knob.halfSpanFor(placeIn(event)));
          }}
          onPointerCancel={() => {
            isDragging.value = false;
            moving.value = undefined;
          }}
        >
          <circle class="touch" r={size} />
          <circle class="knob" r={3.6 * size} />
          <path
            class="arrows"
            transform={`rotate(${turnOf(knob.way)}) scale(${size.toFixed(3)})`}
            d="M-7 0h14M-7 0l2-2M-7 0l2 2M7 0l-2-2M7 0l-2 2"
          />
        </g>
      ))}
    </>
  );
};

const sliderOf = ({ name, label }: Knob, stops: readonly SwagStop[], at: number, pose: SwagPose) => ({
  role: 'slider' as const,
  // An SVG element knows this attribute in small letters only.
  tabindex: 0,
  'aria-label': label,
  'aria-orientation': name === 'span' ? ('horizontal' as const) : ('vertical' as const),
  'aria-valuemin': 0,
  'aria-valuemax': Math.max(1, stops.length - 1),
  'aria-valuenow': name === 'span' ? at : stops.length - 1 - at,
  'aria-valuetext': stops[at]?.words ?? pose.words,
});

/** A key as steps towards wider swags: the arrows' own direction raises the span, and lowers the depth. */
const stepFor = (key: string, name: Knob['name'], at: number, count: number): number | undefined => {
  const isSpan = name === 'span';
  const last = count - 1;
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return isSpan ? 1 : -1;
    case 'ArrowLeft':
    case 'ArrowDown':
      return isSpan ? -1 : 1;
    case 'Home':
      return isSpan ? -at : last - at;
    case 'End':
      return isSpan ? last - at : -at;
    default:
      return undefined;
  }
};

const ALONG: Place = { x: 1, y: 0 };

const knobsOf = ({ kind, chord }: SwagAnswer, { ground, deeper, depth, ends }: SwagPose): readonly Knob[] => {
  const crown: Knob = {
    name: 'depth',
    label: kind === 'corner' ? swagWords.cornerKnob : swagWords.depthKnob,
    place: { x: ground.x + deeper.x * depth, y: ground.y + deeper.y * depth },
    way: deeper,
    halfSpanFor: (at) => {
      const along = (at.x - ground.x) * deeper.x + (at.y - ground.y) * deeper.y;
      const asked = Math.min(chord, Math.max(0, along / (deeper.x ** 2 + deeper.y ** 2)));
      return Math.sqrt((chord - asked) * (chord + asked));
    },
  };
  if (kind !== 'side') return [crown];
  // The centre line stays where it is, and either end is as far from it as the other.
  const end = (place: Place, label: string | undefined, sign: 1 | -1): Knob => ({
    name: 'span',
    label,
    place,
    way: ALONG,
    halfSpanFor: ({ x }) => Math.max(0, sign * x),
  });
  return [crown, end(ends[1], swagWords.spanKnob, 1), end(ends[0], undefined, -1)];
};

/** Degrees, as SVG turns. */
const turnOf = ({ x, y }: Place): string => ((Math.atan2(y, x) * 180) / Math.PI).toFixed(1);

/** The width of a view (mm) for which the knobs are drawn. */
const VIEW = 300;
