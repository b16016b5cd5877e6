/** How many pixels a drawing becomes, and where each of its points lies among them. */

import type { Problem } from '../../document/index.ts';
import type { StyledDrawing } from '../../drawing/index.ts';
import { type Box, boxHeight, boxWidth } from '../../geometry/index.ts';
import { MM_PER_INCH } from '../../length/index.ts';
import { type ViewOptions, viewBox } from '../view/index.ts';

export interface PictureOptions extends ViewOptions {
  /**
   * Not together with `widthInPixels`. Without either it is 150, sharp on a screen and fair on paper, or less
   * where the drawing is large.
   */
  readonly dotsPerInch?: number;
  readonly widthInPixels?: number;
}

export interface Picture {
  /** Whole pixels. */
  readonly width: number;
  readonly height: number;
  readonly pixelsPerMm: number;
  /** What the picture shows, mm; its top left corner is the picture's. */
  readonly box: Box;
}

export type PictureResult =
  | { readonly ok: true; readonly picture: Picture }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const DEFAULT_DOTS_PER_INCH = 150;
/** More pixels than this on a side are a nuisance to open and to send; who wants them asks for them. */
const USUAL_LONGEST_SIDE = 6000;

/** 400 MB of memory at four bytes a pixel: what an ordinary computer can spare. */
const MOST_PIXELS = 100_000_000;
/** Canvases of browsers and of the usual graphics libraries end here, whatever the memory. */
const LONGEST_SIDE = 32_767;

/** The size of the picture; a problem when it would be too large, or when the options make no sense. */
export const planPicture = (drawing: StyledDrawing, options: PictureOptions = {}): PictureResult => {
  const box = viewBox(drawing, options);
  const wanted = options.widthInPixels ?? options.dotsPerInch ?? usualDotsPerInch(box);
  const key = options.widthInPixels === undefined ? 'dots per inch' : 'width in pixels';
  if (!(wanted > 0 && Number.isFinite(wanted)))
    return refuse({
      code: 'bad-resolution',
      message: `a picture needs ${key} above 0`,
      found: String(wanted),
    });
  const pixelsPerMm =
    options.widthInPixels === undefined ? wanted / MM_PER_INCH : Math.round(wanted) / boxWidth(box);
  // An ulp more than a whole number of pixels must not add a column of nothing.
  const width = Math.max(1, Math.ceil(boxWidth(box) * pixelsPerMm - PIXEL_NOISE));
  const height = Math.max(1, Math.ceil(boxHeight(box) * pixelsPerMm - PIXEL_NOISE));
  if (width <= LONGEST_SIDE && height <= LONGEST_SIDE && width * height <= MOST_PIXELS)
    return { ok: true, picture: { width, height, pixelsPerMm, box } };
  return refuse({
    code: 'picture-too-large',
    message: 'the picture would be too large',
    found: `${width} by ${height} pixels`,
    expected: `at most ${MOST_PIXELS / 1e6} million, and ${LONGEST_SIDE} on a side`,
    hint: `ask for at most ${largest(box, options)} ${key}`,
  });
};

const PIXEL_NOISE = 1e-6;

const usualDotsPerInch = (box: Box): number =>
  Math.min(
    DEFAULT_DOTS_PER_INCH,
    (USUAL_LONGEST_SIDE * MM_PER_INCH) / Math.max(boxWidth(box), boxHeight(box)),
  );

const refuse = (problem: Problem): PictureResult => ({ ok: false, problems: [problem] });

/** The largest value of the option in use that stays within the limits, in round figures. */
const largest = (box: Box, options: PictureOptions): number => {
  const w = boxWidth(box);
  const h = boxHeight(box);
  const most = Math.min((LONGEST_SIDE - 1) / Math.max(w, h), Math.sqrt((MOST_PIXELS * 0.99) / (w * h)));
  const value = options.widthInPixels === undefined ? most * MM_PER_INCH : most * w;
  return value >= 1 ? Math.floor(value) : Math.floor(value * 100) / 100;
};
