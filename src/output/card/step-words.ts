/**
 * The steps by which a template is set, said so that they leave it one place: the same along a seam and round a motif.
 */

import type { Placing, Shape } from '../../swag/index.ts';
import type { CardBlock } from './block.ts';

/** How the template is swung in: with the foot at the part's two ends, where no other swing has it. */
export const swingWords = ({ direction, from, to }: Shape, crown: string): string => {
  const [start, end] = direction === 'heel-first' ? [from, to] : [to, from];
  return (
    `Put the needle down on the start mark and the edge against the foot at ${start.spoken}. Swing the template until the foot, ` +
    `slid along the edge to ${end.spoken} with the needle up, brings the needle to the crown: ${crown}.`
  );
};

/** What differs from band to band in how a template is set: what is measured from, and what it is called. */
export interface BandWords {
  /** What is drawn first, and where swags start. */
  readonly ground: string;
  /** What lies on the near side of the stitching, and which way she has the cloth before her. */
  readonly near: string;
  readonly towards: string;
  /** Where on the centre line the crown is. */
  readonly crown: string;
  /** Where an etched line is laid, and how the template is then slid. */
  readonly line: { readonly square: string; readonly along: string };
  /** How a guide line is drawn, so far (mm) up from the start line. */
  readonly guide: (up: number) => string;
  /** Which way a place lies that is so far (mm) up from the start line. */
  readonly up: (up: number) => string;
  /** What “up” is told from, and the line that an etched one is seen to cross. */
  readonly level: string;
  readonly crossed: string;
  /** How the marks are found, and where they lie. */
  readonly marks: readonly CardBlock[];
}

export const SLIDE = ', and slide the template along it until the edge meets the foot';

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
