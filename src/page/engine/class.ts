/** A class from a table that was pasted: counted while it is looked at, and made. The same steps and words as the command's. */

import { type Problem, ProblemError } from '../../document/index.ts';
import { type ClassPlan, classSheets, countClass, PARTS_IN_CLASS } from '../../jobs/class-sheets.ts';
import { calledAfter } from '../../jobs/names.ts';
import { takeFit } from '../../jobs/take-fit.ts';
import { readStudents, type Student } from '../../plan/index.ts';
import { listAt, textAt, withValues } from '../plan/plan-text.ts';
import { takenIn } from '../plan/state.ts';
import { chosenFit, readOpen } from './desk.ts';
import type { ClassCount, Fonts, Input, PaperChoices, Printed } from './messages.ts';
import { meansWith, printed } from './print.ts';
import { PASTED_TABLE, PLAN_FILE, troubleOf } from './trouble.ts';

/** Throws a ProblemError where nothing can be made for any student. */
export const classCount = (input: Input, table: string, layout: PaperChoices): ClassCount => {
  const { from, students, unread } = readClass(input, table);
  const { problems, ...counted } = countClass(from, students, unread, layout);
  return { ...counted, troubles: problems.map(troubleOf) };
};

export const printClass = async (
  input: Input,
  table: string,
  layout: PaperChoices,
  fonts: Fonts,
): Promise<Printed> => {
  const { from, students, unread } = readClass(input, table);
  const made = await classSheets(from, students, unread, layout, meansWith(fonts));
  return printed({ called: calledAfter(from.plan.title), kind: 'class' }, made);
};

interface ReadClass {
  readonly from: ClassPlan;
  readonly students: readonly Student[];
  readonly unread: readonly Problem[];
}

const readClass = (input: Input, table: string): ReadClass => {
  const text = classText(input);
  const { name, plan, templates } = readOpen({ ...input, plan: text });
  if (name !== undefined) throw new ProblemError([PARTS_IN_CLASS]);
  const { students, problems: unread } = readStudents(table, PASTED_TABLE);
  if (students.length === 0) throw new ProblemError(unread);
  return { from: { text, fileName: PLAN_FILE, plan, templates }, students, unread };
};

/**
 * The plan that each piece is put into. What was taken of the design holds for all; how many swags go on a piece, and
 * the gap between them, are of the one piece that it was taken for.
 */
const classText = (input: Input): string => {
  if (takenIn(input) === undefined) return input.plan;
  const fit = chosenFit(input);
  const counts = listAt(input.plan, ['swag', 'repeats']);
  return withValues(takeFit(input.plan, fit, fit.ranked), [
    [['swag', 'repeats'], counts.length > 1 ? counts.map(Number) : counts[0]],
    [['swag', 'gap'], textAt(input.plan, ['swag', 'gap'])],
  ]);
};
