/**
 * The card's figures: the drawing of one swag with the template in place for its first half, or of one that turns a
 * corner, small, with the names of its marks, lines and places written on it.
 */

import {
  drawDesign,
  etchedAlignment,
  LAYERS,
  type Scope,
  type StyledPath,
  styled,
} from '../../drawing/index.ts';
import {
  add,
  arc,
  type Box,
  boxHeight,
  boxWidth,
  closedPath,
  compose,
  directionAlong,
  inverse,
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
  scale as scaled,
  shift,
  TURN,
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
  pausesOf,
  placingOf,
  repeatMarks,
  straightRun,
  WITHOUT_SWAG,
} from '../../swag/index.ts';
import { seamName } from '../card/index.ts';
import { INK, type PageContent } from '../pdf/index.ts';
import { FIGURE, FOOT, LEADER, SECOND } from './figure-look.ts';

/** mm on paper: letters, half a start mark, how far lines run on past what is shown, and room for names. */
const LABEL = 3.4;
const TICK = 3;
const PAST_END = 4;
const ROOM = {
  swag: { above: 8, below: 9, left: 25, right: 23 },
  corner: { above: 7, below: 4, left: 16, right: 12 },
} as const;
/** A letter is at most so wide, of its height, in words of more than a few. */
const LETTER = 0.6;
const BESIDE = 1.5;
const nameWidth = (name: string): number => BESIDE + LETTER * LABEL * name.length;
/** The foot stands between the start mark and the name of the end of the template there, mm. */
const FOOT_BESIDE = 6;
/**
 * From the outer seam a corner's stop mark has its name on the right, and a swag's line always has. On the left is the
 * name of the template's end, and of what is long.
 */
const roomOf = (kind: Kind, { field, cells }: Design) => {
  if (kind === 'corner') return field.from === 'outer' ? { ...ROOM.corner, right: 24 } : ROOM.corner;
  const { start, end } = placingOf(cells[0]!);
  return {
    ...ROOM.swag,
    left: Math.max(ROOM.swag.left, FOOT_BESIDE + nameWidth((start ?? end).label)),
    right: Math.max(ROOM.swag.right, nameWidth(seamName(field))),
  };
};

/** Between start and stop on paper, mm, for both names; and half of one. */
const ROOM_FOR_NAMES = 46;
const HALF_NAME = 9.5;
/** A wide gap to the neighbour is not worth the room that the swag could have: a share of the half span. */
const MOST_GAP = 0.2;
/** A shallow swag in a wide band is shown without the far line, so that it is large enough to read. */
const SHALLOW = 0.6;
const ABOVE_SHALLOW = 1.3;
/** How far lines run on before a corner's marks: shares of the way to the corner, and of the swag's depth. */
const RUN_ON = { ofWay: 0.35, ofDepth: 0.25 };
/** How far the mitre is seen past the crown, a share of its height. */
const PAST_CROWN = 0.12;

type Kind = keyof typeof ROOM;
type Align = 'start' | 'middle' | 'end';

