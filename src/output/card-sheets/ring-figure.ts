/** The card's picture of a round frame: one swag with the template in place, its circles and its rays. */

import { drawDesign, LAYERS, SHEET, type StyledDrawing, scopeOf, styled } from '../../drawing/index.ts';
import { type Box, boxHeight, boxWidth, growBox, type Point, shift } from '../../geometry/index.ts';
import { inkOf } from '../../pagination/index.ts';
import type { Design } from '../../swag/index.ts';
import { drawItem, type PageContent } from '../pdf/index.ts';

/** The size of letters, and white round the picture, mm on paper. */
const LABEL = 3.4;
const ROOM = 2;

interface View {
  readonly drawing: StyledDrawing;
  readonly box: Box;
  readonly scale: number;
}

const viewOf = (design: Design, width: number, most: number): View => {
  const scoped = scopeOf(design, 'repeat');
  if (!scoped.ok) throw new Error('A frame without a swag');
  const bare = styled(drawDesign(design, scoped.scope, { title: '' }), SHEET);
  const outline = inkOf({ ...bare, layers: { ...bare.layers, template: [], notes: [] } }).box;
  const guess = Math.min(1, (width - 2 * ROOM) / boxWidth(outline), (most - 2 * ROOM) / boxHeight(outline));
  // Letters keep their size on paper, so that in the small picture they take more room.
  const drawing = styled(drawDesign(design, scoped.scope, { title: '', labelSize: LABEL / guess }), SHEET);
  const box = growBox(
    inkOf({ ...drawing, layers: { ...drawing.layers, template: [], notes: [] } }).box,
    ROOM / guess,
  );
  const scale = Math.min(guess, width / boxWidth(box), most / boxHeight(box));
  return { drawing, box, scale };
};

export const ringFigureHeight = (design: Design, width: number, most: number): number => {
  const { box, scale } = viewOf(design, width, most);
  return boxHeight(box) * scale;
};

/** Its top left corner at `at`; the template may run out of the picture, and is cut there. */
export const drawRingFigure = (
  content: PageContent,
  design: Design,
  at: Point,
  width: number,
  most: number,
): void => {
  const { drawing, box, scale } = viewOf(design, width, most);
  const left = at.x + (width - boxWidth(box) * scale) / 2;
  const frame = { minX: at.x, maxX: at.x + width, minY: at.y - boxHeight(box) * scale, maxY: at.y };
  content.clipped(frame, () =>
    content.placed(
      shift(left - box.minX * scale, at.y - box.maxY * scale),
      () => {
        for (const id of LAYERS)
          for (const item of drawing.layers[id])
            drawItem(content, item.kind === 'text' ? { ...item, size: item.size * scale } : item);
      },
      scale,
    ),
  );
};
