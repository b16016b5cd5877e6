/** What `audition` does. */

import type { Problem } from '../../document/index.ts';
import type { LayerId } from '../../drawing/index.ts';
import { FILLS, type Fill } from '../../fill/index.ts';
import { type Audition, audition, CORNERS_TO_FILL } from '../../jobs/audition.ts';
import { refuseUnknownFills } from '../../jobs/part.ts';
import { INCH_SIXTYFOURTH as FINEST, formatLength } from '../../length/index.ts';
import {
  setLetter,
  type Together,
  TRIAL_REGIONS,
  type Trial,
  type TrialRegion,
} from '../../output/audition/index.ts';
import { MOST_ON_PAGE } from '../../output/contact-sheet/index.ts';
import { LIMITS, type Plan } from '../../plan/index.ts';
import { asAsked } from '../asked.ts';
import { defaultName } from '../default-name.ts';
import { eachPart } from '../each-part.ts';
import type { Io } from '../io.ts';
import { readWithout } from '../layers.ts';
import { MEANS } from '../means.ts';
import { printJson } from '../messages.ts';
import { readLengthOption, readWhole, readWord } from '../option-values.ts';
import type { LayerOptions, OutputOptions, PaperOptions, PartOptions, ShowOptions } from '../options.ts';
import { checkOutputOption } from '../output-option.ts';
import { sayMade } from '../say-made.ts';
import { readSheetOptions } from '../sheets.ts';
import { type Planned, plannedQuilt } from '../steps.ts';
import { openOutputs, writeTogether } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface AuditionOptions extends OutputOptions, PaperOptions, PartOptions, ShowOptions, LayerOptions {
  readonly region?: string;
  readonly fills?: readonly string[];
  readonly spacing?: string;
  readonly empty?: string;
  readonly scale?: string;
}

/** Small enough that nothing is left to see. */
const LEAST_SCALE = 1;
const MOST_SCALE = 100;

export const runAudition = async (io: Io, file: string, options: AuditionOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const choices = readChoices(options);
  const { parts } = await plannedQuilt(io, file, options.part);
  if (parts.length > 1 && options.output !== undefined)
    throw wrongValue('--output', 'the plan has several parts, and each gets a file of its own', {
      hint: 'name one with --part',
    });
  // A misspelt fill is told before the first picture is made, which may take a while.
  await eachPart(parts, async (part) => refuseUnknownFills(part));
  const made = await eachPart(parts, (part) => makeAudition(file, part, choices, options));
  const [asked, inputs] = [options.output, [...new Set(parts.flatMap((part) => part.inputs))]];
  const outputs = await openOutputs(
    io,
    made.map(({ usual }) => ({ asked, usual })),
    inputs,
  );
  const written = made.map(({ audition: { bytes } }, i) => [outputs[i]!, bytes] as const);
  await writeTogether(io, written);
  const data: object[] = [];
  for (const [i, each] of made.entries()) {
    await sayMade(io, outputs[i]!, each.audition);
    data.push(dataOf(each, outputs[i]!.name));
  }
  if (!options.json) return;
  const units = 'mm and degrees';
  await printJson(io, parts.length === 1 ? { units, ...data[0] } : { units, parts: data });
};

interface MadePart {
  readonly name: string | undefined;
  readonly choices: Choices;
  /** What its file is called where nobody says. */
  readonly usual: string;
  readonly audition: Audition;
}

/** The pictures of one part. */
const makeAudition = async (
  file: string,
  part: Planned,
  choices: Choices,
  options: AuditionOptions,
): Promise<MadePart> => {
  const { plan, name } = part;
  const spacings = readSpacings(options, plan);
  const pages = readSheetOptions(options, plan.units, plan.paper);
  const usual = defaultName(file, choices.empty ? 'frames' : 'audition', 'pdf', name);
  const wanted = { ...choices, show: options.show, spacings, pages };
  const made = await asAsked(options, () => audition(part, wanted, MEANS), saidOf(options, choices));
  return { name, choices, usual, audition: made };
};

const dataOf = (
  { name, choices, audition: { shown, written, trials, sets } }: MadePart,
  file: string,
): object => ({
  ...(name !== undefined && { part: name }),
  file,
  shows: shown.scope.label,
  paper: written.paper,
  pages: written.pages,
  empty: choices.empty ?? 0,
  scales: written.reductions.map((r) => `1:${r}`),
  together: sets.map(setAsData),
  fills: trials.map(trialAsData),
});

