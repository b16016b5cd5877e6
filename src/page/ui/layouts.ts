/** Kinds of layout: what each begins with, and going from one to another without losing what was typed. */

import { readLength, type Units } from '../../length/index.ts';
import { FIRST_FIGURES } from '../plan/first-figures.ts';
import { exactly } from '../plan/her-units.ts';
import {
  groupAt,
  type KeyPath,
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
import { edit, replaceState, state } from './store.ts';

export type LayoutKind = 'border' | 'strip' | 'frame' | 'block';

/** In the plan a frame is a frame, whatever it lies round. */
const keyOf = (kind: LayoutKind): 'border' | 'strip' | 'frame' => (kind === 'block' ? 'frame' : kind);

export const kindNow = (plan: PlanSource): LayoutKind => {
  const [key = 'border'] = keysAt(plan, ['layout']);
  if (key === 'frame') return keysAt(plan, ['layout', 'frame']).includes('block') ? 'block' : 'frame';
  return key === 'strip' ? 'strip' : 'border';
};

/** The edge of a border along which its sides are written. */
export type Edge = 'inner' | 'outer';

export const measuredAlong = (plan: PlanSource): Edge =>
  keysAt(plan, ['layout', 'border']).includes('outer') ? 'outer' : 'inner';

/** Where a side's length stands. */
export const sidePath = (plan: PlanSource, side: string): KeyPath => [
  ...['layout', 'border', measuredAlong(plan)],
  side,
];

/** Whether the swags fill a border, or some other room, and whether that has sides that are counted. */
export const roomOf = (plan: PlanSource): { readonly isBorder: boolean; readonly hasSides: boolean } => {
  const kind = kindNow(plan);
  return { isBorder: kind === 'border', hasSides: kind !== 'frame' };
};

/** The same border, its sides written along its other edge. Where a figure cannot be read they are only moved there. */
export const measureAlong = (edge: Edge, units: Units): void => {
  const { value } = state;
  const before = measuredAlong(value);
  if (before === edge) return;
  const border = ['layout', 'border'];
  const width = readLength(textAt(value, [...border, 'width']) ?? '', units);
  const by = width.ok ? (edge === 'outer' ? 2 : -2) * width.mm : 0;
  const moved = (text: string): string => {
    const length = readLength(text, units);
    if (!length.ok || !(length.mm + by > 0)) return text;
    const mm = Number((length.mm + by).toFixed(DECIMALS));
    return exactly(mm, units) ?? `${mm} mm`;
  };
  const all = textAt(value, [...border, before]);
  const sides = keysAt(value, [...border, before]).flatMap((side): [string, string][] => {
    const text = textAt(value, [...border, before, side]);
    return text === undefined ? [] : [[side, moved(text)]];
  });
  edit([
    [[...border, edge], all === undefined ? Object.fromEntries(sides) : moved(all)],
    [[...border, before], undefined],
  ]);
};

/** Of a mm: what adding in doubles leaves is no part of a length. */
const DECIMALS = 9;

const firstOf = (kind: LayoutKind, plan: PlanSource, units: Units): { readonly [key: string]: Written } => {
  const { side, width, margin, motif, limit } = FIRST_FIGURES[units];
  const key = keysAt(plan, ['layout'])[0] ?? '';
  const known = (name: string): string | undefined => textAt(plan, ['layout', key, name]);
  const edge = measuredAlong(plan);
  const long = known('length') ?? textAt(plan, ['layout', key, edge, 'top']) ?? known(edge) ?? side;
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

/** Whether a part of a quilt closes round something that lies on the quilt, and not round the quilt itself. */
export const isFramePart = (plan: string, name: string): boolean =>
  keysAt(plan, ['parts', name, 'layout']).includes('frame');
