/**
 * The steps by which a template is set, said so that they leave it one place: the same along a seam and round a motif.
 */

import type { Placing, Shape } from '../../swag/index.ts';

/** How the template is swung in: with the foot at the part's two ends, where no other swing has it. */
export const swingWords = ({ direction, from, to }: Shape, crown: string): string => {
  const [start, end] = direction === 'heel-first' ? [from, to] : [to, from];
  return (
    `Put the needle down on the start mark and the edge against the foot at ${start.spoken}. Swing the template until the foot, ` +
    `slid along the edge to ${end.spoken} with the needle up, brings the needle to the crown: ${crown}.`
  );
};

/** Where the guide line lies: beyond the seam it is nearer to her, and may be the seam. */
export const guideWords = (up: number, seam: string, length: (mm: number) => string): string => {
  const away = length(Math.abs(up));
  if (away === length(0)) return `The guide line is the ${seam} itself`;
  return `Draw a guide line ${away} from the ${seam}${up < 0 ? ', on the side towards you' : ''}`;
};

/**
 * The end of a sentence about a guide line. Along a flat the foot meets the edge everywhere: only the template's end
 * tells how far it is slid.
 */
export const flatWords = (flat: string, { end }: Placing, length: (mm: number) => string): string => {
  const away = length(Math.abs(end.along));
  const where = away === length(0) ? 'straight across from' : `${away} ${end.along < 0 ? 'before' : 'past'}`;
  return (
    `: it is for the template's edge and not for the stitching. Lay ${flat} along it, and slide the template until ` +
    `the edge meets the foot at the start mark: its ${end.label} is then ${where} the start mark.`
  );
};
