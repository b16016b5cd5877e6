/** The marking card as pages to pin up beside the machine. */

export { writeCardPdf } from './write-card.ts';
