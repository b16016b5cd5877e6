/** What `fit` does. */

import { dirname, isAbsolute, relative, resolve } from 'node:path';
import { type Problem, ProblemError, quoted } from '../../document/index.ts';
import { fitsOf, nearestFits, nothingFits, unmetOf } from '../../jobs/fits.ts';
import type { Made } from '../../jobs/made.ts';
import { refuseUnknownFills } from '../../jobs/part.ts';
import { takeFit } from '../../jobs/take-fit.ts';
import { fitTableLines, plainSentence } from '../../output/text/index.ts';
import { readPlan } from '../../plan/index.ts';
import { type Kind, kindsOf, type Miss, type Ranked, type Search } from '../../swag/index.ts';
import { defaultName } from '../default-name.ts';
import { isPath } from '../find-template.ts';
import { fitAsData, missAsData } from '../fit-data.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import { readWhole } from '../option-values.ts';
import type { PaperOptions, PartOptions } from '../options.ts';
import { checkOutputOption } from '../output-option.ts';
import { readSheetOptions, refusePaper } from '../sheets.ts';
import { ofPart, type PlanFiles, type QuiltFiles, readQuiltFiles } from '../steps.ts';
import type { WishOptions } from '../wish-options.ts';
import { withWishes } from '../wished-plan.ts';
import { type Output, openOutputs, type Wanted, writeTogether } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface FitOptions extends PaperOptions, PartOptions, WishOptions {
  readonly json?: boolean;
  readonly most?: string;
  readonly all?: boolean;
  readonly sheet?: string;
  readonly take?: string;
  readonly output?: string;
  readonly inPlace?: boolean;
}

const USUALLY_SHOWN = 10;
/** More than anyone looks through, and pictures of them still fit a few pages. */
const MOST_SHOWN = 100;
/** Characters of a line: what terminals and printouts hold. */
const LINE = 100;

export const runFit = async (io: Io, file: string, options: FitOptions): Promise<void> => {
  const most = options.most === undefined ? USUALLY_SHOWN : readWhole('--most', options.most, 1, MOST_SHOWN);
  const take = options.take === undefined ? undefined : readWhole('--take', options.take, 1, 99_999);
  checkOptions(options);
  const quilt = await readQuiltFiles(io, file, options.part);
  if (quilt.parts.length > 1) {
    const parts = quilt.parts.map((part) => withWishes(part, options, file));
    return fitParts(io, { ...quilt, parts }, most, options);
  }
  const files = withWishes(quilt.parts[0]!, options, file);
  refuseUnknownFills(files);
  const { plan } = files;
  const found = foundFor(files, options);
  const { kinds, unmet } = found;
  if (kinds.length === 0) return refuse(io, files, found, options);
  if (take !== undefined && take > kinds.length)
    throw wrongValue('--take', 'there are not so many', {
      found: String(take),
      expected: `a number from 1 to ${kinds.length}`,
    });
  const shown = kinds.slice(0, most);
  const taken = take === undefined ? undefined : { ranked: kinds[take - 1]!.first, number: take };
  // Nothing is printed before what was asked for is written.
  await writeResults(io, file, files, shown, taken, options);
  if (options.json) await printJson(io, { units: 'mm and degrees', ...fitsAsData(files, found, most) });
  else if (take === undefined) {
    const lines = fitTableLines(kinds, { most, style: plan.marks.style, width: LINE });
    await io.stdout.write(`${lines.join('\n')}\n`);
  }
  // Who takes one of them takes it as it is.
  if (unmet && take === undefined) throw new ProblemError(unmet);
};

interface Found {
  /** Best first, what looks alike as one unless all are to be shown; where nothing meets all that is asked, what comes nearest. */
  readonly kinds: readonly Kind[];
  /** Why nothing meets it, where nothing does. */
  readonly unmet: readonly Problem[] | undefined;
  readonly misses: readonly Miss[];
  readonly rowMiss?: Search['rowMiss'];
}

const foundFor = (files: PlanFiles, { all }: FitOptions): Found => {
  const kinds = (results: readonly Ranked[]): readonly Kind[] =>
    all ? results.map((first) => ({ first, like: [] })) : kindsOf(results);
  const { results, misses, rowMiss } = fitsOf(files);
  const unmet = results.length > 0 || rowMiss ? undefined : unmetOf(files);
  return unmet
    ? { kinds: kinds(unmet.nearest), unmet: unmet.problems, misses: [] }
    : { kinds: kinds(results), unmet: undefined, misses, rowMiss };
};

/** What fits each part, one after another; the parts that nothing fits are told of at the end. */
const fitParts = async (io: Io, { parts }: QuiltFiles, most: number, options: FitOptions): Promise<void> => {
  for (const option of ['take', 'sheet'] as const)
    if (options[option] !== undefined)
      throw wrongValue(`--${option}`, 'it is for one part at a time, and the plan has several', {
        hint: 'name one with --part',
      });
  const data: object[] = [];
  const problems: Problem[] = [];
  for (const files of parts) {
    refuseUnknownFills(files);
    const found = foundFor(files, options);
    const { kinds, unmet, misses, rowMiss } = found;
    const { plan, name } = files;
    if (options.json) data.push({ part: name, ...fitsAsData(files, found, most) });
    else if (kinds.length > 0)
      await io.stdout.write(
        [`${name}:`, ...fitTableLines(kinds, { most, style: plan.marks.style, width: LINE }), '', ''].join(
          '\n',
        ),
      );
    const why = kinds.length > 0 ? (unmet ?? []) : nothingFits(files, nearestFits(misses, plan), rowMiss);
    problems.push(...why.map((problem) => ofPart(problem, files)));
  }
  if (options.json) await printJson(io, { units: 'mm and degrees', parts: data });
  if (problems.length > 0) throw new ProblemError(problems);
};

