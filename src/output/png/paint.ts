/**
 * A drawing painted on a canvas, each point where the picture's scale puts it.
 *
 * Everything is brought to pixels here and drawn without a transform, so that line widths and dashes stay
 * what they are under the turn of y.
 */

import type { StyledArea, StyledDrawing, StyledItem, StyledPath, StyledText } from '../../drawing/index.ts';
import { type Arc, type Path, type Point, pieceAt } from '../../geometry/index.ts';
import { shownLayers, type ViewOptions } from '../view/index.ts';
import type { Canvas2D } from './canvas.ts';
import type { Picture } from './picture-size.ts';

/** Paints the whole picture, its ground first. The canvas must be `picture.width` by `picture.height` pixels. */
export const paintDrawing = (
  canvas: Canvas2D,
  drawing: StyledDrawing,
  picture: Picture,
  options: ViewOptions = {},
): void => {
  canvas.fillStyle = drawing.ground ?? '#ffffff';
  canvas.fillRect(0, 0, picture.width, picture.height);
  canvas.lineJoin = 'round';
  canvas.textBaseline = 'alphabetic';
  const view = viewOf(picture);
  for (const id of shownLayers(options)) for (const item of drawing.layers[id]) paintItem(canvas, item, view);
};

interface View {
  readonly scale: number;
  readonly x: (p: Point) => number;
  readonly y: (p: Point) => number;
}

const viewOf = ({ box, pixelsPerMm }: Picture): View => ({
  scale: pixelsPerMm,
  x: (p) => (p.x - box.minX) * pixelsPerMm,
  y: (p) => (box.maxY - p.y) * pixelsPerMm,
});

const paintItem = (canvas: Canvas2D, item: StyledItem, view: View): void => {
  switch (item.kind) {
    case 'path':
      paintPath(canvas, item, view);
      break;
    case 'area':
      paintArea(canvas, item, view);
      break;
    case 'text':
      paintText(canvas, item, view);
      break;
    default:
      item satisfies never;
  }
};

/** In a small picture a line is drawn no thinner than this (pixels), or it would fade to nothing. */
const THINNEST_LINE = 0.75;

const paintPath = (canvas: Canvas2D, item: StyledPath, view: View): void => {
  if (item.path.pieces.length === 0) return;
  const dash = item.stroke.dash ?? [];
  canvas.strokeStyle = item.stroke.color;
  canvas.lineWidth = Math.max(THINNEST_LINE, item.stroke.width * view.scale);
  canvas.lineCap = dash.length > 0 ? 'butt' : 'round';
  canvas.setLineDash(dash.map((length) => length * view.scale));
  canvas.beginPath();
  tracePath(canvas, item.path, view);
  canvas.stroke();
};

const paintArea = (canvas: Canvas2D, item: StyledArea, view: View): void => {
  canvas.fillStyle = item.color;
  canvas.beginPath();
  for (const loop of item.loops) tracePath(canvas, loop, view);
  canvas.fill('evenodd');
};

const tracePath = (canvas: Canvas2D, path: Path, view: View): void => {
  path.pieces.forEach((piece, index) => {
    if (index === 0) canvas.moveTo(view.x(piece.from), view.y(piece.from));
    if (piece.kind === 'arc') traceArc(canvas, piece, view);
    else canvas.lineTo(view.x(piece.to), view.y(piece.to));
  });
  if (path.closed && path.pieces.length > 0) canvas.closePath();
};

/** Canvases count in single precision: past this radius (pixels) their own arcs wander, and chords are drawn. */
const LARGEST_RADIUS = 20_000;
/** How far a chord may be from its arc, in pixels: not to be seen. */
const CHORD_ERROR = 0.02;
const MOST_CHORDS = 2000;

const traceArc = (canvas: Canvas2D, piece: Arc, view: View): void => {
  const radius = piece.radius * view.scale;
  if (radius <= LARGEST_RADIUS) {
    // With y down, the drawing's angle a is the canvas's −a, and counterclockwise keeps its look.
    const end = -(piece.start + piece.sweep);
    canvas.arc(view.x(piece.center), view.y(piece.center), radius, -piece.start, end, piece.sweep > 0);
    return;
  }
  // A chord over the angle a is r·a²/8 from its arc.
  const step = Math.sqrt((8 * CHORD_ERROR) / radius);
  const parts = Math.min(MOST_CHORDS, Math.max(1, Math.ceil(Math.abs(piece.sweep) / step)));
  for (let i = 1; i <= parts; i++) {
    const p = pieceAt(piece, i / parts);
    canvas.lineTo(view.x(p), view.y(p));
  }
};

const ALIGNMENTS = { start: 'left', middle: 'center', end: 'right' } as const;

const paintText = (canvas: Canvas2D, item: StyledText, view: View): void => {
  if (item.text.trim() === '') return;
  canvas.save();
  canvas.translate(view.x(item.at), view.y(item.at));
  canvas.rotate(-item.angle);
  canvas.fillStyle = item.color;
  canvas.font = `${item.bold ? 'bold ' : ''}${item.size * view.scale}px "DejaVu Sans", sans-serif`;
  canvas.textAlign = ALIGNMENTS[item.align];
  canvas.fillText(item.text, 0, 0);
  canvas.restore();
};
