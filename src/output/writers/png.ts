/** A picture of pixels, with the same letters on every computer. */

import { ProblemError } from '../../document/index.ts';
import { paintDrawing, planPicture, withMaker, withPhysicalSize } from '../png/index.ts';
import type { Write } from './writer.ts';

/** Throws a ProblemError when the picture would be too large, or where none can be made. */
export const write: Write = async (drawing, { without, pixels }, { canvas }) => {
  const options = { without, ...pixels };
  const plan = planPicture(drawing, options);
  if (!plan.ok) throw new ProblemError(plan.problems);
  const { width, height, pixelsPerMm } = plan.picture;
  if (!canvas) throw new Error('There is nothing to paint pictures of pixels on');
  const { context, png } = await canvas(width, height);
  paintDrawing(context, drawing, plan.picture, options);
  return {
    bytes: withMaker(withPhysicalSize(await png(), pixelsPerMm)),
    size: `a picture of ${width} by ${height} pixels`,
  };
};
