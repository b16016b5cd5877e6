/** The first steps of every command that takes a plan: read it, read its templates, make the design. */

import { type KeyPath, type Place, type Problem, ProblemError } from '../document/index.ts';
import { type Plan, readPlan } from '../plan/index.ts';
import { type Design, designFromPlan } from '../swag/index.ts';
import { readTemplate, type Template } from '../template/index.ts';
import { findPlanTemplate } from './find-template.ts';
import type { Io } from './io.ts';
import { readTextFile } from './read-file.ts';

export interface Planned {
  readonly plan: Plan;
  readonly design: Design;
  /** The paths of all files that were read. */
  readonly inputs: readonly string[];
}

type PlaceAt = (path: KeyPath) => Place;

/** Throws a ProblemError with all problems of the step that failed. */
export const planned = async (io: Io, file: string): Promise<Planned> => {
  const source = await readTextFile(io, file);
  const reading = readPlan(source.text, file);
  if (!reading.ok) throw new ProblemError(reading.problems);
  const { plan, placeAt } = reading;
  const inputs = [source.path];
  const templates: Template[] = [];
  const places = new Map<string, PlaceAt>();
  const problems: Problem[] = [];
  for (const name of plan.templates) {
    const path = await findPlanTemplate(io, file, name, placeAt(['template']));
    const found = await readTextFile(io, path, true);
    const read = readTemplate(found.text, found.name);
    inputs.push(found.path);
    if (read.ok) {
      templates.push(read.template);
      places.set(read.template.name, read.placeAt);
    } else problems.push(...read.problems);
  }
  if (problems.length > 0) throw new ProblemError(problems);
  const made = designFromPlan(plan, templates);
  if (!made.ok) throw new ProblemError(made.problems.map((p) => placed(p, placeAt, places)));
  return { plan, design: made.design, inputs };
};

/** The design knows no files: it names a template or a key, and here they get their line and column. */
const placed = (problem: Problem, planPlace: PlaceAt, places: ReadonlyMap<string, PlaceAt>): Problem => {
  const template = problem.place && places.get(problem.place.file);
  if (!template && problem.place) return problem;
  const placeAt = template ?? planPlace;
  return { ...problem, place: placeAt(problem.key?.split('.') ?? []) };
};
