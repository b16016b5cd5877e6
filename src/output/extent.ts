/**
 * How much room a drawing takes on paper or screen: a box in mm round all its ink, for writers that show it
 * in one piece.
 *
 * Requires nothing of the drawing. Line widths count half on each side. A text's box is an upper estimate,
 * because no font is at hand here: it may leave a little white, but never cuts a letter off.
 */

import type { Drawing, Item, LayerId, TextItem } from '../drawing/index.ts';
import { LAYERS } from '../drawing/index.ts';
import {
  type Box,
  boxOfPoints,
  EMPTY_BOX,
  growBox,
  isEmptyBox,
  joinBoxes,
  move,
  pathBox,
} from '../geometry/index.ts';

export interface ViewOptions {
  /** Layers left out. */
  readonly without?: readonly LayerId[];
  /** White left round the ink, mm; 5 unless told. */
  readonly margin?: number;
}

/** Room round the ink (mm) that keeps the outermost line off the picture's edge without wasting paper. */
export const DEFAULT_VIEW_MARGIN = 5;

/** The layers that are shown, in the order in which they are painted. */
export const shownLayers = (options: ViewOptions): readonly LayerId[] =>
  LAYERS.filter((id) => !options.without?.includes(id));

/**
 * The box that a picture of the drawing shows, mm. A drawing without ink gets a small empty box at the
 * origin, so that every writer still makes a valid file. Throws on a coordinate that is not finite.
 */
export const viewBox = (drawing: Drawing, options: ViewOptions = {}): Box => {
  const margin = options.margin ?? DEFAULT_VIEW_MARGIN;
  const ink = inkBox(drawing, options);
  const box = isEmptyBox(ink) ? EMPTY_PICTURE : growBox(ink, Math.max(margin, LEAST_MARGIN));
  if (![box.minX, box.minY, box.maxX, box.maxY].every(Number.isFinite))
    throw new Error('The drawing holds a coordinate that is not a finite number');
  return box;
};

/** An SVG or PNG of no size is not valid; this much (mm) is left even when no margin is wanted. */
const LEAST_MARGIN = 0.5;
const EMPTY_PICTURE: Box = { minX: 0, minY: 0, maxX: 10, maxY: 10 };

/** The box round all ink of the shown layers, mm; empty when there is none. */
export const inkBox = (drawing: Drawing, options: ViewOptions = {}): Box =>
  shownLayers(options)
    .flatMap((id) => drawing.layers[id])
    .reduce((box, item) => joinBoxes(box, itemBox(item)), EMPTY_BOX);

const itemBox = (item: Item): Box => {
  switch (item.kind) {
    case 'path': {
      const box = pathBox(item.path);
      return isEmptyBox(box) ? box : growBox(box, item.stroke.width / 2);
    }
    case 'area':
      return item.loops.reduce<Box>((box, loop) => joinBoxes(box, pathBox(loop)), EMPTY_BOX);
    case 'text':
      return textBox(item);
    default:
      return item satisfies never;
  }
};

/**
 * Widths of a letter in shares of the type size. DejaVu Sans averages about 0.6 over English text and 0.65
 * over figures and capitals (its Bold a tenth more); the rest is allowance for wide letters in short texts.
 */
const LETTER_WIDTH = 0.75;
const BOLD_LETTER_WIDTH = 0.85;
/** How far letters reach over and under the base line, in shares of the type size (DejaVu Sans: 0.93, 0.24). */
const RISE = 0.95;
const DROP = 0.25;

const textBox = (item: TextItem): Box => {
  if (item.text.trim() === '') return EMPTY_BOX;
  const width = [...item.text].length * item.size * (item.bold ? BOLD_LETTER_WIDTH : LETTER_WIDTH);
  const left = item.align === 'start' ? 0 : item.align === 'middle' ? -width / 2 : -width;
  const motion = { flip: false, angle: item.angle, x: item.at.x, y: item.at.y };
  const corners = [left, left + width].flatMap((x) =>
    [-DROP * item.size, RISE * item.size].map((y) => move(motion, { x, y })),
  );
  return boxOfPoints(corners);
};
