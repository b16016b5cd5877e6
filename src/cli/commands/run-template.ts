/** What `template` does. */

import { outline } from '../../jobs/outline.ts';
import { templateAsData } from '../../jobs/template-facts.ts';
import { USUAL_PAPER } from '../../pagination/index.ts';
import { asAsked } from '../asked.ts';
import { readClearance } from '../clearance.ts';
import { defaultName } from '../default-name.ts';
import type { Io } from '../io.ts';
import { MEANS } from '../means.ts';
import { printJson } from '../messages.ts';
import type { OutputOptions, SheetOptions } from '../options.ts';
import { checkOutputOption } from '../output-option.ts';
import { sayMade } from '../say-made.ts';
import { readSheetOptions, sheetsAsData } from '../sheets.ts';
import { readTemplateFile } from '../template-file.ts';
import { openOutput } from '../write-set.ts';

export interface TemplateOptions extends OutputOptions, SheetOptions {
  readonly clearance?: string;
  readonly solid?: boolean;
}

export const runTemplate = async (io: Io, name: string, options: TemplateOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const file = await readTemplateFile(io, name);
  const clearance = readClearance(options.clearance, file.units);
  const layout = readSheetOptions(options, file.units, USUAL_PAPER[file.units]);
  const { solid } = options;
  const usual = defaultName(file.path, solid ? 'solid' : 'outline');
  const output = await openOutput(io, { asked: options.output, usual }, [file.path]);
  const made = await asAsked(
    options,
    () => outline(file, { clearance, solid, layout }, MEANS),
    (problem) => (problem.code === 'no-silhouette' ? { ...problem, hint: 'leave --solid out' } : problem),
  );
  await output.write(made.bytes);
  await sayMade(io, output, made);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      ...sheetsAsData(made.sheets),
      ...templateAsData(made.stitching),
    });
};