interface Choices {
  readonly region: TrialRegion | undefined;
  readonly fills: readonly Fill[] | undefined;
  readonly empty: number | undefined;
  readonly reduction: number | undefined;
  readonly without: readonly LayerId[];
}

const readChoices = (options: AuditionOptions): Choices => {
  const { region, fills, spacing, empty, scale } = options;
  const other = Object.entries({ region, fills, spacing }).find(([, value]) => value !== undefined)?.[0];
  if (empty !== undefined && other !== undefined)
    throw wrongValue('--empty', `an empty frame is filled with nothing: it cannot go with --${other}`);
  const names = FILLS.map((f) => f.name);
  const chosen = fills?.map((name) => FILLS[names.indexOf(readWord('--fills', name, names))]!);
  return {
    region: region === undefined ? undefined : readWord('--region', region, TRIAL_REGIONS),
    fills: chosen && [...new Set(chosen)],
    empty: empty === undefined ? undefined : readWhole('--empty', empty, 1, MOST_ON_PAGE),
    reduction: scale === undefined ? undefined : readScale(scale),
    without: readWithout(options),
  };
};

/** `2`, `1.5`, and `1:2` as it stands on the sheets. */
const readScale = (text: string): number => {
  const digits = /^(?:1\s*:\s*)?(\d{1,3}(?:\.\d{1,3})?)$/.exec(text.trim())?.[1];
  const value = Number(digits ?? Number.NaN);
  if (value >= LEAST_SCALE && value <= MOST_SCALE) return value;
  throw wrongValue('--scale', 'not a scale', {
    found: `“${text}”`,
    expected: `a number from ${LEAST_SCALE} to ${MOST_SCALE}: 1 for true size, 2 for half of it`,
  });
};

const readSpacings = ({ spacing }: AuditionOptions, plan: Plan): readonly number[] => {
  const lengths = (spacing?.split(',') ?? []).map((text) =>
    readLengthOption('--spacing', text.trim(), plan.units, 'positive'),
  );
  const { least, most } = LIMITS.spacing;
  const odd = lengths.find((mm) => !(mm >= least && mm <= most));
  if (odd !== undefined)
    throw wrongValue('--spacing', 'no spacing for quilting', {
      found: formatLength(odd, plan.marks.style),
      expected: `${formatLength(least, FINEST)} to ${formatLength(most, FINEST)}`,
    });
  return [...new Set(lengths)];
};

/** The words of this command's options for what may be in the way. */
const saidOf =
  ({ scale, spacing }: AuditionOptions, { empty, region }: Choices) =>
  (problem: Problem): Problem => {
    if (problem.code === 'spacing-too-fine' && spacing !== undefined) return { ...problem, key: '--spacing' };
    if (problem.code === 'nothing-suits')
      return { ...problem, key: '--fills', hint: 'to try it elsewhere say --region swag or background' };
    if (problem.code === 'nothing-to-fill' && region === 'corner')
      return {
        ...problem,
        hint: `${CORNERS_TO_FILL}; and --show must hold one`,
      };
    if (problem.code === 'frame-too-large')
      return {
        ...problem,
        key: '--scale',
        found: scale ?? '1',
        hint:
          empty === 1 || scale === undefined
            ? 'take larger paper with --paper, or show less with --show'
            : scale === '1' && empty !== undefined
              ? 'take a larger number for smaller pictures, or --empty 1, which goes on as many sheets as it takes'
              : 'take a larger number for smaller pictures, larger paper with --paper, or show less with --show',
      };
    return problem;
  };

const setAsData = ({ inside, channels, background, planned }: Together, index: number): object => ({
  letter: setLetter(index),
  inside,
  channels,
  background,
  asInPlan: planned,
});

const trialAsData = (trial: Trial, index: number): object => ({
  number: index + 1,
  fill: trial.fill.name,
  region: trial.region,
  spacing: trial.spacing ?? null,
  seed: trial.seed,
  asInPlan: trial.planned,
  lines: trial.lines,
  stitchedPerSwag: trial.length,
  messages: trial.messages,
});
