/** The names on a figure of the card, and where each place of the template lies. */

import { etchedAlignment, type StyledPath } from '../../drawing/index.ts';
import {
  arc,
  type Box,
  closedPath,
  compose,
  directionAlong,
  leftOf,
  mirror,
  move,
  movePath,
  ORIGIN,
  type Path,
  type Point,
  pathEnd,
  pathStart,
  scale as scaled,
  TURN,
  turn,
} from '../../geometry/index.ts';
import { type LaidCorner, type Placing, pausesOf, placingOf } from '../../swag/index.ts';
import { type CardPlace, seamName } from '../card/index.ts';
import { INK, type PageContent } from '../pdf/index.ts';
import { FIGURE, LEADER } from './figure-look.ts';
import {
  type Align,
  BESIDE,
  freePlace,
  LABEL,
  type Line,
  linesHeight,
  linesWidth,
  type Paper,
  placeLines,
  writeLine,
  writeLines,
} from './figure-places.ts';
import type { Subject } from './figure-subject.ts';

/** Half a start mark, mm on paper. */
export const TICK = 3;
/** Between start and stop on paper, mm, for both names; and half of one. */
export const ROOM_FOR_NAMES = 46;
export const HALF_NAME = 10.2;
/** mm between the two where they stand side by side. */
const NAMES_APART = 1.5;
/** From the start mark's foot, as it stands on paper, to the words beside it; mm. */
const BESIDE_FOOT = 2;

export interface Page extends Paper {
  readonly subject: Subject;
  readonly lines: readonly StyledPath[];
  readonly scale: number;
  /** From the figure's frame, and from the cell's, to the page. */
  readonly onFigure: (p: Point) => Point;
  readonly onPage: (p: Point) => Point;
  readonly ceiling: number;
}

const write = (page: Page, text: string, at: Point, align: Align, bold = false): void =>
  writeLine(page, { text, size: LABEL, bold }, at, align);

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

export const nameSwag = (page: Page, box: Box, places: readonly CardPlace[]): void => {
  const { subject } = page;
  const { cell } = subject;
  const placing = placingOf(cell);
  nameMarks(page);
  const find = (id: CardPlace['id']): CardPlace | undefined => places.find((p) => p.id === id);
  const [near, far, guide, needle] = (['near', 'far', 'guide', 'needle'] as const).map(find);
  const levels = nameLevels(page, box, placing, guide);
  if (near) nameNear(page, placing, near);
  if (far) nameFar(page, placing.crown, far, levels);
  if (needle) nameNeedle(page, needle, levels);
  tellEtched(page, places);
  // What can stand on more than one side of its place comes last.
  namePauses(page);
  nameEtched(page, box);
};

const nameMarks = (page: Page): void => {
  const { content, lines, ceiling } = page;
  const [startFoot, stopFoot] = [footOf(page, 'startMark'), footOf(page, 'stopMark')];
  const isRoomy = isRoomyBetween(page);
  const [startAt, stopAt] = namesAt(page);
  for (const [text, foot, x, sense] of [
    ['start mark', startFoot, startAt, 1],
    ['stop mark', stopFoot, stopAt, -1],
  ] as const) {
    const at = { x: isRoomy ? foot.x - 3 * sense : x, y: foot.y - LABEL - 0.6 };
    write(page, text, at, isRoomy ? (sense > 0 ? 'start' : 'end') : 'middle', true);
  }
  const [top] = endsOf(page, lines.find((l) => l.role === 'centreLine')!);
  const above = { x: top.x, y: ceiling };
  if (top.y < ceiling) content.lines([{ from: top, to: above }], FIGURE.lines.centreLine!);
  write(page, 'centre line', { x: above.x, y: above.y + 1 }, 'middle', true);
};

/** Names of marks keep clear of the names of lines beside them, where there is room between the marks. */
const isRoomyBetween = (page: Page): boolean =>
  footOf(page, 'stopMark').x - footOf(page, 'startMark').x > ROOM_FOR_NAMES;

/** The middles of the names of start and stop where there is little room: under their marks, or so far out that they are apart. */
const namesAt = (page: Page): readonly [start: number, stop: number] => {
  const [start, stop] = [footOf(page, 'startMark').x, footOf(page, 'stopMark').x];
  const out = Math.max(0, HALF_NAME + NAMES_APART / 2 - (stop - start) / 2);
  return [start - out, stop + out];
};

/** The seam on the other side of the band. */
const farName = (field: Subject['field']): string =>
  field.corners === 'none'
    ? 'far seam'
    : seamName({ ...field, from: field.from === 'inner' ? 'outer' : 'inner' });

