/** What a projector shows: the design on a dark ground with a grid, at true size on the cloth by what a tape measured. */

import { signal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { capital } from '../../document/index.ts';
import type { Trouble } from '../engine/messages.ts';
import {
  barFor,
  isFault,
  leanOf,
  type ProjectedScale,
  scaleAt,
  scaleFrom,
  scaleKept,
  scaleText,
  type TypedBars,
} from '../plan/projected-scale.ts';
import { projectorWords } from '../words/words.ts';
import { keep, readKept } from './browser.ts';
import { Choice, InputField, Tick, Troubles, unitsNow } from './fields.tsx';
import type { ShowChoices } from './later.tsx';
import { ScreenDialog } from './screen-dialog.tsx';
import { fills, state, thorough } from './store.ts';

const KEY = 'swagwright.projector';

/** How often it was opened. */
const opened = signal(0);

export const openProjector = (): void => {
  opened.value += 1;
};

export const Projector = ({ choices }: ShowChoices) => {
  const found = useSignal<ProjectedScale | undefined>(undefined);
  const isBare = useSignal(false);
  useEffect(() => {
    found.value = scaleKept(readKept(KEY));
    isBare.value = false;
  }, [opened.value]);
  return (
    <ScreenDialog name="projector" title={projectorWords.title} opened={opened} isBare={isBare.value}>
      {found.value === undefined ? (
        <Bars
          onFound={(scale) => {
            keep(KEY, scaleText(scale));
            found.value = scale;
          }}
        />
      ) : (
        <Shown
          scale={found.value}
          choices={choices}
          isBare={isBare.value}
          onBare={(bare) => {
            isBare.value = bare;
          }}
          onAgain={() => {
            found.value = undefined;
          }}
        />
      )}
    </ScreenDialog>
  );
};

/** Of the window's height, below what stands over the bars. */
const LOW = 0.7;

const barsNow = () => ({ across: barFor(window.innerWidth), up: barFor(LOW * window.innerHeight) });
const NOTHING: TypedBars = { across: '', up: '' };

const Bars = ({ onFound }: { readonly onFound: (scale: ProjectedScale) => void }) => {
  const bars = useSignal(barsNow());
  const typed = useSignal(NOTHING);
  useEffect(() => {
    // What was measured of other bars is nothing of these.
    const renew = (): void => {
      bars.value = barsNow();
      typed.value = NOTHING;
    };
    window.addEventListener('resize', renew);
    return () => window.removeEventListener('resize', renew);
  }, []);
  const { across, up } = bars.value;
  const scale = scaleFrom(bars.value, typed.value, unitsNow(), window.devicePixelRatio);
  const wrong = isFault(scale) ? scale : undefined;
  const type = (more: Partial<TypedBars>): void => {
    typed.value = { ...typed.value, ...more };
  };
  return (
    <>
      <p>{projectorWords.setting}</p>
      <div class="bars">
        <svg class="bar" role="img" aria-label={projectorWords.uprightBar} width={WIDE} height={up}>
          <path d={`M${WIDE / 2} 0V${up}M0 0.5H${WIDE}M0 ${up - 0.5}H${WIDE}`} />
        </svg>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (scale !== undefined && !isFault(scale)) onFound(scale);
          }}
        >
          <InputField
            label={projectorWords.across}
            value={typed.value.across}
            isWrong={wrong?.at === 'across'}
            more={wrong?.at === 'across' ? wrong.words : undefined}
            onType={(text) => type({ across: text })}
          />
          <InputField
            label={projectorWords.up}
            value={typed.value.up}
            isWrong={wrong?.at === 'up'}
            more={wrong?.at === 'up' ? wrong.words : projectorWords.upEmpty}
            onType={(text) => type({ up: text })}
          />
          <button type="submit" class="main" disabled={scale === undefined || wrong !== undefined}>
            {projectorWords.showPicture}
          </button>
        </form>
        <svg class="bar long" role="img" aria-label={projectorWords.longBar} width={across} height={WIDE}>
          <path d={`M0 ${WIDE / 2}H${across}M0.5 0V${WIDE}M${across - 0.5} 0V${WIDE}`} />
        </svg>
      </div>
    </>
  );
};

/** px that a bar's ticks are long. */
const WIDE = 24;

