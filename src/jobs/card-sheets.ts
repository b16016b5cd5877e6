/** The marking card as pages to pin up. Apart from the card as text, which does not wait for what writes PDF. */

import { plural } from '../document/index.ts';
import { writeCardPdf } from '../output/card-sheets/index.ts';
import { describeDesign } from '../output/mockup/index.ts';
import { cardFor } from './card.ts';
import { type Made, type Means, pdfMeans } from './made.ts';
import { type PagesWanted, pageSetups } from './pages.ts';
import { type Part, refuseUnknownFills } from './part.ts';
import { unprintable } from './unprintable.ts';

/** Throws a ProblemError for fills that are not known. */
export const cardSheets = async (part: Part, pages: PagesWanted, means: Means): Promise<Made> => {
  refuseUnknownFills(part);
  const { design, plan } = part;
  const [setup] = pageSetups(pages, ['portrait']);
  if (!setup) throw new Error('A card has one paper');
  const written = await writeCardPdf(cardFor(part), design, { setup, ...(await pdfMeans(means)) });
  return {
    bytes: written.bytes,
    words: `the marking card, ${plural(written.pages, 'page')} of ${setup.name}`,
    notices: await unprintable(plan.title, [design.fit.way.shape.stitching.template], means),
    summary: describeDesign(design, plan.marks.style, plan.channels),
    corrections: [],
  };
};
