/** A small picture of each fit, side by side, to choose from by eye. */

import { plural } from '../document/index.ts';
import { captionOf, scaleWords, writeContactSheet } from '../output/contact-sheet/index.ts';
import type { Kind } from '../swag/index.ts';
import { excerpt } from './excerpt.ts';
import { type Made, type Means, pdfMeans } from './made.ts';
import { type PagesWanted, pageSetups } from './pages.ts';
import type { Part } from './part.ts';
import { unprintable } from './unprintable.ts';

/** Of the fits that are shown, of which there is at least one. Throws a ProblemError where a page is too small. */
export const contactSheet = async (
  { plan, templates }: Pick<Part, 'plan' | 'templates'>,
  shown: readonly Kind[],
  pages: PagesWanted,
  means: Means,
): Promise<Made> => {
  const excerpts = shown.map(({ first }) => excerpt(first, plan));
  const candidates = shown.map(({ first, like }, i) => ({
    number: i + 1,
    drawing: excerpts[i]!.drawing,
    whole: excerpts[i]!.whole(),
    caption: captionOf(first, plan.marks.style, like.length),
  }));
  const sheet = await writeContactSheet(candidates, {
    title: plan.title,
    summary: `${plural(shown.length, 'way')} to make the swags, the best first. Each shows ${excerpts[0]!.scope.label.replace(/^the .* corner/, 'a corner')}.`,
    units: plan.units,
    setups: pageSetups(pages),
    ...(await pdfMeans(means)),
  });
  const paper = `${plural(sheet.pages, 'page')} of ${sheet.paper}`;
  return {
    bytes: sheet.bytes,
    words: `${plural(shown.length, 'picture')} on ${paper}. ${scaleWords(sheet.reduction)}`,
    paper,
    notices: await unprintable(plan.title, templates, means),
  };
};
