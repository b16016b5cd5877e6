/** The marking card as pages to pin up beside the machine. */

export { type CardPdfOptions, writeCardPdf } from './write-card.ts';
