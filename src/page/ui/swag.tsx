/** One swag, large: parts of the edge to start and end at, and handles that tilt the template as far as it fits. */

import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { SectionFacts, SwagAnswer, SwagPose, SwagStop } from '../engine/messages.ts';
import { Choice, Panel, PlanChoice } from './fields.tsx';
import { Inks, Letterings, viewBoxOf } from './picture.tsx';
import { edit, fills, quick, shown, side, state, swag, take } from './store.ts';

export const Swag = () => {
  const design = shown.value;
  const answer = swag.value;
  const names = design ? [...design.sides.map((s) => s.name), ...(design.corner ? ['corner'] : [])] : [];
  return (
    <Panel
      id="swag"
      title="One swag"
      lead="Drag the crown up and down, or an end in and out: the template tilts along, and lets go where it fits the side. Pick a part of its edge to start or end there."
      aside={
        names.length > 1 ? (
          <Choice
            label="On the"
            class="inline"
            value={side.value}
            options={names.map((name) => [name, name === 'corner' ? 'corner' : `${name} side`] as const)}
            onChoose={(name) => {
              side.value = name;
            }}
          />
        ) : null
      }
    >
      {answer && design ? <Board answer={answer} /> : <div class="board waiting" />}
    </Panel>
  );
};

const Board = ({ answer }: { readonly answer: SwagAnswer }) => {
  const moving = useSignal<SwagPose | undefined>(undefined);
  const picked = useSignal<SectionFacts | undefined>(undefined);
  // A new answer is where the swag stands now, whatever a hand was at.
  useEffect(() => {
    moving.value = undefined;
  }, [answer]);
  const pose = moving.value ?? answer.pose;
  const at = nearestStop(answer.stops, answer.pose.halfSpan);
  const here = answer.sections.find((s) => s.number === picked.value?.number);
  return (
    <>
      <svg class="drawn board" viewBox={viewBoxOf(answer.box)} aria-labelledby="board-words">
        <title id="board-words">The swag and its template: {answer.pose.words}</title>
        <g transform={`translate(${pose.across.toFixed(3)} 0)`}>
          {fills.value && !moving.value ? <path class="ink fill" d={fills.value.swag} /> : null}
          <Inks inks={pose.inks} />
          <Letterings texts={pose.texts} />
          {moving.value ? null : (
            <Sections
              sections={answer.sections}
              picked={here?.number}
              onPick={(s) => {
                picked.value = picked.value?.number === s.number ? undefined : s;
              }}
            />
          )}
        </g>
        {answer.turns ? <Handles answer={answer} pose={pose} at={at} moving={moving} /> : null}
      </svg>
      <p class="reading" aria-live="off">
        <strong>{pose.words}</strong>
        {moving.value === undefined
          ? answer.stops[at]
            ? ` · ${answer.stops[at]!.repeats} on this side`
            : ''
          : pose.misfit
            ? ` · ${pose.misfit}`
            : ` · lets go at ${answer.stops[nearestStop(answer.stops, pose.halfSpan)]?.words ?? 'where it was'}`}
      </p>
      {answer.turns || side.value === 'corner' ? null : (
        <p class="hint">
          A line or a flat of the template gives the tilt here, so span and depth are fixed, and only the
          count can change.
        </p>
      )}
      {answer.stops.length > 1 ? <Counts stops={answer.stops} at={at} /> : null}
      <EdgeChoice sections={answer.sections} picked={here} />
    </>
  );
};

/** For those who would rather pick than drag: the same counts by name. */
const Counts = ({ stops, at }: { readonly stops: readonly SwagStop[]; readonly at: number }) => (
  <div class="steps">
    <button type="button" disabled={at <= 0} onClick={() => take(stops[at - 1]!.key)}>
      Narrower, deeper
    </button>
    <button type="button" disabled={at >= stops.length - 1} onClick={() => take(stops[at + 1]!.key)}>
      Wider, flatter
    </button>
  </div>
);

