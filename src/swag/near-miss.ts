/** Where nothing fits: what came nearest, and the smallest change that makes it fit. */

import { type Problem, plural } from '../document/index.ts';
import { formatLength, roundLength } from '../length/index.ts';
import { closesRound, hasCorners, layoutKey, liesRoundBlock, type Plan } from '../plan/index.ts';
import type { Misfit } from './misfit.ts';
import type { Miss } from './runs.ts';
import type { RowMiss } from './search-beyond.ts';
import type { Way } from './setting.ts';
import { smallestChange } from './smallest-change.ts';

/** The misses that are off by least, one for each way, nearest first. */
export const nearestMisses = (misses: readonly Miss[]): readonly Miss[] => {
  const nearest = new Map<string, Miss>();
  for (const miss of misses) {
    const { shape } = miss.way;
    const key = [
      shape.stitching.template.name,
      shape.from.label,
      shape.to.label,
      shape.side,
      shape.direction,
      miss.way.setting.kind,
    ].join('|');
    const known = nearest.get(key);
    if (!known || miss.misfit.by < known.misfit.by) nearest.set(key, miss);
  }
  return [...nearest.values()].sort((a, b) => a.misfit.by - b.misfit.by);
};

/** The parts of a problem that tell of a miss: what was tried, how it fails, and what would make it fit. */
export const describeMiss = (miss: Miss, plan: Plan): Pick<Problem, 'found' | 'hint'> => {
  const { name, next } = miss.run;
  const on = next === undefined || next === name ? '' : ` on the ${name} side`;
  const { repeats } = miss;
  const count = repeats === undefined ? '' : `, ${plural(repeats, next === name ? 'swag' : 'repeat')}${on}`;
  return {
    found: `nearest: ${wayWords(miss.way)}${count}: ${describeMisfit(miss.misfit, plan, repeats)}`,
    hint: changeFor(miss, plan),
  };
};

/** That the first row fits, and nothing beyond it on its marks. */
export const describeRowMiss = ({ way, misfit }: RowMiss, plan: Plan): Problem => {
  const turns = hasCorners(plan.layout) && plan.layout.corners === 'turn';
  return {
    code: 'no-second-row',
    key: 'rows.1',
    message: `the first row fits, and no second one on its marks; nearest: ${wayWords(way)}: ${describeMisfit(misfit, plan)}`,
    hint: `try another at, a smaller apart, a template with more sections${turns ? ', corners: meet' : ''}, or leave the second row out`,
  };
};

/** `Baluster, heel to crown end, inside, heel-first` */
const wayWords = ({ shape }: Way): string =>
  `${shape.stitching.template.title}, ${shape.from.label} to ${shape.to.label}, ${shape.side}, ${shape.direction}`;

/** `repeats` of it stand on the side. */
export const describeMisfit = (misfit: Misfit, plan: Plan, repeats = 1): string => {
  // What rounds to nothing still keeps it from fitting.
  const { style } = plan.marks;
  const told = misfit.kind === 'no-length' ? repeats * misfit.by : misfit.by;
  const by = roundLength(told, style) > 0 ? formatLength(told, style) : 'a hair';
  switch (misfit.kind) {
    case 'too-short':
      return `the span is ${by} longer than the template can reach`;
    case 'no-length':
      return `the side is ${by} too short for it`;
    case 'bulges':
      return `it bulges past its start, and neighbours would need a gap ${by} wider`;
    case 'dips':
      return `the stitching dips ${by} below the line it starts on`;
    case 'points-away':
      return `its crowns do not point ${misfit.wanted}, by ${by}`;
    case 'past-centre':
      return `the stitching passes its centre line by ${by}`;
    case 'too-deep':
      return `it reaches ${by} into the far margin`;
    case 'beyond-corner':
      return `the corner swag would start ${by} beyond the corner`;
    case 'narrow-neck':
      return misfit.neck > 0
        ? `at the corner its two halves come within ${formatLength(misfit.neck, plan.marks.style)} of each other, nearer than the foot is wide`
        : 'at the corner its two halves meet before the crown';
    case 'too-wide-gap':
      return `the gaps would be ${by} wider than the swags`;
    case 'gap-left':
      return `gaps of ${formatLength(misfit.gap, style)} would be left, wider than the plan asks for`;
    case 'doubled':
      return `it would run beside its neighbour for ${formatLength(misfit.along, style)}, so close that the two look like one thick line`;
    case 'rows-near':
      return `it comes ${by} too near to the first row`;
    case 'motif-too-large':
      return `its swags reach round a motif ${formatLength(2 * misfit.by, plan.marks.style)} smaller across than this`;
    case 'stands-off':
      return `the template is too long for its share of the circle, and keeps ${by} farther off the motif than it should`;
    case 'too-wide':
      return `the frame is ${formatLength(2 * misfit.by, plan.marks.style)} wider across than its limit`;
    default:
      return misfit satisfies never;
  }
};

/** The smallest change that makes it fit, in the plan's own keys; tried, not guessed. */
export const changeFor = (miss: Miss, plan: Plan): string =>
  smallestChange(miss, plan)?.text ??
  `no single change makes it fit: try another template or ${otherGround(plan.layout)}`;

const otherGround = (layout: Plan['layout']): string =>
  closesRound(layout)
    ? 'another motif'
    : liesRoundBlock(layout)
      ? 'a wider limit'
      : `another ${layoutKey(layout)}`;
