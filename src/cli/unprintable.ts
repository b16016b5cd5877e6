/** Letters that the font lacks, which is said rather than left to be found on paper. */

import { series } from '../document/index.ts';
import type { Template } from '../template/index.ts';
import type { Io } from './io.ts';
import { say } from './messages.ts';
import { fontFile } from './own-files.ts';

/** What nearly every name is written in, and the font has. */
const PLAIN = /^[\x20-\x7e\u00a0-\u017f\u2018-\u201d\u2032\u2033]*$/;

/** More of them than this tell no more. */
const MOST_LISTED = 8;

/** For commands that print: the title and the names that come from the files, in the font that is printed with. */
export const sayUnprintable = async (
  io: Io,
  title: string,
  templates: readonly Template[],
): Promise<void> => {
  const names = templates.flatMap((t) => [
    t.title,
    ...[...t.breaks, ...t.alignment].map((n) => n.name ?? ''),
  ]);
  const text = [title, ...names].join('');
  if (PLAIN.test(text)) return;
  // The font is loaded only for a name that needs it.
  const [{ readFile }, { typefaceOf }] = await Promise.all([
    import('node:fs/promises'),
    import('../output/pdf/index.ts'),
  ]);
  const { lacks } = typefaceOf(await readFile(fontFile('regular')));
  const missing = [...new Set(text)].filter(lacks);
  if (missing.length === 0) return;
  const listed = missing.slice(0, MOST_LISTED).map((letter) => `“${letter}”`);
  const more = missing.length - listed.length;
  await say(
    io,
    `the font has no ${series(more > 0 ? [...listed, `${more} more`] : listed)}: another sign is printed in their place`,
  );
};