const fitsAsData = ({ plan }: PlanFiles, { kinds, unmet, misses }: Found, most: number): object => {
  const shown = kinds.slice(0, most).map((kind, i) => fitAsData(kind, i + 1, plan));
  if (unmet) return { found: 0, results: [], unmet: unmet.map(wordsOf), nearest: shown };
  return {
    found: kinds.reduce((sum, { like }) => sum + 1 + like.length, 0),
    kinds: kinds.length,
    results: shown,
    ...(kinds.length === 0 && { nearest: nearestFits(misses, plan).map((miss) => missAsData(miss, plan)) }),
  };
};

const wordsOf = ({ message, found, hint }: Problem): object => ({ message, found, hint });

const checkOptions = (options: FitOptions): void => {
  const { take, output, inPlace, json, sheet } = options;
  checkOutputOption({ ...(output === undefined ? {} : { output }), json: json ?? false }, 'yaml');
  if (sheet !== undefined) checkOutputOption({ output: sheet, json: json ?? false }, 'pdf', '--sheet');
  if (sheet === undefined)
    refusePaper(options, 'it is for a contact sheet', 'name one with --sheet, such as --sheet choices.pdf');
  if (take === undefined && output !== undefined)
    throw wrongValue('--output', 'it says where --take writes, and there is no --take', {
      hint: 'add --take and the number of a result; for a contact sheet say --sheet',
    });
  if (take === undefined && inPlace) throw wrongValue('--in-place', 'there is no --take');
  if (output !== undefined && inPlace) throw wrongValue('--in-place', 'it cannot go with --output');
  if (output === '-' && sheet === '-') throw wrongValue('--sheet', 'two files cannot both go to stdout');
};

const refuse = async (io: Io, files: PlanFiles, found: Found, options: FitOptions): Promise<never> => {
  if (options.json) await printJson(io, { units: 'mm and degrees', ...fitsAsData(files, found, 0) });
  throw new ProblemError(nothingFits(files, nearestFits(found.misses, files.plan), found.rowMiss));
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
  shown: readonly Kind[],
  taken: Taken | undefined,
  options: FitOptions,
): Promise<void> => {
  const wanted: Wanted[] = [];
  if (options.sheet !== undefined) wanted.push({ asked: options.sheet, option: '--sheet' });
  if (taken) wanted.push(takenOutput(file, files, taken, options));
  const outputs: readonly Output[] = await openOutputs(io, wanted, files.inputs);
  const parts: (readonly [Output, string | Uint8Array])[] = [];
  const said: string[] = [];
  const notices: string[] = [];
  if (options.sheet !== undefined) {
    // Only a sheet waits for what writes PDF.
    const made = await sheetOf(files, shown, options);
    parts.push([outputs[0]!, made.bytes]);
    notices.push(...(made.notices ?? []));
    said.push(`${outputs[0]!.name}: ${made.words}`);
  }
  if (taken) {
    const output = outputs.at(-1)!;
    const { style } = files.plan.marks;
    parts.push([
      output,
      takeFit(files.asked ?? files.text, files, taken.ranked, (template) =>
        pathFrom(io, files, template, file, output.name),
      ),
    ]);
    said.push(
      `${output.name}: the plan with result ${taken.number}${options.all ? ' of --all' : ''}${files.name === undefined ? ', everything decided' : ` for ${files.name}, the other parts as they were`}`,
      plainSentence(taken.ranked, style),
    );
  }
  await writeTogether(io, parts);
  for (const line of [...notices, ...said]) await say(io, line);
};

const sheetOf = async (files: PlanFiles, shown: readonly Kind[], options: FitOptions): Promise<Made> => {
  const [{ contactSheet }, { MEANS }] = await Promise.all([
    import('../../jobs/contact-sheet.ts'),
    import('../means.ts'),
  ]);
  const { units, paper } = files.plan;
  return contactSheet(files, shown, readSheetOptions(options, units, paper), MEANS);
};

const takenOutput = (
  file: string,
  { text, name }: PlanFiles,
  { number }: Taken,
  options: FitOptions,
): Wanted =>
  options.inPlace
    ? { asked: file, was: text }
    : { asked: options.output, usual: defaultName(file, `fit-${number}`, 'yaml', name), handwork: true };

/**
 * A template's path is meant from its plan's folder: from where the new plan will lie it may be another. Paths that other
 * parts name are theirs, and are not rewritten: such a plan stays in its folder.
 */
const pathFrom = (io: Io, { name, text }: PlanFiles, template: string, from: string, to: string): string => {
  const oldFolder = dirname(resolve(io.cwd, from));
  const newFolder = dirname(resolve(io.cwd, to));
  if (oldFolder === newFolder) return template;
  const reading = name === undefined ? undefined : readPlan(text, from);
  const others = reading?.ok ? reading.parts.filter(({ plan }) => plan.part?.name !== name) : [];
  const theirs = others.flatMap(({ plan }) => plan.templates).find((t) => isPath(t) && !isAbsolute(t));
  if (theirs !== undefined)
    throw wrongValue(
      '--output',
      'other parts name templates by paths, which are meant from the folder of their plan',
      {
        found: quoted(theirs),
        hint: 'write the plan into the folder of the first one',
      },
    );
  if (isAbsolute(template) || !isPath(template)) return template;
  const path = relative(newFolder, resolve(oldFolder, template)).replaceAll('\\', '/');
  return path.startsWith('.') || isAbsolute(path) ? path : `./${path}`;
};
