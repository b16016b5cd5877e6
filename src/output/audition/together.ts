/** Fills of a swag's inside, its channels and its background beside one another: what stands round a trial, and pairs. */

import {
  type Filled,
  fillDesign,
  fillLinesOf,
  MOST_FILL_LINES,
  openShown,
  type Scope,
  USUAL_SEED,
  USUAL_SPACING,
} from '../../drawing/index.ts';
import { fillNamed } from '../../fill/index.ts';
import type { Plan } from '../../plan/index.ts';
import { cornerSwag, type Design, type Placed } from '../../swag/index.ts';
import { hasRegion, type Trial, type TrialRegion, trialsFor } from './trials.ts';

/** Fills of several regions of what is shown. */
export type Shown = Pick<Trial, 'byHalf' | 'open'>;

/** Several regions filled, dense beside open, or as the plan says. */
export interface Together extends Shown {
  /** What fills each region, in words: `feather`, `crosshatch, open`. */
  readonly inside: string;
  readonly channels: string;
  readonly background: string;
  readonly planned: boolean;
}

interface Pair {
  readonly inside: readonly [name: string, density: Density];
  readonly channels?: string;
  readonly background: readonly [name: string, density: Density];
}

/** In spacings. */
type Density = keyof typeof DENSITIES;
const DENSITIES = { dense: 1, open: 2 } as const;

/**
 * Quilters set a dense fill against an open one, so that one of both stands up and the other lies flat. Common practice,
 * no source; which go together is a matter of judgement.
 */
const PAIRS: readonly Pair[] = [
  { inside: ['feather', 'dense'], channels: 'pearls', background: ['crosshatch', 'open'] },
  { inside: ['crosshatch', 'open'], channels: 'ribbon', background: ['stipple', 'dense'] },
  { inside: ['pebbles', 'dense'], background: ['lines', 'open'] },
  { inside: ['curved crosshatch', 'open'], channels: 'pearls', background: ['pebbles', 'dense'] },
  { inside: ['stipple', 'dense'], channels: 'ribbon', background: ['clamshell', 'open'] },
  { inside: ['echo', 'open'], background: ['swirls', 'dense'] },
  { inside: ['leaves', 'dense'], channels: 'pearls', background: ['piano keys', 'open'] },
  { inside: ['clamshell', 'open'], channels: 'ribbon', background: ['leaves', 'dense'] },
  { inside: ['double feather', 'dense'], background: ['echo', 'open'] },
  { inside: ['lines', 'open'], channels: 'pearls', background: ['loops', 'dense'] },
  { inside: ['swirls', 'dense'], channels: 'ribbon', background: ['curved crosshatch', 'open'] },
  { inside: ['piano keys', 'open'], background: ['feather', 'dense'] },
];

/** As few pairs as are still a choice, and as many as there are. */
export const LEAST_PAIRS = 4;
export const MOST_PAIRS = PAIRS.length;

/** What stands in a region that a plan leaves empty while another is tried: open, so that it keeps behind. */
const BESIDE: Readonly<Record<'swag' | 'background', string>> = { swag: 'crosshatch', background: 'lines' };

export interface Sets {
  /** The plan's own first, where it asks for fills, and then so many pairs. */
  readonly sets: (pairs: number) => readonly Together[];
  /** What is shown around what is tried in a region. */
  readonly around: (region: TrialRegion) => Shown;
  readonly plansFills: boolean;
}

