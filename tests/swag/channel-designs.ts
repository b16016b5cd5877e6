/** Designs to look at channels and regions in: every profile on strips and borders, with gaps and without. */

import type { Plan } from '../../src/plan/index.ts';
import { type Design, designOf } from '../../src/swag/index.ts';
import { PROFILES, planOf, search } from './fit-helpers.ts';

const SIDES = '{ top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }';
const CHANNELS = 'channels: { outward: [1/4, 1/4], inward: [1/4, 1/8] }';

const LAYOUTS = {
  strip: 'layout: { strip: { length: 60, width: 6, margin: 1/2 } }',
  'strip with gaps': 'layout: { strip: { length: 60, width: 7, margin: 1/4 } }\nswag: { gap: 3/4 }',
  'border from inside': `layout: { border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: turn } }`,
  'border from outside': `layout: { border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: turn, from: outer } }`,
  'border from inside, runs meet': `layout: { border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: meet } }`,
  'border from outside, a swag across': `layout: { border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: across, from: outer } }\nswag: { gap: 0 }`,
  'border from inside, halves': `layout: { border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: half } }`,
  'border from outside, halves': `layout: { border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: half, from: outer } }`,
  'border from outside, runs meet': `layout: { border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: meet, from: outer } }`,
};

export interface Named {
  readonly name: string;
  readonly plan: Plan;
  readonly design: Design;
}

/** The best design of every profile in every layout in which it fits. */
export const designs = (channels = CHANNELS): readonly Named[] =>
  Object.entries(LAYOUTS).flatMap(([layout, text]) => {
    const plan = planOf(`${text}\n${channels}`);
    return PROFILES.flatMap((template) => {
      const best = search(plan, [template]).results[0];
      return best
        ? [{ name: `${template.name}, ${layout}`, plan, design: designOf(best.field, best.fit) }]
        : [];
    });
  });
