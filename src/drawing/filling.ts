/**
 * A plan's fills, stitched into the regions of a design. Copies of one cell share one fill, so that every
 * repeat of a side looks alike, as a quilter would stitch it; and cells that are not shown are not filled.
 */

import { type KeyPath, keyName, nearestOf, type Problem, plural, series } from '../document/index.ts';
import { FILLS, type Fill, fillNamed } from '../fill/index.ts';
import { isEmptyRegion, type Path, pathLength, regionParts, widestRadius } from '../geometry/index.ts';
import type { Channels, Fill as FillChoice, Plan } from '../plan/index.ts';
import {
  type Alike,
  alikeRepeats,
  bandMiddle,
  type Cell,
  CHANNEL_SIDES,
  cornerSquares,
  cornerSwag,
  type Design,
  ofRow,
  type Placed,
  regionsOf,
  rowsShown,
  type SwagRegion,
  wholeOf,
} from '../swag/index.ts';
import { fillSquares, squaresAsked } from './corner-fills.ts';
import {
  fillOpenAreas,
  type OpenFilled,
  openAsked,
  openLengths,
  USUAL_SEED,
  USUAL_SPACING,
} from './open-fills.ts';
import { type ToFill, tooFineOf } from './too-fine.ts';

/** What fills one region of a repeat, in the frame of the repeat's first half. */
export interface Filled {
  readonly region: SwagRegion;
  /** The fill's name. */
  readonly fill: string;
  readonly paths: readonly Path[];
  readonly continuous: boolean;
}

export interface Filling {
  /** For every half, what fills its whole repeat inside its swag and in its channels. */
  readonly byHalf: ReadonlyMap<Placed, readonly Filled[]>;
  /** What fills the background, and what lies between two rows, of the whole design. */
  readonly open: readonly OpenFilled[];
  /** What a person should know, a sentence each: regions left empty, parts too small. */
  readonly messages: readonly string[];
  /** Fills that are asked for and that do not exist, and spacings that are too fine, with their keys in the plan. */
  readonly problems: readonly Problem[];
}

/** In a band a fill that is meant for areas gets two lines at least; pearls and ribbons go by the band itself. */
const BAND_SHARE = 0.5;

/** Fills the regions of the repeats that some halves belong to; nothing where a spacing is too fine. */
export const fillDesign = (design: Design, halves: readonly Placed[], plan: Plan): Filling => {
  const nothing = { byHalf: new Map(), open: [], messages: [] };
  const problems = fillProblems(plan);
  if (problems.length > 0 || !asksForFills(plan)) return { ...nothing, problems };
  const outside = openAsked(design, plan);
  const squares = squaresAsked(design, plan);
  const rows = rowsShown(design, halves).map(({ row, halves: shown }) => ({
    row,
    repeats: alikeRepeats(row, shown).map((repeat) => ({ repeat, asked: asksOf(repeat, row, plan) })),
  }));
  const inside = rows.flatMap(({ repeats }) => repeats.flatMap(({ asked }) => asked));
  const tooFine = tooFineOf([...outside, ...(squares ? [squares] : []), ...inside], plan);
  if (tooFine.length > 0) return { ...nothing, problems: tooFine };
  const byHalf = new Map<Placed, readonly Filled[]>();
  const messages = rows.flatMap(({ row, repeats }) => fillRow(row, repeats, plan, byHalf));
  const { open, messages: others } = fillOpenAreas(outside);
  const cornered = squares && fillSquares(squares);
  return {
    byHalf,
    open: [...open, ...(cornered?.open ?? [])],
    messages: [...spareFills(plan, design), ...messages, ...others, ...(cornered?.messages ?? [])],
    problems: [],
  };
};

/** What a plan asks for in one region of a repeat. */
interface RegionAsked extends ToFill {
  readonly region: SwagRegion;
  readonly choice: FillChoice;
}

const asksOf = ({ cell, ends }: Alike, design: Design, plan: Plan): readonly RegionAsked[] =>
  regionsOf(cell, design, plan.channels, ends).flatMap((region) => {
    const asked = choiceFor(region, cell === cornerSwag(design)?.cell, plan);
    const fill = asked && fillNamed(asked.choice.kind);
    if (!asked || !fill || !('fill' in fill)) return [];
    const { spacing = spacingFor(region) } = asked.choice;
    return [{ ...asked, fill, region, spacing, regions: [region.region] }];
  });

