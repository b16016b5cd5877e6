/** Figures to begin with, round ones in each unit, so that there is something to see; she types hers over them. */

import { readLength, type Units } from '../../length/index.ts';
import { PAPER_IDS, type PaperId, USUAL_PAPER } from '../../pagination/index.ts';
import { type PlanSource, textAt, withUnits, withValues } from './plan-text.ts';
import { FIRST_PLAN } from './state.ts';

const UNITS = ['in', 'cm', 'mm'] as const;
const SIDES = ['top', 'right', 'bottom', 'left'] as const;

export const FIRST_FIGURES: Readonly<
  Record<Units, Readonly<Record<'side' | 'width' | 'margin' | 'motif' | 'limit', string>>>
> = {
  in: { side: '60', width: '6', margin: '1/2', motif: '9', limit: '16' },
  cm: { side: '150', width: '15', margin: '1', motif: '23', limit: '40' },
  mm: { side: '1500', width: '150', margin: '10', motif: '230', limit: '400' },
};

/** What a wish begins with, where nothing is asked yet; with the other end of a range. */
export const FIRST_WISHES: Readonly<
  Record<
    Units,
    Readonly<Record<'span' | 'depth' | 'use', { readonly first: string; readonly second: string }>>
  >
> = {
  in: {
    span: { first: '9', second: '11' },
    depth: { first: '3', second: '4' },
    use: { first: '80 %', second: '100 %' },
  },
  cm: {
    span: { first: '23', second: '28' },
    depth: { first: '8', second: '10' },
    use: { first: '80 %', second: '100 %' },
  },
  mm: {
    span: { first: '230', second: '280' },
    depth: { first: '80', second: '100' },
    use: { first: '80 %', second: '100 %' },
  },
};

/** What a channel is wide where nobody says. */
export const USUAL_WIDTH: Readonly<Record<Units, string>> = { in: '1/4', cm: '0.5', mm: '5' };

/** The paper of a plan: the usual one where it names none that there is. */
export const paperIn = (plan: PlanSource, units: Units): PaperId => {
  const written = textAt(plan, ['paper'])?.toLowerCase();
  return PAPER_IDS.find((id) => id === written) ?? USUAL_PAPER[units];
};

/** The plan in other units, and for the paper that is usual with them where it was for the usual one. */
export const withFiguresIn = (text: string, from: Units, to: Units): string => {
  const next = withUnits(text, from, to);
  return paperIn(text, from) === USUAL_PAPER[from] ? withValues(next, [[['paper'], USUAL_PAPER[to]]]) : next;
};

/** A plan to begin anew with: the first one, in the units and for the paper that she works with. */
export const newPlan = (units: Units, paper: PaperId): string => {
  if (units === 'in') return withValues(FIRST_PLAN, [[['paper'], paper]]);
  const { side, width, margin } = FIRST_FIGURES[units];
  const border = ['layout', 'border'] as const;
  return withValues(FIRST_PLAN, [
    [['units'], units],
    [['paper'], paper],
    // The foot is as wide as it is, and is sold by the inch.
    [['foot', 'clearance'], '1/4 in'],
    [[...border, 'width'], width],
    ...SIDES.map((s) => [[...border, 'inner', s], side] as const),
    [[...border, 'margin'], margin],
    [['channels', 'outward'], [Number(USUAL_WIDTH[units])]],
    [['channels', 'inward'], [Number(USUAL_WIDTH[units])]],
  ]);
};

/** Whether the sides of the border are those that a new plan begins with, in whatever units they are written by now. */
export const isExample = (plan: PlanSource): boolean => {
  const now = sidesOf(plan);
  examples ??= UNITS.map((units) => sidesOf(newPlan(units, 'letter')));
  return examples.some((sides) => sides.every((side, i) => Math.abs(side - now[i]!) < ALIKE));
};

/** mm; read when they are first wanted. */
let examples: readonly (readonly number[])[] | undefined;

/** mm: the four sides; NaN where none is written. */
const sidesOf = (plan: PlanSource): readonly number[] => {
  const units = (textAt(plan, ['units']) as Units | undefined) ?? 'in';
  return SIDES.map((side) => {
    const read = readLength(textAt(plan, ['layout', 'border', 'inner', side]) ?? '', units);
    return read.ok ? read.mm : Number.NaN;
  });
};

/** mm: figures in other units are rounded. */
const ALIKE = 0.06;
