/** What `audition` does. */

import { ProblemError, plural } from '../../document/index.ts';
import { drawPlan, type Scope } from '../../drawing/index.ts';
import { FILLS, type Fill } from '../../fill/index.ts';
import { refuseUnknownFills } from '../../jobs/part.ts';
import { INCH_SIXTYFOURTH as FINEST, formatLength } from '../../length/index.ts';
import {
  hasRegion,
  REGION_WORDS,
  type AuditionOptions as SheetOptions,
  suitsRegion,
  TRIAL_REGIONS,
  type Trial,
  type TrialRegion,
  trialsFor,
  writeAudition,
  writeEmptyFrames,
} from '../../output/audition/index.ts';
import { MOST_ON_PAGE, PAGE_TOO_SMALL, type WrittenPictures } from '../../output/contact-sheet/index.ts';
import { LIMITS, type Plan } from '../../plan/index.ts';
import type { Design } from '../../swag/index.ts';
import { defaultName } from '../default-name.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import { readLengthOption, readWhole, readWord } from '../option-values.ts';
import { checkOutputOption } from '../output-option.ts';
import { readPages } from '../pages.ts';
import { pdfMeans } from '../render-pdf.ts';
import { readShow } from '../show.ts';
import { planned } from '../steps.ts';
import { sayUnprintable } from '../unprintable.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';
import type { AuditionOptions } from './audition.ts';

/** Small enough that nothing is left to see. */
const LEAST_SCALE = 1;
const MOST_SCALE = 100;

export const runAudition = async (io: Io, file: string, options: AuditionOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const wanted = readChoices(options);
  const files = await planned(io, file, options.part);
  refuseUnknownFills(files);
  const { plan, design: whole, inputs } = files;
  const spacings = readSpacings(options, plan);
  const setups = readPages(options, plan.units, plan.paper);
  if (wanted.region === 'corner' && !whole.corner) throw nothingThere(plan, wanted.region);
  const show = options.show ?? (wanted.region === 'corner' ? 'corner' : 'repeat');
  const { design, scope } = readShow(whole, show);
  const base = drawPlan(design, plan, scope, { ghosts: false, withFills: false });
  const usual = defaultName(file, wanted.empty ? 'frames' : 'audition');
  const output = await openOutput(io, { asked: options.output, usual }, inputs);
  const sheet: SheetOptions = {
    title: plan.title,
    units: plan.units,
    style: plan.marks.style,
    setups,
    channels: base.channels,
    reduction: wanted.scale,
    ...(await pdfMeans()),
  };
  for (const message of base.messages) await say(io, message);
  const trials = wanted.empty === undefined ? allTrials(design, scope, plan, { ...wanted, spacings }) : [];
  const written =
    wanted.empty === undefined
      ? await writeAudition(design, scope, trials, sheet)
      : await writeEmptyFrames(design, scope, wanted.empty, sheet);
  if (!written && wanted.scale === undefined && wanted.empty !== 1) throw new ProblemError([PAGE_TOO_SMALL]);
  if (!written) throw tooLarge(options, wanted.empty);
  await output.write(written.bytes);
  await sayUnprintable(io, plan.title, files.templates);
  const what =
    wanted.empty === undefined
      ? `${plural(trials.length, 'fill')} to choose from`
      : plural(wanted.empty, 'empty frame');
  await say(io, `${output.name}: ${what}, ${sheetWords(written)}`);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      shows: scope.label,
      paper: written.paper,
      pages: written.pages,
      empty: wanted.empty ?? 0,
      scales: written.reductions.map((r) => `1:${r}`),
      fills: trials.map(trialAsData),
    });
};

interface Choices {
  readonly region: TrialRegion | undefined;
  readonly fills: readonly Fill[] | undefined;
  readonly empty: number | undefined;
  readonly scale: number | undefined;
}

const readChoices = ({ region, fills, spacing, empty, scale }: AuditionOptions): Choices => {
  const other = Object.entries({ region, fills, spacing }).find(([, value]) => value !== undefined)?.[0];
  if (empty !== undefined && other !== undefined)
    throw wrongValue('--empty', `an empty frame is filled with nothing: it cannot go with --${other}`);
  const names = FILLS.map((f) => f.name);
  const chosen = fills?.map((name) => FILLS[names.indexOf(readWord('--fills', name, names))]!);
  return {
    region: region === undefined ? undefined : readWord('--region', region, TRIAL_REGIONS),
    fills: chosen && [...new Set(chosen)],
    empty: empty === undefined ? undefined : readWhole('--empty', empty, 1, MOST_ON_PAGE),
    scale: scale === undefined ? undefined : readScale(scale),
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

/** Every region that is asked for with every fill for it; a problem where that is nothing. */
const allTrials = (
  design: Design,
  scope: Scope,
  plan: Plan,
  { region, fills, spacings }: Choices & { readonly spacings: readonly number[] },
): readonly Trial[] => {
  const shown = TRIAL_REGIONS.filter((r) => (region === undefined ? r !== 'corner' : r === region)).filter(
    (r) => hasRegion(design, scope, plan, r),
  );
  if (shown.length === 0) throw nothingThere(plan, region);
  const trials = shown.flatMap((r) => {
    // Without a region each fill goes where it belongs; with one, what is named is tried there.
    const here = region === undefined ? fills?.filter((f) => suitsRegion(f, r)) : fills;
    return trialsFor(design, scope, plan, { region: r, fills: here, spacings });
  });
  if (trials.length === 0)
    throw new ProblemError([
      {
        code: 'nothing-suits',
        key: '--fills',
        message: 'what is named is for channels, and there are none',
        found: (fills ?? []).map((f) => f.name).join(', '),
        hint: 'to try it elsewhere say --region swag or background',
      },
    ]);
  return trials;
};

const nothingThere = (plan: Plan, region: TrialRegion | undefined): ProblemError => {
  const { outward, inward } = plan.channels;
  const hints: Readonly<Record<TrialRegion, string | undefined>> = {
    swag: undefined,
    background:
      plan.layout.kind === 'frame' && plan.layout.within === undefined
        ? 'outside a frame it needs a limit, such as within: 16'
        : undefined,
    channel:
      outward.length + inward.length === 0
        ? 'give the plan channels, such as channels: { outward: [1/4] }'
        : undefined,
    corner: 'only a border whose corners turn has swags there, and --show must hold one',
  };
  const hint = region && hints[region];
  return new ProblemError([
    {
      code: 'nothing-to-fill',
      message: `there is nothing to fill: ${region ? REGION_WORDS[region] : 'this design'}`,
      ...(hint === undefined ? {} : { hint }),
    },
  ]);
};

const tooLarge = ({ scale }: AuditionOptions, empty: number | undefined) =>
  wrongValue('--scale', 'the frame is larger than the page at this scale', {
    found: scale ?? '1',
    hint:
      empty === 1 || scale === undefined
        ? 'take larger paper with --paper, or show less with --show'
        : 'take a larger number for smaller pictures, larger paper with --paper, or show less with --show',
  });

const sheetWords = ({ pages, paper, reductions }: WrittenPictures): string => {
  const scales = [...new Set(reductions)].map((r) => (r === 1 ? 'true size' : `1:${r}`));
  return `${plural(pages, 'page')} of ${paper}, ${scales.length > 1 ? 'at' : scales[0] === 'true size' ? 'at' : 'to the scale'} ${scales.join(' and ')}`;
};

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
