/**
 * Stippling: one closed line that wanders through the region like the edge of a jigsaw piece and never
 * crosses itself.
 *
 * It goes round a random tree on evenly spread points (see tree-tour.ts). Both sides of a branch are one
 * spacing apart, and so are the branches' neighbours from one another, about; nowhere do two stretches come
 * nearer than the stated gap.
 */

import {
  isEmptyRegion,
  type Path,
  probeRegion,
  type Region,
  regionArea,
  regionParts,
} from '../geometry/index.ts';
import { badSpacing, type Fill, MOST_ELEMENTS, nothing } from './fill.ts';
import { type Random, randomOf } from './random.ts';
import { spreadPoints } from './spread.ts';
import { componentsOf, growTree, type Tree } from './tree.ts';
import { tourBeside } from './tree-tour.ts';

/** No two stretches of the line are nearer than this share of the spacing. */
export const STIPPLE_GAP = 0.4;

/** The line is nowhere nearer to the region's edge than this share of the spacing. */
export const STIPPLE_EDGE_GAP = 0.2;

/** The gap that branches are first given; they close up only where a point would be left out. */
const ROOMY_GAP = 0.55;

/** The line runs this share of the spacing beside its tree, whose points are this many spacings apart. */
const AWAY = 0.43;
const APART = 1.75;

const degrees = Math.PI / 180;

export const stipple: Fill = {
  name: 'stipple',
  about: 'one line that wanders and never crosses itself',
  suits: 'area',
  fill: (region, { spacing, seed }) => {
    const bad = badSpacing(spacing);
    if (bad) return nothing(bad);
    if (isEmptyRegion(region)) return nothing('stipple: nothing to fill');
    if (!(regionArea(region) / (spacing * spacing) < MOST_ELEMENTS))
      return nothing('stipple: the spacing is too fine for this area');
    const random = randomOf(seed);
    const paths: Path[] = [];
    const parts = regionParts(region);
    let empty = 0;
    for (const part of parts) {
      const tours = toursIn(part, spacing, random);
      paths.push(...tours);
      if (tours.length === 0) empty++;
    }
    if (paths.length === 0) return nothing('stipple: the area is too narrow for a line at this spacing');
    const messages =
      empty > 0
        ? [`stipple: ${empty} of ${parts.length} parts are too narrow for a line at this spacing`]
        : [];
    if (paths.length > parts.length - empty)
      messages.push(`stipple: ${paths.length} lines, because narrow places part the area`);
    return { paths, continuous: paths.length <= parts.length, messages };
  },
};

const toursIn = (region: Region, spacing: number, random: Random): Path[] => {
  const away = AWAY * spacing;
  const margin = away + STIPPLE_GAP * spacing;
  const edge = away + STIPPLE_EDGE_GAP * spacing;
  const points = spreadPoints(region, APART * spacing, margin * 1.001, random);
  const probe = probeRegion(region);
  const tree = growTree(
    points,
    {
      passes: [
        { angle: 80 * degrees, apart: 2 * away + ROOMY_GAP * spacing, longest: 2 * APART * spacing },
        { angle: 58 * degrees, apart: 2 * away + STIPPLE_GAP * spacing, longest: 2 * APART * spacing },
        { angle: 50 * degrees, apart: 2 * away + STIPPLE_GAP * spacing, longest: 3 * APART * spacing },
      ],
      allowed: (a, b) => {
        for (let k = 1; k < 12; k++) {
          const t = k / 12;
          const p = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
          if (!(probe.distance(p) >= edge) || !probe.contains(p)) return false;
        }
        return true;
      },
    },
    random,
  );
  return worthwhile(tree).map((part) => tourBeside(tree, part[0]!, away, Number.POSITIVE_INFINITY));
};

/**
 * Trees large enough for a line of their own; points left alone inside the region are where the others had no
 * room.
 */
const worthwhile = (tree: Tree): number[][] => {
  const parts = componentsOf(tree);
  return parts.filter((p, i) => i === 0 || p.length >= 4);
};
