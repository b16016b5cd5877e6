/** The outline of a template on paper, at its true size: what the acrylic is laid on before it is trusted. */

import type { Signal } from '@preact/signals';
import { loadFonts } from '../engine/hire.ts';
import type { OwnTemplate } from '../engine/messages.ts';
import { paperIn } from '../plan/first-figures.ts';
import { factorsOf } from '../plan/measured.ts';
import { handWords, workWords } from '../words/words.ts';
import { unitsNow } from './fields.tsx';
import { type How, handOver } from './hand-over.ts';
import { rememberedMeasured } from './paper.tsx';
import { complain, during, state, thorough } from './store.ts';

interface PrintProps {
  readonly template: OwnTemplate;
  /** For screen readers: what came of it. */
  readonly told: Signal<string>;
  /** Whether more has been said of it than it holds. */
  readonly isOld?: boolean;
}

export const PrintOutline = ({ template, told, isOld = false }: PrintProps) => (
  <>
    <p class="hint">{handWords.printHint}</p>
    <div class="steps">
      {/* Where the focus goes after a new size: it stays there while that is worked out. */}
      {(['print', 'save'] as const).map((how) => (
        <button
          key={how}
          type="button"
          aria-disabled={isOld ? 'true' : undefined}
          onClick={() => {
            if (!isOld) void printOutline(template, how, told);
          }}
        >
          {how === 'print' ? handWords.print : handWords.save}
        </button>
      ))}
    </div>
  </>
);

const printOutline = async ({ name, text }: OwnTemplate, how: How, told: Signal<string>): Promise<void> => {
  const measured = factorsOf(rememberedMeasured().typed, unitsNow());
  const paper = paperIn(state.value, unitsNow());
  const choices = { paper, measured: measured === 'wrong' ? undefined : measured, show: undefined };
  const called = name.replace(/^(\.\/)?/, './');
  const own = [{ name: called, text }];
  const made = await handOver(how, async () => {
    const fonts = await during(workWords.fonts, loadFonts());
    const asked = { kind: 'outline', name: called, own, choices, fonts } as const;
    return during(workWords.pages, thorough.ask(asked));
  });
  if (made.kind === 'problems') complain(handWords.notPrinted, made.problems);
  if (made.kind === 'answer') told.value = made.answer.said;
};
