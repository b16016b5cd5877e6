/** Letters that the font lacks, which is said rather than left to be found on paper. */

import { series } from '../document/index.ts';
import type { Template } from '../template/index.ts';
import type { Means } from './made.ts';

/** What nearly every name is written in, and the font has. */
const PLAIN = /^[\x20-\x7e\u00a0-\u017f\u2018-\u201d\u2032\u2033]*$/;

/** More of them than this tell no more. */
const MOST_LISTED = 8;

/** Of the title and the names that come from the files, in the font that is printed with. */
export const unprintable = async (
  title: string,
  templates: readonly Template[],
  { fonts }: Means,
): Promise<readonly string[]> => {
  const names = templates.flatMap((t) => [
    t.title,
    ...[...t.breaks, ...t.alignment].map((n) => n.name ?? ''),
  ]);
  const text = [title, ...names].join('');
  if (PLAIN.test(text)) return [];
  // The font is loaded only for a name that needs it.
  const [{ regular }, { typefaceOf }] = await Promise.all([fonts(), import('../output/pdf/index.ts')]);
  const { lacks } = typefaceOf(regular);
  const missing = [...new Set(text)].filter(lacks);
  if (missing.length === 0) return [];
  const listed = missing.slice(0, MOST_LISTED).map((letter) => `“${letter}”`);
  const more = missing.length - listed.length;
  return [
    `the font has no ${series(more > 0 ? [...listed, `${more} more`] : listed)}: another sign is printed in their place`,
  ];
};
