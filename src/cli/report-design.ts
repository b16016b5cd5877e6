/** What a design comes to in numbers, for programs. */

import type { Channels } from '../plan/index.ts';
import { cornerSwag, type Design, frameSize } from '../swag/index.ts';

const DEGREES = 180 / Math.PI;

/** How far outward channels reach beyond the stitching, mm. */
export const outwardReach = ({ outward }: Pick<Channels, 'outward'>): number =>
  outward.reduce((a, b) => a + b, 0);

/** mm and degrees. `outward` is how far outward channels reach beyond the stitching. */
export const designAsData = (design: Design, outward = 0): object => {
  const { fit } = design;
  const corner = cornerSwag(fit);
  const size = frameSize(design, outward);
  return {
    sides: fit.sides.map(({ run, repeats, seat }) => ({
      side: run.name,
      length: run.length,
      repeats,
      span: seat.span,
      depth: seat.depth,
      gap: seat.gap,
      tilt: seat.pose.tilt * DEGREES,
    })),
    corner: corner === undefined ? null : { offset: corner.offset, depth: corner.seat.pose.depth },
    ...(size && {
      frame: {
        width: size.width,
        height: size.height,
        inside: size.inside,
        ...(size.round && {
          count: size.round.count,
          startRadius: size.round.startRadius,
          crownRadius: size.round.crownRadius,
        }),
      },
    }),
  };
};