/** The names of lines on the right; returns where they begin, what they take of the height, and how high their lines lie. */
const nameLevels = (page: Page, box: Box, placing: Placing, guide: CardPlace | undefined): Levels => {
  const { subject, lines, onFigure, onPage } = page;
  const { cell, field } = subject;
  const over = mirror(cell.crown, cell.mirror);
  const names = new Map<string, string>([
    ['start line', field.marksAt === 0 ? 'start line' : 'row 1'],
    ['start line 2', 'start line'],
    [field.lines[0]!.name, seamName(field)],
    ['motif', 'motif'],
    ['far seam', farName(field)],
    ['limit', 'limit'],
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
        : [{ text: guideName(guide), at: onPage(move(over, { x: 0, y: placing.guide })) }],
    )
    .sort((p, q) => q.at.y - p.at.y);
  const stop = isRoomyBetween(page) ? 0 : namesAt(page)[1] + HALF_NAME;
  const x = Math.max(...levels.map((l) => l.at.x), onFigure({ x: box.maxX, y: 0 }).x, stop) + BESIDE;
  let lowest = Number.POSITIVE_INFINITY;
  const taken: Span[] = [];
  for (const { text, at } of levels) {
    // Names of lines that lie close together are moved apart, downward.
    lowest = Math.min(at.y - 0.35 * LABEL, lowest - 1.15 * LABEL);
    write(page, text, { x, y: lowest }, 'start');
    taken.push({ from: lowest - 0.25 * LABEL, to: lowest + 0.95 * LABEL });
  }
  return {
    x,
    taken,
    lines: levels.map(({ at }) => ({ from: at.y + APART - THROUGH, to: at.y - APART + THROUGH })),
  };
};

/** A stretch of the page's height, mm. */
interface Span {
  readonly from: number;
  readonly to: number;
}

interface Levels {
  readonly x: number;
  readonly taken: readonly Span[];
  readonly lines: readonly Span[];
}

/** Where the top of something so high is put, nearest to where it is wanted, so that it lies on none of what is taken. */
const freeTop = (wanted: number, height: number, taken: readonly Span[]): number => {
  const isFree = (top: number): boolean =>
    taken.every(({ from, to }) => top <= from - APART + 1e-9 || top - height >= to + APART - 1e-9);
  const tops = [wanted, ...taken.flatMap(({ from, to }) => [from - APART, to + APART + height])];
  return tops
    .filter(isFree)
    .reduce((a, b) => (Math.abs(b - wanted) < Math.abs(a - wanted) ? b : a), tops.find(isFree) ?? wanted);
};

/** mm between words one above the other, and between words and a line. */
const THROUGH = 0.6;
const APART = 2;

/** `guide line, 1 3/8 up` */
export const guideName = (guide: CardPlace | undefined): string => {
  const [up] = guide?.measures ?? [];
  return up === undefined ? 'guide line' : `guide line, ${up}`;
};

const leadTo = (page: Page, place: Point, to: Point): void => {
  const q = page.onPage(place);
  page.content.lines([{ from: q, to }], LEADER);
  dot(page.content, q);
};

const footOnPaper = ({ subject, scale }: Page): number =>
  subject.cell.seat.shape.stitching.stitched.clearance * scale;

/** On the left of the foot at the start mark, upward. */
const nameNear = (page: Page, placing: Placing, place: CardPlace): void => {
  const { onPage } = page;
  const { along, up } = placing.start ?? placing.end;
  const start = onPage(ORIGIN);
  const foot = footOnPaper(page);
  const lines = placeLines(place);
  const at = { x: start.x - foot - BESIDE_FOOT, y: start.y + foot + 0.5 };
  leadTo(page, { x: along, y: up }, { x: at.x, y: at.y + 0.5 * LABEL });
  writeLines(page, lines, { x: at.x - 0.8, y: at.y + linesHeight(lines) }, 'end');
};

/** How high (mm) it comes over the start mark on paper. */
export const nearHeight = (place: CardPlace, foot: number): number =>
  foot + 0.5 + linesHeight(placeLines(place));

/**
 * How far (mm) the end at the crown may come over what is drawn, where that is so high: it stands between the names of
 * lines or, where they leave no room for it, over them.
 */
export const overFigure = (place: CardPlace, drawn: number): number => {
  const height = linesHeight(placeLines(place)) + 2 * APART;
  return drawn >= height + 2.7 * LABEL ? 0 : height + LABEL;
};

/** On the right of all that is drawn, over the names of lines. */
const nameFar = (
  page: Page,
  place: { readonly along: number; readonly up: number } | undefined,
  told: CardPlace,
  { x, taken }: Levels,
): void => {
  const lines = placeLines(told);
  const height = linesHeight(lines);
  // A side may end short of a place that the others come to.
  const at = place ? { x: place.along, y: place.up } : page.subject.cell.crown;
  const top = freeTop(page.onPage(at).y + height / 2, height, taken);
  if (place) leadTo(page, at, { x: x - 0.8, y: top - 0.6 * LABEL });
  writeLines(page, lines, { x, y: top }, 'start');
};

/** `needle 5 1/8 up` */
const needleLine = (place: CardPlace): Line => {
  const [name, height] = placeLines({ ...place, name: 'needle' });
  return { ...height!, text: `${name!.text} ${height!.text}` };
};

/**
 * How high (mm) the needle's line comes over the start mark where it cannot stand beside what is written there.
 * `half` is half the swag's span on paper.
 */
export const needleHeight = (near: CardPlace, needle: CardPlace, foot: number, half: number): number => {
  const line = needleLine(needle);
  const isBeside = half - HALF_NAME - linesWidth([line]) > BESIDE - foot;
  return isBeside ? 0 : nearHeight(near, foot) + APART + linesHeight([line]);
};

/** On the left of the centre line's name, over the stitching that climbs to the crown; no line is drawn through it. */
const nameNeedle = (page: Page, place: CardPlace, levels: Levels): void => {
  const { content, written, onPage, subject, ceiling } = page;
  const crown = onPage(subject.cell.crown);
  const foot = footOnPaper(page);
  const line = needleLine(place);
  const high = linesHeight([line]);
  const x = crown.x - Math.max(foot + BESIDE_FOOT, HALF_NAME) - BESIDE;
  const left = x - content.width(line.text, line.size, line.bold);
  const beside = written.filter((b) => b.maxX > left - BESIDE && b.minX < x);
  const taken = [...levels.lines, ...beside.map((b) => ({ from: b.minY, to: b.maxY }))];
  const top = freeTop(Math.min(crown.y + foot + high, ceiling + LABEL), high, taken);
  leadTo(page, subject.cell.crown, { x: x + 0.8, y: top - high + 0.5 * LABEL });
  writeLines(page, [line], { x, y: top }, 'end');
};

/** From a pause's dot to the middle of its number, mm; inward first, and then round the dot as far as is free. */
const FROM_DOT = 4.4;
const AROUND = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6].map((sixth) => (sixth * Math.PI) / 6);

