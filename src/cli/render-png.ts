/** A drawing as the bytes of a PNG file, with the same letters on every computer. */

import { createRequire } from 'node:module';
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
  const { createCanvas, GlobalFonts } = await loadCanvas();
  const require = createRequire(import.meta.url);
  for (const file of ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'])
    GlobalFonts.registerFromPath(require.resolve(`dejavu-fonts-ttf/ttf/${file}`), 'DejaVu Sans');
  const canvas = createCanvas(width, height);
  const context: Canvas2D = canvas.getContext('2d');
  paintDrawing(context, drawing, plan.picture, options);
  return { bytes: withMaker(withPhysicalSize(await canvas.encode('png'), pixelsPerMm)), width, height };
};

/** The canvas is compiled for each kind of computer, and may be missing on a rare one. */
const loadCanvas = async (): Promise<typeof import('@napi-rs/canvas')> => {
  try {
    return await import('@napi-rs/canvas');
  } catch {
    throw new ProblemError([
      {
        code: 'no-canvas',
        message: 'pictures of pixels cannot be made on this computer',
        hint: 'ask for --format svg or pdf',
      },
    ]);
  }
};
