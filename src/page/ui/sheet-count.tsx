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
  const isInSight = useSignal(false);
  const counted = useSignal<{ readonly of: string; readonly lines: readonly string[] } | undefined>(
    undefined,
  );
  const input = state.value;
  const asked = JSON.stringify([input, choices]);
  useEffect(() => {
    const watch = new IntersectionObserver((seen) => {
      isInSight.value = seen.some((one) => one.isIntersecting);
    });
    watch.observe(place.current!);
    return () => watch.disconnect();
  }, []);
  const mayCount = isInSight.value && choices !== undefined;
  useEffect(() => {
    if (!mayCount || counted.peek()?.of === asked) return undefined;
    const count = async (): Promise<void> => {
      const outcome = await askFor(what, { input, choices: choices! });
      if (outcome.kind === 'answer') counted.value = { of: asked, lines: outcome.answer };
    };
    const timer = setTimeout(() => void count(), REST);
    return () => clearTimeout(timer);
  }, [mayCount, asked]);
  const now = counted.value?.of === asked && choices !== undefined ? counted.value.lines : [];
  return (
    <span ref={place} class="about">
      {[...(now.length > 0 ? [now.join('; ')] : []), words].join(', ')}
    </span>
  );
};
