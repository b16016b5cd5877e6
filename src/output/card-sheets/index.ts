/** The marking card as pages to pin up beside the machine. */

export { type CardOf, drawCards, writeCardPdf } from './write-card.ts';
