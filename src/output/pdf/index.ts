/** Writes drawings as PDF: sheets to tape together, and one page at true size. Other pages draw through the same parts. */

export { type Deflate, type PageOptions, type Pdf, type PdfOptions, startPdf } from './document.ts';
export { drawItem, drawSmall } from './draw-item.ts';
export { type Block, balancedColumns, drawFlow, type Flow, setBlocks } from './flow.ts';
export { FRAME, HAIRLINE, INK, LEADING, SQUARE, TICK, TYPE } from './look.ts';
export { POINTS_PER_MM, pdfNumber, pointsOf } from './numbers.ts';
export { type OnePageOptions, writeOnePage } from './one-page.ts';
export {
  type Correction,
  type Form,
  type Lettering,
  NO_CORRECTION,
  type PageContent,
} from './page-content.ts';
export { type PageSetup, pageSetup } from './page-setup.ts';
export { type PartSheets, writeQuiltSheets } from './quilt-sheets.ts';
export {
  type SheetsOptions,
  type SheetsPdf,
  textWidthOf,
  writeSheets,
  writeSheetsCounted,
} from './sheets.ts';
export {
  type FontBytes,
  fitText,
  type Typeface,
  type Typefaces,
  typefaceOf,
  typefacesOf,
  wrapText,
} from './typeface.ts';
