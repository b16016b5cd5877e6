/**
 * How a template stands for the first half of a swag: where its heel, its breaks and its etched lines lie,
 * measured from the start mark along the start line and up from it. The second half is its mirror image.
 */

import {
  distance,
  move,
  ORIGIN,
  type Point,
  pathEnd,
  pathStart,
  pointAlong,
  positiveAngle,
} from '../geometry/index.ts';
import type { AlignmentLine } from '../template/index.ts';
import type { Cell } from './design.ts';
import type { Setting } from './setting.ts';
import { leanOf } from './setting.ts';
import { CROWN_END, HEEL, type PlaceName, type Stop } from './stitching.ts';

/** A place on the template, seen from the cell's start mark. */
interface Standing extends PlaceName {
  /** mm along the start line from the start mark, positive into the swag. */
  readonly along: number;
  /** mm up from the start line, positive into the border. */
  readonly up: number;
  /** mm between the place and the needle when the foot touches there. */
  readonly back: number;
}

/** An etched line as it crosses the start line. */
interface LineStanding {
  readonly line: AlignmentLine;
  /** mm along the start line from the start mark to where the etched line crosses it; undefined where it is parallel. */
  readonly along: number | undefined;
  /** Radians between the etched line and the start line, in (0, π]. */
  readonly angle: number;
}

export interface Placing {
  readonly cell: Cell;
  readonly setting: Setting;
  /** Radians by which the template's long axis leans from the seam. */
  readonly lean: number;
  /** Whether the first half is stitched with the template turned over (and the second then face up). */
  readonly firstTurnedOver: boolean;
  readonly templateSide: 'inside' | 'outside';
  /** Where the end of the edge stands that is nearer to the start: the heel, or the crown end when crown-first. */
  readonly end: Standing;
  /** The place at the start mark, and the one at the crown; undefined where that is no place on the edge. */
  readonly start: Standing | undefined;
  readonly crown: Standing | undefined;
  readonly lines: readonly LineStanding[];
  /** For a flat laid along a guide line: mm from the start line to that line. */
  readonly guide: number | undefined;
}

export const placingOf = (cell: Cell): Placing => {
  const { shape, way, pose } = cell.seat;
  const { template } = shape.stitching;
  const heelFirst = shape.direction === 'heel-first';
  const [first, last] = heelFirst ? [shape.from, shape.to] : [shape.to, shape.from];
  return {
    cell,
    setting: way.setting,
    lean: leanOf(pose.tilt),
    firstTurnedOver: shape.motion.flip,
    templateSide: shape.side,
    end: endStanding(cell),
    start: standing(cell, first, ORIGIN),
    crown: standing(cell, last, cell.crown),
    lines: template.alignment.map((line) => lineStanding(cell, line)),
    guide:
      way.setting.kind === 'flat-on-guide' ? move(cell.motion, way.setting.flat.piece.from).y : undefined,
  };
};

const standing = (cell: Cell, stop: Stop, needle: Point): Standing | undefined => {
  if (stop.contact === undefined) return undefined;
  const place = pointAlong(cell.seat.shape.stitching.template.edge, stop.contact);
  if (!place) return undefined;
  const at = move(cell.motion, place);
  const { label, brief, spoken } = stop;
  return { label, brief, spoken, along: at.x, up: at.y, back: distance(at, needle) };
};

const endStanding = (cell: Cell): Standing => {
  const { shape } = cell.seat;
  const { edge } = shape.stitching.template;
  const heelFirst = shape.direction === 'heel-first';
  const place = heelFirst ? pathStart(edge) : pathEnd(edge);
  const at = move(cell.motion, place ?? ORIGIN);
  return { ...(heelFirst ? HEEL : CROWN_END), along: at.x, up: at.y, back: distance(at, ORIGIN) };
};

const lineStanding = (cell: Cell, line: AlignmentLine): LineStanding => {
  const a = move(cell.motion, { x: line.at, y: 0 });
  const b = move(cell.motion, { x: line.at, y: 1 });
  const rise = b.y - a.y;
  const angle = positiveAngle(Math.atan2(rise, b.x - a.x)) % Math.PI;
  const along = Math.abs(rise) > LEAST_RISE ? a.x - (a.y * (b.x - a.x)) / rise : undefined;
  return { line, along, angle: angle === 0 ? Math.PI : angle };
};

/** An etched line flatter than this (sine of its angle) crosses the start line too far away to be of use. */
const LEAST_RISE = 0.1;
