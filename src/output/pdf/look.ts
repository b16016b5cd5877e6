/**
 * How pages look: one scale of type and a few greys. The quilting is the darkest thing on a sheet; all that only
 * helps to print it is thinner and lighter.
 */

import type { Stroke } from '../../drawing/index.ts';

/** Sizes of type, mm: about 6, 7, 8.5, 11 and 20 points. */
export const TYPE = { fine: 2.1, small: 2.5, body: 3, heading: 3.9, title: 7 } as const;

/** The distance of base lines, as a share of the size. */
export const LEADING = 1.36;

export const INK = {
  strong: '#222222',
  text: '#444444',
  quiet: '#777777',
  faint: '#b4b4b4',
  tint: '#f3f3f3',
} as const;

export const HAIRLINE: Stroke = { width: 0.1, color: INK.faint };
export const FRAME: Stroke = { width: 0.12, color: '#909090' };
export const TICK: Stroke = { width: 0.1, color: '#808080' };
/** Fine and dark enough to lay another cross on. */
export const CROSS: Stroke = { width: 0.12, color: '#505050' };
export const CUT: Stroke = { width: 0.2, color: '#8a8a8a', dash: [2.4, 1.6] };
export const MATCH: Stroke = { width: 0.12, color: '#9c9c9c' };
export const SQUARE: Stroke = { width: 0.18, color: '#606060' };
