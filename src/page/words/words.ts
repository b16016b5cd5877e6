/**
 * The language that the page speaks, chosen here and nowhere else. Another is another folder beside `english`, of the
 * type that this one has: `Language`.
 */

export * from './english/index.ts';

export type Language = typeof import('./english/index.ts');
