/** What a tap in the picture means, and the stretch of the outline that is being set right. */

import { signal } from '@preact/signals';
import type { Place } from './pointer.ts';
import { say, tracing } from './tracing.ts';

type Tool =
  /** A place that the outline runs through. */
  | { readonly kind: 'through' }
  /** A place on an etched line. */
  | { readonly kind: 'across' | 'along'; readonly id: number };

/** Nothing in particular where it is undefined: then the marks of a ruler, while the scale is told by them. */
export const tool = signal<Tool | undefined>(undefined);

interface Stretch {
  readonly from: Place;
  readonly to: Place;
  readonly through: readonly Place[];
}

/** What the place is called where the stretch begins. */
export const STRETCH_FROM = 'Stretch from';

export const stretch = signal<Stretch | undefined>(undefined);

export const tapped = (at: Place): void => {
  const now = tracing.value;
  if (!now) return;
  const wanted = tool.value;
  if (wanted === undefined) {
    const { scale } = now;
    if (scale.kind !== 'marks') return;
    say({ scale: { ...scale, marks: scale.marks.length < 2 ? [...scale.marks, at] : [at] } });
    return;
  }
  if (wanted.kind === 'through') {
    if (stretch.value) stretch.value = { ...stretch.value, through: [...stretch.value.through, at] };
    return;
  }
  const { kind, id } = wanted;
  say({ [kind]: now[kind].map((line) => (line.id === id ? { ...line, text: '', place: at } : line)) });
  tool.value = undefined;
};
