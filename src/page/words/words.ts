/**
 * The language that the page speaks, chosen here and nowhere else. Another is another folder beside `english`, with
 * all that this one has.
 */

export * from './english/index.ts';
