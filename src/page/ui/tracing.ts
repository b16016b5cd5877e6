/** The picture of a template that is being traced, what she has said of it, and what was found. */

import { batch, effect, signal } from '@preact/signals';
import { MM_PER_INCH, readLength } from '../../length/index.ts';
import { startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type { TraceAnswer, TraceInput } from '../engine/messages.ts';
import { unitsNow } from './fields.tsx';
import type { Place } from './pointer.ts';
import { complain, during } from './store.ts';

/** How large the picture is: as its file or the sheet in it says, or as she says. */
export type Scale =
  | { readonly kind: 'own' }
  | { readonly kind: 'dpi'; readonly text: string }
  /** Two places that she taps, and how far apart they are. */
  | { readonly kind: 'marks'; readonly marks: readonly Place[]; readonly apart: string };

interface Tracing
  extends Pick<TraceInput, 'file' | 'fileName' | 'key' | 'line' | 'heel' | 'crown' | 'foot' | 'title'> {
  readonly scale: Scale;
}

export const tracing = signal<Tracing | undefined>(undefined);
export const traced = signal<TraceAnswer | undefined>(undefined);
/** The address of the picture for the screen. */
export const shownPicture = signal<string | undefined>(undefined);

/** A worker of its own: while she drags an end, nothing else is in its way. */
const tracer = startClient(() => hire('thorough'));

let pictures = 0;

/** Begins with a picture; one that was being traced is put away. */
export const beginTracing = (file: File): void => {
  putAway();
  tracing.value = {
    file,
    fileName: file.name,
    key: ++pictures,
    line: 'middle',
    heel: undefined,
    crown: undefined,
    foot: undefined,
    title: '',
    scale: { kind: 'own' },
  };
};

export const putAway = (): void => {
  tracer.stop();
  if (shownPicture.value) URL.revokeObjectURL(shownPicture.value);
  batch(() => {
    tracing.value = undefined;
    traced.value = undefined;
    shownPicture.value = undefined;
  });
};

export const say = (changes: Partial<Tracing>): void => {
  if (tracing.value) tracing.value = { ...tracing.value, ...changes };
};

/** Pixels per mm as she says; undefined where she leaves it to the file, `wrong` where it cannot be read. */
export const resolutionSaid = (scale: Scale): number | undefined | 'wrong' => {
  switch (scale.kind) {
    case 'own':
      return undefined;
    case 'dpi': {
      const value = /^\d{2,4}$/.test(scale.text.trim()) ? Number(scale.text) : Number.NaN;
      return value >= LEAST_DPI && value <= MOST_DPI ? value / MM_PER_INCH : 'wrong';
    }
    case 'marks': {
      const [a, b] = scale.marks;
      const read = readLength(scale.apart, unitsNow());
      if (!a || !b || !read.ok || !(read.mm > 0)) return 'wrong';
      return Math.hypot(a.x - b.x, a.y - b.y) / read.mm;
    }
    default:
      return scale satisfies never;
  }
};

/** What scanners can be set to, dots per inch. */
const LEAST_DPI = 100;
const MOST_DPI = 2400;

/** Follows what she says; called once. */
export const startTracing = (): void => {
  effect(() => {
    const now = tracing.value;
    if (!now) return;
    const { scale, ...said } = now;
    const pixelsPerMm = resolutionSaid(scale);
    // What cannot be read yet leaves what was found before.
    if (pixelsPerMm === 'wrong') return;
    const picture: TraceInput = { ...said, pixelsPerMm, units: unitsNow() };
    void during('the outline', tracer.ask({ kind: 'trace', picture })).then((answered) => {
      if (tracing.peek()?.key !== now.key) return;
      if (answered.kind === 'stopped') {
        if (traced.peek() === undefined) putAway();
        return;
      }
      if (answered.kind === 'problems') {
        // Without a first answer there is no picture to look at.
        if (traced.peek() === undefined) putAway();
        complain(`${now.fileName} cannot be traced.`, answered.problems);
        return;
      }
      batch(() => {
        if (answered.answer.shown) shownPicture.value = URL.createObjectURL(answered.answer.shown);
        traced.value = answered.answer;
      });
    });
  });
};
