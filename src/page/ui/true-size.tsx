/** One swag at its true size on the screen, once a bank card has told how large the screen's millimetre is. */

import { signal, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { CHECK_SIDE } from '../../pagination/index.ts';
import {
  CARD,
  type Calibration,
  calibrationFrom,
  calibrationText,
  LEAST,
  MOST,
  pixelsPerMm,
} from '../plan/true-size.ts';
import { Inks, Letterings, viewBoxOf } from './picture.tsx';
import { shown, swag } from './store.ts';

const KEY = 'swagwright.screen';

const stored = (): Calibration | undefined => {
  try {
    return calibrationFrom(localStorage.getItem(KEY));
  } catch {
    return undefined;
  }
};

/** The crown first, and as much on either side as there is room for. */
const centred = (glass: HTMLElement | null): void => {
  if (glass) glass.scrollLeft = (glass.scrollWidth - glass.clientWidth) / 2;
};

/** How often it was opened. */
const opened = signal(0);

export const openTrueSize = (): void => {
  opened.value += 1;
};

export const TrueSize = () => {
  const dialog = useRef<HTMLDialogElement>(null);
  const found = useSignal<Calibration | undefined>(undefined);
  const ratio = useSignal(1);
  const isSetting = useSignal(false);
  const answer = swag.value;
  const scale = pixelsPerMm(found.value, ratio.value);
  useEffect(() => {
    found.value = stored();
    ratio.value = window.devicePixelRatio;
    isSetting.value = found.value === undefined;
    dialog.current?.showModal();
  }, [opened.value]);
  const set = (pixels: number): void => {
    const next = { pixelsPerMm: Math.min(MOST, Math.max(LEAST, pixels)), ratio: window.devicePixelRatio };
    ratio.value = next.ratio;
    found.value = next;
    try {
      localStorage.setItem(KEY, calibrationText(next));
    } catch {
      // Without a store the card is laid on again the next time.
    }
  };
  return (
    <dialog ref={dialog} class="true-size" aria-labelledby="true-size-title">
      <div class="panel-head">
        <h2 id="true-size-title">{isSetting.value ? 'How large is your screen?' : 'True size'}</h2>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      {isSetting.value ? (
        <>
          <p>
            Lay a bank card on the glass, its left edge and its top on the drawn card’s. Move the slider until
            the right edges meet too. Every bank card is 85.60 mm wide (ISO/IEC 7810, ID-1).
          </p>
          <div class="field">
            <label for="card-width">Width of the drawn card</label>
            <input
              id="card-width"
              type="range"
              min={LEAST * CARD.width}
              max={MOST * CARD.width}
              step={0.5}
              value={scale * CARD.width}
              onInput={(event) => set(event.currentTarget.valueAsNumber / CARD.width)}
            />
          </div>
          <div class="steps">
            <button type="button" onClick={() => set(scale - 0.5 / CARD.width)}>
              A hair narrower
            </button>
            <button type="button" onClick={() => set(scale + 0.5 / CARD.width)}>
              A hair wider
            </button>
            <button
              type="button"
              class="main"
              onClick={() => {
                set(scale);
                isSetting.value = false;
              }}
            >
              It matches my card
            </button>
          </div>
          <svg
            class="bank-card"
            role="img"
            aria-label="The outline of a bank card"
            width={scale * CARD.width}
            height={scale * CARD.height}
            viewBox={`0 0 ${CARD.width} ${CARD.height}`}
          >
            <rect x="0.15" y="0.15" width={CARD.width - 0.3} height={CARD.height - 0.3} rx="3.18" />
          </svg>
        </>
      ) : (
        <>
          <div class="glass-head">
            <svg
              class="check"
              role="img"
              aria-label="Check square, 2 in each way"
              width={scale * CHECK_SIDE}
              height={scale * CHECK_SIDE}
              viewBox={`0 0 ${CHECK_SIDE} ${CHECK_SIDE}`}
            >
              <rect x="0.15" y="0.15" width={CHECK_SIDE - 0.3} height={CHECK_SIDE - 0.3} />
              <text x={CHECK_SIDE / 2} y={CHECK_SIDE / 2 + 2} text-anchor="middle" font-size="5">
                2 in · 50.8 mm
              </text>
            </svg>
            <div>
              <p>Check the square with a ruler first: 2 in (50.8 mm) each way. Do not pinch to zoom.</p>
              <p>
                {swag.value?.pose.words}, {shown.value?.template}, as large as on the quilt. Where it is wider
                than the screen, slide it along.
              </p>
              <button
                type="button"
                onClick={() => {
                  isSetting.value = true;
                }}
              >
                The square is not right
              </button>
            </div>
          </div>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
          <section ref={centred} class="glass" tabIndex={0} aria-label="The swag at true size">
            {answer ? (
              <svg
                class="drawn exact"
                role="img"
                aria-label={`The swag at true size: ${answer.pose.words}`}
                width={scale * (answer.box.maxX - answer.box.minX)}
                height={scale * (answer.box.maxY - answer.box.minY)}
                viewBox={viewBoxOf(answer.box)}
              >
                <g
                  transform={`translate(${answer.pose.moved.x.toFixed(3)} ${answer.pose.moved.y.toFixed(3)})`}
                >
                  <Inks inks={answer.pose.inks} />
                  <Letterings texts={answer.pose.texts} />
                </g>
              </svg>
            ) : null}
          </section>
        </>
      )}
    </dialog>
  );
};
