/** The outline of a template on paper, at its true size: what the acrylic is laid on before it is trusted. */

import type { Signal } from '@preact/signals';
import { PAPER_IDS } from '../../pagination/index.ts';
import { loadFonts } from '../engine/hire.ts';
import type { OwnTemplate } from '../engine/messages.ts';
import { factorsOf } from '../plan/measured.ts';
import { textAt } from '../plan/plan-text.ts';
import { handWords, noticeWords, workWords } from '../words/words.ts';
import { saveAs } from './browser.ts';
import { unitsNow } from './fields.tsx';
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
    {/* Where the focus goes after a new size: it stays there while that is worked out. */}
    <button
      type="button"
      aria-disabled={isOld ? 'true' : undefined}
      onClick={() => {
        if (!isOld) void printOutline(template, told);
      }}
    >
      {handWords.print}
    </button>
  </>
);

const printOutline = async ({ name, text }: OwnTemplate, told: Signal<string>): Promise<void> => {
  const measured = factorsOf(rememberedMeasured().typed, unitsNow());
  const written = textAt(state.value, ['paper']);
  const paper = PAPER_IDS.find((id) => id === written) ?? 'letter';
  const fonts = await during(workWords.fonts, loadFonts());
  const choices = { paper, measured: measured === 'wrong' ? undefined : measured, show: undefined };
  const called = name.replace(/^(\.\/)?/, './');
  const own = [{ name: called, text }];
  const asked = { kind: 'outline', name: called, own, choices, fonts } as const;
  const printed = await during(workWords.pages, thorough.ask(asked));
  if (printed.kind === 'problems') complain(handWords.notPrinted, printed.problems);
  if (printed.kind !== 'answer') return;
  saveAs(printed.answer.name, 'application/pdf', printed.answer.bytes);
  told.value = noticeWords.downloaded(printed.answer);
};
