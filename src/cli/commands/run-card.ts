/** What `card` does. */

import { refuseUnknownFills } from '../../jobs/part.ts';
import { cardAsData, cardOf, writeTextCard } from '../../output/card/index.ts';
import { CAUTIONS } from '../cautions.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import { checkOutputOption, endingOf } from '../output-option.ts';
import { planned } from '../steps.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';
import type { CardOptions } from './card.ts';

/** Characters of a line of the card as text. */
const LINE = 90;

export const runCard = async (io: Io, file: string, options: CardOptions): Promise<void> => {
  const format = readFormat(options);
  checkOutputOption(options, format === 'pdf' ? 'pdf' : 'txt');
  const files = await planned(io, file);
  refuseUnknownFills(files);
  const { plan, design, inputs } = files;
  const card = cardOf(design, plan, CAUTIONS);
  if (options.output !== undefined && format === 'pdf') {
    const { writeCardSheets } = await import('./write-card-sheets.ts');
    await writeCardSheets(io, options.output, inputs, { card, design, plan }, options);
  } else if (options.output !== undefined) {
    const output = await openOutput(io, { asked: options.output }, inputs);
    await output.write(writeTextCard(card, LINE));
    await say(io, `${output.name}: the marking card`);
  }
  if (options.json) await printJson(io, cardAsData(design, plan));
  else if (options.output === undefined) await io.stdout.write(writeTextCard(card, LINE));
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
