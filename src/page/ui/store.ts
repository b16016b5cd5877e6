/** The page's state and what it asks for when that changes: answers follow the state, never the other way round. */

import { batch, computed, effect, signal } from '@preact/signals';
import { isPlanSized } from '../../jobs/page-limits.ts';
import { UNITS } from '../../length/index.ts';
import type { CardSection } from '../../output/card/index.ts';
import { type Client, type Outcome, startClient } from '../engine/client.ts';
import { hire } from '../engine/hire.ts';
import type {
  FillFacts,
  FillsAnswer,
  FitCard,
  LookAnswer,
  OtherPart,
  OwnTemplate,
  ShelfCard,
  SwagAnswer,
  Trouble,
} from '../engine/messages.ts';
import { changed, type History, redone, undone } from '../plan/history.ts';
import { withoutPart, withPart } from '../plan/part-text.ts';
import {
  type KeyPath,
  openPart,
  partsOf,
  pathIn,
  textAt,
  textBesides,
  type Written,
  withValues,
} from '../plan/plan-text.ts';
import { beside, titlesOf, withOwn } from '../plan/shelf.ts';
import { MOST_OWN, type State, withTaken } from '../plan/state.ts';
import { followed } from '../plan/their-changes.ts';
import { filesWords, noticeWords, workWords } from '../words/words.ts';
import { keptHistory } from './keep.ts';
import { forgetUnread, isUnread } from './unread.ts';

export const history = signal<History<State>>(keptHistory());
export const state = computed(() => history.value.now);
/** The names of the plan's parts, none where it is one design, and the one that is open. */
export const partNames = computed(() => partsOf(state.value.plan));
export const partNow = computed(() => openPart(state.value));
export const canUndo = computed(() => history.value.past.length > 0 || isUnread.value);
export const canRedo = computed(() => history.value.future.length > 0);

export const quick: Client = startClient(() => hire('quick'));
/** The same for what may come a little later, so that it never stands in a dragging hand's way. */
export const aside: Client = startClient(() => hire('quick'));
/** And for the other parts of a quilt, which may be forty. It starts when there are any. */
const round: Client = startClient(() => hire('quick'));
export const thorough: Client = startClient(() => hire('thorough'));
/** The same for fills alone: while their figures move, they wait for nothing else. */
const filler: Client = startClient(() => hire('thorough'));

/** Fits that are shown at first, and added by each “more”. */
export const SOME_FITS = 8;

export const look = signal<LookAnswer | undefined>(undefined);
/** What that was worked out for: the state runs ahead of it while she types. */
export const lookFor = signal<State | undefined>(undefined);
/** Whether something is in the way: then what is shown is of figures before, and none of it goes on paper. */
export const isOld = computed(() => (look.value?.problems.length ?? 0) > 0 || isUnread.value);
/** The last design that worked: what is shown while a figure is half typed. */
export const shown = signal<NonNullable<LookAnswer['chosen']> | undefined>(undefined);
/** The parts that are not open, for the picture of the quilt. */
export const others = signal<readonly OtherPart[]>([]);
export const shelf = signal<readonly ShelfCard[]>([]);
export const fitCards = signal<readonly FitCard[]>([]);
export const wantedFits = signal(SOME_FITS);
export const cardWords = signal<readonly CardSection[]>([]);
/** What the words were worked out for: until they follow they are the words of another state. */
export const cardWordsFor = signal<State | undefined>(undefined);
export const side = signal('top');
/** Of which side or corner an answer is: two that come apart may be of two. */
type OfSide<T> = T & { readonly side: string };
export const swag = signal<OfSide<SwagAnswer> | undefined>(undefined);
export const fills = signal<OfSide<FillsAnswer> | undefined>(undefined);
export const fillList = signal<readonly FillFacts[]>([]);
export const busy = signal<readonly string[]>([]);
export interface Notice {
  readonly text: string;
  readonly troubles: readonly Trouble[];
  /** What is in the way stays until she puts it away; what went well only until she goes on. */
  readonly isWrong: boolean;
  /** Where she is looking: at the head of the page, at her templates, or at the buttons for paper or for pictures. */
  readonly at: 'head' | 'shelf' | 'paper' | 'colours';
  /** A field that she may want to go to now, by its identifier, and what the button for that says. */
  readonly next?: { readonly words: string; readonly to: string } | undefined;
}

