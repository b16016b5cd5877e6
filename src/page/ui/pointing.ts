/** The points of a template that she measures off a cutting mat: what she has said, where it is kept, and what it makes. */

import { batch, computed, effect, signal } from '@preact/signals';
import { UNITS, type Units } from '../../length/index.ts';
import { startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type { PointsAnswer } from '../engine/messages.ts';
import { beginning, changed, redone, undone } from '../plan/history.ts';
import { MOST_POINTS, pointsIn, pointsTypedIn, templateOfPoints } from '../plan/point-text.ts';
import { pointsWords, workWords } from '../words/words.ts';
import { type ByHand, byHandIn, forWorker, type Hand, NOTHING_BY_HAND } from './by-hand.ts';
import { unitsNow } from './fields.tsx';
import { alsoStop, during } from './store.ts';

const KEY = 'swagwright.points';

interface Said extends ByHand {
  readonly title: string;
  readonly text: string;
  /** The template on the shelf that they are set right of; none where they become a new one. */
  readonly of?: string | undefined;
  /** Of the figures without a unit of their own; undefined where it was typed before that was written down. */
  readonly units?: Units | undefined;
}

const NOTHING: Said = { title: '', text: '', ...NOTHING_BY_HAND };

/** As plans are kept: of this window, as long as it is open, and of the one that was changed last. */
const stored = (): string => {
  try {
    return sessionStorage.getItem(KEY) ?? localStorage.getItem(KEY) ?? '{}';
  } catch {
    return '{}';
  }
};

const saidIn = (text: string): Said => {
  try {
    const found = JSON.parse(text) as Partial<Said> | null;
    const listed = <T>(list: readonly T[] | undefined): readonly T[] | undefined =>
      Array.isArray(list) ? list : undefined;
    return {
      title: String(found?.title ?? ''),
      text: String(found?.text ?? ''),
      of: typeof found?.of === 'string' ? found.of : undefined,
      units: UNITS.find((unit) => unit === found?.units),
      breaks: listed(found?.breaks),
      thickness: String(found?.thickness ?? ''),
      across: listed(found?.across) ?? [],
      along: listed(found?.along) ?? [],
    };
  } catch {
    return NOTHING;
  }
};

let kept = stored();

const keepSaid = (now: Said): void => {
  const text = JSON.stringify(now);
  try {
    sessionStorage.setItem(KEY, text);
    // What is done with here may be begun in another window.
    if (text !== kept && (now.text !== '' || localStorage.getItem(KEY) === kept))
      localStorage.setItem(KEY, text);
  } catch {
    // Without a store they are there as long as the page is.
  }
  kept = text;
};

export const steps = signal(beginning(saidIn(kept)));
export const isOpen = signal(false);
export const answer = signal<PointsAnswer | undefined>(undefined);
export const told = signal('');
export const hand: Hand = {
  ...{ said: computed(() => steps.value.now), say: (changes, about) => change(changes, about), told },
  ...{ tool: signal(undefined), lit: signal(undefined) },
};
export const read = computed(() => pointsIn(steps.value.now.text, unitsNow()));

/** Changes what is said. `about` gathers what belongs together, such as typing in one field, into one step. */
export const change = (next: Partial<Said>, about?: string): void => {
  told.value = '';
  steps.value = changed(steps.value, { ...steps.value.now, ...next }, about);
};

export const openPoints = (): void => {
  isOpen.value = true;
};

/** Goes on with what was typed of a template on the shelf; what stood in the fields is a step back. */
export const goOnWithPoints = (typed: string, of: string, title: string): void => {
  change({ ...saidIn(typed), title, of });
  openPoints();
};

/** A worker of its own, as for pictures: it knows how a template is written. */
const reader = startClient(() => hire('thorough'));

/** What the points make now; undefined where there are none, or too many. */
export const work = async (): Promise<PointsAnswer | undefined> => {
  const { now } = steps.peek();
  const { points } = read.peek();
  if (points.length === 0 || points.length > MOST_POINTS) return undefined;
  const units = unitsNow();
  const text = templateOfPoints(now.title.trim() || pointsWords.usualTitle, points, units);
  const asked = { kind: 'points', points: { text, units, ...forWorker(now) } } as const;
  const answered = await during(workWords.template, reader.ask(asked));
  return answered.kind === 'answer' ? answered.answer : answer.peek();
};

/** No figure means another length because the page is in other units by now. */
const inUnitsNow = (said: Said): Said => {
  const [then, now] = [said.units ?? unitsNow(), unitsNow()];
  if (said.units === now) return said;
  return { ...said, ...byHandIn(said, then, now), text: pointsTypedIn(said.text, then, now), units: now };
};

/** Follows what she types; called once. */
export const startPoints = (): void => {
  alsoStop(reader);
  effect(() => {
    const { now } = steps.value;
    const said = inUnitsNow(now);
    if (said !== now) steps.value = { ...steps.peek(), now: said };
  });
  effect(() => {
    const { now } = steps.value;
    keepSaid(now);
    unitsNow();
    if (!isOpen.value) return;
    void work().then((made) => {
      if (steps.peek().now === now) answer.value = made;
    });
  });
};

export const stepBack = (): void => {
  steps.value = undone(steps.peek());
};
export const stepOn = (): void => {
  steps.value = redone(steps.peek());
};

/** They stay as they are until she comes back to them. */
export const putAway = (): void => {
  isOpen.value = false;
};

/** They have become a template, and the next ones begin anew. */
export const begunAnew = (): void =>
  batch(() => {
    isOpen.value = false;
    steps.value = beginning(NOTHING);
  });
