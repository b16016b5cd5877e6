/** The marking card for the sewing room: one content, set as text, as pages, or given as data. */

export { type Card, type CardBlock, type CardSection, type CardTable, cardOf, cardWith } from './card.ts';
export { cardAsData } from './card-data.ts';
export { writeCardPdf } from './card-pdf.ts';
export { writeTextCard } from './text-card.ts';
