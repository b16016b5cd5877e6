/** The marking card as pages to pin up. Apart from the card as text, which does not wait for what writes PDF. */

import { plural } from '../document/index.ts';
import { writeCardPdf } from '../output/card-sheets/index.ts';
import { cardsFor, cardWords } from './card.ts';
import { type Made, type Means, pdfMeans } from './made.ts';
import { type PagesWanted, pageSetups } from './pages.ts';
import type { Part } from './part.ts';
import { designsOf } from './under-name.ts';
import { unprintable } from './unprintable.ts';

/** `title` is the quilt's. Throws a ProblemError for fills that are not known. */
export const cardSheets = async (
  title: string,
  parts: readonly Part[],
  pages: PagesWanted,
  means: Means,
): Promise<Made> => {
  const [setup] = pageSetups(pages, ['portrait']);
  if (!setup) throw new Error('A card has one paper');
  const cards = cardsFor(title, parts);
  const written = await writeCardPdf(title, cards, { setup, ...(await pdfMeans(means)) });
  const templates = parts.map(({ design }) => design.fit.way.shape.stitching.template);
  const paper = `${plural(written.pages, 'page')} of ${setup.name}`;
  return {
    bytes: written.bytes,
    words: `${cardWords(parts.length)}, ${paper}`,
    paper,
    notices: await unprintable([title, ...parts.map(({ plan }) => plan.title)].join(''), templates, means),
    summary: designsOf(parts),
  };
};
