/** Fills for closed areas. They know nothing of how an area came to be. */

export { type Fill, type FillOptions, type FillResult, finestSpacing } from './fill.ts';
export { FILLS, fillNamed } from './registry.ts';
