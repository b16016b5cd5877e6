/** What `card` does. */

import { textCard } from '../../jobs/card.ts';
import type { Made } from '../../jobs/made.ts';
import type { PagesWanted } from '../../jobs/pages.ts';
import { type Part, refuseUnknownFills } from '../../jobs/part.ts';
import { cardAsData } from '../../output/card/index.ts';
import type { Io } from '../io.ts';
import { printJson } from '../messages.ts';
import { checkOutputOption, endingOf } from '../output-option.ts';
import { sayMade } from '../say-made.ts';
import { readSheetOptions } from '../sheets.ts';
import { planned } from '../steps.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';
import type { CardOptions } from './card.ts';

export const runCard = async (io: Io, file: string, options: CardOptions): Promise<void> => {
  const format = readFormat(options);
  checkOutputOption(options, format === 'pdf' ? 'pdf' : 'txt');
  const { inputs, ...part } = await planned(io, file);
  const { plan, design } = part;
  refuseUnknownFills(part);
  if (options.output !== undefined) {
    const pages = readSheetOptions(options, plan.units, plan.paper);
    const output = await openOutput(io, { asked: options.output }, inputs);
    const made = format === 'pdf' ? await onPages(part, pages) : textCard(part);
    await output.write(made.bytes);
    await sayMade(io, output, made);
  }
  if (options.json) await printJson(io, cardAsData(design, plan));
  else if (options.output === undefined) await io.stdout.write(textCard(part).bytes);
};

/** A card as text does not wait for what writes PDF. */
const onPages = async (part: Part, pages: PagesWanted): Promise<Made> => {
  const [{ cardSheets }, { MEANS }] = await Promise.all([
    import('../../jobs/card-sheets.ts'),
    import('../means.ts'),
  ]);
  return cardSheets(part, pages, MEANS);
};

const readFormat = ({ output, paper, orientation, margin }: CardOptions): 'pdf' | 'text' => {
  if (output === undefined || output === '-' || endingOf(output) === 'txt') {
    const given = [
      ['--paper', paper],
      ['--orientation', orientation],
      ['--margin', margin],
    ].find(([, value]) => value !== undefined);
    if (given?.[0] !== undefined)
      throw wrongValue(given[0], 'it is for a PDF', { hint: 'name one with -o, such as -o card.pdf' });
    return 'text';
  }
  return 'pdf';
};
