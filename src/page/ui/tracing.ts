/** The picture of a template that is being traced, what she has said of it, and what was found. */

import { batch, computed, effect, signal } from '@preact/signals';
import { MM_PER_INCH, readLength, type Units } from '../../length/index.ts';
import type { Level, Marks, Mend } from '../../trace/index.ts';
import { askTrace } from '../engine/ask-trace.ts';
import { startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type { TraceAnswer, TraceInput } from '../engine/messages.ts';
import { beginning, changed, type History, redone, undone } from '../plan/history.ts';
import { freeTitle } from '../plan/shelf.ts';
import { typedIn } from '../plan/typed-in.ts';
import { handWords, traceWords, workWords } from '../words/words.ts';
import { type ByHand, byHandIn, forWorker, lengthSaid, NOTHING_BY_HAND } from './by-hand.ts';
import { unitsNow } from './fields.tsx';
import { tell } from './keeping.ts';
import { changeKept, giveTo, keptPictures, newKey, noteKept } from './kept-pictures.ts';
import { dropPicture, keepPicture, keptPicture } from './picture-store.ts';
import type { Place } from './pointer.ts';
import { alsoStop, say as announce, complain, during, otherTitles } from './store.ts';

/** How large the picture is: as its file or the sheet in it says, or as she says. */
export type Scale =
  | { readonly kind: 'own' }
  | { readonly kind: 'dpi'; readonly text: string }
  /** Two places that she taps, and how far apart they are. */
  | { readonly kind: 'marks'; readonly marks: readonly Place[]; readonly apart: string };

/** What she has said: plain data, so that it can be kept with the picture. */
interface Said extends ByHand, Pick<TraceInput, 'line' | 'heel' | 'crown' | 'foot' | 'title' | 'correction'> {
  readonly level: Level | undefined;
  readonly scale: Scale;
  readonly mends: readonly Mend[];
  readonly height: string;
  /** Of the figures without a unit of their own; undefined where they were kept before that was written down. */
  readonly unitsTyped?: Units | undefined;
}

interface Tracing extends Said, Pick<TraceInput, 'file' | 'fileName' | 'key' | 'ofFile'> {
  /** By which the browser keeps it. */
  readonly keptAs: string;
}

const NOTHING_SAID: Said = {
  line: undefined,
  heel: undefined,
  crown: undefined,
  foot: undefined,
  level: undefined,
  title: '',
  correction: 1,
  scale: { kind: 'own' },
  mends: [],
  height: '',
  ...NOTHING_BY_HAND,
};

const steps = signal<History<Tracing> | undefined>(undefined);
export const tracing = computed(() => steps.value?.now);
export const traced = signal<TraceAnswer | undefined>(undefined);
/** What that was found for: what she says runs ahead of it until the next one is there, or for good where work is stopped. */
const tracedFor = signal<Tracing | undefined>(undefined);
/** Whether the outline is that of all that she has said: only then may it go on the shelf or on paper. */
export const isTraced = computed(() => tracedFor.value === tracing.value);
/** What she has said whose outline was called off, or came to nothing. */
const stopped = signal<Tracing | undefined>(undefined);
export const isStopped = computed(() => !isTraced.value && stopped.value === tracing.value);
export const traceAgain = (): void => {
  stopped.value = undefined;
};
/** The address of the picture for the screen. */
export const shownPicture = signal<string | undefined>(undefined);
/** For screen readers: what the last step came to. */
export const traceTold = signal('');

const isStepped = (): boolean => {
  const { past = [], future = [] } = steps.value ?? {};
  return past.length + future.length > 0;
};

export const canStepBack = computed(() => (steps.value?.past.length ?? 0) > 0);
export const canStepOn = computed(() => (steps.value?.future.length ?? 0) > 0);
export const stepBack = (): void => {
  traceTold.value = '';
  if (steps.value) steps.value = undone(steps.value);
};
export const stepOn = (): void => {
  traceTold.value = '';
  if (steps.value) steps.value = redone(steps.value);
};

/** A worker of its own: while she drags an end, nothing else is in its way. */
const tracer = startClient(() => hire('thorough'));

let pictures = 0;

/** Begins with a picture; one that was in work before stays kept. */
export const beginTracing = (file: File): void => {
  open({ ...NOTHING_SAID, file, fileName: file.name, key: ++pictures, ofFile: undefined, keptAs: newKey() });
};

/** `held` where the browser has it, and this window alone has it open. */
const open = (now: Tracing, held?: () => Promise<unknown>): void => {
  putAway();
  isAsKept = copies.has(now.key);
  steps.value = beginning(now);
  free = held;
  if (held) return;
  void hold(now.keptAs).then((own) => {
    if (tracing.peek()?.keptAs === now.keptAs) free = own;
    else void own?.();
  });
};

/**
 * Goes on with a kept picture. Where another window has it open, what is said here is kept by itself: neither window
 * writes over the other's. Throws where the browser has it no longer.
 */
export const goOnWith = (key: string, title?: string): Promise<void> => {
  opening = opening.catch(() => {}).then(() => goOn(key, title));
  return opening;
};

let opening: Promise<void> = Promise.resolve();

const goOn = async (key: string, title: string | undefined): Promise<void> => {
  if (tracing.peek()?.keptAs === key) return;
  putAway();
  await left;
  const held = await hold(key);
  const found = (await keptPicture(key)) as Partial<Tracing> | undefined;
  if (!(found?.file instanceof Blob)) {
    void held?.();
    changeKept((kept) => kept.filter((k) => k.key !== key));
    throw new Error('The picture is gone');
  }
  const said = { ...NOTHING_SAID, ...found } as Tracing;
  const now = { ...said, title: title ?? said.title, key: ++pictures, keptAs: key };
  copies.set(now.key, { file: now.file, ofFile: now.ofFile });
  if (held) {
    open(now, held);
    return;
  }
  open({ ...now, keptAs: newKey(), ...(title !== undefined && { title: freeTitle(otherTitles(), title) }) });
  announce(traceWords.openElsewhere);
};

/** Whether it is as the browser has it, as long as there is no step. */
let isAsKept = false;

/** Lets other windows have the picture that this one has open. */
let free: (() => Promise<unknown>) | undefined;
/** Settles when what was open last is kept, and free for others. */
let left: Promise<unknown> = Promise.resolve();

/**
 * Has the picture for this window alone, until what comes back is called; undefined where another window has it, or
 * where the browser cannot tell.
 */
const hold = (key: string): Promise<(() => Promise<unknown>) | undefined> =>
  new Promise((answer) => {
    const locks: LockManager | undefined = navigator.locks;
    if (!locks) return answer(undefined);
    const until = locks.request(`swagwright picture ${key}`, { ifAvailable: true }, (lock) => {
      if (lock === null) return answer(undefined);
      return new Promise<void>((done) => {
        answer(() => {
          done();
          return until;
        });
      });
    });
    until.catch(() => answer(undefined));
  });

export const putAway = (): void => {
  const held = free;
  free = undefined;
  left = keepNow().then(() => held?.());
  tracer.stop();
  if (shownPicture.value) URL.revokeObjectURL(shownPicture.value);
  batch(() => {
    steps.value = undefined;
    traced.value = undefined;
    tracedFor.value = undefined;
    stopped.value = undefined;
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

/** Lets a kept picture go; what comes back takes it back. None comes where the browser has it no longer. */
export const throwOut = async (key: string): Promise<(() => Promise<void>) | undefined> => {
  if (tracing.peek()?.keptAs === key) {
    putAway();
    await left;
  }
  const note = keptPictures.peek().find((k) => k.key === key);
  const value = (await keptPicture(key).catch(() => undefined)) as object | undefined;
  forget(key);
  if (!note || !value) return undefined;
  return async () => {
    await keepPicture(key, value);
    changeKept((kept) => [...kept.filter((k) => k.key !== key), note]);
  };
};

/** A copy of a kept picture, with all that was said of it, as that of a template on the shelf. */
export const copyKept = async (key: string, name: string): Promise<void> => {
  const value = (await keptPicture(key)) as Tracing | undefined;
  if (!value) throw new Error('The picture is gone');
  const own = newKey();
  await keepPicture(own, value);
  giveTo(own, name);
  noteKept(own, value.fileName, true);
};

/** Its template is on the shelf: the picture is kept as it is now, and put away. */
export const keepAndPutAway = async (): Promise<void> => {
  const now = tracing.peek();
  if (!now) return;
  waiting = { ...now, ...copies.get(now.key) };
  putAway();
  await left;
};

/** Changes what is said. `about` gathers what belongs together, such as dragging one end, into one step. */
export const say = (changes: Partial<Said>, about?: string): void => {
  traceTold.value = '';
  if (steps.value) steps.value = changed(steps.value, { ...steps.value.now, ...changes }, about);
};

const isKept = (key: string): boolean => keptPictures.peek().some((k) => k.key === key);

/** What is to be kept, once she rests. */
let waiting: Tracing | undefined;
let rest: ReturnType<typeof setTimeout> | undefined;
/** ms */
const REST = 500;

const keepNow = async (): Promise<void> => {
  clearTimeout(rest);
  const now = waiting;
  waiting = undefined;
  if (!now) return;
  const { key: _, keptAs, ...value } = now;
  const wasKept = isKept(keptAs);
  // Noted first: a window that closes does not see the end of the store's work.
  const old = noteKept(keptAs, now.fileName, isStepped());
  try {
    await keepPicture(keptAs, value);
  } catch {
    if (!wasKept) changeKept((kept) => kept.filter((k) => k.key !== keptAs));
    tell(traceWords.kept, false, handWords.saveFile);
    return;
  }
  tell(traceWords.kept, true, handWords.saveFile);
  for (const one of old) void dropPicture(one).catch(() => {});
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

const marksSaid = (scale: Scale): Marks | undefined => {
  const [a, b] = scale.kind === 'marks' ? scale.marks : [];
  return a && b && [a, b];
};

/** What scanners can be set to, dots per inch. */
const LEAST_DPI = 100;
const MOST_DPI = 2400;

/** Nearer than this (mm) no camera shows the sheet. */
export const LEAST_HEIGHT = 150;

/** No figure means another length because the page is in other units by now. */
const inUnitsNow = (said: Tracing): Tracing => {
  const [then, now] = [said.unitsTyped ?? unitsNow(), unitsNow()];
  if (said.unitsTyped === now) return said;
  const { scale, height } = said;
  return {
    ...said,
    ...byHandIn(said, then, now),
    scale: scale.kind === 'marks' ? { ...scale, apart: typedIn(scale.apart, then, now) } : scale,
    height: typedIn(height, then, now),
    unitsTyped: now,
  };
};

const inputFrom = (now: Tracing, pixelsPerMm: number | undefined): TraceInput => {
  const { scale: _, keptAs: __, unitsTyped: ___, ...said } = now;
  const height = lengthSaid(now.height);
  return {
    ...said,
    ...forWorker(now),
    pixelsPerMm,
    marks: marksSaid(now.scale),
    units: unitsNow(),
    height: height === 'wrong' || !(height! >= LEAST_HEIGHT) ? undefined : height,
  };
};

/** Follows what she says; called once. */
export const startTracing = (): void => {
  alsoStop(tracer);
  effect(() => {
    const now = tracing.value;
    const said = now && inUnitsNow(now);
    if (said !== now && said && steps.peek()) steps.value = { ...steps.peek()!, now: said };
  });
  effect(() => {
    const now = tracing.value;
    if (!now) return;
    const pixelsPerMm = resolutionSaid(now.scale);
    // What cannot be read yet leaves what was found before; and so does what was called off, until she wants it after all.
    if (pixelsPerMm === 'wrong' || isStopped.value) return;
    const picture = inputFrom(now, pixelsPerMm);
    void during(workWords.outline, askTrace(tracer, picture)).then((answered) => {
      if (tracing.peek()?.key !== now.key) return;
      if (answered.kind === 'stopped') {
        if (traced.peek() === undefined) putAway();
        else if (tracing.peek() === now) stopped.value = now;
        return;
      }
      if (answered.kind === 'problems') {
        stopped.value = now;
        // Without a first answer there is no picture to look at.
        if (traced.peek() === undefined) throwAway();
        complain(traceWords.cannot({ file: now.fileName }), answered.problems);
        return;
      }
      const { answer } = answered;
      const [problem] = answer.problems;
      if (traced.peek() === undefined && !isAsKept)
        announce(
          problem
            ? traceWords.problem({ file: now.fileName, problem: problem.text.replace(/\.$/, '') })
            : traceWords.found({ file: now.fileName }),
        );
      batch(() => {
        if (answer.shown) shownPicture.value = URL.createObjectURL(answer.shown);
        // One that comes from the store stays as it is: no copy of a copy.
        if (answer.kept && !copies.has(now.key))
          copies.set(now.key, { file: answer.kept, ofFile: answer.pixelsPerMm });
        traced.value = answer;
        tracedFor.value = now;
      });
    });
  });
  effect(() => {
    const now = tracing.value;
    const copy = now && traced.value && copies.get(now.key);
    if (!now || !copy || (isAsKept && !isStepped())) return;
    waiting = { ...now, ...copy };
    clearTimeout(rest);
    // At once the first time: a window that closes has time for what she says, and not for the picture itself.
    if (!isKept(now.keptAs)) void keepNow();
    else rest = setTimeout(keepNow, REST);
  });
  addEventListener('pagehide', keepNow);
};

/** What is kept of a picture in place of her file: its pixels, and nothing that the file says of place and time. */
const copies = new Map<number, { readonly file: Blob; readonly ofFile: number | undefined }>();
