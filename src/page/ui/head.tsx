/** The page's head: what it is called, what the plan is called, and what is done with the whole plan. */

import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Units } from '../../length/index.ts';
import { withFiguresIn } from '../plan/first-figures.ts';
import { textAt } from '../plan/plan-text.ts';
import { headWords, noticeWords } from '../words/words.ts';
import { keepThis } from './designs-there.ts';
import { Choice, NameField, unitsNow } from './fields.tsx';
import { FileButton, savePlan, startAnew } from './files.tsx';
import { copyLink, hasAddress, savePage } from './sharing.ts';
import { canRedo, canUndo, edit, look, redo, setPlan, state, undo } from './store.ts';

export const Head = () => (
  <header>
    <div class="brand">
      <svg viewBox="0 0 64 28" aria-hidden="true">
        <path class="ink seam" d="M1 24h62" />
        <path class="ink stitch" d="M2 24C6 10 14 5 17 4c3 1 11 6 15 20C36 10 44 5 47 4c3 1 11 6 15 20" />
      </svg>
      <h1>swagwright</h1>
    </div>
    <Title />
    <section class="tools" aria-label={headWords.plan}>
      <Step
        words={headWords.undo}
        isThere={canUndo.value}
        arrow="M9 5 4 10l5 5M4 10h10a5 5 0 0 1 0 10h-3"
        onClick={undo}
      />
      <Step
        words={headWords.redo}
        isThere={canRedo.value}
        arrow="m15 5 5 5-5 5m5-5H10a5 5 0 0 0 0 10h3"
        onClick={redo}
      />
      <MoreTools />
    </section>
  </header>
);

/** Where there is no room for its word it shows the arrow alone. */
const Step = ({
  words,
  isThere,
  arrow,
  onClick,
}: {
  readonly words: string;
  readonly isThere: boolean;
  readonly arrow: string;
  readonly onClick: () => void;
}) => (
  <button type="button" class="step" disabled={!isThere} onClick={onClick}>
    <svg viewBox="0 0 24 24" aria-hidden="true">
      <path d={arrow} />
    </svg>
    <span>{words}</span>
  </button>
);

/** On a telephone these fold up behind one button; the style sheet says where. */
const MoreTools = () => {
  const isOpen = useSignal(false);
  const opener = useRef<HTMLButtonElement>(null);
  const close = (): void => {
    if (!isOpen.value) return;
    isOpen.value = false;
    opener.current?.focus();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape puts away what the button opens
    <div
      class="more-tools"
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
      onFocusOut={({ relatedTarget: to, currentTarget }) => {
        if (to instanceof Node && !currentTarget.contains(to)) isOpen.value = false;
      }}
    >
      <button
        ref={opener}
        type="button"
        class="opener"
        aria-expanded={isOpen.value}
        onClick={() => {
          isOpen.value = !isOpen.value;
        }}
      >
        {headWords.more}
      </button>
      {/* biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: a button that was pressed folds them up */}
      <div
        class={isOpen.value ? 'folded open' : 'folded'}
        onClick={({ target }) => {
          if (target instanceof HTMLButtonElement) close();
        }}
      >
        <button type="button" onClick={startAnew}>
          {headWords.newPlan}
        </button>
        <FileButton label={headWords.open} />
        <button type="button" onClick={() => void keepThis()}>
          {headWords.keepDesign}
        </button>
        <button type="button" onClick={() => void savePlan()}>
          {noticeWords.savePlan}
        </button>
        {hasAddress ? (
          <button type="button" onClick={() => void copyLink()}>
            {headWords.copyLink}
          </button>
        ) : (
          <button type="button" onClick={() => void savePage()}>
            {headWords.savePage}
          </button>
        )}
        <Choice
          label={headWords.units.label}
          class="inline units"
          value={unitsNow()}
          options={[
            ['in', headWords.units.in],
            ['cm', headWords.units.cm],
            ['mm', headWords.units.mm],
          ]}
          onChoose={(to) => setPlan(withFiguresIn(state.value.plan, unitsNow(), to as Units))}
        />
      </div>
    </div>
  );
};

const Title = () => (
  <NameField
    id="title"
    class="title"
    label={headWords.name}
    isUnseen
    value={textAt(state.value, ['title']) ?? look.value?.facts?.title ?? ''}
    onType={(name) => {
      if (name !== '') edit([[['title'], name]], 'title');
    }}
  />
);
