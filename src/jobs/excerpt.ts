/** The small picture of a fit: on the screen and on paper the same part of it. */

import { type Drawing, drawDesign, type Scope } from '../drawing/index.ts';
import { excerptOf } from '../output/contact-sheet/index.ts';
import type { Plan } from '../plan/index.ts';
import { designOf, placedChannels, type Ranked } from '../swag/index.ts';

export const excerpt = (
  { field, fit }: Ranked,
  plan: Plan,
): { readonly scope: Scope; readonly drawing: Drawing } => {
  const design = designOf(field, fit);
  const scope = excerptOf(design);
  const channels = placedChannels(design, plan.channels, scope.halves);
  return { scope, drawing: drawDesign(design, scope, { title: plan.title, ghosts: false, channels }) };
};
