/** The true-size sheets as one PDF: the cover with its map, then the sheets row by row. */

import { LAYERS, legendOf, type StyledDrawing } from '../../drawing/index.ts';
import type { Box } from '../../geometry/index.ts';
import type { Units } from '../../length/index.ts';
import {
  type Ink,
  type InkedItem,
  inkOf,
  itemTouches,
  type Sheet,
  type SheetPlan,
  sheetsWords,
  shownIn,
} from '../../pagination/index.ts';
import { drawCover } from './cover.ts';
import { type Deflate, type Pdf, startPdf } from './document.ts';
import { drawItem } from './draw-item.ts';
import { drawBands, drawEdges, type Furniture, makeBareCross, makeFurniture } from './furniture.ts';
import { INK, TYPE } from './look.ts';
import { drawMap, mapCaption, mapPlace } from './map.ts';
import type { Correction, Form, PageContent } from './page-content.ts';
import { drawLabel, HALO, makeWords } from './sheet-words.ts';
import type { FontBytes, Typefaces } from './typeface.ts';

export interface SheetsOptions {
  readonly title: string;
  /** Lines for the cover, such as `Span 8 1/2 in, depth 2 1/4 in`. */
  readonly summary: readonly string[];
  /** What can hurt, for the cover: one sentence or two each. */
  readonly cautions: readonly string[];
  readonly units: Units;
  /** Of sheets that are stitched through: nothing on them but the drawing and crosses; what tells the scale is on the cover. */
  readonly bare?: boolean | undefined;
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
}

export interface SheetsPdf {
  readonly bytes: Uint8Array;
  /** All pages: the cover's, and a page for each sheet. */
  readonly pages: number;
}

/** The bytes of the PDF for a drawing and the plan that was made for it. */
export const writeSheets = async (
  drawing: StyledDrawing,
  plan: SheetPlan,
  options: SheetsOptions,
): Promise<Uint8Array> => (await writeSheetsCounted(drawing, plan, options)).bytes;

/** The same, with how many pages it has. */
export const writeSheetsCounted = async (
  drawing: StyledDrawing,
  plan: SheetPlan,
  options: SheetsOptions,
): Promise<SheetsPdf> => {
  const pdf = await startPdf({ ...options, pickTray: plan.paper.inTray });
  const pages = drawTaped(pdf, drawing, plan, options);
  return { bytes: await pdf.finish(), pages };
};

/** The cover with its map, and a page for each sheet. Returns how many pages they are. */
export const drawTaped = (
  pdf: Pdf,
  drawing: StyledDrawing,
  plan: SheetPlan,
  options: Omit<SheetsOptions, 'deflate' | 'fonts'>,
): number => {
  const ink = inkOf(drawing, textWidthOf(pdf.faces));
  const covers = drawCover(
    pdf,
    {
      place: (room) => mapPlace(plan, room),
      draw: (content, room) => drawMap(content, ink, plan, room),
      caption: (scale) => mapCaption(plan, scale, options.units),
      legend: legendOf(drawing),
    },
    {
      paper: plan.paper,
      cover: plan.cover,
      words: [`True size: ${sheetsWords(plan)}`],
      measured: plan.measured,
      isTaped: plan.sheets.length > 1,
      ...(options.bare && { check: plan.check }),
    },
    options,
  );
  drawSheets(pdf, ink, plan, options);
  return covers + plan.sheets.length;
};

/** A page for each sheet. */
export const drawSheets = (
  pdf: Pdf,
  ink: Ink,
  plan: SheetPlan,
  { title, bare }: Pick<SheetsOptions, 'title' | 'bare'>,
): void => {
  const correction: Correction = {
    fixed: { x: plan.live.minX, y: plan.live.minY },
    x: plan.factors.x,
    y: plan.factors.y,
  };
  if (bare) {
    const cross = makeBareCross(pdf, correction);
    for (const sheet of plan.sheets) drawBareSheet(pdf, plan, sheet, ink, cross, correction);
    return;
  }
  const furniture = makeFurniture(pdf, plan, correction);
  const words = makeWords(pdf, plan, title, correction);
  for (const sheet of plan.sheets) drawSheet(pdf, plan, sheet, ink, furniture, words, correction);
};

export const textWidthOf =
  (faces: Typefaces) =>
  (text: string, size: number, bold: boolean): number =>
    (bold ? faces.bold : faces.regular).width(text, size);

const drawSheet = (
  pdf: Pdf,
  plan: SheetPlan,
  sheet: Sheet,
  ink: Ink,
  furniture: Furniture,
  words: (sheet: Sheet) => Form,
  correction: Correction,
): void => {
  const { width, height } = plan;
  const content = pdf.page({ width, height, label: sheet.label, correction });
  drawBands(content, sheet);
  drawWindow(content, plan, sheet, ink);
  content.form(furniture.frame, { x: plan.live.minX, y: plan.live.minY });
  drawEdges(content, sheet, furniture);
  content.form(furniture.square, sheet.check);
  content.form(words(sheet), sheet.check);
  drawLabel(content, plan, sheet);
  for (const words of sheet.words) content.text({ ...words, color: INK.text, halo: HALO });
};

/** What a sheet shows of the drawing. */
const drawWindow = (content: PageContent, plan: SheetPlan, sheet: Sheet, ink: Ink): void =>
  content.clipped(plan.live, () =>
    content.placed(sheet.place, () =>
      drawLayers(
        content,
        ink.items.filter((item) => itemTouches(item, sheet.window)),
        sheet.window,
      ),
    ),
  );

/** Above the live area, mm: in the paper's margin, where nothing is stitched. */
const LABEL_UP = 1;

const drawBareSheet = (
  pdf: Pdf,
  plan: SheetPlan,
  sheet: Sheet,
  ink: Ink,
  cross: Form,
  correction: Correction,
): void => {
  const { width, height, live } = plan;
  const content = pdf.page({ width, height, label: sheet.label, correction });
  drawWindow(content, plan, sheet, ink);
  for (const edge of sheet.edges) for (const { paper } of edge.crosses) content.form(cross, paper);
  const at = { x: live.minX, y: live.maxY + LABEL_UP };
  content.text({ text: sheet.label, at, size: TYPE.small, color: INK.text, bold: true });
};

/** Items that are already in painting order, layer by layer; where a page is clipped to a window, what that shows of them. */
export const drawLayers = (content: PageContent, items: readonly InkedItem[], window?: Box): void => {
  for (const id of LAYERS) {
    const own = items.filter((item) => item.layer === id);
    if (own.length > 0)
      content.layer(id, () => {
        for (const inked of own)
          for (const item of window ? shownIn(inked, window) : [inked.item]) drawItem(content, item);
      });
  }
};
