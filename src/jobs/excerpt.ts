/** The small picture of a fit: on the screen and on paper the same part of it. */

import { type Drawing, drawDesign, type Scope, wholeScope } from '../drawing/index.ts';
import { excerptOf } from '../output/contact-sheet/index.ts';
import type { Plan } from '../plan/index.ts';
import { designOf, placedChannels, type Ranked } from '../swag/index.ts';

export const excerpt = (
  { field, fit }: Ranked,
  plan: Plan,
): {
  readonly scope: Scope;
  readonly drawing: Drawing;
  /** All of it, without channels; undefined where the excerpt is all of it. */
  readonly whole: () => Drawing | undefined;
} => {
  const design = designOf(field, fit);
  const scope = excerptOf(design);
  const channels = placedChannels(design, plan.channels, scope.halves);
  const { title } = plan;
  return {
    scope,
    drawing: drawDesign(design, scope, { title, ghosts: false, channels }),
    whole: () =>
      scope.halves.length === design.halves.length
        ? undefined
        : drawDesign(design, wholeScope(design), { title, ghosts: false }),
  };
};
