/**
 * What a layout is like, for those who need not know its name: whether it closes on itself, comes to corners, and
 * under which key it stands in the plan.
 */

import type { Border, Frame, Layout, Strip } from './plan.ts';

/** Whether the swags close round a circle: it has no ends and no corners. */
export const closesRound = (layout: Layout): layout is Frame => layout.kind === 'frame';

/** Whether its sides come to corners. */
export const hasCorners = (layout: Layout): layout is Border => layout.kind === 'border';

/** Whether it begins at one end and stops at the other. */
export const hasEnds = (layout: Layout): layout is Strip => layout.kind === 'strip';

/** Whether it lies round a block, with a limit to how large it may become, and not in a quilt's border. */
export const liesRoundBlock = (layout: Layout): layout is Border =>
  hasCorners(layout) && layout.round === 'block';

/** The key that it stands under in a plan, which is what a person calls it. */
export const layoutKey = (layout: Layout): Layout['kind'] => (liesRoundBlock(layout) ? 'frame' : layout.kind);
