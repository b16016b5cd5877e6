/** The true-size sheets of several parts of a quilt as one PDF: one cover, one page of maps, then the sheets part by part. */

import { plural } from '../../document/index.ts';
import {
  LAYERS,
  type LegendEntry,
  legendOf,
  type StyledDrawing,
  type StyledItem,
} from '../../drawing/index.ts';
import {
  type Box,
  boxHeight,
  boxWidth,
  EMPTY_BOX,
  isEmptyBox,
  joinBoxes,
  pathBox,
  shift,
} from '../../geometry/index.ts';
import { formatLength, INCH_EIGHTH, MM_WHOLE, type Units } from '../../length/index.ts';
import { type Ink, inkOf, manyOf, numbered, type SheetPlan, sheetsWords } from '../../pagination/index.ts';
import { type CoverPicture, drawCover } from './cover.ts';
import { type Pdf, startPdf } from './document.ts';
import { drawSmall } from './draw-item.ts';
import { INK, LEADING, TYPE } from './look.ts';
import { drawMap, mapCaption } from './map.ts';
import type { PageContent } from './page-content.ts';
import { drawSheets, type SheetsOptions, type SheetsPdf, textWidthOf } from './sheets.ts';
import { fitText, wrapText } from './typeface.ts';

export interface PartSheets {
  readonly name: string;
  readonly drawing: StyledDrawing;
  readonly plan: SheetPlan;
  /** What stands on each of its sheets. */
  readonly title: string;
  /** What was designed, a line each. */
  readonly summary: readonly string[];
}

/** The picture of the whole quilt for the cover, whose items say with `part` what they belong to. */
export const writeQuiltSheets = async (
  quilt: StyledDrawing,
  parts: readonly PartSheets[],
  options: SheetsOptions,
): Promise<SheetsPdf> => {
  const [first] = parts;
  if (!first) throw new Error('A quilt without parts');
  const { paper, cover } = first.plan;
  const pdf = await startPdf({ ...options, pickTray: paper.inTray });
  const laid = parts.map((part, i) => ({
    ...part,
    number: i + 1,
    plan: numbered(part.plan, i + 1),
    ink: inkOf(part.drawing, textWidthOf(pdf.faces)),
  }));
  const count = laid.reduce((sum, { plan }) => sum + plan.sheets.length, 0);
  const covers = drawCover(
    pdf,
    quiltPicture(quilt, laid, options.units),
    {
      paper,
      cover,
      words: [
        `True size: ${manyOf(paper, count)} for ${plural(laid.length, 'part')}, each with a map overleaf`,
      ],
      measured: first.plan.measured,
      isTaped: laid.some(({ plan }) => plan.sheets.length > 1),
      ...(options.bare && { check: first.plan.check }),
    },
    options,
  );
  const maps = drawMaps(pdf, laid, options.units);
  for (const { ink, plan, title } of laid) drawSheets(pdf, ink, plan, { ...options, title });
  return { bytes: await pdf.finish(), pages: covers + maps + count };
};

interface LaidPart extends PartSheets {
  readonly number: number;
  readonly ink: Ink;
}

/** The quilt, each of its parts with its number, and under it which number is which part. */
const quiltPicture = (quilt: StyledDrawing, parts: readonly LaidPart[], units: Units): CoverPicture => {
  const items = LAYERS.flatMap((id) => quilt.layers[id]);
  const whole = boxOfItems(items);
  const copies = copiesIn(items);
  const place = (room: Box) => {
    const scale = Math.min(LARGEST, boxWidth(room) / boxWidth(whole), boxHeight(room) / boxHeight(whole));
    return { scale, bottom: room.maxY - scale * boxHeight(whole) };
  };
  return {
    place,
    draw: (content, room) => {
      const { scale } = place(room);
      const x = (room.minX + room.maxX) / 2 - (scale * (whole.minX + whole.maxX)) / 2;
      const y = room.maxY - scale * whole.maxY;
      content.placed(
        shift(x, y),
        () => {
          for (const item of items) drawSmall(content, item, scale);
        },
        scale,
      );
      for (const { number, name } of parts)
        for (const box of copies.get(name) ?? [])
          content.text({
            text: `${number}`,
            at: { x: x + scale * box.minX + 0.4 * TYPE.body, y: y + scale * box.maxY - 1.1 * TYPE.body },
            size: TYPE.body,
            color: INK.text,
            bold: true,
            halo: 0.5,
          });
    },
    caption: (scale) => [
      `The quilt, about ${percent(scale)} of true size: ${sizeWords(whole, units)}.`,
      `${parts.map(({ number, name }) => `${number} ${name}${times(copies.get(name)?.length ?? 0)}`).join(', ')}.`,
    ],
    legend: legendOfAll(parts.map(({ drawing }) => drawing)),
  };
};

