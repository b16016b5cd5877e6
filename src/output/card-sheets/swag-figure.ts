/** The card's picture: one swag with the template in place for its first half, and the marks by name. */

import { etchedAlignment, ghostItems, type Stroke } from '../../drawing/index.ts';
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
  ORIGIN,
  type Path,
  type Point,
  pathBox,
  pathEnd,
  pathStart,
  polyline,
  scale as scaled,
  shift,
} from '../../geometry/index.ts';
import { type Cell, type Design, isRound, pausesOf, placingOf } from '../../swag/index.ts';
import { seamName } from '../card/index.ts';
import { INK, type PageContent } from '../pdf/index.ts';
import { drawRingFigure, ringFigureHeight } from './ring-figure.ts';

/** mm on paper. */
export const LABEL = 3.4;
/** Above the far seam and below the near one, for labels. */
const ABOVE = 8;
const BELOW = 9;
/** Beside the swag, for the names of lines and places. */
const BESIDE = 23;
/** How far the seams run on past what is shown, before their names. */
const PAST_END = 4;
const TICK = 3;

export const SEAM: Stroke = { width: 0.35, color: '#707070' };
export const START_LINE: Stroke = { width: 0.25, color: '#707070', dash: [0.6, 1.4] };
export const STITCH: Stroke = { width: 0.75, color: '#111111' };
export const SECOND: Stroke = { width: 0.45, color: '#111111', dash: [2.2, 1.4] };
export const CENTRE: Stroke = { width: 0.25, color: '#333333', dash: [4, 1, 0.8, 1] };
const GUIDE: Stroke = { width: 0.25, color: '#333333', dash: [2, 1] };
export const MARK: Stroke = { width: 0.5, color: '#111111' };
const EDGE: Stroke = { width: 0.5, color: '#8a8a8a' };
const ETCHED: Stroke = { width: 0.18, color: '#8a8a8a', dash: [0.8, 0.8] };
const LEADER: Stroke = { width: 0.18, color: '#555555' };
const FOOT: Stroke = { width: 0.25, color: '#8a8a8a' };

