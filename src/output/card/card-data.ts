/** The card for programs: mm and degrees. */

import type { Plan } from '../../plan/index.ts';
import {
  channelSetting,
  cornerSwag,
  type Design,
  kindsIn,
  markError,
  outOfReach,
  ownCorner,
  pausesOf,
  placingOf,
  rowsOf,
  threadFor,
} from '../../swag/index.ts';
import { lengthOf } from './card.ts';
import { tapesOf } from './mark-words.ts';

import { ringAsData } from './ring-words.ts';

const DEGREES = 180 / Math.PI;

const madeOf = ({ shape, setting }: Design['fit']['way']): object => ({
  template: shape.stitching.template.name,
  part: { from: shape.from.label, to: shape.to.label },
  setting: setting.kind,
  side: shape.side,
  direction: shape.direction,
});

export const cardAsData = (design: Design, plan: Plan): object => {
  const { field, fit } = design;
  const corner = cornerSwag(design);
  const own = ownCorner(fit);
  const { template } = fit.way.shape.stitching;
  const inTurn = fit.pattern.kind === 'in turn';
  const length = lengthOf(design, plan);
  const total = length.swags + length.channels + length.fills;
  const settingOf = (width: number) => channelSetting(width, plan.foot.clearance, template.channelLines);
  return {
    units: 'mm and degrees',
    title: plan.title,
    ...madeOf(fit.way),
    ...(inTurn && { inTurn: kindsIn(fit).map((kind, k) => ({ swagKind: k + 1, ...madeOf(kind.way) })) }),
    startLine: { fromSeam: field.startMargin, seam: field.from },
    markError: markError(plan.marks.style),
    sides: tapesOf(design, plan.marks.style).map((side) => ({
      side: side.side,
      from: side.corner,
      length: side.length,
      marks: side.marks.map(({ kind, repeat, at, rounded }) => ({
        kind,
        repeat: repeat ?? null,
        at,
        rounded,
        ...(inTurn && repeat !== undefined && { swagKind: ((repeat - 1) % side.kinds) + 1 }),
      })),
    })),
    frame: ringAsData(design, plan.marks.style),
    corner: corner
      ? { toCorner: corner.fit.toCorner, offset: corner.fit.offset, ...(own && { made: madeOf(own) }) }
      : null,
    placing: rowsOf(design).flatMap((row) =>
      row.cells.map((cell) => {
        const p = placingOf(cell);
        return {
          ...(design.beyond && { row: row.row }),
          ...(inTurn && { swagKind: cell.kind }),
          on: cell.name,
          lean: p.lean * DEGREES,
          firstTurnedOver: p.firstTurnedOver,
          end: p.end,
          start: p.start ?? null,
          crown: p.crown ?? null,
          stitchedCrown: { along: cell.crown.x, up: cell.crown.y },
          guide: p.guide ?? null,
          lines: p.lines.map((l) => ({
            name: l.line.name,
            along: l.along ?? null,
            angle: l.angle * DEGREES,
          })),
          pauses: pausesOf(cell).map(({ label, kind, after }) => ({ label, kind, after })),
          unreached: outOfReach(cell),
        };
      }),
    ),
    channels: (['outward', 'inward'] as const).flatMap((side) =>
      plan.channels[side].map((width, i) => ({ side, number: i + 1, width, setting: settingOf(width) })),
    ),
    stitched: { total, ...length, stitches: Math.round(total / plan.stitch.length) },
    thread: { ...threadFor(total), estimate: true },
  };
};
