/** The card's second picture: how a swag turns the corner, where the tape's 0 is, and what its marks are called. */

import {
  add,
  type Box,
  boxHeight,
  boxOfPoints,
  boxWidth,
  mirror,
  move,
  movePath,
  type Path,
  type Point,
  pathBox,
  polyline,
  scale as scaled,
  shift,
} from '../../geometry/index.ts';
import type { Cell, Design } from '../../swag/index.ts';
import { INK, type PageContent } from '../pdf/index.ts';
import { CENTRE, LABEL, MARK, SEAM, SECOND, START_LINE, STITCH } from './swag-figure.ts';

/** mm on paper: above and below for names, and beside for those that stand outside. */
const ROOM = { above: 7, below: 4, left: 16, right: 9 };
const TICK = 2.5;
/** How far the lines run on past the marks, as a share of the distance from start to corner. */
const RUN_ON = 0.35;

/**
 * Draws it in a box (mm), the corner as the first side is sewn: its seam below, the next side's seam beyond the
 * mitre. Returns the height (mm) that it takes.
 */
export const drawCornerFigure = (
  content: PageContent,
  { field }: Design,
  { cell, fit }: { readonly cell: Cell; readonly fit: { readonly toCorner: number } },
  room: Box,
): number => {
  const { crown, path } = cell;
  const over = mirror(crown, cell.mirror);
  const second = movePath(path, over);
  // Where the start lines of the two sides cross, and the seams.
  const cross: Point = { x: fit.toCorner, y: 0 };
  const back = Math.max(RUN_ON * fit.toCorner, LEAST_RUN * crown.y);
  const near = -field.startMargin;
  const low: Point = { x: -back, y: 0 };
  const seam = (x: number): Point => ({ x, y: near });
  // The seam's own corner lies on the mitre, as deep below as the margin.
  const corner: Point = { x: cross.x + near / Math.tan(cell.mirror), y: near };
  const seen = boxOfPoints([
    low,
    seam(-back),
    corner,
    cross,
    crown,
    move(over, low),
    move(over, seam(-back)),
  ]);
  const [a, b] = [pathBox(path), pathBox(second)];
  const box: Box = {
    minX: Math.min(seen.minX, a.minX, b.minX),
    minY: Math.min(seen.minY, a.minY, b.minY),
    maxX: Math.max(seen.maxX, a.maxX, b.maxX),
    maxY: Math.max(seen.maxY, a.maxY, b.maxY),
  };
  const scale = Math.min(
    1,
    (boxWidth(room) - ROOM.left - ROOM.right) / boxWidth(box),
    (boxHeight(room) - ROOM.above - ROOM.below) / boxHeight(box),
  );
  const origin = {
    x:
      room.minX +
      ROOM.left +
      (boxWidth(room) - ROOM.left - ROOM.right - boxWidth(box) * scale) / 2 -
      box.minX * scale,
    y: room.maxY - ROOM.above - box.maxY * scale,
  };
  const onPage = (p: Point): Point => add(origin, scaled(p, scale));
  const draw = (line: Path, stroke: typeof SEAM): void =>
    content.placed(shift(origin.x, origin.y), () => content.path(line, stroke), scale);
  const both = (line: Path, stroke: typeof SEAM): void => {
    draw(line, stroke);
    draw(movePath(line, over), stroke);
  };
  both(polyline([seam(-back), corner]), SEAM);
  if (field.startMargin > 0) both(polyline([low, cross]), START_LINE);
  const mitreEnd = {
    x: crown.x + (crown.x - corner.x) * PAST_CROWN,
    y: crown.y + (crown.y - near) * PAST_CROWN,
  };
  draw(polyline([corner, mitreEnd]), CENTRE);
  draw(second, SECOND);
  draw(path, STITCH);
  both(
    polyline([
      { x: 0, y: near - TICK / scale },
      { x: 0, y: TICK / scale },
    ]),
    MARK,
  );
  content.area([circleAt(onPage(cross), 1)], INK.strong);

  const label = (text: string, at: Point, align: 'start' | 'middle' | 'end', bold = false): void =>
    content.text({ text, at, size: LABEL, color: INK.strong, align, bold, halo: 0.6 });
  const start = onPage({ x: 0, y: near });
  label('start mark', { x: start.x - 1.5, y: onPage({ x: 0, y: 0 }).y + 1.4 }, 'end', true);
  const stop = onPage(move(over, { x: 0, y: near }));
  nameBeside(label, 'stop mark', stop, onPage(move(over, { x: 0, y: 0 })));
  const zero = onPage(cross);
  const down = onPage(corner);
  label('tape’s 0', { x: Math.max(zero.x, down.x) + 2.2, y: zero.y - 0.35 * LABEL }, 'start');
  label('mitre', { x: onPage(mitreEnd).x, y: onPage(mitreEnd).y + 1.2 }, 'middle', true);
  return boxHeight(box) * scale + ROOM.above + ROOM.below;
};

/** A short corner's lines run on at least by this share of its depth. */
const LEAST_RUN = 0.25;
/** How far the mitre is drawn past the crown. */
const PAST_CROWN = 0.12;

/** On the seam's side of a mark that stands across the page. */
const nameBeside = (
  label: (text: string, at: Point, align: 'start' | 'middle' | 'end', bold?: boolean) => void,
  text: string,
  seam: Point,
  line: Point,
): void => {
  const isLeft = seam.x <= line.x;
  label(
    text,
    { x: seam.x + (isLeft ? -1 : 1) * (TICK + 1), y: seam.y - 0.35 * LABEL },
    isLeft ? 'end' : 'start',
    true,
  );
};

const circleAt = (center: Point, radius: number): Path => {
  const from = { x: center.x + radius, y: center.y };
  return {
    closed: true,
    pieces: [{ kind: 'arc', center, radius, start: 0, sweep: 2 * Math.PI, from, to: from }],
  };
};
