/** What is tried on a frame: one fill, at one spacing, in one kind of region of every swag that is shown. */

import { type Problem, ProblemError } from '../../document/index.ts';
import {
  type Filled,
  fillLinesOf,
  fillOpenArea,
  fillRegion,
  MOST_FILL_LINES,
  type OpenFilled,
  openShown,
  type Scope,
  spacingFor,
  squaresFilled,
  squaresShown,
  tooFineFor,
  USUAL_SEED,
  USUAL_SPACING,
} from '../../drawing/index.ts';
import { FILLS, type Fill, fillNamed } from '../../fill/index.ts';
import { isEmptyRegion, pathLength } from '../../geometry/index.ts';
import type { Fill as FillChoice, Plan } from '../../plan/index.ts';
import {
  type Alike,
  alikeRepeats,
  cornerSquares,
  cornerSwag,
  type Design,
  type OpenArea,
  openAreaOf,
  type Placed,
  regionsOf,
  rowsOf,
  type SwagRegion,
  wholeOf,
} from '../../swag/index.ts';

export const TRIAL_REGIONS = ['swag', 'background', 'channel', 'corner'] as const;
/** Inside the swags; between them and the far margin; in every channel's band; inside the corners' swags, or the squares that are free there. */
export type TrialRegion = (typeof TRIAL_REGIONS)[number];

export interface Trial {
  readonly fill: Fill;
  readonly region: TrialRegion;
  /** mm; undefined where each band has the spacing that suits its width. */
  readonly spacing: number | undefined;
  readonly seed: number;
  /** Whether the plan itself asks for this fill here. */
  readonly planned: boolean;
  readonly byHalf: ReadonlyMap<Placed, readonly Filled[]>;
  /** What of the background's fill is shown, where that is what is tried. */
  readonly open: readonly OpenFilled[];
  /** mm of stitching in the first swag, corner or corner square that is shown, or in all that is shown of the background; and in how many lines. */
  readonly length: number;
  readonly lines: number;
  readonly messages: readonly string[];
}

export interface TrialsAsked {
  readonly count: number;
  /** Of those whose spacing is too fine; their frames stay empty. */
  readonly tooFine: readonly Problem[];
  readonly make: () => readonly Trial[];
}

export interface TrialChoices {
  readonly region: TrialRegion;
  /** All that suit the region where none are named. */
  readonly fills: readonly Fill[] | undefined;
  /** mm; the plan's or the usual one where none are given. */
  readonly spacings: readonly number[];
}

/** The repeats of a scope in which a region is looked for. */
const trialRepeats = (design: Design, scope: Scope, region: TrialRegion): readonly Alike[] =>
  alikeRepeats(design, scope.halves).filter(
    ({ cell }) => region !== 'corner' || cell === cornerSwag(design)?.cell,
  );

const isTried = (region: SwagRegion, wanted: TrialRegion): boolean =>
  region.kind === (wanted === 'corner' ? 'swag' : wanted);

/** Whether there is anything of a region to fill in what is shown. */
export const hasRegion = (design: Design, scope: Scope, plan: Plan, wanted: TrialRegion): boolean =>
  trialRepeats(design, scope, wanted).some(({ cell, ends }) =>
    regionsOf(cell, design, plan.channels, ends).some((r) => isTried(r, wanted) && !isEmptyRegion(r.region)),
  ) ||
  (wanted === 'corner' && squaresShown(design, scope.halves).length > 0);

/** Bands take what is meant for bands, and everything else what is meant for areas. */
export const suitsRegion = (fill: Fill, region: TrialRegion): boolean =>
  fill.suits === (region === 'channel' ? 'band' : 'area');

/**
 * One fill after another, each at every spacing. A `ProblemError` is thrown as soon as they come to more lines and arcs
 * than one picture may hold: a small copy needs no more than the true-size sheets do.
 */
export const trialsFor = (
  design: Design,
  scope: Scope,
  plan: Plan,
  choices: TrialChoices,
): readonly Trial[] => trialsAsked(design, scope, plan, choices).make();