/** How high the figure is (mm) in a room of a given width, at most `most`. */
export const figureHeight = (design: Design, width: number, most: number): number => {
  if (isRound(design.fit)) return ringFigureHeight(design, width, most);
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
  const top = topOf(cell, far);
  // A wide gap to the neighbour is not worth the room that the swag could have.
  const left = Math.max(Math.min(0, cell.join), -MOST_GAP * cell.crown.x);
  const swag = boxOfPoints([
    { x: left, y: near },
    { x: 2 * cell.crown.x - left, y: top },
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

/** A share of the half span. */
const MOST_GAP = 0.2;
/** Between start and stop on paper, mm, for both names. */
const ROOM_FOR_NAMES = 46;

/** A shallow swag in a wide border is shown without the far seam, so that it is large enough to read. */
const topOf = (cell: Cell, far: number): number => {
  const reach = cell.seat.pose.top;
  return reach > SHALLOW * far ? far : reach * ABOVE_SHALLOW;
};

const SHALLOW = 0.6;
const ABOVE_SHALLOW = 1.3;

/** Draws the figure with its top left corner at `at`; returns nothing, its height is `figureHeight`. */
export const drawFigure = (
  content: PageContent,
  design: Design,
  at: Point,
  width: number,
  most: number,
): void => {
  if (isRound(design.fit)) {
    drawRingFigure(content, design, at, width, most);
    return;
  }
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
  const top = topOf(cell, far);
  const x0 = box.minX - PAST_END / scale;
  const x1 = box.maxX + PAST_END / scale;
  const frame: Box = {
    minX: at.x,
    maxX: at.x + width,
    minY: at.y - figureHeight(design, width, most),
    maxY: at.y,
  };
  const template = cell.seat.shape.stitching.template;

  content.clipped(frame, () => {
    for (const y of top < far ? [near] : [near, far]) straight({ x: x0, y }, { x: x1, y }, SEAM);
    if (field.startMargin > 0) straight({ x: x0, y: 0 }, { x: x1, y: 0 }, START_LINE);
    for (const item of ghostItems(template, cell.motion, {}, true))
      draw(item.path, item.role === 'ghostEdge' ? EDGE : ETCHED);
    const { guide } = placingOf(cell);
    if (guide !== undefined) straight({ x: x0, y: guide }, { x: x1, y: guide }, GUIDE);
    straight({ x: cell.crown.x, y: near - TICK / scale }, { x: cell.crown.x, y: top + TICK / scale }, CENTRE);
    const { clearance } = cell.seat.shape.stitching.stitched;
    for (const p of [{ x: 0, y: 0 }, cell.crown]) draw(circle(p, clearance), FOOT);
    draw(movePath(cell.path, second), SECOND);
    draw(cell.path, STITCH);
    for (const x of [0, 2 * cell.crown.x])
      straight({ x, y: near - TICK / scale }, { x, y: near + (field.startMargin + TICK / scale) }, MARK);
  });

  const label = (text: string, at: Point, align: Align, bold = false): void =>
    content.text({ text, at, size: LABEL, color: INK.strong, align, bold, halo: 0.6 });
  const below = onPage({ x: 0, y: near }).y - TICK - LABEL - 0.6;
  const centreTop = onPage({ x: cell.crown.x, y: top });
  const startX = onPage(ORIGIN).x;
  const stopX = onPage({ x: 2 * cell.crown.x, y: 0 }).x;
  // Names of marks keep clear of the names of lines beside them, where there is room between the marks.
  const inward = stopX - startX > ROOM_FOR_NAMES ? 3 : undefined;
  const named = (text: string, x: number, sense: 1 | -1): void => {
    const align = inward === undefined ? 'middle' : sense > 0 ? 'start' : 'end';
    label(text, { x: x - sense * (inward ?? 0), y: below }, align, true);
  };
  named('start mark', startX, 1);
  named('stop mark', stopX, -1);
  label('centre line', { x: centreTop.x, y: centreTop.y + TICK + 1 }, 'middle', true);

  const placing = placingOf(cell);
  const levels = [
    ...(field.startMargin > 0 ? [{ text: 'start line', up: 0 }] : []),
    ...(placing.guide === undefined ? [] : [{ text: 'guide line', up: placing.guide }]),
    { text: seamName(field), up: near },
  ].sort((p, q) => q.up - p.up);
  let lowest = Number.POSITIVE_INFINITY;
  for (const { text, up } of levels) {
    // Names of lines that lie close together are moved apart, downward.
    lowest = Math.min(onPage({ x: 0, y: up }).y - 0.35 * LABEL, lowest - 1.15 * LABEL);
    label(text, { x: onPage({ x: box.maxX, y: 0 }).x + PAST_END + 1.5, y: lowest }, 'start');
  }

  const pointAt = (text: string, place: Point, at: Point, align: Align): void => {
    const q = onPage(place);
    content.lines([{ from: q, to: { x: at.x, y: at.y + 0.35 * LABEL } }], LEADER);
    dot(content, q);
    label(text, { x: at.x + (align === 'end' ? -0.8 : 0.8), y: at.y }, align);
  };
  const foot = cell.seat.shape.stitching.stitched.clearance * scale;
  const nearEnd = placing.start ?? placing.end;
  const start = onPage(ORIGIN);
  pointAt(
    nearEnd.label,
    { x: nearEnd.along, y: nearEnd.up },
    { x: start.x - foot - 2, y: start.y + foot + 1.5 },
    'end',
  );
  if (placing.crown) {
    const place = { x: placing.crown.along, y: placing.crown.up };
    // The template's side of the stitching is free of other lines.
    const drop = placing.templateSide === 'inside' ? -9 : 6;
    const q = onPage(place);
    const x = Math.max(q.x, onPage(cell.crown).x) + foot + 4;
    pointAt(placing.crown.label, place, { x, y: q.y + drop }, 'start');
  }
  for (const pause of pausesOf(cell)) {
    const b = template.breaks[pause.section - 2];
    if (!b) continue;
    const q = onPage(move(cell.motion, b.point));
    const outward = leftOf(directionAlong(template.edge, b.at) ?? { x: 1, y: 0 });
    const inward = move({ ...cell.motion, x: 0, y: 0 }, scaled(outward, -1));
    dot(content, q);
    label(
      String(pause.section),
      { x: q.x + inward.x * 4.4, y: q.y + inward.y * 4.4 - 0.35 * LABEL },
      'middle',
    );
  }
  for (const etched of etchedAlignment(template)) {
    const at = letterPlace(movePath(etched.path, cell.motion), near + 1.2 / scale, box);
    if (at) label(etched.name, { x: onPage(at).x + 0.7, y: onPage(at).y }, 'start');
  }
};

type Align = 'start' | 'middle' | 'end';

/** Beside an etched line: where it comes down to a level, or where it ends when it lies along the seam. */
const letterPlace = (line: Path, level: number, box: Box): Point | undefined => {
  const from = pathStart(line);
  const to = pathEnd(line);
  if (!from || !to) return undefined;
  const share = (level - from.y) / (to.y - from.y);
  const at =
    share >= 0 && share <= 1 ? { x: from.x + share * (to.x - from.x), y: level } : { x: to.x, y: to.y };
  const inside = at.x >= box.minX && at.x <= box.maxX && at.y >= box.minY && at.y <= box.maxY;
  return inside ? at : undefined;
};

const dot = (content: PageContent, at: Point): void => content.area([circle(at, 0.8)], '#111111');

const circle = (center: Point, radius: number): Path => {
  const from = { x: center.x + radius, y: center.y };
  return {
    closed: true,
    pieces: [{ kind: 'arc', center, radius, start: 0, sweep: 2 * Math.PI, from, to: from }],
  };
};
