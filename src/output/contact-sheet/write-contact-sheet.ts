/** A contact sheet: candidates side by side, all to one stated scale, each with its number, to choose from by eye. */

import { ProblemError } from '../../document/index.ts';
import { type Drawing, type LayerId, SHEET, styled } from '../../drawing/index.ts';
import { boxHeight, boxWidth } from '../../geometry/index.ts';
import { inkOf } from '../../pagination/index.ts';
import {
  PAGE_TOO_SMALL,
  type Picture,
  type PictureOptions,
  type Whole,
  type WholeRoom,
  writePictures,
} from './pictures.ts';
import { smallLines, smallSheet } from './small-look.ts';

export interface Candidate {
  readonly number: number;
  readonly drawing: Drawing;
  /** All of the design; undefined where the drawing shows all of it. */
  readonly whole?: Drawing | undefined;
  /** What was chosen, and what comes of it: a few short lines. */
  readonly caption: readonly string[];
}

export interface ContactSheetOptions
  extends Pick<PictureOptions, 'title' | 'units' | 'setups' | 'deflate' | 'fonts'> {
  /** What is shown, under the title. */
  readonly summary: string;
}

export interface ContactSheet {
  readonly bytes: Uint8Array;
  readonly pages: number;
  readonly paper: string;
  /** True size over the pictures' size. */
  readonly reduction: number;
}

/** Of a column's width the sentence takes four lines, what it is made with as many, and what else is said three each. */
const captionLines = (candidates: readonly Candidate[]): number =>
  8 + 3 * Math.max(0, ...candidates.map(({ caption }) => caption.length - 2));
/** Fewer would have to be leafed through where one wants to compare. */
const LEAST_ON_PAGE = 9;
/** How wide a whole border is beside its corner, and how high a whole strip below its first repeats, mm. */
const WHOLE_BORDER = 20;
const WHOLE_STRIP = 8;

/** The stitching is what one chooses by. */
const LOOK = smallSheet({
  cloth: { width: 0.15, color: '#8a8a8a' },
  kept: { width: 0.1, color: '#a8a8a8', dash: [0.9, 0.9] },
  channel: { width: 0.16, color: '#555555' },
  stitch: { width: 0.42, color: '#111111' },
});

/** Throws a ProblemError where a page holds not even one. */
export const writeContactSheet = async (
  candidates: readonly Candidate[],
  options: ContactSheetOptions,
): Promise<ContactSheet> => {
  const { title, summary } = options;
  const pictures = candidates.map(pictureOf);
  const section = { title, summary, label: 'Choices', pictures };
  const whole = wholeRoom(pictures);
  const written = await writePictures([section], {
    ...options,
    captionLines: captionLines(candidates),
    leastOnPage: LEAST_ON_PAGE,
    whole,
  });
  if (!written) throw new ProblemError([PAGE_TOO_SMALL]);
  return { ...written, reduction: written.reductions[0]! };
};

/** A long strip goes below its picture, anything as high as wide beside it. */
const wholeRoom = (pictures: readonly Picture[]): WholeRoom | undefined => {
  const boxes = pictures.flatMap(({ whole }) => (whole ? [whole.box] : []));
  if (boxes.length === 0) return undefined;
  const isLong = boxes.every((box) => boxWidth(box) > LONG * boxHeight(box));
  return isLong ? { at: 'below', size: WHOLE_STRIP } : { at: 'beside', size: WHOLE_BORDER };
};

/** So many times as wide as high is long. */
const LONG = 3;

const pictureOf = ({ number, drawing, whole, caption }: Candidate): Picture => ({
  number: String(number),
  ...linesAndBox(drawing, ['border', 'channel', 'stitch']),
  ...(whole && { whole: linesAndBox(whole, ['border', 'stitch']) }),
  caption,
});

const linesAndBox = (drawing: Drawing, layers: readonly LayerId[]): Whole => {
  const { border, stitch } = styled(drawing, SHEET).layers;
  const none = { fill: [], way: [], template: [], channel: [], marks: [], notes: [] };
  return {
    items: smallLines(drawing, LOOK, layers).map((line) => ({ line })),
    box: inkOf({ title: '', layers: { ...none, border, stitch } }).box,
  };
};
