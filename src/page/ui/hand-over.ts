/** Pages that were made go to her downloads, or to the browser's print dialog; and what is said of it. */

import { type Outcome, orNoStart } from '../engine/client.ts';
import type { Printed } from '../engine/messages.ts';
import { noticeWords, paperWords } from '../words/words.ts';
import { saveAs } from './browser.ts';
import { startPrinting } from './print-dialog.ts';

export type How = 'save' | 'print';

/** To be called where she presses. The answer is what to say, without what should be known of the pages. */
export const handOver = async (
  how: How,
  make: () => Promise<Outcome<Printed>>,
): Promise<Outcome<Printed & { readonly said: string }>> => {
  const finish = how === 'print' ? startPrinting() : undefined;
  const made = await orNoStart(make());
  if (made.kind !== 'answer') {
    await finish?.(undefined);
    return made;
  }
  const { name, bytes } = made.answer;
  const went = (await finish?.(bytes)) ?? 'neither';
  if (went === 'neither') saveAs(name, 'application/pdf', bytes);
  const say = finish
    ? { dialog: paperWords.inDialog, window: paperWords.inWindow, neither: paperWords.inDownloads }[went]
    : noticeWords.downloaded;
  return { kind: 'answer', answer: { ...made.answer, said: say(made.answer) } };
};
