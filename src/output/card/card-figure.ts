/** The card's picture: one swag with the template in place for its first half, and the marks by name. */

import { ghostItems, type Stroke } from '../../drawing/index.ts';
import {
  add,
  type Box,
  boxHeight,
  boxOfPoints,
  boxWidth,
  directionAlong,
  joinBoxes,
  leftOf,
  type Motion,
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
import { type Cell, type Design, pausesOf, placingOf } from '../../swag/index.ts';
import { INK, type PageContent } from '../pdf/index.ts';

/** mm on paper. */
const LABEL = 3.4;
/** Above the far seam and below the near one, for labels. */
const ABOVE = 8;
const BELOW = 9;
/** Beside the swag, so that marks at its ends do not stand at the paper's edge. */
const BESIDE = 10;
const TICK = 3;

const SEAM: Stroke = { width: 0.35, color: '#707070' };
const START_LINE: Stroke = { width: 0.25, color: '#707070', dash: [0.6, 1.4] };
const STITCH: Stroke = { width: 0.75, color: '#111111' };
const SECOND: Stroke = { width: 0.45, color: '#111111', dash: [2.2, 1.4] };
const CENTRE: Stroke = { width: 0.25, color: '#333333', dash: [4, 1, 0.8, 1] };
const GUIDE: Stroke = { width: 0.25, color: '#333333', dash: [2, 1] };
const MARK: Stroke = { width: 0.5, color: '#111111' };
const EDGE: Stroke = { width: 0.5, color: '#8a8a8a' };
const ETCHED: Stroke = { width: 0.18, color: '#8a8a8a', dash: [0.8, 0.8] };
const FOOT: Stroke = { width: 0.25, color: '#8a8a8a' };

/** How high the figure is (mm) in a room of a given width, at most `most`. */
export const figureHeight = (design: Design, width: number, most: number): number => {
  const { box } = viewOf(design);
  const scale = scaleFor(box, width, most);
  return boxHeight(box) * scale + ABOVE + BELOW;
};

const scaleFor = (box: Box, width: number, height: number): number =>
  Math.min(1, (width - 2 * BESIDE) / boxWidth(box), (height - ABOVE - BELOW) / boxHeight(box));

interface View {
  readonly cell: Cell;
  readonly second: Motion;
  readonly box: Box;
}

const viewOf = ({ cells, field }: Design): View => {
  const cell = cells[0]!;
  const second = mirror(cell.crown, cell.mirror);
  const near = -field.startMargin;
  const far = field.width - field.startMargin;
  const swag = boxOfPoints([
    { x: Math.min(0, cell.join), y: near },
    { x: 2 * cell.crown.x - cell.join, y: far },
  ]);
  // The stretch of the template that is used; the rest of it may run out of the picture.
  const { shape } = cell.seat;
  const edge = movePath(shape.stitching.template.edge, cell.motion);
  const used = pathBox(edge);
  const limit = 0.2 * boxHeight(swag);
  const reach: Box = {
    minX: Math.max(used.minX, swag.minX - limit),
    minY: Math.max(used.minY, swag.minY - limit),
    maxX: Math.min(used.maxX, swag.maxX + limit),
    maxY: Math.min(used.maxY, swag.maxY + limit),
  };
  return { cell, second, box: joinBoxes(swag, reach) };
};

/** Draws the figure with its top left corner at `at`; returns nothing, its height is `figureHeight`. */
export const drawFigure = (
  content: PageContent,
  design: Design,
  at: Point,
  width: number,
  most: number,
): void => {
  const { cell, second, box } = viewOf(design);
  const { field } = design;
  const scale = scaleFor(box, width, most);
  const left = at.x + (width - boxWidth(box) * scale) / 2;
  const origin = { x: left - box.minX * scale, y: at.y - ABOVE - box.maxY * scale };
  const onPage = (p: Point): Point => add(origin, scaled(p, scale));
  const draw = (path: Path, stroke: Stroke): void =>
    content.placed(shift(origin.x, origin.y), () => content.path(path, stroke), scale);
  const straight = (a: Point, b: Point, stroke: Stroke): void => draw(polyline([a, b]), stroke);
  const near = -field.startMargin;
  const far = field.width - field.startMargin;
  const x0 = box.minX - BESIDE / scale;
  const x1 = box.maxX + BESIDE / scale;
  const frame: Box = {
    minX: at.x,
    maxX: at.x + width,
    minY: at.y - figureHeight(design, width, most),
    maxY: at.y,
  };
  const template = cell.seat.shape.stitching.template;

  content.clipped(frame, () => {
    for (const y of [near, far]) straight({ x: x0, y }, { x: x1, y }, SEAM);
    if (field.startMargin > 0) straight({ x: x0, y: 0 }, { x: x1, y: 0 }, START_LINE);
    for (const item of ghostItems(template, cell.motion, {}, true))
      draw(item.path, item.facts?.['part'] === 'edge' ? EDGE : ETCHED);
    const placing = placingOf(cell);
    if (placing.guide !== undefined)
      straight({ x: x0, y: placing.guide }, { x: x1, y: placing.guide }, GUIDE);
    straight({ x: cell.crown.x, y: near - TICK / scale }, { x: cell.crown.x, y: far + TICK / scale }, CENTRE);
    const { clearance } = cell.seat.shape.stitching.stitched;
    for (const p of [{ x: 0, y: 0 }, cell.crown]) draw(circle(p, clearance), FOOT);
    draw(movePath(cell.path, second), SECOND);
    draw(cell.path, STITCH);
    for (const x of [0, 2 * cell.crown.x])
      straight({ x, y: near - TICK / scale }, { x, y: near + (field.startMargin + TICK / scale) }, MARK);
  });

  const label = (
    text: string,
    p: Point,
    dx: number,
    dy: number,
    align: 'start' | 'middle' | 'end',
    bold = false,
  ) => {
    const q = onPage(p);
    const size = LABEL;
    content.text({ text, at: { x: q.x + dx, y: q.y + dy }, size, color: INK.strong, align, bold, halo: 0.5 });
  };
  const below = -TICK - LABEL - 0.6;
  label('start mark', { x: 0, y: near }, 0, below, 'middle', true);
  label('centre line', { x: cell.crown.x, y: far }, 0, TICK + 1, 'middle', true);
  label('stop mark', { x: 2 * cell.crown.x, y: near }, 0, below, 'middle', true);
  if (design.sides.length > 0) {
    const seam = field.corners === 'none' ? 'seam' : `${field.from} seam`;
    label(seam, { x: (cell.crown.x * 3) / 2, y: near }, 0, -LABEL - 0.8, 'middle');
  }
  const placing = placingOf(cell);
  const names = [placing.start ?? placing.end, ...(placing.crown ? [placing.crown] : [])];
  for (const place of names) {
    const p = { x: place.along, y: place.up };
    dot(content, onPage(p));
    const isNear = place === names[0];
    // Where the template lies inside, its own names stand under the edge.
    const under = placing.templateSide === 'inside';
    label(place.label, p, isNear ? 2 : -1.5, under ? -LABEL - 1 : 1.8, isNear ? 'start' : 'end');
  }
  for (const pause of pausesOf(cell)) {
    const b = template.breaks[pause.section - 2];
    if (!b) continue;
    const p = move(cell.motion, b.point);
    const inward = move(
      { ...cell.motion, x: 0, y: 0 },
      scaled(leftOf(directionAlong(template.edge, b.at) ?? { x: 1, y: 0 }), -1),
    );
    dot(content, onPage(p));
    label(String(pause.section), p, inward.x * 4.4, inward.y * 4.4 - 0.35 * LABEL, 'middle');
  }
  for (const line of placing.lines) {
    if (line.along === undefined) continue;
    const foot = move(cell.motion, { x: line.line.at, y: 0 });
    const inBox = foot.y > box.minY && foot.y < box.maxY && foot.x > box.minX && foot.x < box.maxX;
    if (inBox) label(line.line.name, foot, 0.8, -LABEL - 0.6, 'start');
  }
  if (placing.guide !== undefined)
    label('guide line, for the flat', { x: box.maxX, y: placing.guide }, BESIDE - 1, 1, 'end');
};

const dot = (content: PageContent, at: Point): void => content.area([circle(at, 0.8)], '#111111');

const circle = (center: Point, radius: number): Path => {
  const from = { x: center.x + radius, y: center.y };
  return {
    closed: true,
    pieces: [{ kind: 'arc', center, radius, start: 0, sweep: 2 * Math.PI, from, to: from }],
  };
};
