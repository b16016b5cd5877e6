/** Fills for closed areas. They know nothing of how an area came to be. */

export type { Axis, Fill, FillContext, FillOptions, FillResult } from './fill.ts';
export { FILLS, fillNamed } from './registry.ts';