/** A drawing that came: where its text is, and how large it is on the cloth (mm). */
interface Came {
  readonly url: string;
  readonly words: string;
  readonly width: number;
  readonly height: number;
}

interface ShownProps extends ShowChoices {
  readonly scale: ProjectedScale;
  readonly isBare: boolean;
  readonly onBare: (bare: boolean) => void;
  readonly onAgain: () => void;
}

const Shown = ({ scale, choices, isBare, onBare, onAgain }: ShownProps) => {
  const show = useSignal(choices[0]?.[0] ?? '');
  const isTurned = useSignal(false);
  const withFills = useSignal(true);
  const came = useSignal<Came | undefined>(undefined);
  const problems = useSignal<readonly Trouble[] | undefined>(undefined);
  const input = state.value;
  useEffect(() => {
    let isOver = false;
    came.value = undefined;
    problems.value = undefined;
    const look = { kind: 'projector', show: show.value, withFills: withFills.value } as const;
    void thorough
      .ask({ kind: 'picture', input, ending: 'svg', ofQuilt: false, look, fonts: undefined })
      .then((answered) => {
        if (isOver) return;
        if (answered.kind === 'problems') problems.value = answered.problems;
        if (answered.kind === 'answer') came.value = cameAs(answered.answer.bytes, answered.answer.words);
      });
    return () => {
      isOver = true;
      if (came.value) URL.revokeObjectURL(came.value.url);
    };
  }, [input, show.value, withFills.value]);
  const lean = leanOf(scale);
  return (
    <>
      {isBare ? (
        <button type="button" class="unhide" onClick={() => onBare(false)}>
          {projectorWords.unhide}
        </button>
      ) : (
        <>
          <div class="field-row">
            <Choice
              label={projectorWords.shows}
              value={show.value}
              options={choices}
              onChoose={(to) => {
                show.value = to;
              }}
            />
            <Tick label={projectorWords.turned} of={isTurned} />
            {fills.value ? <Tick label={projectorWords.withFills} of={withFills} /> : null}
            <button type="button" onClick={onAgain}>
              {projectorWords.again}
            </button>
            <button type="button" onClick={() => onBare(true)}>
              {projectorWords.hide}
            </button>
          </div>
          <p>{projectorWords.check({ square: unitsNow() === 'in' ? '4 in' : '10 cm' })}</p>
          {lean === undefined ? null : <p class="wrong">{projectorWords.leans({ percent: lean })}</p>}
        </>
      )}
      <div role="status">
        {problems.value ? (
          <>
            <p class="wrong">{projectorWords.failed}</p>
            <Troubles list={problems.value} />
          </>
        ) : came.value ? null : (
          projectorWords.drawing
        )}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section class="projected" tabIndex={0} aria-label={projectorWords.view}>
        {came.value ? <Picture came={came.value} scale={scale} isTurned={isTurned.value} /> : null}
      </section>
    </>
  );
};

/** Turned, what goes across the drawing goes up the cloth. */
const Picture = ({
  came: { url, words, width, height },
  scale,
  isTurned,
}: {
  readonly came: Came;
  readonly scale: ProjectedScale;
  readonly isTurned: boolean;
}) => {
  const { across, up } = scaleAt(scale, window.devicePixelRatio);
  const [wide, high] = isTurned ? [width * up, height * across] : [width * across, height * up];
  const px = (n: number): string => `${n.toFixed(3)}px`;
  return (
    <div
      class="on-cloth"
      style={isTurned ? { width: px(high), height: px(wide) } : { width: px(wide), height: px(high) }}
    >
      <img
        src={url}
        alt={projectorWords.picture({ words: capital(words) })}
        class={isTurned ? 'turned' : undefined}
        style={{ width: px(wide), height: px(high) }}
      />
    </div>
  );
};

/** A drawing says its size itself; and where the projector leans, its two ways are scaled apart. */
const cameAs = (bytes: Uint8Array, words: string): Came => {
  const text = new TextDecoder().decode(bytes);
  const [, width, height] = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm"/.exec(text)!;
  const stretched = text.replace('<svg ', '<svg preserveAspectRatio="none" ');
  const url = URL.createObjectURL(new Blob([stretched], { type: 'image/svg+xml' }));
  return { url, words, width: Number(width), height: Number(height) };
};
