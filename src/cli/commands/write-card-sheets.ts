/** The marking card as a PDF. Apart from the rest, so that a card as text does not wait for what writes PDF. */

import { plural } from '../../document/index.ts';
import type { Card } from '../../output/card/index.ts';
import { writeCardPdf } from '../../output/card-sheets/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Design } from '../../swag/index.ts';
import type { Io } from '../io.ts';
import { say } from '../messages.ts';
import { readPages } from '../pages.ts';
import { pdfMeans } from '../render-pdf.ts';
import { describeDesign } from '../report-design.ts';
import { sayUnprintable } from '../unprintable.ts';
import { openOutput } from '../write-set.ts';
import type { CardOptions } from './card.ts';

export const writeCardSheets = async (
  io: Io,
  name: string,
  inputs: readonly string[],
  { card, design, plan }: { readonly card: Card; readonly design: Design; readonly plan: Plan },
  options: CardOptions,
): Promise<void> => {
  const [setup] = readPages(options, plan.units, plan.paper, ['portrait']);
  if (!setup) throw new Error('A card has one paper');
  const output = await openOutput(io, { asked: name }, inputs);
  const written = await writeCardPdf(card, design, { setup, ...(await pdfMeans()) });
  await output.write(written.bytes);
  await sayUnprintable(io, plan.title, [design.fit.way.shape.stitching.template]);
  for (const line of describeDesign(design, plan.marks.style, plan.channels)) await say(io, line);
  await say(io, `${output.name}: the marking card, ${plural(written.pages, 'page')} of ${setup.name}`);
};
