/** What of a picture goes onto cloth, and how: for machines and materials that want less than a sheet to look at. */

import { mirrored, quiltingAlone, type StyledDrawing } from '../drawing/index.ts';

/** `clean` is what is stitched and nothing else, its lines joined. */
export const TRANSFERS = ['clean'] as const;

export interface Transfer {
  readonly kind: (typeof TRANSFERS)[number];
  /** Left for right: for what is turned over before it lies on the cloth. */
  readonly mirrored?: boolean;
}

/** The picture as it goes onto cloth; as it is where nothing is asked. */
export const transferred = (drawing: StyledDrawing, transfer: Transfer | undefined): StyledDrawing => {
  if (transfer === undefined) return drawing;
  const alone = quiltingAlone(drawing);
  return transfer.mirrored ? mirrored(alone) : alone;
};

/** Of what is asked, a few words each: `what is stitched and nothing else`, `mirrored, left for right`. */
export const transferWords = (transfer: Transfer | undefined): readonly string[] =>
  transfer === undefined
    ? []
    : ['what is stitched and nothing else', ...(transfer.mirrored ? ['mirrored, left for right'] : [])];

/** Whether a transfer is stitched through, so that its sheets hold nothing else. */
export const isStitchedThrough = (transfer: Transfer | undefined): boolean => transfer?.kind === 'clean';