/** Fills the regions of one row's repeats, and says what a person should know. */
const fillRow = (
  design: Design,
  repeats: readonly { readonly repeat: Alike; readonly asked: readonly RegionAsked[] }[],
  plan: Plan,
  byHalf: Map<Placed, readonly Filled[]>,
): readonly string[] => {
  const said = new Map<string, Set<string>>();
  for (const { repeat, asked } of repeats) {
    const filled: Filled[] = [];
    for (const { fill, region, choice } of asked) {
      const made = fillRegion(fill, region, repeat, design, plan.channels, choice);
      // That a region is empty is not the fill's doing.
      const of = isEmptyRegion(region.region) ? region.name : `${region.name}: ${fill.name}`;
      for (const message of made.messages) {
        const what = `${of}: ${message}`;
        said.set(what, (said.get(what) ?? new Set()).add(repeat.cell.name));
      }
      if (made.paths.length > 0) filled.push({ region, fill: fill.name, ...made });
    }
    for (const half of repeat.halves) byHalf.set(half, filled);
  }
  // What holds for every cell is said once, without naming them.
  const cells = new Set(repeats.map(({ repeat }) => repeat.cell.name)).size;
  return [...said].map(([what, names]) =>
    names.size === cells ? what : `${ofRow(design, [...names].join(', '))}, ${what}`,
  );
};

/** One fill in one region of a repeat, with the line and the mirror that it may follow. */
export const fillRegion = (
  fill: Fill,
  region: SwagRegion,
  repeat: Pick<Alike, 'cell' | 'ends'>,
  design: Design,
  channels: Channels,
  choice: Omit<FillChoice, 'kind'> = {},
): Pick<Filled, 'paths' | 'continuous'> & { readonly messages: readonly string[] } => {
  if (isEmptyRegion(region.region))
    return { paths: [], continuous: true, messages: ['nothing is left to fill'] };
  const spine = region.kind === 'channel' ? bandSpine(region, repeat, design, channels) : undefined;
  return fill.fill(
    region.region,
    {
      spacing: choice.spacing ?? spacingFor(region),
      seed: choice.seed ?? USUAL_SEED,
      ...(choice.angle === undefined ? {} : { angle: choice.angle }),
      turn: uprightTurn(repeat.cell),
    },
    {
      axis: { at: repeat.cell.crown, angle: repeat.cell.mirror },
      radius: widestRadius(repeat.cell.path),
      ...(spine ? { spine } : {}),
    },
  );
};

/** Straight lines stand by a swag’s own centre line where each swag of a frame is turned; along a side all stand alike. */
const uprightTurn = ({ centre, mirror }: Cell): number => (centre ? mirror - Math.PI / 2 : 0);

/** For every half of a whole design the length (mm) of what fills its repeat, for the thread that it takes. */
export const fillLengths = ({ byHalf, open }: Filling, design: Design): ReadonlyMap<Placed, number> => {
  const lengths = new Map(openLengths(open, design));
  for (const [half, filled] of byHalf) {
    const own = filled.reduce((sum, f) => sum + f.paths.reduce((length, p) => length + pathLength(p), 0), 0);
    lengths.set(half, (lengths.get(half) ?? 0) + own);
  }
  return lengths;
};

/** A band's middle line, where the band is in one piece and so is its middle. */
const bandSpine = (
  region: SwagRegion & { readonly kind: 'channel' },
  { cell, ends }: Pick<Alike, 'cell' | 'ends'>,
  design: Design,
  channels: Channels,
): Path | undefined => {
  if (regionParts(region.region).length !== 1) return undefined;
  const middle = bandMiddle(region, cell, design, channels, ends);
  return middle.length === 1 && !middle[0]!.closed ? middle[0] : undefined;
};

/** mm, where none is asked for. */
export const spacingFor = (region: SwagRegion): number =>
  region.kind === 'channel' ? bandSpacing(region.width) : USUAL_SPACING;

