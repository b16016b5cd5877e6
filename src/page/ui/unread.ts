/**
 * What stands in a field and cannot be read as a figure. The plan still holds the figure before, so while there is
 * any of this nothing that is worked out of the plan is what she means: it is shown as old, and not printed.
 */

import { computed, signal } from '@preact/signals';
import type { Trouble } from '../engine/messages.ts';

interface Unread {
  readonly text: string;
  readonly trouble: Trouble;
  /** Half a figure is no mistake yet: it is told once she has gone on from the field. */
  readonly isTold: boolean;
}

/** By the plan's key that the field is for. */
const unread = signal<ReadonlyMap<string, Unread>>(new Map());

export const isUnread = computed(() => unread.value.size > 0);

export const unreadAt = (key: string): Unread | undefined => unread.value.get(key);

export const unreadTroubles = computed<readonly Trouble[]>(() =>
  [...unread.value.values()].filter((u) => u.isTold).map((u) => u.trouble),
);

export const cannotRead = (key: string, text: string, fault: string, isDone: boolean): void => {
  // What has been told stays told until it is put right.
  const isTold = isDone || (unread.peek().get(key)?.isTold ?? false);
  const trouble: Trouble = { code: 'not-a-length', text: fault, key, where: undefined };
  unread.value = new Map([...unread.peek(), [key, { text, trouble, isTold }]]);
};

/** The field can be read again, or is gone. */
export const canRead = (key: string): void => {
  if (!unread.peek().has(key)) return;
  unread.value = new Map([...unread.peek()].filter(([other]) => other !== key));
};

/** Another plan has come, or a step was taken back: the fields show what the plan says. */
export const forgetUnread = (): void => {
  if (unread.peek().size > 0) unread.value = new Map();
};
