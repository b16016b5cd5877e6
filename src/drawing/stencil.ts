/**
 * Lines as slots of a stencil: channels of a stated width, in which a pen goes along the line, with bridges left
 * between them so that nothing falls out.
 *
 * A slot is all that lies within half its width of a stretch of line: its sides are parallels of the line and its ends
 * are round. A line is cut into stretches by bridges, evenly between its corners and never at one, so that a swag's
 * points are cut whole. Where another line meets it, the later of the two gives way and leaves a bridge. What is left
 * hangs together when no slot goes round anything and none runs into another; both are seen to, and lines of which it
 * is not true are refused.
 */

import {
  boxesTouch,
  distance,
  growBox,
  nearnessOf,
  openPath,
  type Path,
  parallelIn,
  pathBox,
  pathLength,
  pathsApart,
  pieceLength,
  pointAlong,
  polyline,
  regionOf,
  slicePath,
} from '../geometry/index.ts';
import { cornersAlong } from './corners-along.ts';
import { LAYERS, type LayerId } from './drawing.ts';
import type { StyledDrawing, StyledPath } from './style.ts';

export interface StencilMeasures {
  /** The width of a slot, mm. */
  readonly slot: number;
  /** What a bridge is wide at least, mm. */
  readonly bridge: number;
  /** From bridge to bridge along a line, about, mm. */
  readonly every: number;
}

export type Stencil =
  | { readonly ok: true; readonly drawing: StyledDrawing }
  /** The widest slot (mm) that leaves land between the lines; undefined where a slot would go round what is in it. */
  | { readonly ok: false; readonly widest?: number };

/** Land between two slots is at least this wide, mm: less breaks as it is cut. Our own judgement, no source. */
export const LEAST_LAND = 1;

/** Bridges at least so many times as far apart as a bridge and a slot are wide together keep clear of corners. */
const LEAST_APART = 3;

/** mm that bridges must be apart for slots and bridges of these widths. */
export const leastBridgesApart = ({ slot, bridge }: Pick<StencilMeasures, 'slot' | 'bridge'>): number =>
  LEAST_APART * (slot + bridge);

/** A pen cannot follow fills through slots: they lie too near, and cross themselves. */
const CUT: readonly LayerId[] = ['stitch', 'channel'];

const ROUNDING = 1e-3;

/** The line that a blade follows, mm. */
const OUTLINE = 0.2;

/** Of a drawing whose lines are joined. Bridges nearer than `leastBridgesApart` are a mistake of the caller. */
export const stencilled = (drawing: StyledDrawing, measures: StencilMeasures): Stencil => {
  if (!(measures.every >= leastBridgesApart(measures))) throw new RangeError('Bridges that meet');
  const lines = CUT.flatMap((layer) =>
    drawing.layers[layer].flatMap((item) => (item.kind === 'path' ? [{ layer, item }] : [])),
  );
  const met = meetings(
    lines.map(({ item }) => item.path),
    measures.slot + LEAST_LAND,
  );
  const stretches = lines.flatMap(({ layer, item }, i) =>
    stretchesOf(
      item.path,
      met.before[i]!.map((k) => lines[k]!.item.path),
      measures,
    ).map((path) => ({ layer, item, path })),
  );
  const space = Math.min(met.space, spaceBetween(stretches, measures.slot + LEAST_LAND));
  const slots = stretches.map((stretch) => ({ ...stretch, outline: outlineOf(stretch.path, measures.slot) }));
  // To a micrometre, which no blade follows: a slot may be just as wide as is said.
  if (space < measures.slot + LEAST_LAND - ROUNDING)
    return { ok: false, widest: Math.max(0, space - LEAST_LAND) };
  if (slots.some(({ outline }) => outline === undefined)) return { ok: false };
  const layers = Object.fromEntries(
    LAYERS.map((id) => [
      id,
      slots.flatMap(({ layer, item, outline }): readonly StyledPath[] =>
        layer === id && outline
          ? [{ ...item, path: outline, stroke: { width: OUTLINE, color: item.stroke.color } }]
          : [],
      ),
    ]),
  ) as unknown as StyledDrawing['layers'];
  return { ok: true, drawing: { title: drawing.title, layers } };
};

/** Lines nearer than this (mm) meet. */
const MEETING = 0.01;

/** For each line the earlier ones that it meets; and how near (mm) two come that do not, where that is below `least`. */
const meetings = (
  paths: readonly Path[],
  least: number,
): { readonly before: readonly (readonly number[])[]; readonly space: number } => {
  const boxes = paths.map((path) => growBox(pathBox(path), least / 2));
  let space = Number.POSITIVE_INFINITY;
  const before = paths.map((path, i) =>
    paths.slice(0, i).flatMap((other, k) => {
      if (!boxesTouch(boxes[i]!, boxes[k]!)) return [];
      const apart = pathsApart(path, other, least);
      if (apart < MEETING) return [k];
      if (apart < least) space = Math.min(space, apart);
      return [];
    }),
  );
  return { before, space };
};

/** How near (mm) two stretches come, where that is below `least`. */
const spaceBetween = (stretches: readonly { readonly path: Path }[], least: number): number => {
  const boxes = stretches.map(({ path }) => growBox(pathBox(path), least / 2));
  let space = Number.POSITIVE_INFINITY;
  for (let i = 0; i < stretches.length; i++)
    for (let k = 0; k < i; k++)
      if (boxesTouch(boxes[i]!, boxes[k]!)) {
        const apart = pathsApart(stretches[i]!.path, stretches[k]!.path, least);
        if (apart < least) space = Math.min(space, apart);
      }
  return space;
};