const EdgeChoice = ({
  sections,
  picked,
}: {
  readonly sections: readonly SectionFacts[];
  readonly picked: SectionFacts | undefined;
}) => {
  const design = shown.value!;
  return (
    <div class="edge-choice">
      <p>
        The swag uses the edge from <strong>{design.from}</strong> to <strong>{design.to}</strong>.
      </p>
      {sections.length > 1 ? (
        <div class="steps">
          {sections.map((s) => (
            <span key={s.number} class={`edge-part${s.number === picked?.number ? ' picked' : ''}`}>
              <span class="name">{s.label}</span>
              <button
                type="button"
                aria-label={`start here: ${s.label}`}
                onClick={() => edit([[['swag', 'from'], s.number]])}
              >
                start here
              </button>
              <button
                type="button"
                aria-label={`end here: ${s.label}`}
                onClick={() => edit([[['swag', 'to'], s.number === sections.length ? 'crown' : s.number]])}
              >
                end here
              </button>
            </span>
          ))}
          <button
            type="button"
            onClick={() =>
              edit([
                [['swag', 'from'], undefined],
                [['swag', 'to'], undefined],
              ])
            }
          >
            Leave both open
          </button>
        </div>
      ) : null}
      <details>
        <summary>More wishes</summary>
        <div class="field-row">
          <PlanChoice
            label="How the template is set"
            path={['swag', 'setting']}
            options={[
              ['auto', 'any way'],
              ['crown-on-centre', 'crown on the centre line'],
              ['alignment-line', 'by an etched line'],
              ['flat-on-guide', 'a flat on a guide line'],
            ]}
          />
          <PlanChoice
            label="The template lies"
            path={['swag', 'side']}
            options={[
              ['auto', 'either side'],
              ['inside', 'inside the swag'],
              ['outside', 'outside the swag'],
            ]}
          />
          <PlanChoice
            label="At the seam stands"
            path={['swag', 'direction']}
            options={[
              ['auto', 'either end'],
              ['heel-first', 'the heel'],
              ['crown-first', 'the crown end'],
            ]}
          />
        </div>
      </details>
    </div>
  );
};

const Sections = ({
  sections,
  picked,
  onPick,
}: {
  readonly sections: readonly SectionFacts[];
  readonly picked: number | undefined;
  readonly onPick: (section: SectionFacts) => void;
}) => (
  <>
    {sections.map((s) => (
      // The buttons under the picture do the same by keyboard and by name; this is for hands on the picture.
      <g key={s.number} class={`section${s.number === picked ? ' picked' : ''}${s.used ? ' used' : ''}`}>
        <path class="shown" d={s.d} />
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons below are the keyboard's way */}
        <path class="touch" d={s.d} onClick={() => onPick(s)} />
      </g>
    ))}
  </>
);

const nearestStop = (stops: readonly SwagStop[], halfSpan: number): number => {
  let best = 0;
  stops.forEach((stop, i) => {
    if (Math.abs(stop.halfSpan - halfSpan) < Math.abs(stops[best]!.halfSpan - halfSpan)) best = i;
  });
  return best;
};

interface HandleProps {
  readonly answer: SwagAnswer;
  readonly pose: SwagPose;
  readonly at: number;
  readonly moving: { value: SwagPose | undefined };
}

