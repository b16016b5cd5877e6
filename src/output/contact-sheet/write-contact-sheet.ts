/** A contact sheet: candidates side by side, all to one stated scale, each with its number, to choose from by eye. */

import { ProblemError } from '../../document/index.ts';
import { type Drawing, SHEET, styled } from '../../drawing/index.ts';
import { inkOf } from '../../pagination/index.ts';
import { PAGE_TOO_SMALL, type Picture, type PictureOptions, writePictures } from './pictures.ts';
import { smallLines, smallSheet } from './small-look.ts';

export interface Candidate {
  readonly number: number;
  readonly drawing: Drawing;
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

const CAPTION_LINES = 5;

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
  const section = { title, summary, label: 'Choices', pictures: candidates.map(pictureOf) };
  const written = await writePictures([section], { ...options, captionLines: CAPTION_LINES });
  if (!written) throw new ProblemError([PAGE_TOO_SMALL]);
  return { ...written, reduction: written.reductions[0]! };
};

const pictureOf = ({ number, drawing, caption }: Candidate): Picture => {
  const { border, stitch } = styled(drawing, SHEET).layers;
  const none = { fill: [], template: [], channel: [], marks: [], notes: [] };
  return {
    number: String(number),
    items: smallLines(drawing, LOOK, ['border', 'channel', 'stitch']).map((line) => ({ line })),
    box: inkOf({ title: '', layers: { ...none, border, stitch } }).box,
    caption,
  };
};
