/** A template that the command line names. */

import { ProblemError } from '../document/index.ts';
import type { TemplateFile } from '../jobs/outline.ts';
import { readTemplate } from '../template/index.ts';
import { findNamedTemplate } from './find-template.ts';
import type { Io } from './io.ts';
import { readTextFile, type TextFile } from './read-file.ts';

/** Throws a ProblemError with all that is wrong with it. */
export const readTemplateFile = async (io: Io, name: string): Promise<TemplateFile & TextFile> => {
  const source = await readTextFile(io, await findNamedTemplate(io, name));
  const reading = readTemplate(source.text, source.name);
  if (!reading.ok) throw new ProblemError(reading.problems);
  const { template, placeAt, units } = reading;
  return { template, placeAt, units, ...source };
};
