/** Where a text has words of the trade that are explained. */

import { termsWords } from '../words/words.ts';

export type Term = keyof typeof termsWords;

const all = Object.entries(termsWords) as readonly (readonly [Term, { readonly said: string }])[];

/** Split by it, a text's odd pieces are words that are explained. */
export const WORDS = new RegExp(`\\b(${all.map(([, { said }]) => said).join('|')})\\b`, 'g');

export const termIn = (words: string): Term | undefined =>
  all.find(([, { said }]) => new RegExp(`^(?:${said})$`).test(words))?.[0];
