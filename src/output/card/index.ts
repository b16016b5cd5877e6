/** The marking card for the sewing room: one content, set as text or given as data; ../card-sheets sets it as pages. */

export type { CardBlock, CardPlace, CardTable } from './block.ts';
export { type Card, type CardSection, cardOf, cardWith, lengthOf } from './card.ts';
export { cardAsData } from './card-data.ts';
export { fillBlocks } from './fill-words.ts';
export { seamName } from './mark-words.ts';
export { quiltThreadCard, type StitchedPart } from './quilt-thread.ts';
export { writeTextCard } from './text-card.ts';
