/** The picture of a template that is being traced, what she has said of it, and what was found. */

import { batch, computed, effect, signal } from '@preact/signals';
import { MM_PER_INCH, readLength } from '../../length/index.ts';
import type { Level, Mend } from '../../trace/index.ts';
import { startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type { SaidBreak, TraceAnswer, TraceInput } from '../engine/messages.ts';
import { beginning, changed, type History, redone, undone } from '../plan/history.ts';
import { unitsNow } from './fields.tsx';
import { changeKept, isInWork, workKey } from './kept-pictures.ts';
import { dropPicture, keepPicture, keptPicture } from './picture-store.ts';
import type { Place } from './pointer.ts';
import { complain, during } from './store.ts';

/** How large the picture is: as its file or the sheet in it says, or as she says. */
export type Scale =
  | { readonly kind: 'own' }
  | { readonly kind: 'dpi'; readonly text: string }
  /** Two places that she taps, and how far apart they are. */
  | { readonly kind: 'marks'; readonly marks: readonly Place[]; readonly apart: string };

/** An etched line by a place that she tapped on it, or by its distance as she typed it. */
export interface EtchedLine {
  readonly id: number;
  /** Of a line across; those along the edge have none. */
  readonly name: string;
  readonly text: string;
  readonly place: Place | undefined;
}

/** What she has said: plain data, so that it can be kept with the picture. */
interface Said extends Pick<TraceInput, 'line' | 'heel' | 'crown' | 'foot' | 'title' | 'correction'> {
  readonly level: Level | undefined;
  readonly scale: Scale;
  readonly mends: readonly Mend[];
  readonly breaks: readonly SaidBreak[] | undefined;
  readonly thickness: string;
  readonly height: string;
  readonly across: readonly EtchedLine[];
  readonly along: readonly EtchedLine[];
}

interface Tracing extends Said, Pick<TraceInput, 'file' | 'fileName' | 'key' | 'ofFile'> {
  /** Where the browser keeps it: as a picture in work, or under its template's name. */
  readonly keptAs: string;
}

const NOTHING_SAID: Said = {
  line: 'middle',
  heel: undefined,
  crown: undefined,
  foot: undefined,
  level: undefined,
  title: '',
  correction: 1,
  scale: { kind: 'own' },
  mends: [],
  breaks: undefined,
  thickness: '',
  height: '',
  across: [],
  along: [],
};

const steps = signal<History<Tracing> | undefined>(undefined);
export const tracing = computed(() => steps.value?.now);
export const traced = signal<TraceAnswer | undefined>(undefined);
/** The address of the picture for the screen. */
export const shownPicture = signal<string | undefined>(undefined);
/** For screen readers: what the last step came to. */
export const traceTold = signal('');

export const canStepBack = computed(() => (steps.value?.past.length ?? 0) > 0);
export const canStepOn = computed(() => (steps.value?.future.length ?? 0) > 0);
export const stepBack = (): void => {
  if (steps.value) steps.value = undone(steps.value);
};
export const stepOn = (): void => {
  if (steps.value) steps.value = redone(steps.value);
};

/** A worker of its own: while she drags an end, nothing else is in its way. */
const tracer = startClient(() => hire('thorough'));

let pictures = 0;

/** Begins with a picture; one that was in work before stays kept. */
export const beginTracing = (file: File): void => {
  putAway();
  const keptAs = workKey();
  steps.value = beginning({
    ...NOTHING_SAID,
    file,
    fileName: file.name,
    key: ++pictures,
    ofFile: undefined,
    keptAs,
  });
};

/** Goes on with a kept picture. Throws where the browser has it no longer. */
export const goOnWith = async (key: string, title?: string): Promise<void> => {
  if (tracing.peek()?.keptAs === key) return;
  const found = (await keptPicture(key)) as Partial<Tracing> | undefined;
  if (!(found?.file instanceof Blob)) {
    changeKept((kept) => kept.filter((k) => k.key !== key));
    throw new Error('The picture is gone');
  }
  putAway();
  const said = { ...NOTHING_SAID, ...found } as Tracing;
  steps.value = beginning({ ...said, title: title ?? said.title, key: ++pictures, keptAs: key });
};

export const putAway = (): void => {
  keepNow();
  tracer.stop();
  if (shownPicture.value) URL.revokeObjectURL(shownPicture.value);
  batch(() => {
    steps.value = undefined;
    traced.value = undefined;
    shownPicture.value = undefined;
    traceTold.value = '';
  });
};

/** A picture of no template is not kept. */
const throwAway = (): void => {
  const key = tracing.peek()?.keptAs;
  waiting = undefined;
  putAway();
  if (key !== undefined) forget(key);
};

/** Lets a kept picture go. */
export const forget = (key: string): void => {
  changeKept((kept) => kept.filter((k) => k.key !== key));
  void dropPicture(key).catch(() => {});
};

/**
 * The picture is from now on that of a template on the shelf. Its old name goes only when it is kept under the new one:
 * a window that is closed in between must not lose it.
 */
export const keepAs = async (name: string): Promise<void> => {
  const now = tracing.peek();
  if (!now) return;
  const before = now.keptAs;
  waiting = { ...now, keptAs: name };
  const keeping = keepNow();
  putAway();
  if ((await keeping) && before !== name) forget(before);
};

/** Changes what is said. `about` gathers what belongs together, such as dragging one end, into one step. */
export const say = (changes: Partial<Said>, about?: string): void => {
  if (steps.value) steps.value = changed(steps.value, { ...steps.value.now, ...changes }, about);
};

/** What is to be kept, once she rests. */
let waiting: Tracing | undefined;
let rest: ReturnType<typeof setTimeout> | undefined;
/** ms */
const REST = 500;
/** Pictures in work that are kept: the newest. */
const MOST_IN_WORK = 5;

/** Whether there was one, and it is kept. */
const keepNow = async (): Promise<boolean> => {
  clearTimeout(rest);
  const now = waiting;
  waiting = undefined;
  if (!now) return false;
  const { key: _, keptAs, ...value } = now;
  try {
    await keepPicture(keptAs, value);
  } catch {
    // Without a store, or room in it, it is there as long as it is open.
    return false;
  }
  let old: readonly string[] = [];
  changeKept((kept) => {
    const next = [...kept.filter((k) => k.key !== keptAs), { key: keptAs, called: now.fileName }];
    old = next
      .filter(isInWork)
      .slice(0, -MOST_IN_WORK)
      .map((k) => k.key);
    return next.filter((k) => !old.includes(k.key));
  });
  for (const one of old) void dropPicture(one).catch(() => {});
  return true;
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

/** A length that she types beside the picture, mm; undefined where nothing is typed, `wrong` where it cannot be read. */
export const lengthSaid = (text: string): number | undefined | 'wrong' => {
  if (text.trim() === '') return undefined;
  const read = readLength(text, unitsNow());
  return read.ok ? read.mm : 'wrong';
};

/** Nearer than this (mm) no camera shows the sheet. */
export const LEAST_HEIGHT = 150;

/** What cannot be read yet leaves a line out. */
const etched = ({ text, place }: EtchedLine): number | Place | undefined => {
  if (place) return place;
  const mm = lengthSaid(text);
  return mm === 'wrong' ? undefined : mm;
};

/** Those that the worker is told of, in the order of its answer. */
export const saidLines = (lines: readonly EtchedLine[]): readonly EtchedLine[] =>
  lines.filter((line) => etched(line) !== undefined);

const inputFrom = (now: Tracing, pixelsPerMm: number | undefined): TraceInput => {
  const { scale: _, keptAs: __, ...said } = now;
  const [thick, height] = [lengthSaid(now.thickness), lengthSaid(now.height)];
  return {
    ...said,
    pixelsPerMm,
    units: unitsNow(),
    thickness: thick === 'wrong' ? undefined : thick,
    height: height === 'wrong' || !(height! >= LEAST_HEIGHT) ? undefined : height,
    across: saidLines(now.across).map((line) => ({ name: line.name, at: etched(line)! })),
    along: saidLines(now.along).map((line) => etched(line)!),
  };
};

/** Follows what she says; called once. */
export const startTracing = (): void => {
  effect(() => {
    const now = tracing.value;
    if (!now) return;
    const pixelsPerMm = resolutionSaid(now.scale);
    // What cannot be read yet leaves what was found before.
    if (pixelsPerMm === 'wrong') return;
    const picture = inputFrom(now, pixelsPerMm);
    void during('the outline', tracer.ask({ kind: 'trace', picture })).then((answered) => {
      if (tracing.peek()?.key !== now.key) return;
      if (answered.kind === 'stopped') {
        if (traced.peek() === undefined) putAway();
        return;
      }
      if (answered.kind === 'problems') {
        // Without a first answer there is no picture to look at.
        if (traced.peek() === undefined) throwAway();
        complain(`${now.fileName} cannot be traced.`, answered.problems);
        return;
      }
      const { answer } = answered;
      batch(() => {
        if (answer.shown) shownPicture.value = URL.createObjectURL(answer.shown);
        if (answer.kept) copies.set(now.key, { file: answer.kept, ofFile: answer.pixelsPerMm });
        traced.value = answer;
      });
    });
  });
  effect(() => {
    const now = tracing.value;
    const copy = now && traced.value && copies.get(now.key);
    if (!now || !copy) return;
    waiting = { ...now, ...copy };
    clearTimeout(rest);
    rest = setTimeout(keepNow, REST);
  });
  addEventListener('pagehide', keepNow);
};

/** What is kept of a picture in place of her file: its pixels, and nothing that the file says of place and time. */
const copies = new Map<number, { readonly file: Blob; readonly ofFile: number | undefined }>();
