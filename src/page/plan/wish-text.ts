/** A wish as the page's fields hold it: how it is meant, and its one or two figures as they are written. */

import { readLength } from '../../length/index.ts';
import { formOf, plainWish } from '../../plan/index.ts';

const WISH_KINDS = ['any', 'about', 'exactly', 'least', 'most', 'between'] as const;
export type WishKind = (typeof WISH_KINDS)[number];

export interface WishParts {
  readonly kind: WishKind;
  readonly first: string;
  /** Only of a range with two ends. */
  readonly second: string;
}

const STARTS: readonly (readonly [string, WishKind])[] = [
  ['about ', 'about'],
  ['at least ', 'least'],
  ['at most ', 'most'],
];

/** What a plan's words mean, in whatever words; what cannot be read stands as it is. */
export const wishParts = (text: string | undefined): WishParts => {
  const written = (text ?? 'auto').trim();
  if (written === 'auto') return { kind: 'any', first: '', second: '' };
  const form = formOf(plainWish(written), isFigure);
  if ('reason' in form || form.kind === 'around') return { kind: 'exactly', first: written, second: '' };
  const [first = '', second = ''] = form.numbers;
  return { kind: form.kind, first, second };
};

const isFigure = (text: string): boolean =>
  /^[\d./ ]+(?:%|percent)?$/.test(text) || readLength(text, 'in').ok;

/** The words for a plan; undefined where nothing is asked. */
export const wishWritten = ({ kind, first, second }: WishParts): string | undefined => {
  switch (kind) {
    case 'any':
      return undefined;
    case 'exactly':
      return first;
    case 'between':
      return `${first} to ${second}`;
    default:
      return STARTS.find(([, of]) => of === kind)![0] + first;
  }
};

/** The same figures, meant otherwise: a range ends where it is told, or a little above where it begins. */
export const meantAs = (
  parts: WishParts,
  kind: WishKind,
  usual: { readonly first: string; readonly second: string },
): WishParts => {
  const first = parts.first || usual.first;
  if (kind !== 'between') return { kind, first, second: '' };
  return { kind, first, second: parts.second || (parts.first ? parts.first : usual.second) };
};