const times = (copies: number): string => (copies > 1 ? ` (${copies} times)` : '');

/** A picture is never larger than this share of true size, so that nobody takes it for a sheet. */
const LARGEST = 0.5;

const percent = (scale: number): string => {
  const hundredths = 100 * scale;
  return `${hundredths < 1 ? hundredths.toFixed(1) : Math.round(hundredths)} %`;
};

const sizeWords = (box: Box, units: Units): string =>
  [boxWidth(box), boxHeight(box)]
    .map((mm) => formatLength(mm, units === 'in' ? INCH_EIGHTH : MM_WHOLE))
    .join(' × ');

const boxOfItems = (items: readonly StyledItem[]): Box =>
  items.reduce<Box>((b, item) => (item.kind === 'path' ? joinBoxes(b, pathBox(item.path)) : b), EMPTY_BOX);

/** By the parts' names the room that each of their copies takes. */
const copiesIn = (items: readonly StyledItem[]): ReadonlyMap<string, readonly Box[]> => {
  const parts = new Map<string, Map<string, Box>>();
  for (const item of items) {
    if (item.kind !== 'path' || !item.facts) continue;
    const { part = '', copy = '' } = item.facts;
    const boxes = parts.get(part) ?? new Map<string, Box>();
    parts.set(part, boxes.set(copy, joinBoxes(boxes.get(copy) ?? EMPTY_BOX, pathBox(item.path))));
  }
  return new Map(
    [...parts].map(([part, boxes]) => [part, [...boxes.values()].filter((b) => !isEmptyBox(b))]),
  );
};

const legendOfAll = (drawings: readonly StyledDrawing[]): readonly LegendEntry[] => {
  const layers = Object.fromEntries(
    LAYERS.map((id) => [id, drawings.flatMap((drawing) => drawing.layers[id])]),
  ) as unknown as StyledDrawing['layers'];
  return legendOf({ title: '', layers });
};

/** Maps stand in so many columns and rows on a page, with so much between them and round them, mm. */
const COLUMNS = 2;
const ROWS = 3;
const GUTTER = 9;
const SIDE = 17;

/** How each part's sheets lie when they are taped. Returns how many pages it took. */
const drawMaps = (pdf: Pdf, parts: readonly LaidPart[], units: Units): number => {
  const perPage = COLUMNS * ROWS;
  const pages = Math.ceil(parts.length / perPage);
  const { width, height } = parts[0]!.plan.cover;
  const cell = {
    width: (width - 2 * SIDE - (COLUMNS - 1) * GUTTER) / COLUMNS,
    height: (height - 2 * SIDE - (ROWS - 1) * GUTTER) / ROWS,
  };
  for (let page = 0; page < pages; page++) {
    const label = page === 0 ? 'Maps' : `Maps ${page + 1}`;
    const content = pdf.page({ width, height, label });
    parts.slice(page * perPage, (page + 1) * perPage).forEach((part, i) => {
      const minX = SIDE + (i % COLUMNS) * (cell.width + GUTTER);
      const maxY = height - SIDE - Math.floor(i / COLUMNS) * (cell.height + GUTTER);
      drawPartMap(content, part, { minX, maxX: minX + cell.width, minY: maxY - cell.height, maxY }, units);
    });
  }
  return pages;
};

const drawPartMap = (content: PageContent, part: LaidPart, room: Box, units: Units): void => {
  const { faces } = content;
  const width = boxWidth(room);
  let y = room.maxY - TYPE.body;
  content.text({
    text: fitText(faces.bold, `${part.number} ${part.name}`, TYPE.body, width),
    at: { x: room.minX, y },
    size: TYPE.body,
    color: INK.strong,
    bold: true,
  });
  const line = (words: string): void => {
    for (const text of wrapText(faces.regular, words, TYPE.small, width)) {
      y -= LEADING * TYPE.small;
      content.text({ text, at: { x: room.minX, y }, size: TYPE.small, color: INK.quiet });
    }
  };
  for (const words of part.summary) line(words);
  line(`True size: ${sheetsWords(part.plan)}`);
  const captionRoom = 2 * LEADING * TYPE.small;
  const { scale } = drawMap(content, part.ink, part.plan, { ...room, maxY: y - 3 - captionRoom });
  for (const words of mapCaption(part.plan, scale, units)) line(words);
};