/** The same for a band (mm). */
export const bandSpacing = (width: number): number => BAND_SHARE * width;

const asksForFills = ({ fills }: Plan): boolean =>
  Boolean(fills.swag ?? fills.background ?? fills.corner ?? fills.between) || fills.channels.length > 0;

/** Every fill that the plan names, with its place in it. */
const namedFills = ({ fills }: Plan): readonly { path: KeyPath; choice: FillChoice }[] => [
  ...(['swag', 'background', 'corner', 'between'] as const).flatMap((key) => {
    const choice = fills[key];
    return choice ? [{ path: ['fills', key], choice }] : [];
  }),
  ...fills.channels.map((choice, i) => ({ path: ['fills', 'channels', i], choice })),
];

/** What is wrong with the fills that are asked for: each command refuses them, and not only those that draw. */
export const fillProblems = (plan: Plan): readonly Problem[] =>
  namedFills(plan).flatMap(({ path, choice }) => {
    const { kind } = choice;
    const fill = fillNamed(kind);
    if ('fill' in fill) return idleKeys(fill, path, choice);
    const near = nearestOf(
      kind,
      FILLS.map((f) => f.name),
    );
    return [
      { ...fill, key: keyName(path), ...(near === undefined ? {} : { hint: `did you mean “${near}”?` }) },
    ];
  });

/** Keys of a fill that would change nothing. */
const idleKeys = ({ name, takes }: Fill, path: KeyPath, choice: FillChoice): readonly Problem[] =>
  (['angle', 'seed'] as const)
    .filter((key) => choice[key] !== undefined && !takes.includes(key))
    .map((key) => ({
      code: 'does-nothing',
      key: keyName([...path, key]),
      message: `${name} has no ${key}`,
      hint: `leave it out; ${key} is for ${series(FILLS.filter((f) => f.takes.includes(key)).map((f) => f.name))}`,
    }));

/** The fills of a plan that have a place in its design. */
export const usedFills = ({ fills, channels }: Plan, design: Design): Plan['fills'] => ({
  ...fills,
  corner: cornerSwag(design) || cornerSquares(wholeOf(design)) ? fills.corner : undefined,
  between: design.beyond ? fills.between : undefined,
  channels: fills.channels.slice(0, channels.outward.length + channels.inward.length),
});

/** Fills that the plan names for what the design does not have. */
const spareFills = (plan: Plan, design: Design): readonly string[] => {
  const { fills, channels } = plan;
  const used = usedFills(plan, design);
  const bands = channels.outward.length + channels.inward.length;
  const spare = fills.channels.length - used.channels.length;
  const said: string[] = [];
  if (spare > 0)
    said.push(
      `fills.channels: ${plural(fills.channels.length, 'fill')} for ${plural(bands, 'channel')}, ` +
        `the last ${spare === 1 ? 'is' : `${spare} are`} not used`,
    );
  if (fills.corner && !used.corner)
    said.push('fills.corner: it is not used, because no swag goes round or across a corner here');
  if (fills.between && !used.between)
    said.push('fills.between: it is not used, because there is one row of swags');
  return said;
};

/**
 * Channel fills go by their order in the plan: outward ones first, each side from the stitching on. What lies outside
 * the swags is filled for the whole band at once (open-fills.ts).
 */
const choiceFor = (
  region: SwagRegion,
  isCorner: boolean,
  { fills, channels }: Plan,
): { readonly choice: FillChoice; readonly path: KeyPath } | undefined => {
  const at = (path: KeyPath, choice: FillChoice | undefined) => choice && { choice, path };
  switch (region.kind) {
    case 'swag':
      return isCorner && fills.corner
        ? at(['fills', 'corner'], fills.corner)
        : at(['fills', 'swag'], fills.swag);
    case 'between':
    case 'background':
      return undefined;
    case 'channel': {
      const before = region.side === CHANNEL_SIDES[0] ? 0 : channels.outward.length;
      const i = before + region.number - 1;
      return at(['fills', 'channels', i], fills.channels[i]);
    }
    default:
      return region satisfies never;
  }
};
