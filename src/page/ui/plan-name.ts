/** What a file of the plan is called, and what is said of what it lacks. */

import { calledAfter, proposedName } from '../../jobs/names.ts';
import { noticeWords } from '../words/words.ts';
import { look } from './store.ts';
import { isUnread } from './unread.ts';

export const nameOfPlan = (ending: string): string =>
  proposedName({ called: calledAfter(look.value?.facts?.title ?? ''), ending });

/** The plan holds what could be read. */
export const notInIt = (): string => (isUnread.value ? ` ${noticeWords.notInIt}` : '');
