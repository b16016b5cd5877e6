/** Small copies of the swags side by side: sets of fills, and each fill among others; or empty frames to draw in. */

import { type Problem, ProblemError, plural } from '../document/index.ts';
import { type Drawing, drawPlan, type LayerId, SHEET, styled } from '../drawing/index.ts';
import type { Fill } from '../fill/index.ts';
import {
  auditionPages,
  hasRegion,
  REGION_WORDS,
  setsOf,
  suitsRegion,
  type Together,
  TRIAL_REGIONS,
  type Trial,
  type TrialRegion,
  type TrialsAsked,
  trialsAsked,
  writeAudition,
  writeEmptyFrames,
} from '../output/audition/index.ts';
import { PAGE_TOO_SMALL, type WrittenPictures } from '../output/contact-sheet/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import { layOut } from '../pagination/index.ts';
import { closesRound, type Plan } from '../plan/index.ts';
import { cornerSquares, cornerSwag } from '../swag/index.ts';
import { type Made, type Means, pdfMeans } from './made.ts';
import { type PagesWanted, pageSetups } from './pages.ts';
import { type Part, refuseUnknownFills, type Shown, shownOf } from './part.ts';
import { tapedSheets } from './taped-sheets.ts';
import { unprintable } from './unprintable.ts';

export interface AuditionWanted {
  /** What of the design; what is usual where it is undefined. */
  readonly show?: string | undefined;
  /** Each region that the plan has, where it is undefined. */
  readonly region?: TrialRegion | undefined;
  /** All that suit a region, where it is undefined. */
  readonly fills?: readonly Fill[] | undefined;
  /** mm; the plan's or the usual ones where there are none. */
  readonly spacings?: readonly number[] | undefined;
  /** So many empty frames on one page, and no fills; a single one at true size on as many sheets as it takes. */
  readonly empty?: number | undefined;
  /** True size over the pictures' size; as large as a few pages hold, where it is undefined. */
  readonly reduction?: number | undefined;
  readonly without?: readonly LayerId[] | undefined;
  readonly pages: PagesWanted;
}

export interface Audition extends Made {
  readonly shown: Shown;
  readonly trials: readonly Trial[];
  /** Fills of all regions together; none where some are named to be tried. */
  readonly sets: readonly Together[];
  readonly written: WrittenPictures;
}

/** Throws a ProblemError for what is not in the design, where there is nothing to fill, and for paper that is too small. */
export const audition = async (part: Part, wanted: AuditionWanted, means: Means): Promise<Audition> => {
  refuseUnknownFills(part);
  const { plan, design: whole, templates } = part;
  const { region, empty, reduction, without = [] } = wanted;
  if (region === 'corner' && !cornerSwag(whole) && !cornerSquares(whole)) throw nothingToFill(plan, region);
  const shown = shownOf(whole, wanted.show ?? (region === 'corner' ? 'corner' : 'repeat'));
  const { design, scope } = shown;
  const base = drawPlan(design, plan, scope, { ghosts: false, withFills: false });
  const trials = empty === undefined ? allTrials(shown, plan, wanted) : [];
  const sheet = {
    title: plan.title,
    units: plan.units,
    style: plan.marks.style,
    setups: pageSetups(wanted.pages),
    channels: base.channels,
    reduction,
    without,
    ...(await pdfMeans(means)),
  };
  const written: (WrittenPictures & { readonly sets?: readonly Together[] }) | undefined =
    empty === undefined
      ? await writeAudition(design, scope, trials, setsOf(design, scope, plan, trials), {
          ...sheet,
          withSets: asksForNone(wanted),
        })
      : await writeEmptyFrames(design, scope, empty, sheet);
  const notices = [...base.messages, ...(await unprintable(plan.title, templates, means))];
  if (!written && empty === 1 && reduction === 1)
    return tapedFrame(part, shown, base.drawing, wanted, notices, means);
  if (!written)
    throw new ProblemError([reduction === undefined && empty !== 1 ? PAGE_TOO_SMALL : FRAME_TOO_LARGE]);
  const { sets = [] } = written;
  const what =
    empty === undefined
      ? `${sets.length > 0 ? `${plural(sets.length, 'set')} and ` : ''}${plural(trials.length, 'fill')} to choose from`
      : plural(empty, 'empty frame');
  return {
    bytes: written.bytes,
    words: `${what}, ${pagesWords(written)}`,
    paper: paperWords(written),
    notices,
    shown,
    trials,
    sets,
    written,
  };
};

/** Sets are for whoever has not chosen what to look at. */
const asksForNone = ({ region, fills, spacings = [] }: AuditionWanted): boolean =>
  region === undefined && fills === undefined && spacings.length === 0;