const Handles = ({ answer, pose, at, moving }: HandleProps) => {
  const { stops, chord } = answer;
  /** Knobs grow with the view, so that a finger finds them on any screen. */
  const size = (answer.box.maxX - answer.box.minX) / VIEW;
  const isDragging = useSignal(false);
  const show = (halfSpan: number): void => {
    const input = state.value;
    void quick.ask({ kind: 'drag', input, side: side.value, halfSpan }).then((answered) => {
      if (answered.kind === 'answer' && answered.answer && isDragging.value) moving.value = answered.answer;
    });
  };
  /** Lets go at the nearest count that fits. */
  const settle = (halfSpan: number): void => {
    const stop = stops[nearestStop(stops, halfSpan)];
    if (!stop || stop.key === shown.value?.key) moving.value = undefined;
    else {
      take(stop.key);
    }
  };
  const step = (by: number): void => {
    const stop = stops[at + by];
    if (stop) take(stop.key);
  };
  const slider = (
    name: string,
    label: string,
    x: number,
    y: number,
    axis: 'x' | 'y',
    halfSpanFor: (at: { x: number; y: number }) => number,
  ) => (
    <g
      class={`handle ${name}`}
      role="slider"
      // An SVG element knows this attribute in small letters only.
      tabindex={0}
      aria-label={label}
      aria-orientation={axis === 'x' ? 'horizontal' : 'vertical'}
      aria-valuemin={0}
      aria-valuemax={Math.max(1, stops.length - 1)}
      aria-valuenow={axis === 'x' ? at : stops.length - 1 - at}
      aria-valuetext={stops[at]?.words ?? pose.words}
      transform={`translate(${x.toFixed(3)} ${y.toFixed(3)})`}
      onKeyDown={(event) => {
        const wider = axis === 'x' ? ['ArrowRight', 'ArrowUp'] : ['ArrowDown', 'ArrowLeft'];
        const narrower = axis === 'x' ? ['ArrowLeft', 'ArrowDown'] : ['ArrowUp', 'ArrowRight'];
        if (wider.includes(event.key)) step(1);
        else if (narrower.includes(event.key)) step(-1);
        else if (event.key === 'Home') step(axis === 'x' ? -at : stops.length - 1 - at);
        else if (event.key === 'End') step(axis === 'x' ? stops.length - 1 - at : -at);
        else return;
        event.preventDefault();
      }}
      // A finger on a knob drags it, and not the page under it.
      onTouchStart={(event) => event.preventDefault()}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        isDragging.value = true;
        event.preventDefault();
        event.currentTarget.focus();
      }}
      onPointerMove={(event) => {
        if (!isDragging.value) return;
        show(halfSpanFor(placeIn(event)));
      }}
      onPointerUp={(event) => {
        if (!isDragging.value) return;
        isDragging.value = false;
        settle(halfSpanFor(placeIn(event)));
      }}
      onPointerCancel={() => {
        isDragging.value = false;
        moving.value = undefined;
      }}
    >
      <circle class="touch" r={11 * size} />
      <circle class="knob" r={3.6 * size} />
      <path
        class="arrows"
        transform={`scale(${size.toFixed(3)})`}
        d={
          axis === 'x'
            ? 'M-7 0h14M-7 0l2-2M-7 0l2 2M7 0l-2-2M7 0l-2 2'
            : 'M0-7v14M0-7l-2 2M0-7l2 2M0 7l-2-2M0 7l2-2'
        }
      />
    </g>
  );
  const bySpan = ({ x }: { x: number }): number => Math.abs(x);
  const byDepth = ({ y }: { y: number }): number => {
    const depth = Math.min(chord, Math.max(0, pose.startY - y));
    return Math.sqrt((chord - depth) * (chord + depth));
  };
  return (
    <>
      {slider('depth', 'Depth of the swag', 0, pose.crownY, 'y', byDepth)}
      {slider('span', 'Span of the swag', pose.halfSpan, pose.startY, 'x', bySpan)}
    </>
  );
};

/** The width of a view (mm) for which the knobs are drawn. */
const VIEW = 300;

/** Where a pointer is in the picture, mm. */
const placeIn = (event: PointerEvent): { x: number; y: number } => {
  const svg = (event.currentTarget as SVGElement).ownerSVGElement;
  const matrix = svg?.getScreenCTM()?.inverse();
  if (!matrix) return { x: 0, y: 0 };
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
  return { x: at.x, y: at.y };
};
