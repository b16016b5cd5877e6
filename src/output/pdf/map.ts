/** The map: the whole drawing at reduced scale, as it lies when taped, under the grid of its sheets. */

import {
  type Box,
  boxHeight,
  boxWidth,
  joinBoxes,
  type Motion,
  mover,
  shift,
  turn,
} from '../../geometry/index.ts';
import { formatLength, INCH_EIGHTH, MM_WHOLE, type Units } from '../../length/index.ts';
import type { Ink, SheetPlan, Side } from '../../pagination/index.ts';
import { drawSmall } from './draw-item.ts';
import { INK } from './look.ts';
import type { PageContent } from './page-content.ts';

/** A map is never larger than this share of true size, so that nobody takes it for a sheet. */
const LARGEST_SCALE = 0.6;

const PRINTED = { width: 0.25, color: '#8c8c8c' } as const;
const SKIPPED = { width: 0.12, color: '#c4c4c4', dash: [0.8, 0.8] } as const;

interface MapPlace {
  readonly scale: number;
  /** Where the drawing's origin, turned as it lies on the table, comes to stand. */
  readonly x: number;
  readonly y: number;
  /** Where the map ends. */
  readonly bottom: number;
}

const upOf = (plan: SheetPlan): Motion => (plan.turned ? turn(-Math.PI / 2) : shift(0, 0));

const cellsOf = (plan: SheetPlan) =>
  [...plan.sheets, ...plan.skipped].map((sheet) => ({
    label: sheet.label,
    box: cellBox(plan, sheet.window, upOf(plan), sheet.row, sheet.column),
    printed: 'place' in sheet,
  }));

/** At the top of a box, centred across. */
export const mapPlace = (plan: SheetPlan, room: Box): MapPlace => {
  const whole = cellsOf(plan)
    .map((c) => c.box)
    .reduce(joinBoxes);
  const scale = Math.min(LARGEST_SCALE, boxWidth(room) / boxWidth(whole), boxHeight(room) / boxHeight(whole));
  const x = (room.minX + room.maxX) / 2 - (scale * (whole.minX + whole.maxX)) / 2;
  const y = room.maxY - scale * whole.maxY;
  return { scale, x, y, bottom: y + scale * whole.minY };
};

/** Draws the map at the top of a box. */
export const drawMap = (content: PageContent, ink: Ink, plan: SheetPlan, room: Box): MapPlace => {
  const up = upOf(plan);
  const cells = cellsOf(plan);
  const place = mapPlace(plan, room);
  const { scale, x, y } = place;
  const small = (box: Box): Box => ({
    minX: x + scale * box.minX,
    minY: y + scale * box.minY,
    maxX: x + scale * box.maxX,
    maxY: y + scale * box.maxY,
  });
  for (const cell of cells) if (!cell.printed) content.box(small(cell.box), { stroke: SKIPPED });
  for (const cell of cells)
    if (cell.printed) content.box(small(cell.box), { stroke: PRINTED, fill: '#fafafa' });
  content.placed(
    shift(x, y),
    () =>
      content.placed(up, () => {
        for (const item of ink.items) drawSmall(content, item.item, scale);
      }),
    scale,
  );
  for (const cell of cells) {
    // In the corner where reading starts, so that the quilting is not written over.
    const box = small(cell.box);
    const size = Math.max(1.6, Math.min(3.4, boxHeight(box) * 0.24, boxWidth(box) * 0.24));
    content.text({
      text: cell.printed ? cell.label : '–',
      at: { x: box.minX + 0.45 * size, y: box.maxY - 1.2 * size },
      size,
      color: cell.printed ? INK.text : INK.faint,
      bold: cell.printed,
      halo: cell.printed ? size * 0.16 : undefined,
    });
  }
  return place;
};

/** How large the map is, and what it shows. */
export const mapCaption = (plan: SheetPlan, scale: number, units: Units): readonly string[] => {
  const { ink } = plan;
  const size = [boxWidth(ink), boxHeight(ink)];
  const shown = (plan.turned ? size.reverse() : size)
    .map((mm) => formatLength(mm, units === 'in' ? INCH_EIGHTH : MM_WHOLE))
    .join(' × ');
  return [`Map, about ${Math.round(scale * 100)} % of true size.`, `The whole drawing is ${shown}.`];
};

/** A sheet's window as it lies on the table, cut at the trim lines where the grid goes on. */
const cellBox = (plan: SheetPlan, window: Box, up: Motion, row: number, column: number): Box => {
  const put = mover(up);
  const a = put({ x: window.minX, y: window.minY });
  const b = put({ x: window.maxX, y: window.maxY });
  const off = (side: Side): number => {
    const goesOn =
      side === 'left'
        ? column > 0
        : side === 'right'
          ? column < plan.columns - 1
          : side === 'top'
            ? row > 0
            : row < plan.rows - 1;
    if (!goesOn) return 0;
    return (side === 'left' || side === 'right' ? plan.overlap.x : plan.overlap.y) / 2;
  };
  return {
    minX: Math.min(a.x, b.x) + off('left'),
    minY: Math.min(a.y, b.y) + off('bottom'),
    maxX: Math.max(a.x, b.x) - off('right'),
    maxY: Math.max(a.y, b.y) - off('top'),
  };
};
