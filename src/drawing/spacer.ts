/**
 * For working by hand: a disc of the foot's size with a hole for a pencil, which rolled along a template draws what
 * the needle stitches; and a strip as wide as the clearance, to lay between a template and a line.
 */

import { arc, closedPath, type Path, type Point, polyline, TURN } from '../geometry/index.ts';
import { formatLength, INCH_THIRTYSECOND, MM_TENTH } from '../length/index.ts';
import type { Item } from './drawing.ts';
import type { LineRole } from './role.ts';
import { LABEL_SIZE } from './sheet-style.ts';

/** A hole that a pencil's lead fills and its wood does not (mm). */
const HOLE_RADIUS = 0.6;
/** Long enough to hold (mm). */
const STRIP_LENGTH = 76.2;
/** Between the disc, the strip and the words, mm. */
const APART = 8;
const LINE = 1.4 * LABEL_SIZE;

export interface Spacer {
  readonly lines: readonly Item[];
  readonly words: readonly Item[];
  /** mm */
  readonly height: number;
}

/** With its upper left corner at a point; the clearance in mm. */
export const drawSpacer = (clearance: number, corner: Point): Spacer => {
  const middle = { x: corner.x + clearance, y: corner.y - clearance };
  const left = middle.x + clearance + APART;
  const strip = polyline(
    [
      { x: left, y: middle.y + clearance / 2 },
      { x: left + STRIP_LENGTH, y: middle.y + clearance / 2 },
      { x: left + STRIP_LENGTH, y: middle.y - clearance / 2 },
      { x: left, y: middle.y - clearance / 2 },
    ],
    true,
  );
  const item = (path: Path, role: LineRole, part: string): Item => ({
    kind: 'path',
    path,
    role,
    facts: { part },
  });
  const across = (from: number, to: number): Item[] => [
    item(
      polyline([
        { x: middle.x + from, y: middle.y },
        { x: middle.x + to, y: middle.y },
      ]),
      'spacerCross',
      'spacer-cross',
    ),
    item(
      polyline([
        { x: middle.x, y: middle.y + from },
        { x: middle.x, y: middle.y + to },
      ]),
      'spacerCross',
      'spacer-cross',
    ),
  ];
  const reach = Math.min(clearance * 0.6, 3 * HOLE_RADIUS);
  const width = `${formatLength(clearance, INCH_THIRTYSECOND)} (${formatLength(clearance, MM_TENTH)})`;
  const say = (text: string, line: number): Item => ({
    kind: 'text',
    text,
    at: { x: corner.x, y: corner.y - 2 * clearance - (line + 1) * LINE },
    size: 0.8 * LABEL_SIZE,
    align: 'start',
    angle: 0,
    role: 'note',
  });
  return {
    lines: [
      item(circle(middle, clearance), 'spacer', 'spacer-disc'),
      item(circle(middle, HOLE_RADIUS), 'spacer', 'spacer-hole'),
      ...across(HOLE_RADIUS, reach),
      ...across(-reach, -HOLE_RADIUS),
      item(strip, 'spacer', 'spacer-strip'),
    ],
    words: [
      say(
        `Spacer for a foot clearance of ${width}: the disc is as large as the foot, the strip as wide as the`,
        0,
      ),
      say(
        'clearance. Glue them on card and cut them out; a pencil in the hole draws the stitching as the disc rolls.',
        1,
      ),
    ],
    height: 2 * clearance + 3 * LINE,
  };
};

const circle = (middle: Point, radius: number): Path =>
  closedPath([arc(middle, radius, 0, TURN / 2), arc(middle, radius, TURN / 2, TURN / 2)]);
