/**
 * The traced outline over its picture, so that a person sees whether it is right: the outline thin, the working edge
 * thick, every corner with its number, the two ends by name, and a mark where a new section begins.
 */

import { flatten, type Path, type Point } from '../../geometry/index.ts';
import type { Canvas2D } from '../png/index.ts';

export type OverlayCanvas = Pick<
  Canvas2D,
  | 'fillStyle'
  | 'strokeStyle'
  | 'lineWidth'
  | 'lineCap'
  | 'lineJoin'
  | 'font'
  | 'textAlign'
  | 'textBaseline'
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'arc'
  | 'closePath'
  | 'stroke'
  | 'fill'
  | 'fillText'
>;

export interface OverlayLook {
  readonly outline: Path;
  /** In the outline's frame, from heel to crown end. */
  readonly edge: Path | undefined;
  readonly corners: readonly { readonly point: Point }[];
  readonly breaks: readonly Point[];
  /** From the outline's frame to the overlay's pixels. */
  readonly toPixels: (p: Point) => Point;
  /** Pixels of the overlay to a mm. */
  readonly pixelsPerMm: number;
  /** The overlay's sides, pixels: letters and lines are in proportion to the longer. */
  readonly width: number;
  readonly height: number;
}

/** Seen on black and on white. */
const OUTLINE = '#1f8fff';
const EDGE = '#ff2d55';
const MARK = '#00a86b';
const PAPER = 'rgba(255, 255, 255, 0.9)';
/** mm to which arcs are drawn true. */
const TRUE = 0.01;

export const paintOverlay = (canvas: OverlayCanvas, look: OverlayLook): void => {
  const unit = Math.max(look.width, look.height) / 1000;
  const draw = (path: Path, color: string, width: number): void => {
    canvas.beginPath();
    flatten(path, TRUE).forEach((p, i) => {
      const q = look.toPixels(p);
      if (i === 0) canvas.moveTo(q.x, q.y);
      else canvas.lineTo(q.x, q.y);
    });
    if (path.closed) canvas.closePath();
    canvas.strokeStyle = color;
    canvas.lineWidth = width;
    canvas.lineCap = 'round';
    canvas.lineJoin = 'round';
    canvas.stroke();
  };
  draw(look.outline, OUTLINE, 1.4 * unit);
  if (look.edge) draw(look.edge, EDGE, 2.2 * unit);
  const middle = middleOf(look.corners.map((c) => look.toPixels(c.point)));
  const label = (at: Point, text: string, color: string, away: number): void => {
    const d = Math.hypot(at.x - middle.x, at.y - middle.y) || 1;
    const size = 16 * unit;
    const half = (text.length * 0.34 + 0.5) * size;
    // A scan is often cut close to the template: names stay within it.
    const within = (value: number, room: number, most: number): number =>
      Math.max(room, Math.min(most - room, value));
    const x = within(at.x + ((at.x - middle.x) / d) * away, half, look.width);
    const y = within(at.y + ((at.y - middle.y) / d) * away, 0.75 * size, look.height);
    canvas.font = `bold ${size}px "DejaVu Sans", sans-serif`;
    canvas.textAlign = 'center';
    canvas.textBaseline = 'middle';
    canvas.fillStyle = PAPER;
    canvas.beginPath();
    canvas.moveTo(x - half, y - 0.75 * size);
    canvas.lineTo(x + half, y - 0.75 * size);
    canvas.lineTo(x + half, y + 0.75 * size);
    canvas.lineTo(x - half, y + 0.75 * size);
    canvas.closePath();
    canvas.fill('evenodd');
    canvas.fillStyle = color;
    canvas.fillText(text, x, y);
  };
  look.corners.forEach((c, i) => {
    const q = look.toPixels(c.point);
    dot(canvas, q, 4 * unit, OUTLINE);
    // Numbers stand inside the shape, names outside.
    label(q, String(i + 1), OUTLINE, -22 * unit);
  });
  for (const b of look.breaks) {
    const q = look.toPixels(b);
    dot(canvas, q, 5 * unit, MARK);
    label(q, 'break', MARK, -40 * unit);
  }
  const first = look.edge?.pieces[0]?.from;
  const last = look.edge?.pieces.at(-1)?.to;
  if (first) label(look.toPixels(first), 'heel', EDGE, 44 * unit);
  if (last) label(look.toPixels(last), 'crown end', EDGE, 68 * unit);
};

const dot = (canvas: OverlayCanvas, at: Point, radius: number, color: string): void => {
  canvas.beginPath();
  canvas.arc(at.x, at.y, radius, 0, 2 * Math.PI);
  canvas.fillStyle = color;
  canvas.fill('evenodd');
};

const middleOf = (points: readonly Point[]): Point => ({
  x: points.reduce((s, p) => s + p.x, 0) / Math.max(1, points.length),
  y: points.reduce((s, p) => s + p.y, 0) / Math.max(1, points.length),
});
