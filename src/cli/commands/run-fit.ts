/** What `fit` does. */

import { dirname, isAbsolute, relative, resolve } from 'node:path';
import { ProblemError } from '../../document/index.ts';
import { planWithFit } from '../../output/plan-file/index.ts';
import { fitTableLines } from '../../output/text/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  describeMiss,
  type Miss,
  nearestMisses,
  noWayHint,
  type Ranked,
  searchPlan,
  smallestChange,
} from '../../swag/index.ts';
import { defaultName } from '../default-name.ts';
import { isPath } from '../find-template.ts';
import { fitAsData, missAsData } from '../fit-data.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import { readWhole } from '../option-values.ts';
import { checkOutputOption } from '../output-option.ts';
import { type PlanFiles, readPlanFiles, refuseUnknownFills } from '../steps.ts';
import { openOutput } from '../write-file.ts';
import { wrongValue } from '../wrong-use.ts';
import type { FitOptions } from './fit.ts';

const USUALLY_SHOWN = 10;
/** More than anyone looks through, and pictures of them still fit a few pages. */
const MOST_SHOWN = 100;
/** Near misses that are told; the rest are farther off. */
const NEAREST = 5;
/** Near misses for which a change is looked for: each takes some searches. */
const LOOKED_AT = 15;
/** Characters of a line: what terminals and printouts hold. */
const LINE = 100;

export const runFit = async (io: Io, file: string, options: FitOptions): Promise<void> => {
  const most = options.most === undefined ? USUALLY_SHOWN : readWhole('--most', options.most, 1, MOST_SHOWN);
  const take = options.take === undefined ? undefined : readWhole('--take', options.take, 1, 99_999);
  checkOptions(options);
  const files = await readPlanFiles(io, file);
  refuseUnknownFills(files);
  const { plan } = files;
  const searched = searchPlan(plan, files.templates);
  if (!searched.ok) throw new ProblemError(searched.problems.map(files.placed));
  const { results, misses } = searched.search;
  if (results.length === 0) return nothingFits(io, files, helpedFirst(nearestMisses(misses), plan), options);
  if (take !== undefined && take > results.length)
    throw wrongValue('--take', 'there are not so many', {
      found: String(take),
      expected: `a number from 1 to ${results.length}`,
    });
  const shown = results.slice(0, most);
  if (options.sheet !== undefined) {
    // Only a sheet waits for what writes PDF. Where no page holds it, nothing is printed before that is said.
    const { writeFitSheet } = await import('./write-fit-sheet.ts');
    await writeFitSheet(io, options.sheet, files, shown, options);
  }
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      found: results.length,
      results: shown.map((ranked, i) => fitAsData(ranked, i + 1, plan)),
    });
  else if (take === undefined) {
    const lines = fitTableLines(results, { most, style: plan.marks.style, width: LINE });
    await io.stdout.write(`${lines.join('\n')}\n`);
  }
  if (take !== undefined) await writeTaken(io, file, files, results[take - 1]!, take, options);
};

/** The nearest for which a change is known come before nearer ones that nothing helps. */
const helpedFirst = (nearest: readonly Miss[], plan: Plan): readonly Miss[] => {
  const looked = nearest.slice(0, LOOKED_AT);
  const helped = looked.filter((miss) => smallestChange(miss, plan) !== undefined);
  return [...helped, ...looked.filter((miss) => !helped.includes(miss))].slice(0, NEAREST);
};

const checkOptions = (options: FitOptions): void => {
  const { take, output, inPlace, json, sheet } = options;
  checkOutputOption({ ...(output === undefined ? {} : { output }), json: json ?? false }, 'yaml');
  if (sheet !== undefined) checkOutputOption({ output: sheet, json: json ?? false }, 'pdf');
  if (take === undefined && output !== undefined)
    throw wrongValue('--output', 'it says where --take writes, and there is no --take', {
      hint: 'add --take and the number of a result; for a contact sheet say --sheet',
    });
  if (take === undefined && inPlace) throw wrongValue('--in-place', 'there is no --take');
  if (output !== undefined && inPlace) throw wrongValue('--in-place', 'it cannot go with --output');
  if (output === '-' && sheet === '-') throw wrongValue('--sheet', 'two files cannot both go to stdout');
};

const nothingFits = async (
  io: Io,
  { plan, placed }: PlanFiles,
  nearest: readonly Miss[],
  options: FitOptions,
): Promise<never> => {
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      found: 0,
      results: [],
      nearest: nearest.map((miss) => missAsData(miss, plan)),
    });
  throw new ProblemError([
    placed({
      code: 'nothing-fits',
      key: 'layout',
      message: 'nothing fits this layout',
      ...(nearest.length === 0 ? { hint: noWayHint(plan) } : {}),
    }),
    ...nearest.map((miss, i) => {
      const { found, hint } = describeMiss(miss, plan);
      return {
        code: 'nearest',
        message: `nearest ${i + 1}: ${found?.replace(/^nearest: /, '') ?? ''}`,
        ...(hint === undefined ? {} : { hint }),
      };
    }),
  ]);
};

const writeTaken = async (
  io: Io,
  file: string,
  { plan, text, templates, inputs }: PlanFiles,
  ranked: Ranked,
  number: number,
  options: FitOptions,
): Promise<void> => {
  const name = options.inPlace ? file : (options.output ?? defaultName(file, `-fit-${number}.yaml`));
  // Only --in-place may write over the plan, and nothing may write over a template.
  const output = await openOutput(io, name, options.inPlace ? inputs.slice(1) : inputs);
  const index = templates.indexOf(ranked.fit.way.shape.stitching.template);
  const template = plan.templates[index]!;
  const moved = pathFrom(io, template, file, name);
  await output.write(planWithFit(text, { plan, ranked, template: moved }));
  await say(io, `${output.name}: the plan with result ${number}, everything decided`);
};

/** A template's path is meant from its plan's folder: from where the new plan will lie it may be another. */
const pathFrom = (io: Io, template: string, from: string, to: string): string => {
  if (isAbsolute(template) || !isPath(template)) return template;
  const oldFolder = dirname(resolve(io.cwd, from));
  const newFolder = to === '-' ? io.cwd : dirname(resolve(io.cwd, to));
  if (oldFolder === newFolder) return template;
  const path = relative(newFolder, resolve(oldFolder, template)).replaceAll('\\', '/');
  return path.startsWith('.') || isAbsolute(path) ? path : `./${path}`;
};
