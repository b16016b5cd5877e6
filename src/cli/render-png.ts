/** A drawing as the bytes of a PNG file, with the same letters on every computer. */

import { ProblemError } from '../document/index.ts';
import type { StyledDrawing } from '../drawing/index.ts';
import {
  type Canvas2D,
  type PictureOptions,
  paintDrawing,
  planPicture,
  withMaker,
  withPhysicalSize,
} from '../output/png/index.ts';
import { loadCanvas, registerFonts } from './load-canvas.ts';

export interface RenderedPng {
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Throws a ProblemError when the picture would be too large, or when this computer cannot make pictures. */
export const renderPng = async (drawing: StyledDrawing, options: PictureOptions): Promise<RenderedPng> => {
  const plan = planPicture(drawing, options);
  if (!plan.ok) throw new ProblemError(plan.problems);
  const { width, height, pixelsPerMm } = plan.picture;
  const library = await loadCanvas('ask for --format svg or pdf');
  registerFonts(library);
  const canvas = library.createCanvas(width, height);
  const context: Canvas2D = canvas.getContext('2d');
  paintDrawing(context, drawing, plan.picture, options);
  return { bytes: withMaker(withPhysicalSize(await canvas.encode('png'), pixelsPerMm)), width, height };
};
