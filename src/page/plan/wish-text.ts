/** A wish as the page's fields hold it: how it is meant, and its one or two figures as they are written. */

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

/** What a plan's words mean, whether or not their figures can be read. */
export const wishParts = (text: string | undefined): WishParts => {
  const written = (text ?? 'auto').trim();
  if (written === 'auto') return { kind: 'any', first: '', second: '' };
  for (const [words, kind] of STARTS)
    if (written.toLowerCase().startsWith(words))
      return { kind, first: written.slice(words.length).trim(), second: '' };
  const [first = '', second, ...more] = written.split(/ to /i).map((part) => part.trim());
  return second === undefined || more.length > 0
    ? { kind: 'exactly', first: written, second: '' }
    : { kind: 'between', first, second };
};

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
