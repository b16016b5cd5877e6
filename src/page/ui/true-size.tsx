/** One swag at its true size on the screen, once a bank card has told how large the screen's millimetre is. */

import { signal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
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
import { glassWords } from '../words/words.ts';
import { keep, readKept } from './browser.ts';
import { Inks, Letterings, viewBoxOf } from './picture.tsx';
import { ScreenDialog } from './screen-dialog.tsx';
import { shown, swag } from './store.ts';

const KEY = 'swagwright.screen';

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
  const found = useSignal<Calibration | undefined>(undefined);
  const ratio = useSignal(1);
  const isSetting = useSignal(false);
  const answer = swag.value;
  const scale = pixelsPerMm(found.value, ratio.value);
  useEffect(() => {
    found.value = calibrationFrom(readKept(KEY));
    ratio.value = window.devicePixelRatio;
    isSetting.value = found.value === undefined;
  }, [opened.value]);
  const set = (pixels: number): void => {
    const next = { pixelsPerMm: Math.min(MOST, Math.max(LEAST, pixels)), ratio: window.devicePixelRatio };
    ratio.value = next.ratio;
    found.value = next;
    keep(KEY, calibrationText(next));
  };
  return (
    <ScreenDialog
      name="true-size"
      title={isSetting.value ? glassWords.howLarge : glassWords.title}
      opened={opened}
    >
      {isSetting.value ? (
        <>
          <p>{glassWords.layCard}</p>
          <div class="field">
            <label for="card-width">{glassWords.width}</label>
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
              {glassWords.narrower}
            </button>
            <button type="button" onClick={() => set(scale + 0.5 / CARD.width)}>
              {glassWords.wider}
            </button>
            <button
              type="button"
              class="main"
              onClick={() => {
                set(scale);
                isSetting.value = false;
              }}
            >
              {glassWords.matches}
            </button>
          </div>
          <svg
            class="bank-card"
            role="img"
            aria-label={glassWords.card}
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
              aria-label={glassWords.square}
              width={scale * CHECK_SIDE}
              height={scale * CHECK_SIDE}
              viewBox={`0 0 ${CHECK_SIDE} ${CHECK_SIDE}`}
            >
              <rect x="0.15" y="0.15" width={CHECK_SIDE - 0.3} height={CHECK_SIDE - 0.3} />
              <text x={CHECK_SIDE / 2} y={CHECK_SIDE / 2 + 2} text-anchor="middle" font-size="5">
                {glassWords.squareLabel}
              </text>
            </svg>
            <div>
              <p>{glassWords.checkSquare}</p>
              <p>
                {glassWords.swag({
                  pose: swag.value?.pose.words ?? '',
                  template: shown.value?.template ?? '',
                })}
              </p>
              <button
                type="button"
                onClick={() => {
                  isSetting.value = true;
                }}
              >
                {glassWords.squareWrong}
              </button>
            </div>
          </div>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
          <section ref={centred} class="glass" tabIndex={0} aria-label={glassWords.picture}>
            {answer ? (
              <svg
                class="drawn exact"
                role="img"
                aria-label={glassWords.pictureOf({ pose: answer.pose.words })}
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
    </ScreenDialog>
  );
};
