/** Candidates side by side on paper, to choose from by eye. */

export { captionOf } from './caption.ts';
export { excerptOf } from './excerpt.ts';
export {
  type Candidate,
  type ContactSheet,
  type ContactSheetOptions,
  scaleWords,
  writeContactSheet,
} from './write-contact-sheet.ts';
