/**
 * Opposite sides of a quilt that differ by much are a slip of the pen; but while she types her own figures over the
 * old ones they differ all the time. What is said of a pair waits until she has typed both, or leaves the sides.
 */

import { computed, signal } from '@preact/signals';
import type { Units } from '../../length/index.ts';
import type { Trouble } from '../engine/messages.ts';
import { shownLength } from '../plan/her-units.ts';
import { textAt } from '../plan/plan-text.ts';
import { measureWords } from '../words/words.ts';
import { sidePath } from './layouts.ts';
import { look, lookFor, state } from './store.ts';
import { unreadAt, unreadTroubles } from './unread.ts';

export const SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type SideName = (typeof SIDES)[number];

const OPPOSITE: Readonly<Record<SideName, SideName>> = {
  top: 'bottom',
  bottom: 'top',
  left: 'right',
  right: 'left',
};

/** Sides typed since she came to the sides. */
const typed = signal<ReadonlySet<SideName>>(new Set());
const isAmong = signal(false);
/** The side that is being typed. */
const typing = signal<SideName | undefined>(undefined);

const KEY = /^layout\.border\.(?:inner|outer)\.(top|right|bottom|left)$/;

/** The side whose field a key is. */
const sideOf = (key: string | undefined): SideName | undefined =>
  SIDES.find((side) => side === KEY.exec(key ?? '')?.[1]);

/** The side that is the shorter of a pair that differs too much. */
const offSide = ({ code, key }: Trouble): SideName | undefined =>
  code === 'does-not-agree' ? sideOf(key) : undefined;

const waitsFor = (trouble: Trouble): SideName | undefined => {
  const side = offSide(trouble);
  if (!side || !isAmong.value) return undefined;
  const pair = [side, OPPOSITE[side]];
  const missing = pair.find((s) => !typed.value.has(s));
  if (missing && pair.some((s) => typed.value.has(s))) return missing;
  // What was worked out for a figure half typed is no verdict on the whole one.
  return pair.find((s) => s === typing.value) ?? (lookFor.value === state.value ? undefined : side);
};

/** Both sides of a pair as she wrote them, the top before the bottom and the left before the right. */
const pairWords = (side: SideName): string => {
  const [a, b] = side === 'bottom' || side === 'right' ? [OPPOSITE[side], side] : [side, OPPOSITE[side]];
  const plan = state.value;
  const units = (textAt(plan, ['units']) as Units | undefined) ?? 'in';
  const written = (s: SideName): string => shownLength(textAt(plan, sidePath(plan, s)) ?? '', units).text;
  return measureWords.pairOff({ sides: [a, b], lengths: [written(a), written(b)] });
};

/** What is in the way now, without what only waits for the next figure. */
export const troubles = computed<readonly Trouble[]>(() => [
  ...unreadTroubles.value,
  ...(look.value?.problems ?? [])
    .filter((trouble) => waitsFor(trouble) === undefined && !isOverwritten(trouble))
    .map((trouble) => {
      const side = offSide(trouble);
      return side ? { ...trouble, text: `${pairWords(side)} ${measureWords.measureAgain}` } : trouble;
    }),
]);

/** What was wrong with a figure is no news of what has been typed over it. */
const isOverwritten = ({ key }: Trouble): boolean => key !== undefined && unreadAt(key) !== undefined;

/** Whether a trouble is to be told at the field of a key: that of a pair is told at both. */
export const concerns = (trouble: Trouble, key: string): boolean => {
  const side = offSide(trouble);
  return trouble.key === key || (side !== undefined && sideOf(key) === OPPOSITE[side]);
};

/** What a pair waits for, said at both its fields once she has gone on from the one that she typed. */
export const pairHint = (key: string): string | undefined => {
  const waiting = (look.value?.problems ?? []).find((t) => waitsFor(t) !== undefined && concerns(t, key));
  const side = waiting && offSide(waiting);
  const missing = waiting && waitsFor(waiting);
  if (!side || !missing || typing.value === side || typing.value === OPPOSITE[side]) return undefined;
  return `${pairWords(side)} ${measureWords.typeMissing({ side: missing })}`;
};

/** Sides that are still to be typed before more can be said. */
export const awaited = computed<readonly SideName[]>(() =>
  (look.value?.problems ?? []).flatMap((trouble) => waitsFor(trouble) ?? []),
);

export const cameToSides = (): void => {
  if (isAmong.value) return;
  isAmong.value = true;
  // A pair that is told to be wrong stays told while she puts it right.
  typed.value = new Set((look.value?.problems ?? []).some((t) => offSide(t)) ? SIDES : []);
};

export const typedSide = (side: SideName): void => {
  typing.value = side;
  if (!typed.value.has(side)) typed.value = new Set([...typed.value, side]);
};

export const leftSide = (): void => {
  typing.value = undefined;
};

export const leftSides = (): void => {
  typing.value = undefined;
  isAmong.value = false;
};
