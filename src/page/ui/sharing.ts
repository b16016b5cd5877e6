/**
 * How a plan comes to somebody else's device and from there: in a link, where the page has an address that others
 * reach, and else in the page itself, as one file.
 */

import { ONE_FILE, OPENED_FILE, withOpened } from '../../jobs/one-file.ts';
import { heldText, ownSource } from '../engine/held.ts';
import { isReached } from '../engine/this-computer.ts';
import { fragmentOf, stateInFragment } from '../plan/link.ts';
import { templatesOf } from '../plan/plan-text.ts';
import { takingAlong } from '../plan/shelf.ts';
import { stateFrom, stateText } from '../plan/state.ts';
import { noticeWords, workWords } from '../words/words.ts';
import { saveAs } from './browser.ts';
import { hasDesigns } from './designs-there.ts';
import { isKept as wasHere } from './keep.ts';
import { nameOfPlan, notInIt } from './plan-name.ts';
import { complain, during, openFrom, say, state } from './store.ts';

export const hasAddress = isReached(location);

/** Without what comes after its `#`. */
const plainAddress = (): string => location.href.replace(/#.*$/, '');

export const copyLink = async (): Promise<void> => {
  const fragment = await fragmentOf(state.value, templatesOf(state.value.plan));
  try {
    await navigator.clipboard.writeText(plainAddress() + fragment);
    say(noticeWords.linkCopied + notInIt());
  } catch {
    complain(noticeWords.linkNotCopied);
    history.replaceState(null, '', fragment);
  }
};

/** The page as one file, with the plan and the templates that it names in it. */
export const savePage = async (): Promise<void> => {
  const page = await during(workWords.page, pageText());
  if (page === undefined) {
    complain(
      location.protocol === 'file:' ? noticeWords.pageInMany({ file: ONE_FILE }) : noticeWords.pageUnread,
    );
    return;
  }
  const opened = stateText(takingAlong(state.value));
  const name = nameOfPlan('html');
  saveAs(name, 'text/html', withOpened(page, opened));
  const more = hasDesigns() ? ` ${noticeWords.designsNotInIt}` : '';
  say(noticeWords.pageSaved({ name }) + notInIt() + more);
};

/** Undefined where it is not to be had. */
const pageText = async (): Promise<string | undefined> => {
  const own = ownSource();
  if (own !== undefined || location.protocol === 'file:') return own;
  try {
    const answer = await fetch(ONE_FILE);
    return answer.ok ? await answer.text() : undefined;
  } catch {
    return undefined;
  }
};

/** A plan that the address carries, once, and then the address is plain again. */
export const takeFragment = async (): Promise<void> => {
  const { hash } = location;
  if (hash === OPENED) {
    history.replaceState(null, '', plainAddress());
    await takeOpened();
    return;
  }
  const found = await stateInFragment(hash);
  if (found === 'none') return;
  history.replaceState(null, '', plainAddress());
  if (found === 'broken') complain(noticeWords.linkUnread);
  else await openFrom(found, noticeWords.theLink);
};

/** What the address ends in where the command that serves the page was given a plan. */
const OPENED = '#opened';

/** The plan that the command was given, from the server that gave the page. */
const takeOpened = async (): Promise<void> => {
  let text = '';
  try {
    const answer = await fetch(OPENED_FILE, { cache: 'no-store' });
    if (answer.ok) text = await answer.text();
  } catch {
    // Said with what else may be the matter.
  }
  await takeText(text);
};

/** The plan that stands in the page itself, where that is one file, at the first visit; then she goes on where she left off. */
export const takeHeld = async (): Promise<void> => {
  const text = heldText(OPENED_FILE)?.trim();
  if (text && !wasHere) await takeText(text);
};

/** Whether it is open. */
const takeText = async (text: string): Promise<boolean> => {
  const opened = stateFrom(text);
  if (opened) {
    const { name } = JSON.parse(text) as { readonly name?: unknown };
    const fileName = typeof name === 'string' ? name : undefined;
    return openFrom(opened, fileName ?? noticeWords.theFile, fileName);
  }
  complain(noticeWords.openedUnread);
  return false;
};
