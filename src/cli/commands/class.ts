/** `class PLAN STUDENTS`: what a class needs on paper, as one file. */

import type { Define } from '../define.ts';
import { addJson, addOutput, addSheets } from '../options.ts';
import type { ClassOptions } from './run-class.ts';

export const defineClass: Define = (command, io) => {
  command
    .description(
      'Print what a class needs, as one PDF: a page for the teacher, and for each student a cover, the mock-up of her ' +
        'own piece, the marking card, the outline of the template with a spacer, and an empty frame to practise in.',
    )
    .argument('<plan>', 'the plan file (YAML) of one strip')
    .argument('<students>', 'the table of students: name, length and width of each piece (CSV or YAML)');
  addOutput(command, 'the PDF to write', "the plan's name and -class.pdf");
  addSheets(command);
  addJson(command)
    .addHelpText('after', HELP)
    .action(async (plan: string, students: string, options: ClassOptions) => {
      const { runClass } = await import('./run-class.ts');
      await runClass(io, plan, students, options);
    });
};

const HELP = `
Examples:
  swagwright class table-runner.yaml students.csv
  swagwright class table-runner.yaml students.yaml -o saturday.pdf --paper a4

The table's first line names its columns: name,length,width. A piece without a width is as wide as the plan's
strip; lengths are in the plan's units unless they say another. In YAML it is a list under students:
  - { name: Ada, length: 36, width: 6 }
Where something is wrong with one student's line the others are made, and the exit status is 1.`;