const namePauses = (page: Page): void => {
  const { content, onFigure, subject } = page;
  const { cell, own } = subject;
  const { template } = cell.seat.shape.stitching;
  const laid = compose(own, cell.motion);
  for (const pause of pausesOf(cell)) {
    const b = template.breaks[pause.section - 2];
    if (!b) continue;
    const q = onFigure(move(laid, b.point));
    const outward = leftOf(directionAlong(template.edge, b.at) ?? { x: 1, y: 0 });
    const inward = move({ ...laid, x: 0, y: 0 }, scaled(outward, -1));
    dot(content, q);
    const line = { text: String(pause.section), size: LABEL, bold: false };
    const places = AROUND.map((angle) => {
      const to = move(turn(angle), scaled(inward, FROM_DOT));
      return { x: q.x + to.x, y: q.y + to.y - 0.35 * LABEL };
    });
    writeLine(page, line, freePlace(page, line, places, 'middle'), 'middle');
  }
};

/** How many lines of type higher a letter may stand to be free. */
const UP_LINE = [0, 0.5, 1, 1.5, 2, 3, 4];
/** How many letters beside its line: on the right, else on the left, else a little farther off. */
const BESIDE_LINE = [0, -1.1, 1, -2.1, 2, -3.1];

/** Each letter stands a line higher than the one before, so that lines etched close together can be told apart. */
const nameEtched = (page: Page, box: Box): void => {
  const { onFigure, scale, subject } = page;
  const { cell, field, own } = subject;
  const laid = compose(own, cell.motion);
  let low = move(own, ORIGIN).y - field.startMargin + 1.2 / scale;
  for (const { name, path } of etchedAlignment(cell.seat.shape.stitching.template)) {
    const line = { text: name, size: LABEL, bold: false };
    const places = UP_LINE.flatMap((lines) => {
      const at = letterPlace(movePath(path, laid), low + (lines * LABEL) / scale, box);
      if (!at) return [];
      const { x, y } = onFigure(at);
      return BESIDE_LINE.map((letters) => ({ x: x + 0.7 + letters * LABEL, y }));
    });
    if (places.length === 0) continue;
    writeLine(page, line, freePlace(page, line, places, 'start'), 'start');
    low += (1.1 * LABEL) / scale;
  }
};

const isEtched = ({ id }: CardPlace): boolean => id.startsWith('line ');

/** mm below the names of the marks that is taken by where etched lines lie: in a row there, away from what they cross. */
export const etchedHeight = (places: readonly CardPlace[]): number =>
  places.some(isEtched) ? 1.5 * LABEL : 0;

const tellEtched = (page: Page, places: readonly CardPlace[]): void => {
  const { content } = page;
  const foot = footOf(page, 'startMark');
  const x = isRoomyBetween(page) ? foot.x - 3 : namesAt(page)[0] - HALF_NAME;
  const at = { x, y: foot.y - 2.5 * LABEL - 0.6 };
  for (const { id, measures } of places.filter(isEtched)) {
    const text = `${id.slice('line '.length)} ${measures.join('')}`;
    write(page, text, at, 'start', true);
    at.x += content.width(text, LABEL, true) + 2 * LABEL;
  }
};

export const nameCorner = (page: Page, { fit: { toCorner }, turned }: LaidCorner): void => {
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

export const circle = (center: Point, radius: number): Path => closedPath([arc(center, radius, 0, TURN)]);
