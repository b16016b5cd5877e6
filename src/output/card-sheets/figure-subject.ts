/** What a figure of the card shows: one swag, or one that turns a corner, upright, with its lines in the look of a card. */

import { drawDesign, LAYERS, type Scope, type StyledPath, styled } from '../../drawing/index.ts';
import {
  type Box,
  boxHeight,
  compose,
  inverse,
  joinBoxes,
  type Motion,
  move,
  movePath,
  pathBox,
  turn,
} from '../../geometry/index.ts';
import {
  ALIKE,
  type Cell,
  cornerSwag,
  type Design,
  designOf,
  isClosed,
  type LaidCorner,
  ownCorner,
  repeatMarks,
  straightRun,
  WITHOUT_SWAG,
} from '../../swag/index.ts';
import { FIGURE, SECOND } from './figure-look.ts';

export type Kind = 'swag' | 'corner';

/** A wide gap to the neighbour is not worth the room that the swag could have: a share of the half span. */
const MOST_GAP = 0.2;
/** A shallow swag in a wide band is shown without the far line, so that it is large enough to read. */
const SHALLOW = 0.6;
const ABOVE_SHALLOW = 1.3;
/** How far lines run on before a corner's marks: shares of the way to the corner, and of the swag's depth. */
const RUN_ON = { ofWay: 0.35, ofDepth: 0.25 };
/** What a figure shows: which part of which design, and how that is turned to stand upright on the page. */
export interface Subject {
  readonly design: Design;
  /** The band as a person knows it. */
  readonly field: Design['field'];
  readonly cell: Cell;
  readonly scope: Scope;
  /** From the cell's frame, and from the quilt's, to the figure's. */
  readonly own: Motion;
  readonly upright: Motion;
  /** The level up to which lines are shown. */
  readonly top: number;
}

/** The middle one of three in a row, or the second of a closed run; `past` is how far (mm) lines run on. */
const swagSubject = (design: Design, past: number): Subject => {
  const { field, fit } = design;
  const { run, seat } = fit.sides[0]!;
  const alone = straightRun(run.name, 3 * (2 * seat.pose.halfSpan + seat.gap), field.startMargin);
  const row = isClosed(run)
    ? design
    : designOf(
        { ...field, corners: 'none', runs: [alone] },
        { way: fit.way, sides: [{ run: alone, repeats: 3, seat }], corner: WITHOUT_SWAG, pattern: ALIKE },
      );
  const side = row.sides[0]!;
  const { start, stop } = repeatMarks(side, 1);
  const beside = Math.min(seat.gap / 2, MOST_GAP * seat.pose.halfSpan) + past;
  const halves = row.halves.filter((h) => h.repeat === `${run.name} 2`);
  const { cell, motion } = halves[0]!;
  // Upright is the centre line.
  const own = turn(Math.PI / 2 - cell.mirror);
  const far = Math.max(0, ...field.lines.map((l) => l.level));
  const reach = Math.max(seat.pose.top, seat.depth);
  return {
    design: row,
    field,
    cell,
    scope: {
      label: '',
      halves,
      stretches: [{ side, from: start - beside, to: stop + beside, repeats: [1] }],
    },
    own,
    upright: compose(own, inverse(motion)),
    top: reach > SHALLOW * far ? Math.max(far, reach) : reach * ABOVE_SHALLOW,
  };
};

/** The first corner, as the side that comes to it is sewn. */
const cornerSubject = (design: Design, corner: LaidCorner): Subject => {
  const { cell, fit, turned } = corner;
  // The side that comes to the corner lies level, whichever way the swag stands.
  const level = turn(turned);
  const at = design.halves.find((h) => h.cell === cell)!;
  const halves = design.halves.filter((h) => h.repeat === at.repeat);
  const [before, after] = halves.map((h) => design.sides.find((s) => s.run.name === h.side)!);
  const back = fit.toCorner + Math.max(RUN_ON.ofWay * fit.toCorner, RUN_ON.ofDepth * cell.crown.y);
  const { drawn } = before!.run;
  return {
    design,
    field: design.field,
    cell,
    scope: {
      label: '',
      halves,
      stretches: [
        { side: before!, from: drawn - back, to: drawn, repeats: [] },
        { side: after!, from: 0, to: back, repeats: [] },
      ],
    },
    own: level,
    upright: compose(level, inverse(at.motion)),
    top: 0,
  };
};

export const subjectOf = (design: Design, kind: Kind, past: number): Subject => {
  const corner = kind === 'corner' ? cornerSwag(design) : undefined;
  return corner ? cornerSubject(design, corner) : swagSubject(design, past);
};

/** The lines of a figure in its own frame, in the look of a card. `tick` is half a start mark, mm. */
export const linesOf = (
  { design, scope, upright, top }: Subject,
  kind: Kind,
  tick: number | undefined,
): readonly StyledPath[] => {
  // Where a corner is made by itself it is the one figure that shows its template.
  const ghosts = kind === 'swag' || ownCorner(design.fit) !== undefined;
  const { layers } = styled(
    drawDesign(design, scope, { title: '', ghosts, ...(tick !== undefined && { tick }) }),
    FIGURE,
  );
  const levels = new Map(design.field.lines.map((l) => [l.name, l.level]));
  return LAYERS.flatMap((id) => layers[id]).flatMap((item): readonly StyledPath[] => {
    if (item.kind !== 'path') return [];
    const { half, line } = item.facts ?? {};
    if (line !== undefined && (levels.get(line) ?? 0) > top) return [];
    const isSecond = half === 'second';
    if (isSecond && item.role?.startsWith('ghost')) return [];
    const stroke = isSecond && item.role === 'stitch' ? SECOND : item.stroke;
    return [{ ...item, path: movePath(item.path, upright), stroke }];
  });
};

/** What must be seen: lines and stitching, and the stretch of the template that is used; the rest may run out. */
export const boxOf = (subject: Subject, lines: readonly StyledPath[], kind: Kind): Box => {
  const { cell, own, top } = subject;
  const seen = lines
    .filter(({ role }) => role !== 'centreLine' && role !== 'mitre' && !role?.startsWith('ghost'))
    .map((l) => pathBox(l.path))
    .reduce(joinBoxes);
  if (kind === 'corner') return seen;
  const crown = move(own, { x: cell.crown.x, y: 0 }).y;
  const swag = { ...seen, maxY: Math.max(seen.maxY, crown + top) };
  const used = pathBox(movePath(cell.seat.shape.stitching.template.edge, compose(own, cell.motion)));
  const limit = 0.2 * boxHeight(swag);
  return joinBoxes(swag, {
    minX: Math.max(used.minX, swag.minX - limit),
    minY: Math.max(used.minY, swag.minY - limit),
    maxX: Math.min(used.maxX, swag.maxX + limit),
    maxY: Math.min(used.maxY, swag.maxY + limit / 4),
  });
};
