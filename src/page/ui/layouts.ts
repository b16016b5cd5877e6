/** Kinds of layout: what each begins with, and going from one to another without losing what was typed. */

import type { Units } from '../../length/index.ts';
import { FIRST_FIGURES } from '../plan/first-figures.ts';
import {
  groupAt,
  keysAt,
  openPart,
  type PlanSource,
  pathIn,
  textAt,
  type Written,
  withUnits,
  withValues,
} from '../plan/plan-text.ts';
import { withTaken } from '../plan/state.ts';
import { replaceState, state } from './store.ts';

export type LayoutKind = 'border' | 'strip' | 'frame' | 'block';

/** In the plan a frame is a frame, whatever it lies round. */
const keyOf = (kind: LayoutKind): 'border' | 'strip' | 'frame' => (kind === 'block' ? 'frame' : kind);

export const kindNow = (plan: PlanSource): LayoutKind => {
  const [key = 'border'] = keysAt(plan, ['layout']);
  if (key === 'frame') return keysAt(plan, ['layout', 'frame']).includes('block') ? 'block' : 'frame';
  return key === 'strip' ? 'strip' : 'border';
};

const firstOf = (kind: LayoutKind, plan: PlanSource, units: Units): { readonly [key: string]: Written } => {
  const { side, width, margin, motif, limit } = FIRST_FIGURES[units];
  const key = keysAt(plan, ['layout'])[0] ?? '';
  const known = (name: string): string | undefined => textAt(plan, ['layout', key, name]);
  const long = known('length') ?? textAt(plan, ['layout', key, 'inner', 'top']) ?? known('inner') ?? side;
  const along = { width: known('width') ?? width, margin: known('margin') ?? margin };
  const across =
    known('around') ?? textAt(plan, ['layout', key, 'block', 'width']) ?? known('block') ?? motif;
  const round = { clearance: known('clearance') ?? margin, within: known('within') ?? limit };
  switch (kind) {
    case 'strip':
      return { length: long, ...along };
    case 'border':
      return { inner: { top: long, right: long, bottom: long, left: long }, ...along, corners: 'turn' };
    case 'frame':
      return { around: across, ...round };
    case 'block':
      return { block: { width: across, height: across }, ...round };
    default:
      return kind satisfies never;
  }
};

interface Figures {
  readonly units: Units;
  readonly figures: Written;
}

const STORE_KEY = 'swagwright.left';

/** The figures of kinds that she has left, for when she comes back: in this visit or, where the browser keeps it, a later one. */
const left = ((): Map<string, Figures> => {
  try {
    return new Map(JSON.parse(localStorage.getItem(STORE_KEY) ?? '[]'));
  } catch {
    return new Map();
  }
})();

/** Each part of a quilt has its own. */
const nameOf = (kind: LayoutKind): string => [kind, openPart(state.value) ?? []].flat().join(' of ');

const leave = (kind: LayoutKind, figures: Figures): void => {
  left.set(nameOf(kind), figures);
  try {
    localStorage.setItem(STORE_KEY, JSON.stringify([...left]));
  } catch {
    // Without a store they are kept until the page is left.
  }
};

/** The same lengths, whatever units she has gone over to since. */
const inUnits = (before: Figures, units: Units): Written =>
  groupAt(withUnits(withValues('', [[['left'], before.figures]]), before.units, units), ['left']);

/** What was chosen about the swags was chosen for the other layout. */
export const setKind = (kind: LayoutKind, units: Units): void => {
  const { value } = state;
  const now = kindNow(value);
  if (now === kind) return;
  leave(now, { units, figures: groupAt(value, ['layout', keyOf(now)]) });
  const before = left.get(nameOf(kind));
  const figures = before && inUnits(before, units);
  const next = withValues(value.plan, [
    [pathIn(value, ['layout']), { [keyOf(kind)]: figures ?? firstOf(kind, value, units) }],
    [pathIn(value, ['swag']), undefined],
  ]);
  replaceState({ ...withTaken(value, undefined), plan: next });
};
