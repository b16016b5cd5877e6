/** Plain text for terminals and files. */

export * from './choice-words.ts';
export { type FitTable, fitTableLines, HOW_RANKED } from './fit-table.ts';
export { alignRows, type Column, tableLines, wrapPlain } from './table.ts';
