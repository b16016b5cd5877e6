/** What of a picture goes onto cloth, and how: for machines and materials that want less than a sheet to look at. */

import { ProblemError } from '../document/index.ts';
import { LEAST_HOLES_APART, mirrored, pounced, quiltingAlone, type StyledDrawing } from '../drawing/index.ts';
import { exactLength, INCH_SIXTYFOURTH, MM_PER_INCH, MM_TENTH, type Units } from '../length/index.ts';

/**
 * `clean` is what is stitched and nothing else, its lines joined; `pounce` the same as holes, which powder or ink goes
 * through.
 */
export const TRANSFERS = ['clean', 'pounce'] as const;

export interface Transfer {
  readonly kind: (typeof TRANSFERS)[number];
  /** Left for right: for what is turned over before it lies on the cloth. */
  readonly mirrored?: boolean | undefined;
  /** mm from one hole to the next, at most; what is usual where it is left out. */
  readonly every?: number | undefined;
}

/** mm from hole to hole. Common practice, no source. */
const USUAL_HOLES_APART = { in: MM_PER_INCH / 8, cm: 3, mm: 3 } as const;

/** The picture as it goes onto cloth; as it is where nothing is asked. Throws a ProblemError where it cannot be made so. */
export const transferred = (
  drawing: StyledDrawing,
  transfer: Transfer | undefined,
  units: Units,
): StyledDrawing => {
  if (transfer === undefined) return drawing;
  const made = madeAs(quiltingAlone(drawing), transfer, units);
  return transfer.mirrored ? mirrored(made) : made;
};

const madeAs = (alone: StyledDrawing, transfer: Transfer, units: Units): StyledDrawing => {
  switch (transfer.kind) {
    case 'clean':
      return alone;
    case 'pounce': {
      const every = everyOf(transfer, units);
      if (every >= LEAST_HOLES_APART) return pounced(alone, every);
      throw new ProblemError([
        {
          code: 'holes-too-near',
          message: 'the paper would tear between the holes',
          found: lengthIn(every, units),
          expected: `at least ${lengthIn(LEAST_HOLES_APART, units)}`,
        },
      ]);
    }
    default:
      return transfer.kind satisfies never;
  }
};

const everyOf = ({ every }: Transfer, units: Units): number => every ?? USUAL_HOLES_APART[units];

const lengthIn = (mm: number, units: Units): string =>
  exactLength(mm, units === 'in' ? INCH_SIXTYFOURTH : MM_TENTH);

/** Of what is asked, a few words each: `what is stitched and nothing else`, `mirrored, left for right`. */
export const transferWords = (transfer: Transfer | undefined, units: Units): readonly string[] => {
  if (transfer === undefined) return [];
  const what = {
    clean: 'what is stitched and nothing else',
    pounce: `as holes ${lengthIn(everyOf(transfer, units), units)} apart`,
  };
  return [what[transfer.kind], ...(transfer.mirrored ? ['mirrored, left for right'] : [])];
};

/** Whether a transfer is stitched through, so that its sheets hold nothing else. */
export const isStitchedThrough = (transfer: Transfer | undefined): boolean => transfer?.kind === 'clean';