/** The same before any is made. */
export const trialsAsked = (
  design: Design,
  scope: Scope,
  plan: Plan,
  { region, fills, spacings }: TrialChoices,
): TrialsAsked => {
  const repeats = (region === 'background' ? [] : trialRepeats(design, scope, region)).map((repeat) => ({
    ...repeat,
    regions: regionsOf(repeat.cell, design, plan.channels, repeat.ends).filter(
      (r) => isTried(r, region) && !isEmptyRegion(r.region),
    ),
  }));
  const row = region === 'background' ? rowsOf(wholeOf(design)).at(-1) : undefined;
  // What the plan asks for is shown as it will be; others as they look here.
  const here = new Set(scope.halves.map((h) => h.repeat));
  const areaFor = remembered(
    (isPlanned) => row && openAreaOf(row, plan.channels, isPlanned ? undefined : here),
  );
  const squares = region === 'corner' ? cornerSquares(wholeOf(design)) : undefined;
  const chosen = fills ?? FILLS.filter((f) => suitsRegion(f, region));
  const inside = repeats.flatMap((r) => r.regions);
  const wanted = chosen.flatMap((fill) =>
    (spacings.length > 0 ? spacings : [undefined]).map((spacing) => {
      const own = plannedChoice(plan, fill, squares ? 'square' : region);
      const choice: FillChoice = { ...(own ?? { kind: fill.name }), ...(spacing ? { spacing } : {}) };
      const planned = own !== undefined && spacing === undefined;
      const area = areaFor(planned);
      const regions = (area ? [area] : squares ? [squares] : inside).map(({ region: of }) => of);
      const usual = inside[0] ? spacingFor(inside[0]) : USUAL_SPACING;
      const asked = { path: [], fill, spacing: choice.spacing ?? usual, regions };
      return { fill, choice, planned, area, tooFine: tooFineFor(asked, plan) };
    }),
  );
  /** What fills the background, or all corner squares, whatever of it is shown. */
  const wholeWith = (
    fill: Fill,
    choice: FillChoice,
    area: OpenArea | undefined,
  ): ReturnType<typeof squaresFilled> => {
    if (squares) return squaresFilled({ fill, squares, choice, spacing: choice.spacing ?? USUAL_SPACING });
    if (!area) return { open: [], messages: [] };
    const { messages, ...made } = fillOpenArea(fill, area, choice);
    return { open: [{ kind: 'background', row: row!.row, fill: fill.name, ...made }], messages };
  };
  let lines = 0;
  const trialOf = ({ fill, choice, planned, area, tooFine }: (typeof wanted)[number]): Trial => {
    const byHalf = new Map<Placed, readonly Filled[]>();
    const messages = new Set<string>();
    if (tooFine) messages.add(`${tooFine.message}, ${tooFine.expected}`);
    const whole = tooFine ? undefined : wholeWith(fill, choice, area);
    for (const message of whole?.messages ?? []) messages.add(message);
    const open = openShown(whole?.open ?? [], design, scope.halves);
    for (const repeat of tooFine ? [] : repeats) {
      const filled = repeat.regions.map((r) => {
        const one = fillRegion(fill, r, repeat, design, plan.channels, choice);
        for (const message of one.messages) messages.add(message);
        return { region: r, fill: fill.name, ...one };
      });
      for (const half of repeat.halves) byHalf.set(half, filled);
    }
    lines += fillLinesOf({ byHalf, open });
    if (lines > MOST_FILL_LINES) throw new ProblemError([TOO_MANY_LINES]);
    const shown = [...byHalf.values()][0]?.flatMap((f) => f.paths) ?? open[0]?.paths ?? [];
    return {
      fill,
      region,
      spacing: choice.spacing,
      seed: choice.seed ?? USUAL_SEED,
      planned,
      byHalf,
      open,
      length: shown.reduce((sum, p) => sum + pathLength(p), 0),
      lines: shown.length,
      messages: [...messages],
    };
  };
  return {
    count: wanted.length,
    tooFine: wanted.flatMap(({ tooFine }) => tooFine ?? []),
    make: () => wanted.map(trialOf),
  };
};

const remembered = <T>(make: (key: boolean) => T): ((key: boolean) => T) => {
  const known = new Map<boolean, T>();
  return (key) => {
    const found = known.get(key) ?? make(key);
    known.set(key, found);
    return found;
  };
};

const TOO_MANY_LINES: Problem = {
  code: 'too-many-lines',
  message: 'the fills are too fine for so many copies of so large a picture',
  expected: `at most ${MOST_FILL_LINES} lines and arcs in all`,
  hint: 'take a wider spacing, or show one repeat',
};

/** How the plan asks for this fill in this region, if it does. A free corner square has a fill of its own, or none. */
const plannedChoice = (
  { fills }: Plan,
  fill: Fill,
  region: TrialRegion | 'square',
): FillChoice | undefined => {
  const asked = {
    swag: [fills.swag],
    background: [fills.background],
    corner: [fills.corner ?? fills.swag],
    square: [fills.corner],
    channel: fills.channels,
  }[region];
  return asked.find((choice) => choice !== undefined && fillNamed(choice.kind) === fill);
};
