/**
 * The language that the page speaks, chosen here and nowhere else. Another is another folder beside `english`, with
 * all that this one has: `Language`. `scripts/build-page.mjs` can also be given one when the page is built.
 */

export * from './english/index.ts';

export type Language = typeof import('./english/index.ts');
