/** A contact sheet: candidates side by side, all to one stated scale, each with its number, to choose from by eye. */

import { ProblemError } from '../../document/index.ts';
import type { Drawing, Item, LayerId, Stroke } from '../../drawing/index.ts';
import { inkOf } from '../../pagination/index.ts';
import { PAGE_TOO_SMALL, type Picture, type PictureOptions, writePictures } from './pictures.ts';

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

/** What is drawn, from the back, and how: the stitching is what one chooses by. */
const LOOKS: Readonly<Partial<Record<LayerId, Stroke>>> = {
  border: { width: 0.15, color: '#8a8a8a' },
  channel: { width: 0.16, color: '#555555' },
  stitch: { width: 0.42, color: '#111111' },
};

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
  const { layers } = drawing;
  const shown = (['border', 'channel', 'stitch'] as const).filter((id) => LOOKS[id]);
  const items = shown.flatMap((id) =>
    layers[id].map((item) => ({ item, stroke: strokeFor(item, LOOKS[id]!) })),
  );
  const empty = { fill: [], border: [], template: [], channel: [], stitch: [], marks: [], notes: [] };
  const only: Drawing = { title: '', layers: { ...empty, border: layers.border, stitch: layers.stitch } };
  return { number: String(number), items, box: inkOf(only).box, caption };
};

/** Lines that the drawing dashes (margins, mitres) stay light and dashed. */
const strokeFor = (item: Item, look: Stroke): Stroke =>
  item.kind === 'path' && item.stroke.dash ? { width: 0.1, color: '#a8a8a8', dash: [0.9, 0.9] } : look;
