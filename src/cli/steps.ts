/** The first steps of every command that takes a plan: read it, read its templates, make the design. */

import {
  type KeyPath,
  keyName,
  nearestOf,
  type Place,
  type Problem,
  ProblemError,
  quoted,
  series,
} from '../document/index.ts';
import type { Part } from '../jobs/part.ts';
import { overlaps, type PartReading, type Plan, readPlan } from '../plan/index.ts';
import { designFromPlan, frameSize, isRound } from '../swag/index.ts';
import { readTemplate, type Template } from '../template/index.ts';
import { findPlanTemplate } from './find-template.ts';
import type { Io } from './io.ts';
import { sayProblems } from './messages.ts';
import { readTextFile } from './read-file.ts';
import { wrongValue } from './wrong-use.ts';

/** A plan with its templates, read and found to be in order. */
export interface PlanFiles {
  /** What the plan calls this part; undefined where the plan is one design. */
  readonly name: string | undefined;
  /** Where in the plan's file it stands. */
  readonly own: PartReading;
  readonly plan: Plan;
  /** The plan as it is written, and with what options ask of it. */
  readonly text: string;
  readonly asked?: string;
  /** In the order in which the plan names them. */
  readonly templates: readonly Template[];
  /** The paths of all files that were read, the plan's first. */
  readonly inputs: readonly string[];
  /** The design knows no files: it names a template or a key, and this gives them their line and column. */
  readonly placed: (problem: Problem) => Problem;
}

export type Planned = PlanFiles & Part;

type PlaceAt = (path: KeyPath) => Place;
type TemplateReading = ReturnType<typeof readTemplate>;

/** A plan's parts, or those that were asked for. */
export interface QuiltFiles {
  /** Of the whole quilt. */
  readonly title: string;
  /** One at least, in the order of the file. */
  readonly parts: readonly PlanFiles[];
  /** The paths of all files that were read, the plan's first. */
  readonly inputs: readonly string[];
}

export interface PlannedQuilt {
  readonly title: string;
  readonly parts: readonly Planned[];
  readonly inputs: readonly string[];
}

/** All parts of a plan, or those of `wanted` alone. Throws a ProblemError with all problems of the plan and its templates. */
export const readQuiltFiles = async (
  io: Io,
  file: string,
  wanted: readonly string[] | undefined,
): Promise<QuiltFiles> => {
  const source = await readTextFile(io, file);
  const reading = readPlan(source.text, file);
  if (!reading.ok) throw new ProblemError(reading.problems);
  await sayProblems(io, reading.notes);
  const read = templateReader(io, file);
  const problems: Problem[] = [];
  const parts: PlanFiles[] = [];
  for (const own of partsNamed(reading.parts, wanted)) {
    const { plan } = own;
    const found = await read(own);
    problems.push(...found.problems);
    const placed = (problem: Problem): Problem => placedIn(problem, own, found.places);
    const inputs = [source.path, ...found.paths];
    parts.push({
      name: plan.part?.name,
      own,
      plan,
      text: source.text,
      templates: found.templates,
      inputs,
      placed,
    });
  }
  if (problems.length > 0) throw new ProblemError(onceEach(problems));
  return { title: reading.title, parts, inputs: [...new Set(parts.flatMap((part) => part.inputs))] };
};

/** Where a plan names a template: for all its swags, or for a kind, a corner or a row. */
const templateKey = ({ swag, corner, rows }: Plan, name: string): KeyPath => {
  const places = [
    { key: ['template'], names: swag.templates },
    ...(swag.alternate ?? []).map((kind, i) => ({
      key: ['swag', 'alternate', i, 'template'],
      names: kind.templates,
    })),
    ...(corner ? [{ key: ['corner', 'template'], names: corner.templates }] : []),
    ...rows.map((row, i) => ({ key: ['rows', i, 'template'], names: row.swag.templates })),
  ];
  const { key, names } = places.find((place) => place.names.includes(name))!;
  return names.length > 1 ? [...key, names.indexOf(name)] : key;
};

