/** A class from a table that she pastes: who cannot be served, how many sheets it takes, and the one file. */

import { signal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import type { Outcome } from '../engine/client.ts';
import type { ClassCount } from '../engine/messages.ts';
import { takenIn } from '../plan/state.ts';
import { classWords, paperWords, workWords } from '../words/words.ts';
import { Troubles } from './fields.tsx';
import type { ClassPaper } from './later.tsx';
import { during, isOld, state, thorough } from './store.ts';
import { Table } from './words.tsx';

/** Names of people: kept while this window is open, and not after. */
const KEY = 'swagwright.class';

const stored = (): string => {
  try {
    return sessionStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
};

const keep = (text: string): void => {
  try {
    sessionStorage.setItem(KEY, text);
  } catch {
    // Without a store it is there as long as the page is.
  }
};

const table = signal(stored());
/** How often it was opened; 0 while it is put away. */
const opened = signal(0);
let times = 0;

export const openClass = (): void => {
  opened.value = ++times;
};

interface Counted {
  /** All that it was counted for. */
  readonly of: string;
  readonly outcome: Outcome<ClassCount>;
}

const counted = signal<Counted | undefined>(undefined);

/** While she types no class is laid out (ms). */
const PAUSE = 400;

export const ClassView = ({ choices, give }: ClassPaper) => {
  const id = useId();
  const place = useRef<HTMLElement>(null);
  const now = opened.value;
  const input = state.value;
  const text = table.value;
  const isReady = now > 0 && text.trim() !== '' && choices !== undefined && !isOld.value;
  const asked = JSON.stringify([input, text, choices]);
  useEffect(() => {
    if (now === 0) return;
    place.current?.scrollIntoView({ block: 'nearest' });
    place.current?.querySelector('textarea')?.focus();
  }, [now]);
  useEffect(() => {
    if (!isReady || counted.peek()?.of === asked) return undefined;
    const count = async (): Promise<void> => {
      const outcome = await during(
        workWords.class,
        thorough.ask({ kind: 'class-count', input, table: text, choices }),
      );
      if (outcome.kind !== 'stopped') counted.value = { of: asked, outcome };
    };
    const timer = setTimeout(() => void count(), PAUSE);
    return () => clearTimeout(timer);
  }, [isReady, asked]);
  if (now === 0) return null;
  const { outcome } = counted.value?.of === asked && isReady ? counted.value : { outcome: undefined };
  const answer = outcome?.kind === 'answer' ? outcome.answer : undefined;
  const troubles = outcome?.kind === 'problems' ? outcome.problems : (answer?.troubles ?? []);
  return (
    <section ref={place} class="class" aria-labelledby={`${id}-title`}>
      <div class="panel-head">
        <h3 id={`${id}-title`}>{classWords.title}</h3>
        <button
          type="button"
          onClick={() => {
            opened.value = 0;
          }}
        >
          {classWords.putAway}
        </button>
      </div>
      <p class="lead">{takenIn(input) === undefined ? classWords.leadOwn : classWords.leadTaken}</p>
      <div class="field">
        <label for={id}>{classWords.table}</label>
        <textarea
          id={id}
          rows={8}
          autocomplete="off"
          spellcheck={false}
          placeholder={classWords.example}
          value={text}
          aria-describedby={`${id}-more`}
          onInput={(event) => {
            table.value = event.currentTarget.value;
            keep(table.value);
          }}
          // In a field the browser's own undo is meant.
          onKeyDown={(event) => event.stopPropagation()}
        />
        <p class="hint" id={`${id}-more`}>
          {classWords.hint}
        </p>
      </div>
      <div role="status">
        {answer ? <p>{classWords.counted({ counted: answer.words })}</p> : null}
        {troubles.length > 0 ? (
          <>
            <p class="wrong">{answer ? classWords.someCannot : classWords.noneCan}</p>
            <Troubles list={troubles} most={troubles.length} />
          </>
        ) : null}
      </div>
      {answer ? <Table table={answer.table} /> : null}
      <div class="steps">
        {(['save', 'print'] as const).map((how) => (
          <button
            key={how}
            type="button"
            class={how === 'save' ? 'main' : ''}
            aria-label={how === 'save' ? undefined : classWords.printThem}
            disabled={!isReady || outcome?.kind === 'problems'}
            onClick={() =>
              void give(
                (choices, fonts) => thorough.ask({ kind: 'class', input, table: text, choices, fonts }),
                how,
              )
            }
          >
            {how === 'save' ? classWords.print : paperWords.print}
          </button>
        ))}
      </div>
    </section>
  );
};
