/** What `fit` does. */

import { dirname, isAbsolute, relative, resolve } from 'node:path';
import { ProblemError } from '../../document/index.ts';
import { refuseUnknownFills } from '../../jobs/part.ts';
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
import { type PlanFiles, readPlanFiles } from '../steps.ts';
import { sayUnprintable } from '../unprintable.ts';
import { type Output, openOutputs, type Wanted, writeTogether } from '../write-set.ts';
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
  const files = await readPlanFiles(io, file, options.part);
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
  const taken = take === undefined ? undefined : { ranked: results[take - 1]!, number: take };
  // Nothing is printed before what was asked for is written.
  await writeResults(io, file, files, shown, taken, options);
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

interface Taken {
  readonly ranked: Ranked;
  readonly number: number;
}

/** The sheet and the plan that are asked for: both or neither. */
const writeResults = async (
  io: Io,
  file: string,
  files: PlanFiles,
  shown: readonly Ranked[],
  taken: Taken | undefined,
  options: FitOptions,
): Promise<void> => {
  const wanted: Wanted[] = [];
  if (options.sheet !== undefined) wanted.push({ asked: options.sheet, option: '--sheet' });
  if (taken) wanted.push(takenOutput(file, files, taken, options));
  const outputs: readonly Output[] = await openOutputs(io, wanted, files.inputs);
  const parts: (readonly [Output, string | Uint8Array])[] = [];
  const said: string[] = [];
  if (options.sheet !== undefined) {
    // Only a sheet waits for what writes PDF.
    const { fitSheet } = await import('./fit-sheet.ts');
    const { bytes, words } = await fitSheet(files, shown, options);
    parts.push([outputs[0]!, bytes]);
    said.push(`${outputs[0]!.name}: ${words}`);
  }
  if (taken) {
    const output = outputs.at(-1)!;
    parts.push([output, takenText(io, file, files, taken, output.name)]);
    said.push(`${output.name}: the plan with result ${taken.number}, everything decided`);
  }
  await writeTogether(io, parts);
  if (options.sheet !== undefined) await sayUnprintable(io, files.plan.title, files.templates);
  for (const line of said) await say(io, line);
};

const takenOutput = (file: string, { text }: PlanFiles, { number }: Taken, options: FitOptions): Wanted =>
  options.inPlace
    ? { asked: file, was: text }
    : { asked: options.output, usual: defaultName(file, `fit-${number}`, 'yaml'), handwork: true };

const takenText = (
  io: Io,
  file: string,
  { plan, text, templates }: PlanFiles,
  { ranked }: Taken,
  to: string,
): string => {
  const index = templates.indexOf(ranked.fit.way.shape.stitching.template);
  const template = pathFrom(io, plan.templates[index]!, file, to);
  return planWithFit(text, { plan, ranked, template });
};

/** A template's path is meant from its plan's folder: from where the new plan will lie it may be another. */
const pathFrom = (io: Io, template: string, from: string, to: string): string => {
  if (isAbsolute(template) || !isPath(template)) return template;
  const oldFolder = dirname(resolve(io.cwd, from));
  const newFolder = dirname(resolve(io.cwd, to));
  if (oldFolder === newFolder) return template;
  const path = relative(newFolder, resolve(oldFolder, template)).replaceAll('\\', '/');
  return path.startsWith('.') || isAbsolute(path) ? path : `./${path}`;
};
