/** What one template can make, a page for each part of its edge: swags side by side at one scale. */

import { drawDesign, SHEET, styled } from '../../drawing/index.ts';
import { formatLength, INCH_SIXTEENTH, type LengthStyle } from '../../length/index.ts';
import { inkOf } from '../../pagination/index.ts';
import type { GallerySwag } from '../../swag/index.ts';
import { directionWords, partWords } from '../text/index.ts';
import { excerptOf } from './excerpt.ts';
import { MOST_ON_PAGE } from './grid.ts';
import {
  type Picture,
  type PictureOptions,
  type PictureSection,
  type WrittenPictures,
  writePictures,
} from './pictures.ts';
import { smallLines, smallSheet } from './small-look.ts';

const LOOK = smallSheet({
  cloth: { width: 0.15, color: '#8a8a8a' },
  stitch: { width: 0.42, color: '#111111' },
});
const CAPTION_LINES = 3;

/** Undefined where a page cannot hold even one picture. */
export const writeGallery = async (
  swags: readonly GallerySwag[],
  title: string,
  summary: string,
  options: Omit<PictureOptions, 'title' | 'captionLines' | 'reduction' | 'onOnePage'>,
): Promise<WrittenPictures | undefined> => {
  const parts = new Map<string, Picture[]>();
  swags.forEach((swag, i) => {
    const part = partWords(swag.shape);
    const pictures = parts.get(part) ?? [];
    pictures.push(pictureOf(swag, i + 1, INCH_SIXTEENTH));
    parts.set(part, pictures);
  });
  const sections = [...parts].flatMap(([part, pictures]): PictureSection[] => {
    const pages = Math.ceil(pictures.length / MOST_ON_PAGE);
    return Array.from({ length: pages }, (_, i) => ({
      title: `${title}, ${part}`,
      summary,
      label: part,
      pictures: pictures.slice(i * MOST_ON_PAGE, (i + 1) * MOST_ON_PAGE),
    }));
  });
  return writePictures(sections, { ...options, title, captionLines: CAPTION_LINES, onOnePage: true });
};

const pictureOf = ({ design, shape, seat }: GallerySwag, number: number, style: LengthStyle): Picture => {
  const drawing = drawDesign(design, excerptOf(design), { title: '', ghosts: false });
  const { border, stitch } = styled(drawing, SHEET).layers;
  const none = { fill: [], way: [], channel: [], template: [], marks: [], notes: [] };
  const say = (mm: number): string => formatLength(mm, style);
  return {
    number: String(number),
    items: smallLines(drawing, LOOK, ['border', 'stitch']).map((line) => ({ line })),
    box: inkOf({ title: '', layers: { ...none, border, stitch } }).box,
    caption: [
      `span ${say(2 * seat.pose.halfSpan)}, depth ${say(seat.pose.depth)}`,
      `template ${shape.side}, ${directionWords(shape)}`,
      ...(seat.gap > 0 ? [`gap ${say(seat.gap)}`] : []),
    ],
  };
};