/** What is said to everyone, and read out: one sentence. */
export const notice = signal<Notice | undefined>(undefined);

export const say = (text: string, at: Notice['at'] = 'head', next?: Notice['next']): void => {
  notice.value = { text, troubles: [], isWrong: false, at, next };
};

/** The same for what did not go well. */
export const complain = (
  text: string,
  troubles: readonly Trouble[] = [],
  at: Notice['at'] = 'head',
): void => {
  notice.value = { text, troubles, isWrong: true, at };
};

/** What a slider has come to last; and one of a fill's. */
let moved: State | undefined;
let slid: State | undefined;

/** What went well was said of what stood here before; what is in the way stays until she puts it away. */
const forgetSaid = (): void => {
  if (notice.peek()?.isWrong === false) notice.value = undefined;
};

const commit = (next: State, about?: string): void => {
  forgetSaid();
  history.value = changed(history.value, next, about);
};

/** Wishes about what is shown are about this fit: it stays taken, as far as it goes with them. */
const ABOUT_THIS_FIT: readonly unknown[] = ['swag', 'channels', 'at', 'turn'];

/**
 * Changes keys of the plan. `about` gathers what belongs together, such as typing in one field, into one step.
 * While figures are typed, what she took stays what she took, whatever is shown for a figure that is half typed;
 * where she has taken nothing, the best is shown. While a slider of a fill moves, nothing but the fills follows it,
 * until it is let go.
 */
export const edit = (
  changes: readonly (readonly [KeyPath, Written])[],
  about?: string,
  isSliding = false,
): void => {
  const now = state.value;
  const keeps = changes.every(([path]) => ABOUT_THIS_FIT.includes(path[0]));
  // What is shown of a plan before, until the answer comes, is not what she means.
  const isHers = keeps && lookFor.value === now;
  const kept = isHers && shown.value ? withTaken(now, shown.value.key) : now;
  const placed = changes.map(([path, value]) => [pathIn(now, path), value] as const);
  const next = { ...kept, plan: withValues(now.plan, placed) };
  if (isSliding) slid = next;
  commit(next, about);
};

/**
 * Asks something of the swags, or no more: what answers it best is shown, whatever was taken before. All that is
 * asked of one thing in a row is one step. While a slider moves, answers are shown though it has gone on since.
 */
export const wishFor = (key: string, wish: Written, isMoving = false): void => {
  const now = withTaken(state.value, undefined);
  const path = pathIn(now, ['swag', key]);
  const next = { ...now, plan: withValues(now.plan, [[path, wish]]) };
  if (isMoving) moved = next;
  commit(next, path.join('.'));
};

export const setPlan = (plan: string): void => commit({ ...state.value, plan });
export const take = (key: string): void => commit(withTaken(state.value, key));

/** Lays one more part below all others, and opens it. */
export const addPart = (name: string): void => {
  const now = state.value;
  const box = [
    shown.value?.laid?.box ?? shown.value?.quilt.box,
    ...others.value.map((other) => other.drawn?.box),
  ];
  const boxes = box.filter((one) => one !== undefined);
  const isOne = partNames.value.length === 0;
  // A design by itself lies in the middle once it is a part.
  const below = Math.max(0, ...boxes.map(({ minY, maxY }) => (isOne ? (maxY - minY) / 2 : -minY)));
  const plan = withPart(now.plan, name, unitsNow.value, below);
  const first = partsOf(plan)[0];
  // What was taken of the design stays taken of the part that it has become.
  const { taken, ...rest } = now;
  const takenOf = isOne && taken !== undefined && first !== undefined ? { [first]: taken } : now.takenOf;
  commit({ ...rest, plan, taken: undefined, part: name, ...(takenOf && { takenOf }) });
};