/** What a figure shows: which part of which design, and how that is turned to stand upright on the page. */
interface Subject {
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

const subjectOf = (design: Design, kind: Kind, past: number): Subject => {
  const corner = kind === 'corner' ? cornerSwag(design) : undefined;
  return corner ? cornerSubject(design, corner) : swagSubject(design, past);
};

/** The lines of a figure in its own frame, in the look of a card. `tick` is half a start mark, mm. */
const linesOf = (
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
const boxOf = (subject: Subject, lines: readonly StyledPath[], kind: Kind): Box => {
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

interface View {
  readonly subject: Subject;
  readonly box: Box;
  readonly scale: number;
}

const viewOf = (design: Design, kind: Kind, width: number, most: number): View => {
  const { above, below, left, right } = roomOf(kind, design);
  const subject = subjectOf(design, kind, 0);
  const box = boxOf(subject, linesOf(subject, kind, 0), kind);
  const scale = Math.min(1, (width - left - right) / boxWidth(box), (most - above - below) / boxHeight(box));
  return { subject, box, scale };
};

/** How high the figure of a swag is (mm) in a room of a given width, at most `most`. */
export const figureHeight = (design: Design, kind: Kind, width: number, most: number): number => {
  const { box, scale } = viewOf(design, kind, width, most);
  return boxHeight(box) * scale + ROOM[kind].above + ROOM[kind].below;
};

/** Draws the figure with its top left corner at `at`. */
export const drawFigure = (
  content: PageContent,
  design: Design,
  kind: Kind,
  at: Point,
  width: number,
  most: number,
): void => {
  const { box, scale } = viewOf(design, kind, width, most);
  const { above, left, right } = roomOf(kind, design);
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
  const page: Page = { content, subject, lines, scale, onFigure, onPage, ceiling };
  const corner = kind === 'corner' ? cornerSwag(design) : undefined;
  if (corner) nameCorner(page, corner);
  else nameSwag(page, box);
};

interface Page {
  readonly content: PageContent;
  readonly subject: Subject;
  readonly lines: readonly StyledPath[];
  readonly scale: number;
  /** From the figure's frame, and from the cell's, to the page. */
  readonly onFigure: (p: Point) => Point;
  readonly onPage: (p: Point) => Point;
  readonly ceiling: number;
}

const write = ({ content }: Page, text: string, at: Point, align: Align, bold = false): void =>
  content.text({ text, at, size: LABEL, color: INK.strong, align, bold, halo: 0.6 });

/** The upper and the lower end of a line as it lies on the page. */
const endsOf = ({ onFigure }: Page, { path }: StyledPath): readonly [Point, Point] => {
  const [a, b] = [onFigure(pathStart(path)!), onFigure(pathEnd(path)!)];
  return a.y < b.y ? [b, a] : [a, b];
};

/** Where a start or stop mark ends below, its ray included: the lowest of the lines that go through it. */
const footOf = (page: Page, role: 'startMark' | 'stopMark'): Point => {
  const [, foot] = endsOf(page, page.lines.find((l) => l.role === role)!);
  const rays = page.lines.filter((l) => l.role === 'ray').map((l) => endsOf(page, l));
  return rays.find(([top]) => Math.hypot(top.x - foot.x, top.y - foot.y) < 0.1)?.[1] ?? foot;
};

const nameSwag = (page: Page, box: Box): void => {
  const { content, subject, lines, scale, onFigure, onPage, ceiling } = page;
  const { cell, own, field } = subject;
  const { template, stitched } = cell.seat.shape.stitching;
  const over = mirror(cell.crown, cell.mirror);
  const [startFoot, stopFoot] = [footOf(page, 'startMark'), footOf(page, 'stopMark')];
  // Names of marks keep clear of the names of lines beside them, where there is room between the marks.
  const isRoomy = stopFoot.x - startFoot.x > ROOM_FOR_NAMES;
  for (const [text, foot, sense] of [
    ['start mark', startFoot, 1],
    ['stop mark', stopFoot, -1],
  ] as const) {
    const at = { x: foot.x - (isRoomy ? 3 * sense : 0), y: foot.y - LABEL - 0.6 };
    write(page, text, at, isRoomy ? (sense > 0 ? 'start' : 'end') : 'middle', true);
  }
  const [top] = endsOf(page, lines.find((l) => l.role === 'centreLine')!);
  const above = { x: top.x, y: ceiling };
  if (top.y < ceiling) content.lines([{ from: top, to: above }], FIGURE.lines.centreLine!);
  write(page, 'centre line', { x: above.x, y: above.y + 1 }, 'middle', true);

  const placing = placingOf(cell);
  const names = new Map<string, string>([
    ['start line', field.marksAt === 0 ? 'start line' : 'row 1'],
    ['start line 2', 'start line'],
    [field.lines[0]!.name, seamName(field)],
    ['motif', 'motif'],
  ]);
  const levels = lines
    .flatMap(({ facts, path }) => {
      const { line = '' } = facts ?? {};
      const text = names.get(line);
      const [a, b] = [pathStart(path)!, pathEnd(path)!];
      return text === undefined ? [] : [{ text, at: onFigure(a.x > b.x ? a : b) }];
    })
    .concat(
      placing.guide === undefined
        ? []
        : [{ text: 'guide line', at: onPage(move(over, { x: 0, y: placing.guide })) }],
    )
    .sort((p, q) => q.at.y - p.at.y);
  const ends = levels.map((l) => l.at.x);
  const beside =
    Math.max(...ends, onFigure({ x: box.maxX, y: 0 }).x, isRoomy ? 0 : stopFoot.x + HALF_NAME) + BESIDE;
  let lowest = Number.POSITIVE_INFINITY;
  for (const { text, at } of levels) {
    // Names of lines that lie close together are moved apart, downward.
    lowest = Math.min(at.y - 0.35 * LABEL, lowest - 1.15 * LABEL);
    write(page, text, { x: beside, y: lowest }, 'start');
  }

  const pointAt = (text: string, place: Point, at: Point, align: Align): void => {
    const q = onPage(place);
    content.lines([{ from: q, to: { x: at.x, y: at.y + 0.35 * LABEL } }], LEADER);
    dot(content, q);
    write(page, text, { x: at.x + (align === 'end' ? -0.8 : 0.8), y: at.y }, align);
  };
  const foot = stitched.clearance * scale;
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
    pointAt(placing.crown.label, place, { x, y: Math.min(q.y + drop, ceiling - 2 * LABEL) }, 'start');
  }
  const laid = compose(own, cell.motion);
  for (const pause of pausesOf(cell)) {
    const b = template.breaks[pause.section - 2];
    if (!b) continue;
    const q = onFigure(move(laid, b.point));
    const outward = leftOf(directionAlong(template.edge, b.at) ?? { x: 1, y: 0 });
    const inward = move({ ...laid, x: 0, y: 0 }, scaled(outward, -1));
    dot(content, q);
    write(
      page,
      String(pause.section),
      { x: q.x + inward.x * 4.4, y: q.y + inward.y * 4.4 - 0.35 * LABEL },
      'middle',
    );
  }
  const low = move(own, ORIGIN).y - field.startMargin + 1.2 / scale;
  for (const etched of etchedAlignment(template)) {
    const at = letterPlace(movePath(etched.path, laid), low, box);
    if (at) write(page, etched.name, { x: onFigure(at).x + 0.7, y: onFigure(at).y }, 'start');
  }
};

const nameCorner = (page: Page, { fit: { toCorner }, turned }: LaidCorner): void => {
  const { content, subject, onPage, ceiling } = page;
  const { cell } = subject;
  const over = mirror(cell.crown, cell.mirror);
  const start = footOf(page, 'startMark');
  write(page, 'start mark', { x: start.x - 1.5, y: onPage(ORIGIN).y + 1.4 }, 'end', true);
  const line = onPage(move(over, ORIGIN));
  const seam = onPage(move(compose(over, turn(-turned)), { x: 0, y: -subject.design.field.startMargin }));
  const sense = seam.x <= line.x ? -1 : 1;
  const stop = { x: seam.x + sense * (TICK + 1), y: seam.y - 0.35 * LABEL };
  write(page, 'stop mark', stop, sense < 0 ? 'end' : 'start', true);
  // Where the start lines of the two sides cross.
  const zero = onPage(move(turn(-turned), { x: toCorner, y: 0 }));
  content.area([circle(zero, 1)], INK.strong);
  write(page, 'tape’s 0', { x: Math.max(zero.x, seam.x) + 2.2, y: zero.y - 0.35 * LABEL }, 'start');
  const crown = onPage(cell.crown);
  const lean = (ceiling - crown.y) / Math.tan(cell.mirror + turned);
  write(page, 'mitre', { x: crown.x + lean, y: ceiling + 1.2 }, 'middle', true);
};

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

const circle = (center: Point, radius: number): Path => closedPath([arc(center, radius, 0, TURN)]);
