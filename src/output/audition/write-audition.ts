/** Audition sheets: the empty frame and the frame with each fill side by side; or empty frames to draw in. */

import { capital } from '../../document/index.ts';
import {
  type Drawing,
  type DrawOptions,
  drawDesign,
  type LayerId,
  type Scope,
  SHEET,
  type StyleSheet,
  styled,
  USUAL_SEED,
  USUAL_SPACING,
} from '../../drawing/index.ts';
import { formatLength, type LengthStyle, MM_PER_INCH, type Units } from '../../length/index.ts';
import { inkOf } from '../../pagination/index.ts';
import type { Design } from '../../swag/index.ts';
import {
  type Picture,
  type PictureItem,
  type PictureOptions,
  type PictureSection,
  smallLines,
  smallSheet,
  type WrittenPictures,
  writePictures,
} from '../contact-sheet/index.ts';
import type { Trial, TrialRegion } from './trials.ts';

export interface AuditionOptions
  extends Pick<PictureOptions, 'title' | 'units' | 'setups' | 'deflate' | 'fonts' | 'reduction'> {
  readonly style: LengthStyle;
  readonly channels: NonNullable<DrawOptions['channels']>;
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

/** Light enough to draw over with any pencil, and still seen when it lies under a second sheet. */
const EMPTY = smallSheet({
  cloth: { width: 0.12, color: '#d2d2d2' },
  kept: { width: 0.1, color: '#d8d8d8', dash: [0.9, 0.9] },
  channel: { width: 0.2, color: '#bdbdbd' },
  stitch: { width: 0.4, color: '#b0b0b0' },
});

const CAPTION_LINES = 4;

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
 * Sheets with the empty frame and every trial, in a section for each region; pictures are numbered in the order
 * of `trials`. Undefined where not even one picture fits a page at the reduction that is asked for.
 */
export const writeAudition = async (
  design: Design,
  scope: Scope,
  trials: readonly Trial[],
  options: AuditionOptions,
): Promise<WrittenPictures | undefined> => {
  const draw = (trial?: Trial): Drawing =>
    drawDesign(design, scope, {
      title: options.title,
      ghosts: false,
      waySize: WAY_SIZE,
      channels: options.channels,
      ...(trial && { fills: trial.byHalf, open: trial.open }),
    });
  const empty = draw();
  const emptyPicture: Picture = {
    items: itemsOf(empty, FILLED, options),
    box: frameBox(empty),
    caption: ['the empty frame'],
  };
  const regions = [...new Set(trials.map((t) => t.region))];
  const sections = regions.map((region): PictureSection => {
    const tried = trials.filter((t) => t.region === region).map((t) => pictureOf(t, trials.indexOf(t)));
    return {
      title: options.title,
      summary: `Fills for ${REGION_WORDS[region]}: ${scope.label}. Stitching is that of one swag’s fill.`,
      label: capital(REGION_WORDS[region]),
      pictures: [emptyPicture, ...tried],
    };
  });
  function pictureOf(trial: Trial, index: number): Picture {
    const drawing = draw(trial);
    return {
      number: String(index + 1),
      items: itemsOf(drawing, FILLED, options),
      box: frameBox(empty),
      caption: captionOf(trial, options.style, options.units),
    };
  }
  return writePictures(sections, { ...options, captionLines: CAPTION_LINES });
};

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

/** What a trial is, in the words of a plan, and what it takes to stitch. */
export const captionOf = (trial: Trial, style: LengthStyle, units: Units): readonly string[] => {
  const { fill, spacing, seed, lines, messages: notes, region } = trial;
  if (lines === 0) return [fill.name, notes[0] ?? 'nothing is left to fill'];
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
    `about ${about(trial.length, units)} of stitching`,
  ];
  return [
    trial.planned ? `${fill.name}, as in the plan` : fill.name,
    facts.filter((fact) => fact !== '').join(', '),
    ...notes.slice(0, 1),
  ];
};

/** To the whole inch or centimetre: nobody chooses by less. */
const about = (mm: number, units: Units): string =>
  units === 'in' ? `${Math.round(mm / MM_PER_INCH)} in` : `${Math.round(mm / 10)} cm`;
