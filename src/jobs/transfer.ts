/** What of a picture goes onto cloth, and how: for machines and materials that want less than a sheet to look at. */

import { quiltingAlone, type StyledDrawing } from '../drawing/index.ts';

/** `clean` is what is stitched and nothing else, its lines joined. */
export const TRANSFERS = ['clean'] as const;
export type Transfer = (typeof TRANSFERS)[number];

/** The picture as it goes onto cloth; as it is where nothing is asked. */
export const transferred = (drawing: StyledDrawing, as: Transfer | undefined): StyledDrawing => {
  switch (as) {
    case undefined:
      return drawing;
    case 'clean':
      return quiltingAlone(drawing);
    default:
      return as satisfies never;
  }
};
