/** `-o`: what can be told about it before anything is read. */

import { WRITERS } from '../output/writers/index.ts';
import type { OutputOptions } from './options.ts';
import { wrongValue } from './wrong-use.ts';

/** Of `--output`, of `--sheet` where that says a second file, or of `--save`. stdout carries one thing only, and a file is what its name says. */
export const checkOutputOption = (
  { output, json }: OutputOptions,
  format: string,
  option: '--output' | '--sheet' | '--save' = '--output',
): void => {
  if (output === undefined) return;
  if (output === '') throw wrongValue(option, 'the name of the file is empty');
  if (output === '-' && json)
    throw wrongValue(option, 'the file and --json cannot both go to stdout', {
      hint: 'give the file a name',
    });
  const ending = endingOf(output);
  if (ending !== undefined && OTHER_KINDS.has(ending) && ending !== format)
    throw wrongValue(option, `what is written is ${format.toUpperCase()}`, {
      found: `the ending .${ending}`,
      expected: `.${format}`,
    });
};

/** Endings that promise something; any other is the user's own affair. */
const OTHER_KINDS = new Set([
  ...WRITERS.map(({ ending }) => ending),
  ...['pdf', 'jpg', 'jpeg', 'yaml', 'yml', 'json', 'csv', 'txt', 'html'],
]);

/** In small letters and without its point. */
export const endingOf = (name: string): string | undefined =>
  /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase();

/** What a template file may be called. Throws wrong use. */
export const checkTemplateOutput = ({ output, json }: OutputOptions): void => {
  if (output === '-' && json)
    throw wrongValue('--output', 'the file and --json cannot both go to stdout', {
      hint: 'give the file a name',
    });
  const ending = output === undefined ? undefined : endingOf(output);
  if (ending !== undefined && !['yaml', 'yml'].includes(ending))
    throw wrongValue('--output', 'a template file is YAML', { found: `the ending .${ending}` });
};
