/** Invented drawings made of arcs: swags as a border has them, and scattered strokes. */

import {
  LAYERS,
  type LayerId,
  type Stroke,
  type StyledDrawing,
  type StyledItem,
} from '../../src/drawing/index.ts';
import {
  arc,
  arcByRise,
  line,
  movePath,
  openPath,
  type Path,
  point,
  polyline,
  shift,
  turn,
} from '../../src/geometry/index.ts';

export const STITCH: Stroke = { width: 0.6, color: '#1c1c1c' };
const CHANNEL: Stroke = { width: 0.35, color: '#55606e', dash: [3, 1.5] };
export const BORDER: Stroke = { width: 0.25, color: '#8a8a8a' };
const MARK: Stroke = { width: 0.3, color: '#2b5d8a', dash: [1.2, 1.2] };

export const drawingOf = (
  title: string,
  layers: Partial<Record<LayerId, readonly StyledItem[]>>,
): StyledDrawing => {
  const all = Object.fromEntries(LAYERS.map((id) => [id, layers[id] ?? []]));
  return { title, layers: all as Record<LayerId, readonly StyledItem[]> };
};

export const stroked = (path: Path, stroke: Stroke): StyledItem => ({ kind: 'path', path, stroke });

/** One swag of four lobes from (0, 0) to (span, 0), `depth` deep, its lobes bulging up. */
const swagPath = (span: number, depth: number, inset: number): Path => {
  const at = (share: number): { x: number; y: number } =>
    point(inset + share * (span - 2 * inset), -4 * (depth - inset) * share * (1 - share));
  const shares = [0, 0.22, 0.5, 0.78, 1];
  return openPath(
    shares.slice(1).map((share, i) => arcByRise(at(shares[i]!), at(share), -(span / 22 - inset / 4))),
  );
};

/** A strip of swags along a seam, with channels, marks and a filled motif: `count` swags of `span` × `depth` mm. */
export const swagStrip = (count: number, span: number, depth: number): StyledDrawing => {
  const stitch: StyledItem[] = [];
  const channel: StyledItem[] = [];
  const marks: StyledItem[] = [];
  const notes: StyledItem[] = [];
  const fill: StyledItem[] = [];
  for (let i = 0; i < count; i++) {
    const to = shift(i * span, 0);
    stitch.push(stroked(movePath(swagPath(span, depth, 0), to), STITCH));
    channel.push(stroked(movePath(swagPath(span, depth, 6.35), to), CHANNEL));
    channel.push(stroked(movePath(swagPath(span, depth, 12.7), to), CHANNEL));
    const x = (i + 0.5) * span;
    marks.push(stroked(openPath([line(point(x, 6), point(x, -depth - 6))]), MARK));
    notes.push({
      kind: 'text',
      text: `swag ${i + 1}`,
      at: point(x + 2, -6),
      size: 3,
      align: 'start',
      angle: 0,
      color: '#4a4a4a',
    });
    fill.push({
      kind: 'area',
      loops: [{ pieces: [arc(point(x, -depth * 0.45), depth * 0.09, 0, 2 * Math.PI)], closed: true }],
      color: '#d9dde2',
    });
  }
  const length = count * span;
  const border = [
    stroked(openPath([line(point(0, 12.7), point(length, 12.7))]), BORDER),
    stroked(openPath([line(point(0, -depth - 25.4), point(length, -depth - 25.4))]), BORDER),
  ];
  return drawingOf('Newel border, one strip', { fill, border, channel, stitch, marks, notes });
};

/** Swags along all four sides of a square border, `outer` mm from edge to edge. */
export const swagBorder = (outer: number, width: number, count: number): StyledDrawing => {
  const inner = outer - 2 * width;
  const strip = swagStrip(count, inner / count, width * 0.55);
  const layers: Partial<Record<LayerId, StyledItem[]>> = {};
  for (const id of ['stitch', 'channel', 'marks'] as const) {
    layers[id] = [0, 1, 2, 3].flatMap((side) =>
      strip.layers[id].flatMap((item) =>
        item.kind === 'path'
          ? [
              stroked(
                movePath(movePath(item.path, shift(-inner / 2, -inner / 2)), turn((side * Math.PI) / 2)),
                item.stroke,
              ),
            ]
          : [],
      ),
    );
  }
  const square = (size: number): StyledItem =>
    stroked(
      polyline(
        [
          point(-size / 2, -size / 2),
          point(size / 2, -size / 2),
          point(size / 2, size / 2),
          point(-size / 2, size / 2),
        ],
        true,
      ),
      BORDER,
    );
  return drawingOf('Newel border, whole quilt', { ...layers, border: [square(outer), square(inner)] });
};

/** The same numbers for the same seed (mulberry32, a public domain generator; any would do). */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

/** A few strokes, arcs and discs strewn over a rectangle. */
export const scatter = (seed: number, width: number, height: number, count: number): StyledDrawing => {
  const random = seeded(seed);
  const place = () => point(random() * width, random() * height);
  const stitch: StyledItem[] = [];
  const fill: StyledItem[] = [];
  for (let i = 0; i < count; i++) {
    const stroke = { width: 0.2 + random() * 2, color: '#000000' };
    const a = place();
    const kind = random();
    const near = point(a.x + (random() - 0.5) * 120, a.y + (random() - 0.5) * 120);
    if (kind < 0.4) stitch.push(stroked(openPath([line(a, near)]), stroke));
    else if (kind < 0.8)
      stitch.push(
        stroked(openPath([arc(a, 2 + random() * 60, random() * 6, (random() - 0.5) * 12)]), stroke),
      );
    else {
      const disc = arc(a, 1 + random() * 25, 0, 2 * Math.PI);
      fill.push({ kind: 'area', loops: [{ pieces: [disc], closed: true }], color: '#dddddd' });
    }
  }
  return drawingOf('Scattered strokes', { stitch, fill });
};
