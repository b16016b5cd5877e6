/** Drawings as PDF: what the writers need from outside, the fonts and the compressor, is brought to them here. */

import { readFile } from 'node:fs/promises';
import { deflateSync } from 'node:zlib';
import type { StyledDrawing } from '../drawing/index.ts';
import type { Units } from '../length/index.ts';
import { type SheetsPdf, writeOnePage, writeSheetsCounted } from '../output/pdf/index.ts';
import type { PerEdge, SheetPlan } from '../pagination/index.ts';
import { CAUTIONS } from './cautions.ts';
import { fontFile } from './own-files.ts';

export interface PdfWords {
  readonly title: string;
  /** What was made, a line each. */
  readonly summary: readonly string[];
  readonly units: Units;
}

/** The fonts and the compressor. */
export const pdfMeans = async () => ({
  deflate: (bytes: Uint8Array): Uint8Array => deflateSync(bytes),
  fonts: {
    regular: await readFile(fontFile('regular')),
    bold: await readFile(fontFile('bold')),
  },
});

export const sheetsPdf = async (
  drawing: StyledDrawing,
  plan: SheetPlan,
  words: PdfWords,
): Promise<SheetsPdf> =>
  writeSheetsCounted(drawing, plan, { ...words, cautions: CAUTIONS, ...(await pdfMeans()) });

/** The whole drawing on one page of its own size. */
export const onePagePdf = async (
  drawing: StyledDrawing,
  words: Omit<PdfWords, 'summary'>,
  measured: PerEdge | undefined,
): Promise<Uint8Array> => writeOnePage(drawing, { ...words, measured, ...(await pdfMeans()) });
