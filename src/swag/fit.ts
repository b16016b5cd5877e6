/** What the search finds: a way to make the swags, laid into every side of a field, and how good it looks. */

import type { Field } from './field.ts';
import { FIT_NOISE } from './misfit.ts';
import type { Run } from './run.ts';
import type { Seat } from './seat.ts';
import type { Way } from './setting.ts';

export interface SideFit {
  readonly run: Run;
  /** How many swags: two halves at its ends are one of them. */
  readonly repeats: number;
  readonly seat: Seat;
}

/** How the sides of a fit begin and end. */
type Cornering = WithoutSwag | CornerFit;

/**
 * With a whole swag: at their corners, beside the corner squares, or where there is no corner. Or with half of one, whose
 * crown lies at the side's end, beside the corner square.
 */
export type WithoutSwag = { readonly kind: 'none' } | { readonly kind: 'half' };

/** With a swag over each corner, half of it on either side of the mitre and its crown on it. */
export interface CornerFit {
  /** `turn`: each half keeps to its own side; `across`: the swag stands on its chord, which is square to the mitre. */
  readonly kind: 'turn' | 'across';
  /** The corner's half swag. */
  readonly seat: Seat;
  /** How it is made, where a plan says that by itself; without it as on the sides. */
  readonly own?: Way;
  /** mm from the start line's corner to the corner swag's start mark. */
  readonly toCorner: number;
  /** mm from the start line's corner to the corner swag's join mirror: half a gap more. */
  readonly offset: number;
}

export const WITHOUT_SWAG: WithoutSwag = { kind: 'none' };
export const HALVES: WithoutSwag = { kind: 'half' };

export interface Fit {
  readonly way: Way;
  readonly sides: readonly SideFit[];
  readonly corner: Cornering;
  readonly pattern: Pattern;
  /** The row beyond it, on its marks. */
  readonly beyond?: RowBeyond;
}

/** Of how many kinds the swags along a side are. */
type Pattern = Alike | InTurn;

/** Of one kind. */
interface Alike {
  readonly kind: 'alike';
}

/** Of two, which take turns: the first stands at both ends of a side, and this is the second, in every other place. */
interface InTurn {
  readonly kind: 'in turn';
  readonly way: Way;
  /** One for each of the first kind's, with as many repeats: those of both kinds. */
  readonly sides: readonly SideFit[];
}

export const ALIKE: Alike = { kind: 'alike' };

/** Each kind by itself, as a fit all of whose swags are of it. */
export const kindsIn = (fit: Fit): readonly [Fit, ...Fit[]] => {
  const { pattern, corner } = fit;
  if (pattern.kind === 'alike') return [fit];
  const { way, sides } = pattern;
  return [
    { ...fit, pattern: ALIKE },
    { way, sides, corner, pattern: ALIKE },
  ];
};

/** A row of swags on the marks of another, from a start line of its own. */
interface RowBeyond {
  /** The band as this row sees it: levels are from its own start line. */
  readonly field: Field;
  readonly fit: Fit;
}

/** Of a fit or a design, the swag over each corner; undefined where there is none. */
export const cornerSwag = <C extends { readonly kind: string }>({
  corner,
}: {
  readonly corner: C;
}): Exclude<C, WithoutSwag> | undefined => (isSwag(corner) ? corner : undefined);

/** How the swag over each corner is made, where a plan says that by itself. */
export const ownCorner = ({ corner }: Pick<Fit, 'corner'>): Way | undefined => cornerSwag({ corner })?.own;

const isSwag = <C extends { readonly kind: string }>(corner: C): corner is Exclude<C, WithoutSwag> =>
  corner.kind !== 'none' && corner.kind !== 'half';

/** Every different half swag: the sides' of each kind, and the corner's where one goes over it. */
export const seatsOf = (fit: Fit): readonly Seat[] => [
  ...kindSeats(fit),
  ...(fit.pattern.kind === 'in turn' ? fit.pattern.sides.map((s) => s.seat) : []),
];

const kindSeats = (fit: Pick<Fit, 'sides' | 'corner'>): readonly Seat[] => {
  const corner = cornerSwag(fit);
  return [...fit.sides.map((s) => s.seat), ...(corner ? [corner.seat] : [])];
};

/**
 * How wide (mm) the swags of each side are, straight from start mark to stop mark, and the one that stands across a
 * corner. One round a corner has no width of its own: it is told along two sides.
 */
export const spansOf = ({ sides, corner }: Pick<Fit, 'sides' | 'corner'>): readonly number[] => {
  const spans = sides.map((s) => s.seat.span);
  return corner.kind === 'across' ? [...spans, corner.seat.span] : spans;
};

/** The depths (mm) that should look alike: every side's, and the corner's; of two kinds the first one's. */
export const depthsOf = (fit: Pick<Fit, 'sides' | 'corner'>): readonly number[] =>
  kindSeats(fit).map((seat) => seat.depth);

/** What of it is told with the sides: all, but where the corner's swag is made by itself and so told by itself. */
export const sidesOf = <F extends Pick<Fit, 'corner'>>(fit: F): F =>
  ownCorner(fit) ? { ...fit, corner: WITHOUT_SWAG } : fit;

/** Whether its runs are circles. */
export const isRound = (fit: Pick<Fit, 'sides'>): boolean =>
  fit.sides.some((s) => s.seat.centre !== undefined);

/** Whether its swags stand apart: the thread is then tied off at each. */
export const hasGaps = ({ sides }: Pick<Fit, 'sides'>): boolean =>
  sides.some(({ seat }) => seat.gap > FIT_NOISE);
