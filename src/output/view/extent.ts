/**
 * How much room a drawing takes on paper or screen: a box in mm round all its ink, for writers that show it
 * in one piece.
 */

import { LAYERS, type LayerId, type StyledDrawing } from '../../drawing/index.ts';
import { type Box, growBox, isEmptyBox } from '../../geometry/index.ts';
import { inkOf, type TextWidth } from '../../pagination/index.ts';

export interface ViewOptions {
  /** Layers left out. */
  readonly without?: readonly LayerId[];
  /** White left round the ink, mm; 5 unless told. */
  readonly margin?: number;
}

/** Room round the ink (mm) that keeps the outermost line off the picture's edge without wasting paper. */
const DEFAULT_VIEW_MARGIN = 5;

/** The layers that are shown, in the order in which they are painted. */
export const shownLayers = (options: ViewOptions): readonly LayerId[] =>
  LAYERS.filter((id) => !options.without?.includes(id));

/** The same drawing with nothing on the layers that are left out. */
export const shownDrawing = (drawing: StyledDrawing, options: ViewOptions): StyledDrawing => {
  const layers = Object.fromEntries(
    LAYERS.map((id) => [id, options.without?.includes(id) ? [] : drawing.layers[id]]),
  ) as unknown as StyledDrawing['layers'];
  return { ...drawing, layers };
};

/**
 * The box that a picture of the drawing shows, mm. A drawing without ink gets a small empty box at the
 * origin, so that every writer still makes a valid file. Throws on a coordinate that is not finite.
 */
export const viewBox = (drawing: StyledDrawing, options: ViewOptions = {}): Box => {
  const margin = Math.max(options.margin ?? DEFAULT_VIEW_MARGIN, LEAST_MARGIN);
  const ink = inkOf(shownDrawing(drawing, options), wideTextWidth).box;
  const box = isEmptyBox(ink) ? EMPTY_PICTURE : growBox(ink, margin);
  if (![box.minX, box.minY, box.maxX, box.maxY].every(Number.isFinite))
    throw new Error('The drawing holds a coordinate that is not a finite number');
  return box;
};

/** An SVG or PNG of no size is not valid; this much (mm) is left even when no margin is wanted. */
const LEAST_MARGIN = 0.5;
const EMPTY_PICTURE: Box = { minX: 0, minY: 0, maxX: 10, maxY: 10 };

/**
 * An upper estimate, because no font is at hand here: it may leave a little white, but cuts no letter off.
 * DejaVu Sans averages about 0.6 of the size over English text and 0.65 over figures and capitals, its Bold a
 * tenth more; the rest is allowance for wide letters in short texts.
 */
const wideTextWidth: TextWidth = (text, size, bold) => [...text].length * size * (bold ? 0.85 : 0.75);