/** Takes a part out; the first that is left is open then. */
export const removePart = (name: string): void => {
  const now = state.value;
  const { part: _, takenOf = {}, ...rest } = now;
  const kept = Object.fromEntries(Object.entries(takenOf).filter(([of]) => of !== name));
  commit({ ...rest, plan: withoutPart(now.plan, name), takenOf: kept });
};

/** Looks at another part. That is no change of the plan, and no step to take back. */
export const openPartNamed = (part: string): void => {
  const name = partNow.value;
  if (name === undefined || name === part) return;
  // The part that is left stays in the picture, among the others.
  const { laid, quilt, cloth } = shown.value ?? {};
  if (laid && quilt && cloth)
    others.value = [
      ...others.value.filter((other) => other.name !== name),
      { name, drawn: { ...laid, inks: quilt.inks, cloth }, problems: [] },
    ];
  const { now, ...before } = history.value;
  history.value = { ...before, now: { ...now, part }, about: undefined };
};

export const replaceState = (next: State): void => {
  wantedFits.value = SOME_FITS;
  forgetUnread();
  commit(next);
};

/** A change of the plan or of the shelf, one step to take back; `about` gathers what belongs together into one. */
export const changeState = (next: State, about?: string): void => commit(next, about);

/** What other windows did to the shelf: no step of this one, but where it changes the design that is open. Whether it does. */
export const followShelf = (own: readonly OwnTemplate[], moved: ReadonlyMap<string, string>): boolean => {
  const before = history.peek();
  history.value = followed(before, own, moved);
  return history.peek().past.length > before.past.length;
};

/** Whether there was room for it. */
export const addOwn = (file: OwnTemplate): boolean => {
  const next = withOwn(state.value, file);
  if (next === 'full') {
    complain(FULL);
    return false;
  }
  commit(next);
  return true;
};

/** What the templates that come with the page are called. */
const titlesAlong = (): readonly string[] =>
  shelf.peek().flatMap(({ name, title }) => (state.peek().own.some((t) => t.name === name) ? [] : title));

/** What all templates are called but the one of this name. */
export const otherTitles = (name?: string): readonly string[] => [
  ...titlesAlong(),
  ...titlesOf(state.peek().own.filter((t) => t.name !== name)),
];

export const FULL = filesWords.full({ most: MOST_OWN });

/** What cannot be read never came into the plan: taken back, the figure before stands in its field again. */
export const undo = (): void => {
  forgetSaid();
  if (isUnread.peek()) forgetUnread();
  else history.value = undone(history.value);
};
export const redo = (): void => {
  forgetSaid();
  forgetUnread();
  history.value = redone(history.value);
};

/** Names what takes long while it does. */
export const during = async <T>(what: string, work: Promise<T>): Promise<T> => {
  busy.value = [...busy.peek(), what];
  try {
    return await work;
  } finally {
    const at = busy.peek().indexOf(what);
    busy.value = busy.peek().filter((_, i) => i !== at);
  }
};

const clients: Client[] = [quick, aside, round, thorough, filler];

/** What comes with a later part of the page can be called off as well. */
export const alsoStop = (client: Client): void => {
  clients.push(client);
};

export const stopWork = (): void => {
  for (const client of clients) client.stop();
  say(noticeWords.stopped);
};

/** Whether what is shown is the first answer to a slider's move, which a search may better: all else waits for that. */
let isFirst = false;
/** Whether a first answer is being worked out, and the slider has gone on since. */
let isAsked = false;
let hasGoneOn = false;

/** All that follows a change, what a slider of a fill has come to when it is let go. */
export const letGo = (): void => void follow(state.peek(), true);

const follow = async (now: State, isLetGo = false): Promise<void> => {
  if (now === moved) return followMove(now);
  if (now === slid && !isLetGo) return followSlide(now);
  const answered = await during(workWords.fits, quick.ask({ kind: 'look', input: now }));
  if (state.value !== now) return;
  isFirst = false;
  showLook(now, answered);
};

