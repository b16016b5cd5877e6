/** Writes drawings as PDF: sheets to tape together, and one page at true size. Other pages draw through the same parts. */

export { type Deflate, type Pdf, startPdf } from './document.ts';

export { HAIRLINE, INK, TYPE } from './look.ts';
export { type OnePageOptions, writeOnePage } from './one-page.ts';
export type { PageContent } from './page-content.ts';
export { type PageSetup, pageSetup } from './page-setup.ts';
export { writeQuiltSheets } from './quilt-sheets.ts';
export {
  drawSheets,
  drawTaped,
  type SheetsOptions,
  textWidthOf,
  writeSheets,
  writeSheetsCounted,
} from './sheets.ts';
export { type FontBytes, fitText, typefaceOf, wrapText } from './typeface.ts';