/** Reads each template once, whichever parts name it. */
const templateReader = (io: Io, file: string) => {
  const known = new Map<string, Promise<{ readonly path: string; readonly reading: TemplateReading }>>();
  const readOne = async (path: string) => {
    const found = await readTextFile(io, path, true);
    return { path: found.path, reading: readTemplate(found.text, found.name) };
  };
  return async ({ plan, placeAt, pathOf }: PartReading) => {
    const templates: Template[] = [];
    const places = new Map<string, PlaceAt>();
    const problems: Problem[] = [];
    const paths: string[] = [];
    for (const name of plan.templates) {
      const key = templateKey(plan, name);
      const where = { place: placeAt(key), key: keyName(pathOf(key)) };
      try {
        const path = await findPlanTemplate(io, file, name, where);
        const found = known.get(path) ?? readOne(path);
        known.set(path, found);
        const { reading, path: readFrom } = await found;
        paths.push(readFrom);
        if (reading.ok) {
          templates.push(reading.template);
          places.set(reading.template.name, reading.placeAt);
        } else problems.push(...reading.problems);
      } catch (error) {
        if (!(error instanceof ProblemError)) throw error;
        problems.push(...error.problems.map((problem) => namedAt(where, problem)));
      }
    }
    return { templates, places, problems, paths };
  };
};

/** A file that cannot be read does not say who wants it. */
const namedAt = ({ place, key }: Required<Pick<Problem, 'place' | 'key'>>, problem: Problem): Problem => {
  if (problem.key !== undefined || problem.hint !== undefined) return problem;
  const line = place.line === undefined ? '' : `:${place.line}`;
  return { ...problem, hint: `${place.file}${line} names it under ${key}` };
};

/** What several parts share is said once. */
const onceEach = (problems: readonly Problem[]): readonly Problem[] => {
  const said = new Set<string>();
  return problems.filter((problem) => {
    const words = JSON.stringify(problem);
    return !said.has(words) && said.add(words);
  });
};

const partsNamed = (
  parts: readonly PartReading[],
  wanted: readonly string[] | undefined,
): readonly PartReading[] => {
  if (wanted === undefined) return parts;
  const names = parts.flatMap(({ plan }) => (plan.part ? [plan.part.name] : []));
  if (names.length === 0) throw wrongValue('--part', 'this plan is one design, without parts');
  const unknown = wanted.filter((name) => !names.includes(name));
  if (unknown.length === 0) return parts.filter(({ plan }) => wanted.includes(plan.part?.name ?? ''));
  const near = unknown.flatMap((name) => nearestOf(name, names) ?? []).map(quoted);
  throw wrongValue('--part', `this plan has no such part${unknown.length > 1 ? 's' : ''}`, {
    found: series(unknown.map(quoted)),
    expected: `one of ${names.join(', ')}`,
    ...(near.length > 0 && { hint: `did you mean ${series(near)}?` }),
  });
};

/** The best design of each part. Throws a ProblemError with all problems of the step that failed. */
export const plannedQuilt = async (
  io: Io,
  file: string,
  wanted: readonly string[] | undefined,
): Promise<PlannedQuilt> => {
  const quilt = await readQuiltFiles(io, file, wanted);
  const problems: Problem[] = [];
  const parts: Planned[] = [];
  for (const files of quilt.parts) {
    const made = designFromPlan(files.plan, files.templates);
    if (made.ok) parts.push({ ...files, design: made.design });
    else problems.push(...made.problems.map(files.placed).map((problem) => ofPart(problem, files)));
  }
  if (problems.length > 0) throw new ProblemError(problems);
  // A round frame without a limit takes the room that its swags do, and those are known only now.
  const across = (plan: Plan): number | undefined => {
    const design = parts.find((part) => part.plan === plan)?.design;
    return design && isRound(design.fit) ? frameSize(design)?.width : undefined;
  };
  const lying = overlaps(
    parts.map(({ own }) => own),
    across,
  );
  if (lying.length > 0) throw new ProblemError(lying);
  return { ...quilt, parts };
};

/** Several parts may have the same problem: which one has it is said where no key of the plan says it. */
export const ofPart = (problem: Problem, { name }: Pick<PlanFiles, 'name'>): Problem =>
  name === undefined || !(problem.key === undefined || problem.key.startsWith('--'))
    ? problem
    : { ...problem, message: `${name}: ${problem.message}` };

/** A key as a person reads it, which counts from 1, as the path that it is. */
const pathOf = (key = ''): KeyPath =>
  key === '' ? [] : key.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) - 1 : step));

const placedIn = (problem: Problem, own: PartReading, templates: ReadonlyMap<string, PlaceAt>): Problem => {
  const key = pathOf(problem.key);
  const template = problem.place && templates.get(problem.place.file);
  if (template) return { ...problem, place: template(key) };
  if (problem.place) return problem;
  const name = keyName(own.pathOf(key));
  return { ...problem, place: own.placeAt(key), ...(name !== '' && { key: name }) };
};
