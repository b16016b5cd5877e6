/** How many sheets there will be, before they are made: worked out while that is in sight, and she rests. */

import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Outcome } from '../engine/client.ts';
import type { Input, PaperChoices, SheetsKind } from '../engine/messages.ts';
import { state, thorough } from './store.ts';

/** Each a question of its own kind: the newest of a kind takes the place of the one before. */
const askFor = (
  what: SheetsKind,
  of: { readonly input: Input; readonly choices: PaperChoices },
): Promise<Outcome<readonly string[]>> =>
  what === 'sheets'
    ? thorough.ask({ kind: 'count-sheets', ...of })
    : thorough.ask({ kind: 'count-quilt-sheets', ...of });

/** ms */
const REST = 600;

/** What is counted while its place is in sight, once she rests; undefined until then, and where there is nothing to count. */
export const useCounted = <T,>(
  place: { readonly current: Element | null },
  asked: string | undefined,
  count: () => Promise<Outcome<T>>,
): T | undefined => {
  const isInSight = useSignal(false);
  const counted = useSignal<{ readonly of: string; readonly answer: T } | undefined>(undefined);
  useEffect(() => {
    const watch = new IntersectionObserver((seen) => {
      isInSight.value = seen.some((one) => one.isIntersecting);
    });
    watch.observe(place.current!);
    return () => watch.disconnect();
  }, []);
  const mayCount = isInSight.value && asked !== undefined;
  useEffect(() => {
    if (!mayCount || counted.peek()?.of === asked) return undefined;
    const keep = async (): Promise<void> => {
      const outcome = await count();
      if (outcome.kind === 'answer') counted.value = { of: asked, answer: outcome.answer };
    };
    // Without its fonts or its worker nothing is counted, and the button says what is wrong.
    const timer = setTimeout(() => void keep().catch(() => {}), REST);
    return () => clearTimeout(timer);
  }, [mayCount, asked]);
  return counted.value?.of === asked ? counted.value?.answer : undefined;
};

/** `words` say what the sheets are for; `choices` are undefined where there is nothing to count. */
export const SheetCount = ({
  what,
  choices,
  words,
}: {
  readonly what: SheetsKind;
  readonly choices: PaperChoices | undefined;
  readonly words: string;
}) => {
  const place = useRef<HTMLSpanElement>(null);
  const input = state.value;
  const counted = useCounted(place, choices && JSON.stringify([input, choices]), () =>
    askFor(what, { input, choices: choices! }),
  );
  return (
    <span ref={place} class="about">
      {[...(counted && counted.length > 0 ? [counted.join('; ')] : []), words].join(', ')}
    </span>
  );
};