/** From one length along a line to another, mm. */
type Stretch = readonly [from: number, to: number];

/** The stretches of a line that are cut, without the bridges. */
const stretchesOf = (path: Path, met: readonly Path[], measures: StencilMeasures): readonly Path[] => {
  const length = pathLength(path);
  const reach = measures.slot + measures.bridge;
  const gaps = met.flatMap((other) => givingWay(path, other, reach));
  const stops = [0, ...cornersAlong(path), ...gaps.flat(), length].sort((a, b) => a - b);
  const between = stops.slice(1).map((to, i): Stretch => [stops[i]!, to]);
  const isOpen = ([from, to]: Stretch): boolean => !gaps.some((gap) => from < gap[1] && to > gap[0]);
  const segments = between.filter(isOpen);
  const counts = segments.map(([from, to]) => Math.round((to - from) / measures.every));
  // One bridge would hold what lies inside a line that comes round, and let it swing.
  if (path.closed) {
    const longest = [...segments.keys()].sort((a, b) => spanOf(segments[b]!) - spanOf(segments[a]!));
    for (let need = 2 - gaps.length - counts.reduce((a, b) => a + b, 0); need > 0; need--)
      counts[longest[segments.length > 1 ? need - 1 : 0]!]! += 1;
  }
  const bridges = segments.flatMap(([from, to], i) =>
    Array.from({ length: counts[i]! }, (_, k) =>
      bridgeAt(path, from + ((k + 0.5) * (to - from)) / counts[i]!, reach),
    ),
  );
  const left = complement([...gaps, ...bridges], length).map(([from, to]) => slicePath(path, from, to));
  const [first, last] = [left[0], left.at(-1)];
  // A line that comes round goes on over its beginning.
  const goesOn =
    path.closed &&
    first &&
    last &&
    first !== last &&
    distance(first.pieces[0]!.from, last.pieces.at(-1)!.to) < MEETING;
  return goesOn ? [openPath([...last.pieces, ...first.pieces]), ...left.slice(1, -1)] : left;
};

const spanOf = ([from, to]: Stretch): number => to - from;

/** What lies between stretches; crumbs shorter than a pen's point are left out. */
const complement = (gaps: readonly Stretch[], length: number): readonly Stretch[] => {
  const left: Stretch[] = [];
  let at = 0;
  for (const [from, to] of [...gaps].sort((a, b) => a[0] - b[0])) {
    if (from - at > CRUMB) left.push([at, from]);
    at = Math.max(at, to);
  }
  if (length - at > CRUMB) left.push([at, length]);
  return left;
};

const CRUMB = 0.1;

/** How finely a line is walked along to see where it leaves another, mm. */
const STEP = 0.1;

/** Where a line lies nearer than `reach` to another round about the places where they meet. */
const givingWay = (path: Path, other: Path, reach: number): readonly Stretch[] => {
  const { distance: away } = nearnessOf(other.pieces);
  const length = pathLength(path);
  const steps = Math.ceil(length / STEP);
  const found: Stretch[] = [];
  let from: number | undefined;
  let meets = false;
  for (let i = 0; i <= steps; i++) {
    const at = (i * length) / steps;
    const apart = away(pointAlong(path, at)!);
    if (apart < reach) {
      from ??= Math.max(0, at - STEP);
      meets ||= apart <= STEP;
    }
    if (from !== undefined && (apart >= reach || i === steps)) {
      if (meets) found.push([from, at]);
      [from, meets] = [undefined, false];
    }
  }
  return found;
};

/** How often a bridge over a bend is made longer, and by which share of `reach`. */
const MOST_TRIES = 20;
const WIDER = 0.05;

/** Round a place of a line, so long that the two stretches beside it are `reach` apart wherever they are nearest. */
const bridgeAt = (path: Path, at: number, reach: number): Stretch => {
  const length = pathLength(path);
  const around = (from: number, to: number): Path => slicePath(path, Math.max(0, from), Math.min(length, to));
  let half = reach / 2;
  for (let i = 0; i < MOST_TRIES; i++, half += (WIDER * reach) / 2) {
    const before = around(at - half - reach, at - half);
    const after = around(at + half, at + half + reach);
    if (pathsApart(before, after) >= reach) break;
  }
  return [at - half, at + half];
};

/** A piece shorter than this (mm) is rounding, and its parallel a line of no direction. */
const SPECK = 1e-5;

const withoutSpecks = (path: Path): Path => {
  const pieces: Path['pieces'][number][] = [];
  for (const piece of path.pieces) {
    if (pieceLength(piece) < SPECK) continue;
    const before = pieces.at(-1);
    pieces.push(before ? { ...piece, from: before.to } : piece);
  }
  return openPath(pieces);
};

/** Where rounding leaves an edge open it is tried again this much (mm) wider, which no blade tells. */
const NUDGE = 1e-6;
const MOST_NUDGES = 4;

/** A slot's edge, or undefined where it goes round something that would fall out. */
const outlineOf = (stretch: Path, slot: number): Path | undefined => {
  const line = withoutSpecks(stretch);
  const { minX, minY, maxX, maxY } = growBox(pathBox(line), 2 * slot);
  const corners = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  const room = regionOf([polyline(corners, true)]);
  for (let k = 0; k < MOST_NUDGES; k++) {
    const [outline, ...more] = parallelIn([line], slot / 2 + k * NUDGE, room);
    if (outline?.closed && more.length === 0) return outline;
  }
  return undefined;
};
