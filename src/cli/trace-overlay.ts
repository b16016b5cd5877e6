/** The picture of what was found in a picture: its outline over it, in a PNG. */

import { inverse, movePath, type Point } from '../geometry/index.ts';
import { paintOverlay } from '../output/overlay/index.ts';
import { withMaker } from '../output/png/index.ts';
import type { Outline, Traced, WorkingEdge } from '../trace/index.ts';
import { registerFonts } from './load-canvas.ts';
import type { PictureFile } from './read-picture.ts';

/** The overlay's longer side, pixels: sharp on any screen, small to send. */
const OVERLAY_SIDE = 2400;

export interface FoundInPicture {
  /** With what was set right; corners keep the numbers of the outline as it was traced. */
  readonly outline: Outline;
  readonly found: WorkingEdge | undefined;
  /** In the outline's frame. */
  readonly breaks: readonly Point[];
}

export const overlayOf = (
  file: PictureFile,
  traced: Traced,
  { outline, found, breaks }: FoundInPicture,
): Uint8Array => {
  const { width, height } = file.picture;
  const scale = Math.min(1, OVERLAY_SIDE / Math.max(width, height));
  registerFonts(file.canvas);
  const canvas = file.canvas.createCanvas(Math.round(width * scale), Math.round(height * scale));
  const context = canvas.getContext('2d');
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  // Paler, so that the lines stand out on it.
  context.globalAlpha = 0.6;
  context.drawImage(file.image, 0, 0, canvas.width, canvas.height);
  context.globalAlpha = 1;
  const toPixels = (p: Point): Point => {
    const q = traced.toPixels(p);
    return { x: q.x * scale, y: q.y * scale };
  };
  const back = found && inverse(found.motion);
  paintOverlay(context, {
    outline: outline.path,
    edge: found && back && movePath(found.edge, back),
    corners: traced.outline.corners,
    breaks,
    toPixels,
    pixelsPerMm: traced.pixelsPerMm * scale,
    width: canvas.width,
    height: canvas.height,
  });
  return withMaker(canvas.toBuffer('image/png'));
};
