/** The first steps of every command that takes a plan: read it, read its templates, make the design. */

import { type KeyPath, type Place, type Problem, ProblemError } from '../document/index.ts';
import type { Part } from '../jobs/part.ts';
import { type Plan, readPlan } from '../plan/index.ts';
import { designFromPlan } from '../swag/index.ts';
import { readTemplate, type Template } from '../template/index.ts';
import { findPlanTemplate } from './find-template.ts';
import type { Io } from './io.ts';
import { sayProblems } from './messages.ts';
import { readTextFile } from './read-file.ts';

/** A plan with its templates, read and found to be in order. */
export interface PlanFiles {
  readonly plan: Plan;
  /** The plan as it is written. */
  readonly text: string;
  /** In the order in which the plan names them. */
  readonly templates: readonly Template[];
  /** The paths of all files that were read, the plan's first. */
  readonly inputs: readonly string[];
  /** The design knows no files: it names a template or a key, and this gives them their line and column. */
  readonly placed: (problem: Problem) => Problem;
}

export type Planned = PlanFiles & Part;

type PlaceAt = (path: KeyPath) => Place;

/** Throws a ProblemError with all problems of the plan, or of all its templates. */
export const readPlanFiles = async (io: Io, file: string): Promise<PlanFiles> => {
  const source = await readTextFile(io, file);
  const reading = readPlan(source.text, file);
  if (!reading.ok) throw new ProblemError(reading.problems);
  const { plan, placeAt } = reading.parts[0];
  await sayProblems(io, reading.notes);
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
  const placed = (problem: Problem): Problem => placedIn(problem, placeAt, places);
  if (problems.length > 0) throw new ProblemError(problems);
  return { plan, text: source.text, templates, inputs, placed };
};

/** The best design of a plan. Throws a ProblemError with all problems of the step that failed. */
export const planned = async (io: Io, file: string): Promise<Planned> => {
  const files = await readPlanFiles(io, file);
  const made = designFromPlan(files.plan, files.templates);
  if (!made.ok) throw new ProblemError(made.problems.map(files.placed));
  return { ...files, name: undefined, design: made.design };
};

/** A key as a person reads it, which counts from 1, as the path that it is. */
const pathOf = (key = ''): KeyPath =>
  key === '' ? [] : key.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) - 1 : step));

const placedIn = (problem: Problem, planPlace: PlaceAt, places: ReadonlyMap<string, PlaceAt>): Problem => {
  const template = problem.place && places.get(problem.place.file);
  if (!template && problem.place) return problem;
  const placeAt = template ?? planPlace;
  return { ...problem, place: placeAt(pathOf(problem.key)) };
};
