/**
 * A drawing for a projector that shines it onto the cloth: light lines, wide enough for its coarse pixels, on a dark
 * ground; a grid to set its size and its square corners by, and below the drawing a check square to focus by.
 */

import {
  type Box,
  boxHeight,
  boxWidth,
  closedPath,
  line,
  openPath,
  type Path,
  type Point,
} from '../geometry/index.ts';
import type { LineRole } from './role.ts';
import type { Stroke, StyledArea, StyledDrawing, StyledItem, StyledPath } from './style.ts';

export interface Grid {
  /** mm from one line to the next. */
  readonly pitch: number;
  /** The side of the check square, mm. */
  readonly square: number;
  /** Beside the square, a line each. */
  readonly words: readonly string[];
}

/** The ground, and what is drawn on it; light tells lines apart, and colour helps. */
const GROUND = '#05080c';
const LIGHT = {
  stitch: '#ffffff',
  channel: '#ffe08a',
  fill: '#8fb4d6',
  cloth: '#e89a86',
  mark: '#79e0b0',
  template: '#b98f57',
  words: '#d5dde6',
  grid: '#28404f',
  fifth: '#4d7388',
} as const;

/**
 * A projector's pixel is about 1 mm wide on the table (1280 to 1920 of them over 4 to 6 ft; reckoned, no source): a line
 * narrower than that is lost, and wider ones hide where the needle goes.
 */
const PIXEL = 1;
const MAIN = 1.5 * PIXEL;

const COLORS: Readonly<Record<LineRole, string>> = {
  stitch: LIGHT.stitch,
  channel: LIGHT.channel,
  fill: LIGHT.fill,
  way: LIGHT.mark,
  seam: LIGHT.cloth,
  block: LIGHT.cloth,
  motif: LIGHT.cloth,
  limit: LIGHT.cloth,
  startLine: LIGHT.cloth,
  margin: LIGHT.cloth,
  clear: LIGHT.cloth,
  mitre: LIGHT.cloth,
  edge: LIGHT.template,
  etched: LIGHT.template,
  break: LIGHT.mark,
  unreached: LIGHT.mark,
  measure: LIGHT.words,
  ghostEdge: LIGHT.template,
  ghostLine: LIGHT.template,
  startMark: LIGHT.mark,
  stopMark: LIGHT.mark,
  centreLine: LIGHT.mark,
  guideLine: LIGHT.mark,
  ray: LIGHT.mark,
  spacer: LIGHT.stitch,
  spacerCross: LIGHT.stitch,
};

/** The size of words, mm. Labels must be this large when they are laid, so that they leave each other room. */
export const PROJECTED_WORDS = 8 * PIXEL;
/** A letter's width, as a share of the size: with room to spare (a plain sans serif: about 0.55). */
const LETTER = 0.65;

/** `box` holds all of the drawing, mm. */
export const projected = (drawing: StyledDrawing, box: Box, grid: Grid): StyledDrawing => {
  const light = Object.fromEntries(
    Object.entries(drawing.layers).map(([id, items]) => [id, items.map(lit)]),
  ) as unknown as StyledDrawing['layers'];
  const { pitch, square } = grid;
  // Whole cells round the drawing, and below it room for the square.
  const below = Math.ceil((square + pitch) / pitch);
  const longest = Math.max(0, ...grid.words.map((text) => text.length));
  const across = Math.ceil(
    Math.max(boxWidth(box), square + pitch + (LETTER * longest + 1) * PROJECTED_WORDS) / pitch,
  );
  const up = Math.ceil(boxHeight(box) / pitch) + below;
  const from = { x: box.minX, y: box.minY - below * pitch };
  const at = (i: number, j: number): Point => ({ x: from.x + i * pitch, y: from.y + j * pitch });
  const lines: StyledItem[] = [
    ...Array.from({ length: across + 1 }, (_, i) => ruled(at(i, 0), at(i, up), i)),
    ...Array.from({ length: up + 1 }, (_, j) => ruled(at(0, j), at(across, j), j)),
  ];
  const corner = { x: from.x + pitch / 2, y: from.y + pitch / 2 };
  return {
    title: drawing.title,
    ground: GROUND,
    layers: {
      ...light,
      // Painted before everything else.
      fill: [...lines, ...light.fill],
      notes: [...light.notes, ...squareAt(corner, square), ...wordsAt(corner, grid)],
    },
  };
};

const lit = (item: StyledItem): StyledItem => {
  switch (item.kind) {
    case 'path': {
      const { role, stroke } = item;
      const width = role === 'stitch' ? MAIN : PIXEL;
      const dash = stroke.dash && { dash: stroke.dash.map((on) => on * DASHES) };
      return { ...item, stroke: { width, color: role ? COLORS[role] : LIGHT.stitch, ...dash } };
    }
    case 'area':
      return { ...item, color: LIGHT.cloth };
    case 'text':
      return { ...item, color: LIGHT.words };
    default:
      return item satisfies never;
  }
};

/** Dashes of a sheet are finer than a projector can show. */
const DASHES = 4;

/** Every fifth line is lighter, to count by. */
const ruled = (from: Point, to: Point, index: number): StyledPath =>
  drawn(openPath([line(from, to)]), {
    width: PIXEL / 2,
    color: index % 5 === 0 ? LIGHT.fifth : LIGHT.grid,
  });

const drawn = (path: Path, stroke: Stroke): StyledPath => ({ kind: 'path', path, stroke });

/** With its diagonals, and squares in it: what is out of focus runs together where they meet. */
const squareAt = ({ x, y }: Point, side: number): (StyledPath | StyledArea)[] => {
  const around = (inset: number, width: number): StyledPath => {
    const [low, high] = [inset, side - inset];
    const corners = [
      { x: x + low, y: y + low },
      { x: x + high, y: y + low },
      { x: x + high, y: y + high },
      { x: x + low, y: y + high },
    ];
    return drawn(closedPath(corners.map((from, i) => line(from, corners[(i + 1) % 4]!))), {
      width,
      color: LIGHT.stitch,
    });
  };
  const across = (up: boolean): StyledPath =>
    drawn(openPath([line({ x, y: up ? y : y + side }, { x: x + side, y: up ? y + side : y })]), {
      width: PIXEL / 2,
      color: LIGHT.stitch,
    });
  return [
    around(0, PIXEL),
    around(side / 2 - 2 * PIXEL, PIXEL / 2),
    around(side / 2 - 5 * PIXEL, PIXEL / 2),
    across(true),
    across(false),
  ];
};

const wordsAt = ({ x, y }: Point, { square, words }: Grid): StyledItem[] =>
  words.map((text, i) => ({
    kind: 'text',
    text,
    at: { x: x + square + PROJECTED_WORDS, y: y + square - (i + 1) * 1.3 * PROJECTED_WORDS },
    size: PROJECTED_WORDS,
    align: 'start',
    angle: 0,
    color: LIGHT.words,
  }));
