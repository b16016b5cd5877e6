/** What `template edit` does. */

import { ProblemError, plural } from '../../document/index.ts';
import { pathLength } from '../../geometry/index.ts';
import { breakWords } from '../../jobs/break-words.ts';
import { editTemplate, hasCommentsWithin } from '../../jobs/edited-template.ts';
import { sizeWords } from '../../jobs/size-by-print.ts';
import { both } from '../../jobs/traced-template.ts';
import { MM_PER } from '../../length/index.ts';
import { sectionsOf } from '../../template/index.ts';
import type { SetRightOptions } from '../add-set-right.ts';
import { defaultName } from '../default-name.ts';
import { UNIT_WORDS } from '../edge-options.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import type { OutputOptions } from '../options.ts';
import { checkTemplateOutput } from '../output-option.ts';
import { isSetRight, readOff, readSetRight } from '../read-set-right.ts';
import { readTemplateFile } from '../template-file.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface EditOptions extends OutputOptions, SetRightOptions {
  readonly inPlace?: boolean;
}

export const runEdit = async (io: Io, name: string, options: EditOptions): Promise<void> => {
  checkOutput(options);
  const file = await readTemplateFile(io, name);
  const { units } = file;
  if (options.inPlace && file.name !== name)
    throw wrongValue('--in-place', 'this template comes with swagwright, and stays as it is', {
      hint: 'leave --in-place out',
    });
  const size = MM_PER[units];
  const right = readSetRight(options, {
    units,
    numbered: false,
    toMm: ({ x, y }) => ({ x: x * size, y: y * size }),
  });
  const off = readOff(options.off, units);
  const wanted = options.inPlace
    ? { asked: file.name, was: file.text }
    : { asked: options.output, usual: defaultName(file.path, 'edited', 'yaml'), handwork: true };
  const output = await openOutput(io, wanted, [file.path]);
  const made = editTemplate(file, { fileName: output.name, right, off });
  if (!made.ok) throw new ProblemError(made.problems.map((p) => ({ ...p, place: { file: name } })));
  await output.write(made.text);
  const { template } = made;
  const length = pathLength(template.edge);
  const sections = sectionsOf(template, length).length;
  await say(io, `working edge: ${both(length)} long, ${plural(sections, 'section')}`);
  if (made.size !== 1) await say(io, `set right by hand: ${sizeWords(made.size)} than it was`);
  for (const line of breakWords(template, right)) await say(io, line);
  if (hasCommentsWithin(file.text)) await say(io, 'comments within the file are not kept, only those on top');
  await say(io, `${output.name}: the template, in ${UNIT_WORDS[units]}`);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      size: made.size,
      length,
      sections,
      breaks: template.breaks.map(({ name: called, at, kind }) => ({ name: called ?? null, at, kind })),
    });
};

const checkOutput = (options: EditOptions): void => {
  const { output, inPlace } = options;
  if (!isSetRight(options))
    throw wrongValue('template edit', 'nothing is to be set right', {
      expected: 'one of --break, --rename, --take-out, --stretch, --off',
    });
  if (output !== undefined && inPlace) throw wrongValue('--in-place', 'it cannot go with --output');
  checkTemplateOutput(options);
};
