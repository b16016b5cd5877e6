/** Plain text for terminals and files. */

export * from './choice-words.ts';
export { fitTableLines } from './fit-table.ts';
export { likeWords, makingWords, plainSentence } from './plain-sentence.ts';
export { furtherWords } from './row-words.ts';
export { type Column, tableLines, wrapPlain } from './table.ts';
export { answerWords } from './wish-words.ts';