/**
 * A slider's move is answered at once, from what is known to fit, and then by a search of its own, which no next move
 * waits for. It asks anew when it has its answer: were each move to overtake the one before, none would be answered.
 */
const followMove = async (now: State): Promise<void> => {
  if (isAsked) {
    hasGoneOn = true;
    return;
  }
  isAsked = true;
  hasGoneOn = false;
  const first = await quick.ask({ kind: 'look', input: now, isMoving: true });
  isAsked = false;
  if (state.value !== moved) return;
  isFirst = true;
  showLook(now, first);
  if (hasGoneOn) return followMove(moved);
  const answered = await during(workWords.fits, aside.ask({ kind: 'look', input: now }));
  if (state.value !== now) return;
  isFirst = false;
  showLook(now, answered);
};

/** The fills that are shown or being made: of what they are, and when they are there. */
let made: { readonly input: State; readonly side: string; readonly there: Promise<void> } | undefined;

const noFills = (): void => {
  made = undefined;
  fills.value = undefined;
};

/** While a slider moves, the answer before stays until the next one comes, and each that comes is shown. */
const fill = (input: State): Promise<void> => {
  const name = side.peek();
  if (made?.input === input && made.side === name) return made.there;
  const there = filler.ask({ kind: 'fills', input, side: name }).then((answered) => {
    const now = state.peek();
    if (answered.kind === 'answer' && (now === input || now === slid))
      fills.value = { ...answered.answer, side: name };
    if (answered.kind === 'problems') {
      complain(noticeWords.noFills, answered.problems);
      // What was made before, and what was said of it, is of another plan.
      if (made?.there === there) fills.value = undefined;
    }
    if (answered.kind !== 'answer' && made?.there === there) made = undefined;
  });
  made = { input, side: name, there };
  return there;
};

let isSlideAsked = false;

/** It asks anew when it has its answer: were each move to overtake the one before, none would be answered. */
const followSlide = async (now: State): Promise<void> => {
  if (isSlideAsked) return;
  isSlideAsked = true;
  await fill(now);
  isSlideAsked = false;
  if (slid && slid !== now && state.peek() === slid) return followSlide(slid);
};

const showLook = (now: State, answered: Outcome<LookAnswer>): void => {
  if (answered.kind === 'stopped') return;
  if (answered.kind === 'problems') {
    batch(() => {
      look.value = { problems: answered.problems, facts: look.value?.facts, found: 0, chosen: undefined };
      lookFor.value = now;
    });
    return;
  }
  const { answer } = answered;
  batch(() => {
    look.value = answer;
    lookFor.value = now;
    if (answer.chosen) shown.value = answer.chosen;
    if (answer.problems.length > 0 || !answer.facts?.hasFills) noFills();
    const { chosen } = answer;
    const names = chosen ? [...chosen.sides.map((s) => s.name), ...(chosen.corner ? ['corner'] : [])] : [];
    if (chosen && !names.includes(side.value)) side.value = names[0]!;
  });
};

/** What was shown of one part is nothing of another. */
const clearShown = (): void =>
  batch(() => {
    look.value = undefined;
    lookFor.value = undefined;
    shown.value = undefined;
    swag.value = undefined;
    noFills();
    fitCards.value = [];
    wantedFits.value = SOME_FITS;
    cardWords.value = [];
    cardWordsFor.value = undefined;
  });

/** What the shelf of templates depends on: it is not asked for anew with every figure that is typed. */
const ownNow = computed(() => state.value.own);
const unitsNow = computed(() => {
  const units = textAt(state.value.plan, ['units']);
  return UNITS.find((u) => u === units) ?? 'in';
});

