/** The widths of channels as she types them: several with a comma between them, and nothing guessed. */

import { readLength, type Units } from '../../length/index.ts';
import { channelsWords } from '../words/words.ts';
import { plainWords } from './plain-words.ts';

/** How several are written, in each unit. */
export const SEVERAL: Readonly<Record<Units, string>> = {
  in: '1/4, 1/8',
  cm: '0.6, 0.6',
  mm: '6, 3',
};

export type WidthsReading =
  | { readonly ok: true; readonly widths: readonly string[] }
  /** What is wrong, in a sentence. */
  | { readonly ok: false; readonly fault: string };

/**
 * A comma between two whole numbers with no space, and no fraction or decimal on either side: most likely a decimal
 * comma, and as likely to be taken for two widths; so is one with no number before it. `1/4,1/8` and `0.6,0.6` can only be lists.
 */
const DECIMAL_COMMA = /(?<![\d./])\d+,\d+(?![\d./])|(?<=(?:^|[,;])\s*),\d+/;

/** No channel is 0 wide: behind a 0 that begins a width it is a decimal comma, and nothing else. `1,0,6` may be two. */
const AFTER_NOUGHT = /(?<=^\s*|[,;]\s+|;)0,(?=\d+(?![\d./]))/g;

/** `0.6 0.6`, `1/4 1/8`: what reads as two numbers, and has no comma between them. */
const TWO_NUMBERS = /^\d+([./]\d+)? +\d+([./]\d+)?$/;

export const readWidths = (typed: string, units: Units): WidthsReading => {
  const text = typed.replace(AFTER_NOUGHT, '0.');
  const comma = DECIMAL_COMMA.exec(text);
  if (comma)
    return {
      ok: false,
      fault: channelsWords.commaInNumber({
        found: comma[0].trim(),
        point: comma[0].trim().replace(/^,/, '0,').replace(',', '.'),
        several: SEVERAL[units],
      }),
    };
  const widths = text
    .split(/[,;]/)
    .map((width) => width.trim())
    .filter((width) => width !== '');
  if (widths.length === 0)
    return {
      ok: false,
      fault: channelsWords.empty({ several: SEVERAL[units] }),
    };
  for (const width of widths) {
    const read = readLength(width, units, 'positive');
    if (read.ok) continue;
    if (TWO_NUMBERS.test(width))
      return {
        ok: false,
        fault: channelsWords.twoNumbers({ found: width, several: SEVERAL[units] }),
      };
    return { ok: false, fault: plainWords({ ...read, message: read.reason }, channelsWords.name) };
  }
  return { ok: true, widths };
};
