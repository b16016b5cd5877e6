/** The sheet that a template is photographed on. */

export { writeCaptureSheet } from './write-capture-sheet.ts';
