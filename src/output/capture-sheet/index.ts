/** The sheet that a template is photographed on. */

export { type CaptureSheetOptions, drawMark, writeCaptureSheet } from './write-capture-sheet.ts';