/** Starts the page's work; called once. */
export const start = (): void => {
  partNow.subscribe(clearShown);
  effect(() => void follow(state.value));
  effect(() => {
    const asked = { kind: 'shelf', own: ownNow.value, units: unitsNow.value } as const;
    void quick.ask(asked).then((answered) => {
      if (answered.kind === 'answer') shelf.value = answered.answer;
    });
  });
  effect(() => {
    if (!look.value?.chosen || isFirst) return;
    const input = state.peek();
    const name = side.value;
    // The one that has made the search already.
    const client = input === moved ? aside : quick;
    void client.ask({ kind: 'swag', input, side: name }).then((answered) => {
      if (answered.kind === 'answer' && state.peek() === input)
        swag.value = answered.answer && { ...answered.answer, side: name };
    });
    if (look.value.facts?.hasFills) void during(workWords.fills, fill(input));
  });
  effect(() => {
    if (!look.value?.chosen || isFirst) return;
    const input = state.peek();
    void aside.ask({ kind: 'fits', input, from: 0, count: wantedFits.value }).then((answered) => {
      if (answered.kind === 'answer' && state.peek() === input) fitCards.value = answered.answer;
    });
  });
  effect(() => {
    if (!look.value?.chosen || isFirst) return;
    const input = state.peek();
    const client = look.value.facts?.hasFills ? thorough : aside;
    const asked = client.ask({ kind: 'words', input });
    void (client === thorough ? during(workWords.marks, asked) : asked).then((answered) => {
      if (answered.kind !== 'answer' || state.peek() !== input) return;
      batch(() => {
        cardWords.value = answered.answer;
        cardWordsFor.value = input;
      });
    });
  });
  followOthers();
};

/** What the other parts are made from: while only the open one changes, they are not asked for again. */
const madeFrom = computed(() => {
  const { own, takenOf = {} } = state.value;
  const taken = Object.entries(takenOf).filter(([name]) => name !== partNow.value);
  return partNow.value === undefined
    ? ''
    : JSON.stringify([partNow.value, textBesides(state.value), own, taken]);
});

/** The rest of the quilt follows by itself, after what the open part needs. */
const followOthers = (): void => {
  let asked: string | undefined;
  effect(() => {
    // Without facts the plan cannot be read, and nothing can be said of its parts.
    if (!look.value?.facts) return;
    const from = madeFrom.peek();
    if (from === asked) return;
    asked = from;
    if (from === '') {
      others.value = [];
      return;
    }
    void round.ask({ kind: 'others', input: state.peek() }).then((answered) => {
      if (answered.kind === 'answer' && madeFrom.peek() === from) others.value = answered.answer;
      else if (asked === from) asked = undefined;
    });
  });
};

/** The names of fills, and with them the part of the program that makes them. */
export const wantFills = (): void => {
  if (fillList.value.length > 0) return;
  void during(workWords.fills, filler.ask({ kind: 'fill-list' })).then((answered) => {
    if (answered.kind === 'answer') fillList.value = answered.answer;
  });
};

/**
 * Takes a plan that comes from outside only if it can be read: what is wrong with it is said, and nothing changes. Her
 * own templates stay on the shelf, and those that it brings come beside them.
 */
export const openFrom = async (brought: State, from: string, fileName?: string): Promise<boolean> => {
  if (!isPlanSized(brought.plan)) {
    complain(noticeWords.planTooLong({ from }));
    return false;
  }
  const answered = await during(workWords.plan, quick.ask({ kind: 'check', input: brought }));
  if (answered.kind === 'stopped') return false;
  if (answered.kind === 'problems') {
    complain(noticeWords.planUnusable({ from }), answered.problems);
    return false;
  }
  const { own } = state.value;
  const next = beside(own, brought, titlesAlong());
  if (next.own.length > Math.max(MOST_OWN, own.length)) {
    complain(FULL);
    return false;
  }
  // As with the commands, a plan without a title is called by its file.
  const ofFile = fileName?.replace(/\.(ya?ml|json)$/i, '').trim();
  const isNamed = !ofFile || textAt(next.plan, ['title']) !== undefined;
  replaceState(isNamed ? next : { ...next, plan: withValues(next.plan, [[['title'], ofFile]]) });
  say(noticeWords.planOpen({ title: isNamed ? answered.answer : ofFile }));
  return true;
};
