/**
 * What of a drawing is inked: strokes with their width, filled areas, and text as the rectangle of its line.
 * Answers "does this window hold ink?" exactly for lines and arcs. Dashes count as drawn through, strokes as
 * drawn with a round pen, which is how the PDF draws them.
 */

import type { LayerId, StyledDrawing, StyledItem, StyledText } from '../drawing/index.ts';
import { LAYERS, roughTextWidth } from '../drawing/index.ts';
import {
  type Box,
  boxesTouch,
  boxHeight,
  boxWidth,
  closedPath,
  compose,
  EMPTY_BOX,
  growBox,
  isEmptyBox,
  joinBoxes,
  movePath,
  openPath,
  type Path,
  type Piece,
  pathBox,
  pieceBox,
  polyline,
  shift,
  turn,
} from '../geometry/index.ts';
import { isInside, type Rise, risesOf } from './inside.ts';
import { pieceReaches } from './reach.ts';

export interface StrokeMark {
  readonly kind: 'stroke';
  readonly piece: Piece;
  /** Half the pen's width, mm. */
  readonly half: number;
  readonly box: Box;
}

export interface AreaMark {
  readonly kind: 'area';
  readonly outline: readonly Piece[];
  readonly rises: readonly Rise[];
  readonly box: Box;
}

type Mark = StrokeMark | AreaMark;

/** Some of an item's marks, one after another along it, and the box round them. */
interface Run {
  readonly marks: readonly Mark[];
  readonly box: Box;
}

export interface InkedItem {
  readonly layer: LayerId;
  readonly item: StyledItem;
  /** A fill that is one line may have a hundred thousand marks, of which a sheet shows few. */
  readonly runs: readonly Run[];
  readonly box: Box;
}

/** Marks in a run. */
const AT_ONCE = 48;

export interface Ink {
  /** In the order in which they are painted. */
  readonly items: readonly InkedItem[];
  readonly box: Box;
}

/** The width in mm of a text set in a size in mm. */
export type TextWidth = (text: string, size: number, bold: boolean) => number;

/** How far letters reach over and under the base line, as shares of the size (a plain sans serif's box). */
const ASCENT = 0.93;
const DESCENT = 0.24;

/**
 * A window is taken smaller by this (mm) on all sides, so that ink that only touches its edge, or crosses it by
 * the rounding of a sum, does not cost a sheet.
 */
export const INK_NOISE = 1e-6;

export const inkOf = (drawing: StyledDrawing, textWidth: TextWidth = roughTextWidth): Ink => {
  const items: InkedItem[] = [];
  for (const layer of LAYERS) {
    for (const item of drawing.layers[layer]) {
      const runs = runsOf(marksOf(item, textWidth));
      const box = boxOfAll(runs);
      if (!isEmptyBox(box)) items.push({ layer, item, runs, box });
    }
  }
  const box = boxOfAll(items);
  if (items.length > 0 && !(Number.isFinite(boxWidth(box)) && Number.isFinite(boxHeight(box))))
    throw new Error('A drawing holds a coordinate that is not a finite number.');
  return { items, box };
};

const boxOfAll = (all: readonly { readonly box: Box }[]): Box =>
  all.reduce<Box>((box, one) => joinBoxes(box, one.box), EMPTY_BOX);

const runsOf = (marks: readonly Mark[]): Run[] =>
  Array.from({ length: Math.ceil(marks.length / AT_ONCE) }, (_, i) => {
    const own = marks.slice(i * AT_ONCE, (i + 1) * AT_ONCE);
    return { marks: own, box: boxOfAll(own) };
  });

const marksOf = (item: StyledItem, textWidth: TextWidth): Mark[] => {
  switch (item.kind) {
    case 'path': {
      const half = item.stroke.width / 2;
      return item.path.pieces.map((piece) => ({
        kind: 'stroke',
        piece,
        half,
        box: growBox(pieceBox(piece), half),
      }));
    }
    case 'area':
      return areaMarks(item.loops);
    case 'text':
      return item.text.trim() === '' ? [] : areaMarks([textOutline(item, textWidth)]);
    default:
      return unknownItem(item);
  }
};

const unknownItem = (item: never): never => {
  throw new Error(`A drawing holds an item of a kind that nothing draws: ${JSON.stringify(item)}`);
};

const areaMarks = (loops: readonly Path[]): Mark[] => {
  const box = loops.reduce<Box>((b, loop) => joinBoxes(b, pathBox(loop)), EMPTY_BOX);
  if (isEmptyBox(box)) return [];
  return [{ kind: 'area', outline: loops.flatMap((loop) => loop.pieces), rises: risesOf(loops), box }];
};

/** The rectangle that a line of text may ink. */
const textOutline = (item: StyledText, textWidth: TextWidth): Path => {
  const width = textWidth(item.text, item.size, item.bold ?? false);
  const left = item.align === 'start' ? 0 : item.align === 'middle' ? -width / 2 : -width;
  const low = -DESCENT * item.size;
  const high = ASCENT * item.size;
  const flat = polyline(
    [
      { x: left, y: low },
      { x: left + width, y: low },
      { x: left + width, y: high },
      { x: left, y: high },
    ],
    true,
  );
  return movePath(closedPath(flat.pieces), compose(shift(item.at.x, item.at.y), turn(item.angle)));
};

/** Whether a mark inks anything inside a window (mm), its edges left out. */
const markTouches = (mark: Mark, window: Box): boolean => {
  if (!boxesTouch(mark.box, window)) return false;
  const minX = window.minX + INK_NOISE;
  const minY = window.minY + INK_NOISE;
  const maxX = window.maxX - INK_NOISE;
  const maxY = window.maxY - INK_NOISE;
  if (!(minX <= maxX && minY <= maxY)) return false;
  if (mark.kind === 'stroke') return pieceReaches(mark.piece, mark.half, minX, minY, maxX, maxY);
  if (mark.outline.some((piece) => pieceReaches(piece, 0, minX, minY, maxX, maxY))) return true;
  // No outline in the window: it lies wholly inside or wholly outside the area.
  return isInside(mark.rises, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
};

export const itemTouches = (item: InkedItem, window: Box): boolean =>
  boxesTouch(item.box, window) &&
  item.runs.some((run) => boxesTouch(run.box, window) && run.marks.some((mark) => markTouches(mark, window)));

/**
 * What a window (mm) shows of an item, for a page that is clipped to it: of a long line the stretches that come near it.
 * A dashed line stays whole, since its dashes are counted from where it starts.
 */
export const shownIn = (inked: InkedItem, window: Box): readonly StyledItem[] => {
  const { item, runs } = inked;
  if (item.kind !== 'path' || item.stroke.dash || runs.length < 3) return [item];
  const { pieces } = item.path;
  const near = runs.map(({ box }) => boxesTouch(box, window));
  if (near.every(Boolean)) return [item];
  const shown: StyledItem[] = [];
  for (let from = near.indexOf(true); from >= 0; ) {
    const end = near.indexOf(false, from);
    const to = end < 0 ? near.length : end;
    shown.push({ ...item, path: openPath(pieces.slice(from * AT_ONCE, to * AT_ONCE)) });
    from = end < 0 ? -1 : near.indexOf(true, end);
  }
  return shown;
};

/** Whether a window (mm) of the drawing holds ink; ink that only touches the window's edge does not count. */
export const holdsInk = (ink: Ink, window: Box): boolean =>
  boxesTouch(ink.box, window) && ink.items.some((item) => itemTouches(item, window));
