/** A drawing as a picture made of pixels, on a canvas that the caller brings. */

export type { Canvas2D } from './canvas.ts';
export { MAKER_CHUNK, withMaker, withPhysicalSize } from './chunk.ts';
export { paintDrawing } from './paint.ts';
export { type PictureOptions, planPicture } from './picture-size.ts';
