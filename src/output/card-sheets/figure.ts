/**
 * The card's figures: the drawing of one swag with the template in place for its first half, or of one that turns a
 * corner, small, with the names and the measures of its marks, lines and places written on it.
 */

import type { StyledPath } from '../../drawing/index.ts';
import {
  add,
  type Box,
  boxHeight,
  boxWidth,
  move,
  ORIGIN,
  type Path,
  type Point,
  scale as scaled,
  shift,
} from '../../geometry/index.ts';
import { cornerSwag, type Design, isClosed, placingOf } from '../../swag/index.ts';
import { type CardPlace, seamName } from '../card/index.ts';
import type { PageContent } from '../pdf/index.ts';
import { FOOT } from './figure-look.ts';
import {
  circle,
  etchedHeight,
  guideName,
  HALF_NAME,
  nameCorner,
  nameSwag,
  nearHeight,
  needleHeight,
  overFigure,
  type Page,
  ROOM_FOR_NAMES,
  TICK,
} from './figure-names.ts';
import { linesWidth, nameWidth, placeLines } from './figure-places.ts';
import { boxOf, type Kind, linesOf, type Subject, subjectOf } from './figure-subject.ts';

/** mm on paper: how far lines run on past what is shown, and room for names. */
const PAST_END = 4;
const ROOM = {
  swag: { above: 8, below: 9, left: 25, right: 23 },
  corner: { above: 7, below: 4, left: 22, right: 12 },
} as const;
/** The foot stands between the start mark and the name of the end of the template there, mm. */
const FOOT_BESIDE = 6;
/** How far the mitre is seen past the crown, a share of its height. */
const PAST_CROWN = 0.12;

/** A figure with what is written on it, and the room that it has (mm); `most` is how high it may be. */
export interface Figure {
  readonly design: Design;
  readonly kind: Kind;
  readonly places: readonly CardPlace[];
  readonly width: number;
  readonly most: number;
}

/**
 * From the outer seam a corner's stop mark has its name on the right, and a swag's line always has. On the left is the
 * end of the template at the start mark, and on the right over the names of lines the one at the crown.
 */
const roomOf = ({ kind, design: { field, cells }, places }: Figure) => {
  if (kind === 'corner') return field.from === 'outer' ? { ...ROOM.corner, right: 24 } : ROOM.corner;
  const { start, end } = placingOf(cells[0]!);
  const widthOf = (id: CardPlace['id']): number => {
    const place = places.find((p) => p.id === id);
    return place ? linesWidth(placeLines(place)) : 0;
  };
  const guide = places.find((p) => p.id === 'guide');
  return {
    ...ROOM.swag,
    below: ROOM.swag.below + etchedHeight(places),
    left: Math.max(ROOM.swag.left, FOOT_BESIDE + Math.max(nameWidth((start ?? end).label), widthOf('near'))),
    right: Math.max(
      ROOM.swag.right,
      nameWidth(seamName(field)),
      guide ? nameWidth(guideName(guide)) : 0,
      widthOf('far'),
    ),
  };
};

interface View {
  readonly subject: Subject;
  readonly box: Box;
  readonly scale: number;
  readonly left: number;
  readonly right: number;
  readonly above: number;
  readonly below: number;
}

const viewOf = (figure: Figure): View => {
  const { design, kind, places, width, most } = figure;
  const { above, below, left, right } = roomOf(figure);
  const subject = subjectOf(design, kind, 0);
  const box = boxOf(subject, linesOf(subject, kind, 0), kind);
  const scaleBy = (past: number): number =>
    Math.min(1, (width - left - right - past) / boxWidth(box), (most - above - below) / boxHeight(box));
  // Names on the right stand past the ends of lines, or past the stop mark's own name.
  const { halfSpan } = subject.cell.seat.pose;
  const past =
    kind === 'corner' ? 0 : 2 * halfSpan * scaleBy(PAST_END) > ROOM_FOR_NAMES ? PAST_END : HALF_NAME;
  const scale = scaleBy(past);
  // What is written over the start mark of a shallow swag comes higher than the swag.
  const near = kind === 'swag' ? places.find((p) => p.id === 'near') : undefined;
  const { clearance } = subject.cell.seat.shape.stitching.stitched;
  const fromTop = (box.maxY - move(subject.own, ORIGIN).y) * scale;
  const needle = places.find((p) => p.id === 'needle');
  const foot = clearance * scale;
  const over = near && needle ? needleHeight(near, needle, foot, halfSpan * scale) : 0;
  const written = near ? Math.max(nearHeight(near, foot), over) + TICK / 2 - fromTop : 0;
  const far = kind === 'swag' ? places.find((p) => p.id === 'far') : undefined;
  const column = far ? overFigure(far, boxHeight(box) * scale) : 0;
  return { subject, box, scale, left, right: right + past, below, above: Math.max(above, written, column) };
};

/** How high the figure is, mm. */
export const figureHeight = (figure: Figure): number => {
  const { box, scale, above, below } = viewOf(figure);
  return boxHeight(box) * scale + above + below;
};

/** How large it draws what it shows, as a share of true size. */
export const figureScale = (figure: Figure): number => viewOf(figure).scale;

/** Draws the figure with its top left corner at `at`. Only that of a swag has the places written on it. */
export const drawFigure = (content: PageContent, figure: Figure, at: Point): void => {
  const { design, kind, places, width, most } = figure;
  const { box, scale, above, left, right } = viewOf(figure);
  const subject = subjectOf(design, kind, PAST_END / scale);
  const { cell, own } = subject;
  const beside = (width - left - right - boxWidth(box) * scale) / 2;
  const origin = { x: at.x + left + beside - box.minX * scale, y: at.y - above - box.maxY * scale };
  const onFigure = (p: Point): Point => add(origin, scaled(p, scale));
  const onPage = (p: Point): Point => onFigure(move(own, p));
  // Along a seam marks keep their size on paper; round a centre they keep clear of the motif.
  const tick = subject.design.sides.some((s) => isClosed(s.run)) ? undefined : TICK / scale;
  const lines = linesOf(subject, kind, tick);
  const crown = onPage(cell.crown);
  const ceiling =
    kind === 'swag' ? at.y - above + TICK : crown.y + PAST_CROWN * (crown.y - onPage(ORIGIN).y) + TICK / 2;
  const draw = (path: Path, stroke: StyledPath['stroke']): void =>
    content.placed(shift(origin.x, origin.y), () => content.path(path, stroke), scale);
  const frame = { minX: at.x, maxX: at.x + width, minY: at.y - most, maxY: at.y };
  const isLong = ({ role }: StyledPath): boolean => kind === 'swag' || role === 'mitre';
  content.clipped({ ...frame, maxY: ceiling }, () => {
    for (const line of lines) if (isLong(line)) draw(line.path, line.stroke);
  });
  content.clipped(frame, () => {
    for (const line of lines) if (!isLong(line)) draw(line.path, line.stroke);
    const { clearance } = cell.seat.shape.stitching.stitched;
    if (kind === 'swag') for (const p of [ORIGIN, cell.crown]) draw(circle(move(own, p), clearance), FOOT);
  });
  const page: Page = { content, written: [], subject, lines, scale, onFigure, onPage, ceiling };
  const corner = kind === 'corner' ? cornerSwag(design) : undefined;
  if (corner) nameCorner(page, corner);
  else nameSwag(page, box, places);
};
