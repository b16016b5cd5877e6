/**
 * A template as a filled shape: to cut out of paper, or to scan and trace, which shows how true a printer and a
 * scanner are. Only the edge is known of a template, so it gets straight sides and a straight back; a break that is
 * no corner shows as a white dot beside the edge.
 */

import {
  add,
  angleOf,
  arc,
  closedPath,
  directionAlong,
  findEdgeFault,
  leftOf,
  line,
  type Path,
  type Point,
  pathBox,
  pathEnd,
  pathLength,
  pathStart,
  pieceDirection,
  polar,
  scale,
  TURN,
} from '../geometry/index.ts';
import type { Template } from '../template/index.ts';
import type { Drawing } from './drawing.ts';

/** From the lowest place of the edge down to the back, mm: enough to hold. */
const BODY = 25;
/** A dot's radius, and how far its middle is inside the edge, mm. */
const DOT_RADIUS = 1;
const DOT_INSIDE = 3;
/** Sides lean by up to this (radians) from upright, so that the edge meets them in a clear corner. */
const MOST_LEAN = Math.PI / 9;

export type SilhouetteResult =
  | { readonly ok: true; readonly drawing: Drawing; readonly outline: Path }
  | { readonly ok: false };

/** Not possible where the edge itself comes in the way of straight sides. */
export const drawSilhouette = (template: Template, title: string): SilhouetteResult => {
  const { edge } = template;
  const heel = pathStart(edge);
  const crown = pathEnd(edge);
  const first = edge.pieces[0];
  const last = edge.pieces.at(-1);
  if (!heel || !crown || !first || !last) return { ok: false };
  const floor = pathBox(edge).minY - BODY;
  // Each side leans so that it is as square to the edge as can be.
  const start = angleOf(pieceDirection(first, 0));
  const end = angleOf(pieceDirection(last, 1));
  const up = nearestLean(start + Math.PI / 2, Math.PI / 2);
  const down = nearestLean(end - Math.PI / 2, -Math.PI / 2);
  const foot = (from: Point, angle: number): Point => {
    const d = polar(angle);
    return add(from, scale(d, (floor - from.y) / d.y));
  };
  const left = foot(heel, up);
  const right = foot(crown, down);
  if (!(right.x - left.x > BODY)) return { ok: false };
  const outline = closedPath([...edge.pieces, line(crown, right), line(right, left), line(left, heel)]);
  if (findEdgeFault(outline)) return { ok: false };
  const length = pathLength(edge);
  const dots = template.breaks
    .filter((b) => b.kind === 'mark' && b.at > 0 && b.at < length)
    .map((b): Path => {
      const inward = scale(leftOf(directionAlong(edge, b.at) ?? { x: 1, y: 0 }), -1);
      const middle = add(b.point, scale(inward, DOT_INSIDE));
      return closedPath([arc(middle, DOT_RADIUS, 0, TURN / 2), arc(middle, DOT_RADIUS, TURN / 2, TURN / 2)]);
    });
  const none = { fill: [], way: [], border: [], template: [], channel: [], stitch: [], marks: [], notes: [] };
  return {
    ok: true,
    outline,
    drawing: {
      title,
      layers: { ...none, template: [{ kind: 'area', loops: [outline, ...dots], role: 'silhouette' }] },
    },
  };
};

/** The angle nearest to one wanted that leans from upright by no more than may be. */
const nearestLean = (wanted: number, upright: number): number => {
  const off = Math.atan2(Math.sin(wanted - upright), Math.cos(wanted - upright));
  return upright + Math.max(-MOST_LEAN, Math.min(MOST_LEAN, off));
};
