/** The contact sheet of `fit`: a small picture of every result that is shown. */

import { plural } from '../../document/index.ts';
import { drawDesign } from '../../drawing/index.ts';
import { captionOf, excerptOf, scaleWords, writeContactSheet } from '../../output/contact-sheet/index.ts';
import { designOf, placedChannels, type Ranked } from '../../swag/index.ts';
import { readPages } from '../pages.ts';
import { pdfMeans } from '../render-pdf.ts';
import type { PlanFiles } from '../steps.ts';
import type { FitOptions } from './fit.ts';

interface FitSheet {
  readonly bytes: Uint8Array;
  /** What it holds. */
  readonly words: string;
}

export const fitSheet = async (
  { plan }: PlanFiles,
  shown: readonly Ranked[],
  options: FitOptions,
): Promise<FitSheet> => {
  const setups = readPages(options, plan.units, plan.paper);
  const excerpts = shown.map(({ field, fit }) => {
    const design = designOf(field, fit);
    const scope = excerptOf(design);
    return { design, scope, channels: placedChannels(design, plan.channels, scope.halves) };
  });
  const candidates = shown.map((ranked, i) => {
    const { design, scope, channels } = excerpts[i]!;
    const drawing = drawDesign(design, scope, { title: plan.title, ghosts: false, channels });
    return { number: i + 1, drawing, caption: captionOf(ranked, plan.marks.style) };
  });
  const sheet = await writeContactSheet(candidates, {
    title: plan.title,
    summary: `${plural(shown.length, 'way')} to make the swags, the best first. Each shows ${excerpts[0]!.scope.label}.`,
    units: plan.units,
    setups,
    ...(await pdfMeans()),
  });
  return {
    bytes: sheet.bytes,
    words: `${plural(shown.length, 'picture')} on ${plural(sheet.pages, 'page')} of ${sheet.paper}. ${scaleWords(sheet.reduction)}`,
  };
};
