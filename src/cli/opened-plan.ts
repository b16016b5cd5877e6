/** A plan for the page: its own text, and that of the templates that it names and that do not come along. */

import { basename } from 'node:path';
import { ProblemError } from '../document/index.ts';
import { isPlanSized, MOST_PLAN, MOST_PLAN_LINES } from '../jobs/page-limits.ts';
import { findPlanTemplate, isPath } from './find-template.ts';
import type { Io } from './io.ts';
import { readTextFile } from './read-file.ts';
import { readQuiltFiles } from './steps.ts';

/**
 * As the page takes it, in JSON: nothing but a plan and templates that have been read as such, whatever the plan
 * says. Throws a ProblemError with all that is wrong with them.
 */
export const openedPlan = async (
  io: Io,
  file: string,
): Promise<{ readonly text: string; readonly inputs: readonly string[] }> => {
  const { parts, inputs } = await readQuiltFiles(io, file, undefined);
  const text = parts[0]?.text ?? '';
  if (!isPlanSized(text))
    throw new ProblemError([
      {
        code: 'too-large',
        message: `${file}: the page does not open a plan that is so long`,
        expected: `at most ${MOST_PLAN} characters on ${MOST_PLAN_LINES} lines`,
      },
    ]);
  const own: { readonly name: string; readonly text: string }[] = [];
  for (const name of new Set(parts.flatMap(({ plan }) => plan.templates))) {
    if (!isPath(name)) continue;
    const path = await findPlanTemplate(io, file, name);
    own.push({ name, text: (await readTextFile(io, path, true)).text });
  }
  return { text: JSON.stringify({ plan: text, own, name: basename(file) }), inputs };
};
