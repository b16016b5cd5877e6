/** "It is off by …": what the acrylic, laid on the print of its outline, says of the outline's size. */

import type { Problem } from '../document/index.ts';

/** By how much the acrylic is longer or shorter than its outline, between heel and crown end, mm. */
export interface OffBy {
  readonly by: number;
  readonly acrylic: 'longer' | 'shorter';
}

/** A print that is off by more than this share was scaled, or the picture's own size is not what it says. */
const MOST_OFF = 0.1;

/** What the outline is to be enlarged by; `too-far` is no slip of a scanner. `chord`: from heel to crown end, mm. */
export const sizeByPrint = (chord: number, { by, acrylic }: OffBy): number | 'too-far' => {
  const factor = (chord + (acrylic === 'longer' ? by : -by)) / chord;
  return Math.abs(factor - 1) <= MOST_OFF ? factor : 'too-far';
};

/** `0.62 % larger` */
export const sizeWords = (factor: number): string =>
  `${(Math.abs(factor - 1) * 100).toFixed(2)} % ${factor > 1 ? 'larger' : 'smaller'}`;

export const tooFarOff: Problem = {
  code: 'too-far-off',
  key: '--off',
  message: 'that is more than a tenth of the whole, and no slip of a scanner',
  hint: 'look whether the picture says its size rightly, and whether the outline was printed at 100 %',
};
