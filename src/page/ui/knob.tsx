/** A place in a picture that a hand moves: dragged, or by a millimetre with the arrow keys; along a line, or freely. */

import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { handWords } from '../words/words.ts';
import { alongOf, type Line, placeAlong, wholeLength } from './along-line.ts';
import { chosen } from './focus-on.ts';
import { finely } from './her-lengths.ts';
import { type Place, placeIn } from './pointer.ts';

interface KnobProps {
  readonly label: string;
  readonly class?: string;
  readonly at: Place;
  /** Where it stays, undefined where it may go anywhere. */
  readonly line: Line | undefined;
  /** What a millimetre is in the picture's unit. */
  readonly perMm: number;
  /** The width of a line or a letter. */
  readonly size: number;
  /** The picture's width: where there is no room for the name on the right it stands on the left. */
  readonly width: number;
  /** What its length along the line is called; of one that goes anywhere nothing. */
  readonly along?: (of: { readonly length: string }) => string;
  /** Of one that goes anywhere: where it is, in words. */
  readonly says?: (at: Place) => string;
  readonly onPut: (place: Place) => void;
  readonly onRemove?: () => void;
  /** Whether it takes the focus as it comes. */
  readonly isNew?: boolean;
}

export const Knob = (props: KnobProps) => {
  const { label, at, line, perMm, size, width, along, says, onPut, onRemove, isNew } = props;
  const isDragging = useSignal(false);
  const moving = useSignal<Place | undefined>(undefined);
  const own = useRef<SVGGElement>(null);
  useEffect(() => {
    if (isNew) own.current?.focus();
  }, [isNew]);
  const here = moving.value ?? at;
  const length = line && alongOf(line, here);
  const mm = (length ?? here.x) / perMm;
  const putAt = (place: Place): void => {
    const onLine = line ? placeAlong(line, alongOf(line, place)) : place;
    moving.value = onLine;
    chosen.value = onLine;
    onPut(onLine);
  };
  const letGo = (): void => {
    isDragging.value = false;
    moving.value = undefined;
  };
  return (
    <g
      ref={own}
      class={`traced-end ${props.class ?? ''}`}
      role="slider"
      // An SVG element knows this attribute in small letters only.
      {...{ tabindex: 0 }}
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={Math.round((line ? wholeLength(line) : width) / perMm)}
      aria-valuenow={Math.round(mm)}
      aria-valuetext={
        line
          ? along?.({ length: finely(mm) })
          : (says?.(here) ?? handWords.fromLeftAndTop({ left: finely(mm), top: finely(here.y / perMm) }))
      }
      transform={`translate(${here.x.toFixed(1)} ${here.y.toFixed(1)})`}
      onKeyDown={(event) => {
        if (onRemove && (event.key === 'Delete' || event.key === 'Backspace')) {
          onRemove();
          event.preventDefault();
          return;
        }
        const step = STEPS[event.key];
        if (step === undefined) return;
        const by = (event.shiftKey ? 10 : 1) * perMm;
        putAt(
          line
            ? placeAlong(line, length! + step.along * by)
            : { x: here.x + step.x * by, y: here.y + step.y * by },
        );
        event.preventDefault();
      }}
      onFocus={() => {
        chosen.value = here;
      }}
      onTouchStart={(event) => event.preventDefault()}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        isDragging.value = true;
        event.preventDefault();
        event.currentTarget.focus();
      }}
      onPointerMove={(event) => {
        if (isDragging.value) putAt(placeIn(event));
      }}
      onPointerUp={(event) => {
        // It is no tap on the picture.
        event.stopPropagation();
        letGo();
      }}
      onPointerCancel={letGo}
      onBlur={() => {
        moving.value = undefined;
      }}
    >
      <circle class="touch" r={18 * size} />
      <circle class="knob" r={6 * size} stroke-width={2 * size} />
      <Label {...{ size, text: label, isFarRight: here.x > FAR_RIGHT * width }} />
    </g>
  );
};

/** The share of the width beyond which there is no room for a name on the right. */
export const FAR_RIGHT = 0.8;

/** What a place is called, beside it. */
export const Label = ({
  text,
  size,
  isFarRight,
}: {
  readonly text: string;
  readonly size: number;
  readonly isFarRight: boolean;
}) => (
  <text
    x={(isFarRight ? -12 : 12) * size}
    y={-10 * size}
    font-size={18 * size}
    stroke-width={4 * size}
    text-anchor={isFarRight ? 'end' : 'start'}
  >
    {text}
  </text>
);

/** Clockwise as the outline runs. */
const STEPS: Readonly<Record<string, { readonly along: number; readonly x: number; readonly y: number }>> = {
  ArrowRight: { along: 1, x: 1, y: 0 },
  ArrowUp: { along: 1, x: 0, y: -1 },
  ArrowLeft: { along: -1, x: -1, y: 0 },
  ArrowDown: { along: -1, x: 0, y: 1 },
};