/** Each fill is made once, whatever shows it; trials that are made already are taken from there. */
export const setsOf = (design: Design, scope: Scope, plan: Plan, made: readonly Trial[]): Sets => {
  const known = new Map(made.filter(isUsual).map((t) => [keyOf(t.region, t.fill.name, t.spacing), t]));
  /** All that are not made yet of a region are made at once: the region is worked out for each call. */
  const make = (region: TrialRegion, names: readonly string[], spacing: number | undefined): void => {
    const fills = [...new Set(names)]
      .filter((name) => !known.has(keyOf(region, name, spacing)))
      .map(fillNamed)
      .filter((fill) => 'fill' in fill);
    if (fills.length === 0 || !hasRegion(design, scope, plan, region)) return;
    const spacings = spacing === undefined ? [] : [spacing];
    for (const t of trialsFor(design, scope, plan, { region, fills, spacings }))
      known.set(keyOf(region, t.fill.name, spacing), t);
  };
  const trial = (region: TrialRegion, name: string, spacing: number | undefined): Trial | undefined => {
    make(region, [name], spacing);
    return known.get(keyOf(region, name, spacing));
  };
  const filling = fillDesign(design, scope.halves, plan);
  const own: Shown = { byHalf: filling.byHalf, open: openShown(filling.open, design, scope.halves) };
  const has = (kind: 'swag' | 'background'): boolean =>
    kind === 'background'
      ? own.open.some((filled) => filled.kind === 'background')
      : [...own.byHalf.values()].some((filled) => filled.some((f) => f.region.kind === kind));
  const around = (region: TrialRegion): Shown => {
    const tried = region === 'corner' && cornerSwag(design) ? 'swag' : region;
    const others = (['swag', 'background'] as const)
      .filter((kind) => kind !== tried && !has(kind))
      .map((kind) => trial(kind, BESIDE[kind], DENSITIES.open * USUAL_SPACING));
    return merged([without(own, tried), ...others]);
  };
  const sets = (pairs: number): readonly Together[] => {
    const wanted = PAIRS.slice(0, pairs);
    for (const density of ['dense', 'open'] as const) {
      const named = (part: 'inside' | 'background'): readonly string[] =>
        wanted.flatMap((pair) => (pair[part][1] === density ? [pair[part][0]] : []));
      make('swag', named('inside'), spacingOf(density));
      make('background', named('background'), spacingOf(density));
    }
    const chosen = wanted.map(({ inside, channels, background }): Together => {
      const parts = [
        trial('swag', inside[0], spacingOf(inside[1])),
        channels === undefined ? undefined : trial('channel', channels, undefined),
        trial('background', background[0], spacingOf(background[1])),
      ];
      const words = ([name, density]: Pair['inside']): string =>
        density === 'open' ? `${name}, open` : name;
      return {
        ...merged(parts),
        inside: parts[0] ? words(inside) : '',
        channels: (parts[1] && channels) ?? '',
        background: parts[2] ? words(background) : '',
        planned: false,
      };
    });
    const all = plansFills ? [{ ...own, ...wordsOf(plan), planned: true }, ...chosen] : chosen;
    let lines = 0;
    return all.filter((set) => {
      lines += fillLinesOf(set);
      return lines <= MOST_FILL_LINES;
    });
  };
  const plansFills = has('swag') || has('background');
  return { sets, around, plansFills };
};

/** The usual spacing is not named, so that what was tried at it serves. */
const spacingOf = (density: Density): number | undefined =>
  density === 'dense' ? undefined : DENSITIES[density] * USUAL_SPACING;

/** Whether a trial is what its fill is without being told anything. */
const isUsual = ({ planned, spacing, seed, fill }: Trial): boolean =>
  !planned || (spacing === undefined && seed === USUAL_SEED && !fill.takes.includes('angle'));

const keyOf = (region: TrialRegion, name: string, spacing: number | undefined): string =>
  `${region} ${name} ${spacing ?? 'usual'}`;

const wordsOf = ({ fills }: Plan): Pick<Together, 'inside' | 'channels' | 'background'> => ({
  inside: fills.swag?.kind ?? '',
  channels: [...new Set(fills.channels.map((f) => f.kind))].join(', '),
  background: fills.background?.kind ?? '',
});

const without = ({ byHalf, open }: Shown, kind: TrialRegion): Shown => ({
  byHalf: new Map([...byHalf].map(([half, filled]) => [half, filled.filter((f) => f.region.kind !== kind)])),
  open: open.filter((filled) => filled.kind !== (kind === 'corner' ? 'corner square' : kind)),
});

const merged = (parts: readonly (Shown | undefined)[]): Shown => {
  const byHalf = new Map<Placed, readonly Filled[]>();
  for (const part of parts)
    for (const [half, filled] of part?.byHalf ?? [])
      byHalf.set(half, [...(byHalf.get(half) ?? []), ...filled]);
  return { byHalf, open: parts.flatMap((part) => part?.open ?? []) };
};
