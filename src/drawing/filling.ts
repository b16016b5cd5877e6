/**
 * A plan's fills, stitched into the regions of a design. Copies of one cell share one fill, so that every
 * repeat of a side looks alike, as a quilter would stitch it.
 */

import type { Problem } from '../document/index.ts';
import { type FillResult, fillNamed } from '../fill/index.ts';
import { isEmptyRegion, type Path } from '../geometry/index.ts';
import type { Fill as FillChoice, Plan } from '../plan/index.ts';
import { type Cell, type Design, regionsOf, type SwagRegion } from '../swag/index.ts';

/** What fills one region of a repeat, in the frame of the repeat's first half. */
export interface Filled {
  readonly region: SwagRegion;
  /** The fill's name. */
  readonly fill: string;
  readonly paths: readonly Path[];
  readonly continuous: boolean;
}

export interface Filling {
  readonly byCell: ReadonlyMap<Cell, readonly Filled[]>;
  /** What a person should know, a sentence each: regions left empty, parts too small. */
  readonly messages: readonly string[];
  readonly problems: readonly Problem[];
}

/** Lines of quilting a quarter of an inch apart read as texture at arm's length. Common practice, no source. */
const USUAL_SPACING = 6.35;
/** In a band, pearls and ribbons take the band's own width; other fills half of it. */
const BAND_SHARE = 0.5;
const USUAL_SEED = 1;

/** Fills the regions of some of a design's cells. */
export const fillDesign = (design: Design, cells: readonly Cell[], plan: Plan): Filling => {
  const byCell = new Map<Cell, readonly Filled[]>();
  const messages = new Set<string>();
  const problems: Problem[] = [];
  for (const cell of cells) {
    const filled: Filled[] = [];
    for (const region of regionsOf(cell, design, plan.channels)) {
      const choice = choiceFor(region, cell, plan);
      if (!choice) continue;
      const where = `${cell.name}: ${region.name}`;
      if (isEmptyRegion(region.region)) {
        messages.add(`${where}: nothing is left to fill`);
        continue;
      }
      const fill = fillNamed(choice.kind);
      if (!('fill' in fill)) {
        if (!problems.some((p) => p.found === fill.found)) problems.push(fill);
        continue;
      }
      const result: FillResult = fill.fill(
        region.region,
        {
          spacing: choice.spacing ?? spacingFor(region, plan),
          seed: choice.seed ?? USUAL_SEED,
          ...(choice.angle === undefined ? {} : { angle: choice.angle }),
        },
        { axis: { at: cell.crown, angle: cell.mirror } },
      );
      for (const message of result.messages) messages.add(`${where}: ${message}`);
      filled.push({ region, fill: fill.name, paths: result.paths, continuous: result.continuous });
    }
    byCell.set(cell, filled);
  }
  return { byCell, messages: [...messages], problems };
};

const spacingFor = (region: SwagRegion, plan: Plan): number => {
  if (region.kind !== 'channel') return USUAL_SPACING;
  const [side, number] = region.name.split(' ') as ['outward' | 'inward', string];
  return BAND_SHARE * (plan.channels[side][Number(number) - 1] ?? USUAL_SPACING);
};

/** Channel fills go by their order in the plan: outward ones first, each side from the stitching on. */
const choiceFor = (region: SwagRegion, cell: Cell, plan: Plan): FillChoice | undefined => {
  switch (region.kind) {
    case 'swag':
      return cell.name === 'corner' ? (plan.fills.corner ?? plan.fills.swag) : plan.fills.swag;
    case 'background':
      return plan.fills.background;
    case 'channel': {
      const order = [
        ...plan.channels.outward.map((_, i) => `outward ${i + 1}`),
        ...plan.channels.inward.map((_, i) => `inward ${i + 1}`),
      ];
      return plan.fills.channels[order.indexOf(region.name)];
    }
    default:
      return region.kind satisfies never;
  }
};
