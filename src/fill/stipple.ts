/**
 * Stippling: one closed line that wanders through the region like the edge of a jigsaw piece and never crosses itself.
 *
 * It goes round a random tree on evenly spread points (see tree-tour.ts). Both sides of a branch are one spacing apart, and so are
 * the branches' neighbours from one another, about; nowhere do two stretches come nearer than the stated gap.
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

/** No two stretches of the line are nearer than this share of the spacing, nor the line to the region's edge. */
export const STIPPLE_GAP = 0.45;

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
  const away = spacing / 2;
  const margin = away + STIPPLE_GAP * spacing;
  const points = spreadPoints(region, 2 * spacing, margin * 1.001, random);
  const probe = probeRegion(region);
  const tree = growTree(
    points,
    {
      longest: 4 * spacing,
      apart: 2 * away + STIPPLE_GAP * spacing,
      angles: [80 * degrees, 58 * degrees],
      allowed: (a, b) => {
        for (let k = 1; k < 12; k++) {
          const t = k / 12;
          const p = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
          if (!(probe.distance(p) >= margin * 0.995) || !probe.contains(p)) return false;
        }
        return true;
      },
    },
    random,
  );
  return worthwhile(tree).map((part) => tourBeside(tree, part[0]!, away, spacing * 0.75));
};

/** Trees large enough for a line of their own; points left alone inside the region are where the others had no room. */
const worthwhile = (tree: Tree): number[][] => {
  const parts = componentsOf(tree);
  return parts.filter((p, i) => i === 0 || p.length >= 4);
};