/** An empty frame that no page holds at true size, on sheets to tape together. */
const tapedFrame = async (
  { plan }: Part,
  shown: Shown,
  drawing: Drawing,
  { without = [], pages: layout }: AuditionWanted,
  notices: readonly string[],
  means: Means,
): Promise<Audition> => {
  const { title, units } = plan;
  const frame = shownDrawing(styled(drawing, SHEET), { without });
  const taped = await tapedSheets(
    frame,
    layOut(frame, { ...layout, units }),
    { title, units, summary: [`An empty frame to draw in, at true size: ${shown.scope.label}.`] },
    means,
  );
  const { bytes, pages, sheets, corrections = [] } = taped;
  const written: WrittenPictures = { bytes, pages, paper: sheets.paper.name, reductions: [1] };
  const words = `an empty frame at true size, ${taped.words}`;
  return { bytes, words, notices, corrections, shown, trials: [], sets: [], written };
};

/**
 * How much paper it will take, without making a fill: as much as it takes unless the sets come to too many lines.
 * Undefined where not one picture fits a page. Throws a ProblemError as making it does.
 */
export const auditionPaper = (part: Part, wanted: AuditionWanted): string | undefined => {
  refuseUnknownFills(part);
  const { plan, design: whole } = part;
  const shown = shownOf(whole, wanted.show ?? 'repeat');
  const asked = askedTrials(shown, plan, wanted);
  const pages = auditionPages(
    shown.design,
    shown.scope,
    plan,
    asked.reduce((sum, a) => sum + a.count, 0),
    {
      channels: drawPlan(shown.design, plan, shown.scope, { ghosts: false, withFills: false }).channels,
      setups: pageSetups(wanted.pages),
      reduction: wanted.reduction,
      withSets: asksForNone(wanted),
    },
  );
  return pages && paperWords(pages);
};

/** Every region that is asked for with every fill for it; a problem where that is nothing. */
const allTrials = (shown: Shown, plan: Plan, wanted: AuditionWanted): readonly Trial[] =>
  askedTrials(shown, plan, wanted).flatMap((a) => a.make());

/** Those of each region, before any is made. */
const askedTrials = (
  { design, scope }: Shown,
  plan: Plan,
  { region, fills, spacings = [] }: AuditionWanted,
): readonly TrialsAsked[] => {
  const shown = TRIAL_REGIONS.filter((r) => (region === undefined ? r !== 'corner' : r === region)).filter(
    (r) => hasRegion(design, scope, plan, r),
  );
  if (shown.length === 0) throw nothingToFill(plan, region);
  const asked = shown.map((r) => {
    // Without a region each fill goes where it belongs; with one, what is named is tried there.
    const here = region === undefined ? fills?.filter((f) => suitsRegion(f, r)) : fills;
    return trialsAsked(design, scope, plan, { region: r, fills: here, spacings });
  });
  const count = asked.reduce((sum, a) => sum + a.count, 0);
  const tooFine = asked.flatMap((a) => a.tooFine);
  // Where others can be made, these stay empty and say why.
  if (count > 0 && tooFine.length === count) throw new ProblemError(tooFine);
  if (count === 0)
    throw new ProblemError([
      {
        code: 'nothing-suits',
        message: 'what is named is for channels, and there are none',
        found: (fills ?? []).map((f) => f.name).join(', '),
      },
    ]);
  return asked;
};

/** Where a region is that has to do with corners. */
export const CORNERS_TO_FILL =
  'only a border has corners to fill: a swag that turns or goes across them, or, with corners half or open, the square that is free';

const nothingToFill = (plan: Plan, region: TrialRegion | undefined): ProblemError => {
  const { outward, inward } = plan.channels;
  const hints: Readonly<Record<TrialRegion, string | undefined>> = {
    swag: undefined,
    background:
      closesRound(plan.layout) && plan.layout.within === undefined
        ? 'outside a frame it needs a limit, such as within: 16'
        : undefined,
    channel:
      outward.length + inward.length === 0
        ? 'give the plan channels, such as channels: { outward: [1/4] }'
        : undefined,
    corner: `${CORNERS_TO_FILL}; and what is shown must hold one`,
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

const FRAME_TOO_LARGE: Problem = {
  code: 'frame-too-large',
  message: 'the frame is larger than the page at this scale',
  hint: 'take larger paper, or show less',
};

const paperWords = ({ pages, paper }: Pick<WrittenPictures, 'pages' | 'paper'>): string =>
  `${plural(pages, 'page')} of ${paper}`;

const pagesWords = ({ reductions, ...written }: WrittenPictures): string => {
  const scales = [...new Set(reductions)].map((r) => (r === 1 ? 'true size' : `1:${r}`));
  return `${paperWords(written)}, ${scales.length > 1 ? 'at' : scales[0] === 'true size' ? 'at' : 'to the scale'} ${scales.join(' and ')}`;
};
