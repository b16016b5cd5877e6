/** What `card` does. */

import { textCard } from '../../jobs/card.ts';
import type { Made } from '../../jobs/made.ts';
import type { PagesWanted } from '../../jobs/pages.ts';
import { type Part, withPlaces } from '../../jobs/part.ts';
import { cardAsData } from '../../output/card/index.ts';
import type { Io } from '../io.ts';
import { printJson } from '../messages.ts';
import type { PaperOptions, PartOptions } from '../options.ts';
import { checkOutputOption, endingOf } from '../output-option.ts';
import { sayMade } from '../say-made.ts';
import { readSheetOptions, refusePaper } from '../sheets.ts';
import { plannedQuilt } from '../steps.ts';
import { openOutput } from '../write-set.ts';

export interface CardOptions extends PaperOptions, PartOptions {
  readonly output?: string;
  readonly json?: boolean;
}

export const runCard = async (io: Io, file: string, options: CardOptions): Promise<void> => {
  const format = readFormat(options);
  checkOutputOption(options, format === 'pdf' ? 'pdf' : 'txt');
  const { title, parts, inputs } = await plannedQuilt(io, file, options.part);
  const { plan } = parts[0]!;
  if (options.output !== undefined) {
    const pages = readSheetOptions(options, plan.units, plan.paper);
    const output = await openOutput(io, { asked: options.output }, inputs);
    const made = format === 'pdf' ? await onPages(title, parts, pages) : textCard(title, parts);
    await output.write(made.bytes);
    await sayMade(io, output, made);
  }
  if (options.json) await printJson(io, asData(parts));
  else if (options.output === undefined) await io.stdout.write(textCard(title, parts).bytes);
};

/** A card as text does not wait for what writes PDF. */
const onPages = async (title: string, parts: readonly Part[], pages: PagesWanted): Promise<Made> => {
  const [{ cardSheets }, { MEANS }] = await Promise.all([
    import('../../jobs/card-sheets.ts'),
    import('../means.ts'),
  ]);
  return cardSheets(title, parts, pages, MEANS);
};

const asData = (parts: readonly Part[]): object => {
  const cards = parts.map((part) => {
    const data = withPlaces(part, () => cardAsData(part.design, part.plan));
    return part.name === undefined ? data : { part: part.name, ...data };
  });
  const [only, ...others] = cards;
  return only && others.length === 0 ? only : { parts: cards };
};

const readFormat = (options: CardOptions): 'pdf' | 'text' => {
  const { output } = options;
  if (output === undefined || output === '-' || endingOf(output) === 'txt') {
    refusePaper(options, 'it is for a PDF', 'name one with -o, such as -o card.pdf');
    return 'text';
  }
  return 'pdf';
};
