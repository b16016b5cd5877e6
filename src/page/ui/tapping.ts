/** What a tap in the picture means, and the stretch of the outline that is being set right. */

import { signal } from '@preact/signals';
import { traceWords } from '../words/words.ts';
import { type Hand, tapLine } from './by-hand.ts';
import type { Place } from './pointer.ts';
import { say, traceTold, tracing } from './tracing.ts';

/** What she says of a picture's template by hand. */
export const pictureHand: Hand = {
  ...{ said: tracing, say, told: traceTold },
  ...{ tool: signal(undefined), lit: signal(undefined) },
};

/** Whether taps are places that the outline runs through; if not, and no line is waited for, marks of a ruler. */
export const isThrough = signal(false);

interface Stretch {
  readonly from: Place;
  readonly to: Place;
  readonly through: readonly Place[];
}

/** What the place is called where the stretch begins. */
export const STRETCH_FROM = traceWords.mend.from;

export const stretch = signal<Stretch | undefined>(undefined);

export const tapped = (at: Place): void => {
  const now = tracing.value;
  if (!now) return;
  if (tapLine(pictureHand, at)) return;
  if (isThrough.value) {
    if (stretch.value) stretch.value = { ...stretch.value, through: [...stretch.value.through, at] };
    return;
  }
  const { scale } = now;
  if (scale.kind !== 'marks') return;
  say({ scale: { ...scale, marks: scale.marks.length < 2 ? [...scale.marks, at] : [at] } });
};
