/** Audition sheets: sets of fills and each fill among others, side by side; or empty frames to draw in. */

import {
  type Drawing,
  type DrawOptions,
  drawDesign,
  fillLinesOf,
  type LayerId,
  MOST_FILL_LINES,
  type Scope,
  SHEET,
  type StyleSheet,
  styled,
  USUAL_SEED,
  USUAL_SPACING,
} from '../../drawing/index.ts';
import { formatLength, type LengthStyle, MM_PER_INCH, type Units } from '../../length/index.ts';
import { inkOf } from '../../pagination/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Design } from '../../swag/index.ts';
import {
  type LayingOptions,
  type PagesFor,
  type Picture,
  type PictureItem,
  type PictureOptions,
  type PictureSection,
  pagesFor,
  smallLines,
  smallSheet,
  type WrittenPictures,
  writePictures,
} from '../contact-sheet/index.ts';
import { LEAST_PAIRS, MOST_PAIRS, type Sets, type Shown, type Together } from './together.ts';
import { hasRegion, type Trial, type TrialRegion } from './trials.ts';

export interface AuditionOptions
  extends Pick<PictureOptions, 'title' | 'units' | 'setups' | 'deflate' | 'fonts' | 'reduction'> {
  readonly style: LengthStyle;
  readonly channels: NonNullable<DrawOptions['channels']>;
  /** Whether sets of fills are shown before what is tried. */
  readonly withSets?: boolean;
  /** Layers that are left out of the pictures. */
  readonly without?: readonly LayerId[];
}

/** The stitching frames, the fill is what one chooses by: nearly as dark, and finer. */
const FILLED = smallSheet({
  fill: { width: 0.24, color: '#26303c' },
  way: { width: 0.3, color: '#2c6e6a' },
  cloth: { width: 0.15, color: '#9a9a9a' },
  kept: { width: 0.1, color: '#b4b4b4', dash: [0.9, 0.9] },
  channel: { width: 0.2, color: '#4a4a4a' },
  stitch: { width: 0.5, color: '#111111' },
});

/** What stands round a fill that is tried keeps behind it. */
const AROUND = smallSheet({
  fill: { width: 0.2, color: '#aeb4ba' },
  cloth: { width: 0.1, color: '#aeb4ba' },
  stitch: { width: 0.1, color: '#aeb4ba' },
});

/** Light enough to draw over with any pencil, and still seen when it lies under a second sheet. */
const EMPTY = smallSheet({
  cloth: { width: 0.12, color: '#d2d2d2' },
  kept: { width: 0.1, color: '#d8d8d8', dash: [0.9, 0.9] },
  channel: { width: 0.2, color: '#bdbdbd' },
  stitch: { width: 0.4, color: '#b0b0b0' },
});

const CAPTION_LINES = 3;

/** Dots and arrows are still seen where the picture is a quarter of true size. */
const WAY_SIZE = 3;

/** From the back. */
const SHOWN = ['border', 'fill', 'way', 'channel', 'stitch'] as const;

export const REGION_WORDS: Readonly<Record<TrialRegion, string>> = {
  swag: 'inside the swags',
  background: 'the background',
  channel: 'the channels',
  corner: 'inside the corners',
};

/**
 * Sheets with sets of fills, as many more as fill the last page, and every trial among what stands round it, numbered in
 * the order of `trials`; and which sets they show. Undefined where not even one picture fits a page at the reduction
 * that is asked for.
 */
export const writeAudition = async (
  design: Design,
  scope: Scope,
  trials: readonly Trial[],
  sets: Sets,
  options: AuditionOptions,
): Promise<(WrittenPictures & { readonly sets: readonly Together[] }) | undefined> => {
  const { title, channels, withSets = false } = options;
  const draw = (fills?: Shown): Drawing =>
    drawDesign(design, scope, {
      title,
      ghosts: false,
      waySize: WAY_SIZE,
      channels,
      ...(fills && { fills: fills.byHalf, open: fills.open }),
    });
  const box = frameBox(draw());
  const itemsAround = (region: TrialRegion): readonly PictureItem[] => {
    const fills = sets.around(region);
    // Of a whole large border each picture would hold more lines than what is tried.
    if (fillLinesOf(fills) * trials.length > MOST_FILL_LINES) return [];
    return itemsOf(draw(fills), AROUND, { without: ['way', 'border', 'channel', 'stitch'] });
  };
  const around = new Map([...new Set(trials.map((t) => t.region))].map((r) => [r, itemsAround(r)]));
  const tried = trials.map(
    (trial, i): Picture => ({
      number: String(i + 1),
      items: [...around.get(trial.region)!, ...itemsOf(draw(trial), FILLED, options)],
      box,
      caption: captionOf(trial, options.style, options.units),
    }),
  );
  const pictures = { ...options, captionLines: CAPTION_LINES, filled: true };
  const shown = withSets ? sets.sets(pairsFor(box, tried.length + (sets.plansFills ? 1 : 0), pictures)) : [];
  const together = shown.map(
    (set, i): Picture => ({
      number: setLetter(i),
      items: itemsOf(draw(set), FILLED, { without: [...(options.without ?? []), 'way'] }),
      box,
      caption: setCaption(set),
    }),
  );
  const section: PictureSection = {
    title,
    summary: `Fills to choose from: ${scope.label}.`,
    label: 'Fills',
    pictures: [...together, ...tried],
  };
  const written = await writePictures([section], pictures);
  return written && { ...written, sets: shown };
};

