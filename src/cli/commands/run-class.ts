/** What `class` does. */

import { ProblemError } from '../../document/index.ts';
import { classSheets, PARTS_IN_CLASS } from '../../jobs/class-sheets.ts';
import { readStudents } from '../../plan/index.ts';
import { defaultName } from '../default-name.ts';
import type { Io } from '../io.ts';
import { MEANS } from '../means.ts';
import { printJson } from '../messages.ts';
import type { OutputOptions, SheetOptions } from '../options.ts';
import { checkOutputOption } from '../output-option.ts';
import { readTextFile } from '../read-file.ts';
import { sayMade } from '../say-made.ts';
import { readSheetOptions } from '../sheets.ts';
import { readQuiltFiles } from '../steps.ts';
import { openOutput } from '../write-set.ts';

export type ClassOptions = OutputOptions & SheetOptions;

export const runClass = async (io: Io, file: string, table: string, options: ClassOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const { parts, inputs } = await readQuiltFiles(io, file, undefined);
  const [first, ...others] = parts;
  if (!first || others.length > 0 || first.name !== undefined)
    throw new ProblemError([{ ...PARTS_IN_CLASS, place: { file, line: 1 } }]);
  const { plan, text, templates, placed } = first;
  const source = await readTextFile(io, table);
  const { students, problems } = readStudents(source.text, table);
  if (students.length === 0) throw new ProblemError(problems);
  const layout = readSheetOptions(options, plan.units, plan.paper);
  const output = await openOutput(io, { asked: options.output, usual: defaultName(file, 'class', 'pdf') }, [
    ...inputs,
    source.path,
  ]);
  const made = await placedIn(placed, () =>
    classSheets({ text, fileName: file, plan, templates }, students, problems, layout, MEANS),
  );
  await output.write(made.bytes);
  await sayMade(io, output, made);
  if (options.json)
    await printJson(io, { file: output.name, students: made.students, missing: made.problems.length });
  // What could be made is made: the rest is told last, and the exit status says that it is not all.
  if (made.problems.length > 0) throw new ProblemError(made.problems);
};

/** What is wrong with the plan itself has its place there. */
const placedIn = async <T>(
  placed: (problem: ProblemError['problems'][number]) => ProblemError['problems'][number],
  make: () => Promise<T>,
): Promise<T> => {
  try {
    return await make();
  } catch (error) {
    if (error instanceof ProblemError) throw new ProblemError(error.problems.map(placed));
    throw error;
  }
};
