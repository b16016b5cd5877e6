/** What a design comes to in numbers, for programs. */

import type { Channels } from '../plan/index.ts';
import {
  choicesOf,
  cornerSwag,
  type Design,
  frameSize,
  kindDesigns,
  ownCorner,
  rowsOf,
} from '../swag/index.ts';

const DEGREES = 180 / Math.PI;

/** How far outward channels reach beyond the stitching, mm. */
export const outwardReach = ({ outward }: Pick<Channels, 'outward'>): number =>
  outward.reduce((a, b) => a + b, 0);

/** mm and degrees. `outward` is how far outward channels reach beyond the stitching. */
export const designAsData = (design: Design, outward = 0): object => {
  const size = frameSize(design, outward);
  const [, ...further] = rowsOf(design);
  const kinds = design.fit.pattern.kind === 'in turn' ? kindDesigns(design) : [];
  return {
    ...rowAsData(design),
    ...(kinds.length > 1 && {
      inTurn: kinds.map((kind, k) => ({ swagKind: k + 1, ...madeAsData(kind), ...rowAsData(kind) })),
    }),
    ...(further.length > 0 && { rows: further.map((row) => beyondAsData(row, design)) }),
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

/** A row on the marks of the first: where it starts, and what makes it. */
const beyondAsData = (row: Design, { field: first }: Design): object => {
  return {
    row: row.row,
    at: row.field.startMargin - first.startMargin,
    ...madeAsData(row),
    ...rowAsData(row),
  };
};

const madeAsData = ({ field, fit }: Pick<Design, 'field' | 'fit'>): object => {
  const { laid, flat, repeats: _, count: __, corners: ___, ...choices } = choicesOf({ field, fit });
  const { template } = fit.way.shape.stitching;
  return {
    template: template.name,
    title: template.title,
    ...choices,
    ...(laid === undefined ? {} : { laid }),
    ...(flat === undefined ? {} : { flat }),
  };
};

const rowAsData = ({ field, fit }: Pick<Design, 'field' | 'fit'>): object => {
  const corner = cornerSwag(fit);
  const own = ownCorner(fit);
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
    corner:
      corner === undefined
        ? null
        : {
            offset: corner.offset,
            depth: corner.seat.pose.depth,
            ...(own && { made: madeAsData({ field, fit: { ...fit, way: own } }) }),
          },
  };
};
