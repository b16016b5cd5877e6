/** How each fill is sewn, a sentence for every place that has one. */

import { capital } from '../../document/index.ts';
import { USUAL_SPACING, usedFills } from '../../drawing/index.ts';
import { fillNamed } from '../../fill/index.ts';
import { exactLength } from '../../length/index.ts';
import type { Fill as FillChoice, Plan } from '../../plan/index.ts';
import { cornerSwag, type Design } from '../../swag/index.ts';
import type { CardBlock } from './block.ts';

const isChannel = (place: string): boolean => /^(?:out|in)ward/.test(place);

export const fillBlocks = (plan: Plan, design: Design): readonly CardBlock[] => {
  const fills = usedFills(plan, design);
  const outward = plan.channels.outward.length;
  const places: readonly (readonly [string, FillChoice | undefined])[] = [
    ['swags', fills.swag],
    [cornerSwag(design) ? 'corners' : 'corner squares', fills.corner],
    ['between the rows', fills.between],
    ['background', fills.background],
    ...fills.channels.map(
      (choice, i) => [i < outward ? `outward ${i + 1}` : `inward ${i - outward + 1}`, choice] as const,
    ),
  ];
  return places.flatMap(([place, choice]): CardBlock[] => {
    const fill = choice && fillNamed(choice.kind);
    if (!fill || !('sewn' in fill)) return [];
    // In a channel the usual spacing is a share of its width, and seen there.
    const spacing = choice.spacing ?? (isChannel(place) ? undefined : USUAL_SPACING);
    const apart = spacing === undefined ? '' : `, spacing ${exactLength(spacing, plan.marks.style)}`;
    return [{ kind: 'point', text: `${capital(place)}, ${fill.name}${apart}: ${fill.sewn}.` }];
  });
};
