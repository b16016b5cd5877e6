/**
 * A path of lines and arcs as SVG path data: absolute M, L, A and Z, in mm, y down.
 *
 * Here, and only here and beside the texts, y is turned over: the SVG's y is the drawing's −y, and the
 * viewBox starts at the drawing's top edge. So a reader gets the drawing's own numbers back by one change
 * of sign.
 *
 * An arc is split into parts of at most a third of a turn. SVG gives an arc by its ends and its radius and
 * leaves the centre to be found; near half a turn that is ill-conditioned (rounding the ends by 1e-9 moves
 * the centre of a 100 mm half circle by 4e-4), and a full turn cannot be said at all.
 *
 * An arc that is flat is written as a line. Browsers reckon in single precision: of two ends that differ by less
 * than that can tell they make a whole circle, as large as the arc's radius.
 */

import { type Arc, distance, type Path, type Point, pieceAt } from '../../geometry/index.ts';
import { formatNumber } from './number.ts';

/** Radians. At a third of a turn the centre moves by no more than twice the rounding of the ends. */
const LARGEST_SWEEP = (2 * Math.PI) / 3;

/** Two pieces meet when their ends are this near (mm): what the geometry promises. */
const MEETING = 1e-6;

/** Path data, or an empty string for a path without pieces. Throws when the pieces do not join up. */
export const pathData = (path: Path): string => {
  const commands: string[] = [];
  let at: Point | undefined;
  let written = '';
  const lineTo = (to: Point): void => {
    const text = pointText(to);
    if (text !== written) commands.push(`L ${text}`);
    written = text;
  };
  path.pieces.forEach((piece, index) => {
    if (at === undefined) {
      written = pointText(piece.from);
      commands.push(`M ${written}`);
    } else if (!(distance(at, piece.from) <= MEETING)) {
      throw new Error(`A path has a hole of ${distance(at, piece.from)} mm between two of its pieces`);
    }
    at = piece.to;
    const closesItself = path.closed && index === path.pieces.length - 1;
    if (piece.kind === 'arc') {
      for (const to of arcSteps(piece)) {
        const text = pointText(to);
        // A reader drops an arc between equal points, so a shorter one than the last decimal is dropped here.
        if (text !== written) commands.push(isFlat(piece) ? `L ${text}` : arcCommand(piece, text));
        written = text;
      }
    } else if (!closesItself) {
      lineTo(piece.to);
    }
  });
  if (commands.length === 0) return '';
  // A path that is only a point is a dot where the line's ends are round.
  if (commands.length === 1) commands.push(`L ${written}`);
  if (path.closed) commands.push('Z');
  return commands.join(' ');
};

/**
 * mm that an arc may rise above its chord and still be a line: far less than a drawing is true to. An arc of 250 mm
 * radius that rises by more is over 0.01 mm long, a thousand times what single precision tells apart there.
 */
const FLAT = 1e-7;

const isFlat = ({ radius, sweep }: Arc): boolean =>
  Math.abs(sweep) < 1 && radius * (1 - Math.cos(sweep / 2)) < FLAT;

const arcSteps = (piece: Arc): Point[] => {
  const parts = Math.max(1, Math.ceil(Math.abs(piece.sweep) / LARGEST_SWEEP));
  if (!(parts <= MOST_PARTS)) throw new Error(`An arc sweeps ${piece.sweep} radians`);
  return Array.from({ length: parts }, (_, i) => pieceAt(piece, (i + 1) / parts));
};

/** A full turn is three parts; more than two turns is no arc. */
const MOST_PARTS = 6;

/** With y down, a positive sweep (counterclockwise to the eye) has sweep flag 0. No part is ever a large arc. */
const arcCommand = (piece: Arc, to: string): string => {
  const radius = formatNumber(piece.radius);
  return `A ${radius} ${radius} 0 0 ${piece.sweep > 0 ? 0 : 1} ${to}`;
};

const pointText = (p: Point): string => `${formatNumber(p.x)} ${formatNumber(-p.y)}`;