/** So many pairs beside so many other pictures that no page is left half empty. */
const pairsFor = (box: Picture['box'], others: number, options: LayingOptions): number => {
  let pairs = LEAST_PAIRS;
  while (pairs < MOST_PAIRS && (others + pairs) % (pagesFor(box, others + pairs, options)?.onPage ?? 1) !== 0)
    pairs++;
  return pairs;
};

/** The pages that `writeAudition` takes for so many trials, without a fill being made. */
export const auditionPages = (
  design: Design,
  scope: Scope,
  plan: Plan,
  trials: number,
  {
    channels,
    withSets = false,
    ...laying
  }: Pick<AuditionOptions, 'channels' | 'withSets' | 'setups' | 'reduction'>,
): PagesFor | undefined => {
  const box = frameBox(drawDesign(design, scope, { title: '', ghosts: false, channels }));
  const options = { ...laying, captionLines: CAPTION_LINES, filled: true };
  if (!withSets) return pagesFor(box, trials, options);
  const { swag, background } = plan.fills;
  const plansFills =
    (swag !== undefined && hasRegion(design, scope, plan, 'swag')) ||
    (background !== undefined && hasRegion(design, scope, plan, 'background'));
  const others = trials + (plansFills ? 1 : 0);
  return pagesFor(box, others + pairsFor(box, others, options), options);
};

/** Sets have letters: numbers are for what is tried by itself. */
export const setLetter = (index: number): string => String.fromCharCode(65 + index);

const setCaption = ({ inside, channels, background, planned }: Together): readonly string[] => [
  planned ? 'as in the plan' : 'together',
  [
    inside === '' ? '' : `inside: ${inside}`,
    channels === '' ? '' : `channels: ${channels}`,
    background === '' ? '' : `background: ${background}`,
  ]
    .filter((words) => words !== '')
    .join('; '),
];

/** A page of empty frames, light enough to draw over. */
export const writeEmptyFrames = async (
  design: Design,
  scope: Scope,
  count: number,
  options: AuditionOptions,
): Promise<WrittenPictures | undefined> => {
  const { title, channels } = options;
  const drawing = drawDesign(design, scope, { title, ghosts: false, channels });
  const picture: Picture = {
    items: itemsOf(drawing, EMPTY, options),
    box: frameBox(drawing),
    caption: [],
  };
  const frames = count === 1 ? 'An empty frame' : 'Empty frames';
  const section: PictureSection = {
    title,
    summary: `${frames} to draw in: ${scope.label}.`,
    label: count === 1 ? 'Empty frame' : 'Empty frames',
    pictures: Array.from({ length: count }, () => picture),
  };
  return writePictures([section], { ...options, captionLines: 0, onOnePage: true });
};

const itemsOf = (
  drawing: Drawing,
  sheet: StyleSheet,
  { without = [] }: Pick<AuditionOptions, 'without'>,
): readonly PictureItem[] =>
  smallLines(
    drawing,
    sheet,
    SHOWN.filter((layer) => !without.includes(layer)),
  ).map((line) => ({
    line,
    shrinks: line.role === 'fill' || line.role === 'channel',
  }));

/** Seams, stitching and channels make the frame; a fill never reaches beyond them. */
const frameBox = (drawing: Drawing): Picture['box'] => {
  const { layers } = styled(drawing, SHEET);
  return inkOf({ title: '', layers: { ...layers, fill: [], way: [], template: [], marks: [], notes: [] } })
    .box;
};

const WHERE: Readonly<Record<TrialRegion, string>> = {
  swag: 'inside',
  background: 'background',
  channel: 'channels',
  corner: 'inside the corner',
};

/** What a trial is, in the words of a plan, and what it takes to stitch. */
export const captionOf = (trial: Trial, style: LengthStyle, units: Units): readonly string[] => {
  const { fill, spacing, seed, lines, messages: notes, region } = trial;
  const name = `${WHERE[region]}: ${fill.name}`;
  if (lines === 0) return [name, notes[0] ?? 'nothing is left to fill'];
  const apart =
    spacing !== undefined
      ? `${formatLength(spacing, style)} spacing`
      : region === 'channel'
        ? ''
        : `${formatLength(USUAL_SPACING, style)} spacing`;
  const facts = [
    apart,
    seed === USUAL_SEED ? '' : `seed ${seed}`,
    lines === 1 ? 'one line' : `${lines} lines`,
    `about ${about(trial.length, units)} ${measuredOf(trial)}`,
  ];
  return [
    trial.planned ? `${name}, as in the plan` : name,
    facts.filter((fact) => fact !== '').join(', '),
    ...notes.slice(0, 1),
  ];
};

/** What its length is that of: a region's, where there are several alike, and else of all that is shown. */
const measuredOf = ({ region, open }: Trial): string => {
  if (region === 'background') return 'as shown';
  if (region !== 'corner') return 'per swag';
  return open.length > 0 ? 'per corner square' : 'per corner';
};

/** To the whole inch or centimetre: nobody chooses by less. */
const about = (mm: number, units: Units): string =>
  units === 'in' ? `${Math.round(mm / MM_PER_INCH)} in` : `${Math.round(mm / 10)} cm`;
