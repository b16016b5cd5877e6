/** The map: the whole drawing at reduced scale, as it lies when taped, under the grid of its sheets. */

import { type Box, boxHeight, boxWidth, type Motion, mover, shift, turn } from '../../geometry/index.ts';
import type { Ink, SheetPlan, Side } from '../../pagination/index.ts';
import { drawSmall } from './draw-item.ts';
import { INK } from './look.ts';
import type { PageContent } from './page-content.ts';

/** A map is never larger than this share of true size, so that nobody takes it for a sheet. */
const LARGEST_SCALE = 0.6;

const PRINTED = { width: 0.25, color: '#8c8c8c' } as const;
const SKIPPED = { width: 0.12, color: '#c4c4c4', dash: [0.8, 0.8] } as const;

/** Draws the map at the top of a box, centred; returns its scale and where it ends. */
export const drawMap = (
  content: PageContent,
  ink: Ink,
  plan: SheetPlan,
  room: Box,
): { readonly scale: number; readonly bottom: number } => {
  const up: Motion = plan.turned ? turn(Math.PI / 2) : shift(0, 0);
  const cells = [...plan.sheets, ...plan.skipped].map((sheet) => ({
    label: sheet.label,
    box: cellBox(plan, sheet.window, up, sheet.row, sheet.column),
    printed: 'place' in sheet,
  }));
  const whole = cells.map((c) => c.box).reduce(join);
  const scale = Math.min(LARGEST_SCALE, boxWidth(room) / boxWidth(whole), boxHeight(room) / boxHeight(whole));
  const x = (room.minX + room.maxX) / 2 - (scale * (whole.minX + whole.maxX)) / 2;
  const y = room.maxY - scale * whole.maxY;
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
    const box = small(cell.box);
    const size = Math.max(1.8, Math.min(6, boxHeight(box) * 0.3, boxWidth(box) * 0.3));
    content.text({
      text: cell.printed ? cell.label : '–',
      at: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 - 0.36 * size },
      size: cell.printed ? size : Math.min(size, 3),
      color: cell.printed ? INK.text : INK.faint,
      align: 'middle',
      bold: cell.printed,
      halo: cell.printed ? size * 0.16 : undefined,
    });
  }
  return { scale, bottom: y + scale * whole.minY };
};

const join = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});

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
    return goesOn ? plan.overlap / 2 : 0;
  };
  return {
    minX: Math.min(a.x, b.x) + off('left'),
    minY: Math.min(a.y, b.y) + off('bottom'),
    maxX: Math.max(a.x, b.x) - off('right'),
    maxY: Math.max(a.y, b.y) - off('top'),
  };
};
