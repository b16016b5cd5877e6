/** A contact sheet: candidates side by side, all to one stated scale, each with its number, to choose from by eye. */

import type { Drawing, Item, LayerId, Stroke } from '../../drawing/index.ts';
import { type Box, boxHeight, boxWidth, shift } from '../../geometry/index.ts';
import { formatLength, INCH_EIGHTH, MM_PER_INCH, MM_WHOLE, type Units } from '../../length/index.ts';
import { inkOf } from '../../pagination/index.ts';
import {
  type Deflate,
  type FontBytes,
  fitText,
  HAIRLINE,
  INK,
  type PageContent,
  type PageSetup,
  startPdf,
  wrapText,
} from '../pdf/index.ts';
import { type Grid, gridFor } from './grid.ts';

export interface Candidate {
  readonly number: number;
  readonly drawing: Drawing;
  /** What was chosen, and what comes of it: a few short lines. */
  readonly caption: readonly string[];
}

export interface ContactSheetOptions {
  readonly title: string;
  /** What is shown, under the title. */
  readonly summary: string;
  readonly units: Units;
  /** The ways in which the paper may be held; the one that gives the larger pictures is taken. */
  readonly setups: readonly PageSetup[];
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
}

export interface ContactSheet {
  readonly bytes: Uint8Array;
  readonly pages: number;
  readonly paper: string;
  /** True size over the pictures' size. */
  readonly reduction: number;
}

/** mm */
const HEAD = 20;
const FOOT = 6;
const GUTTER = 8;
const NUMBER_SIZE = 6.5;
const CAPTION_SIZE = 2.8;
const CAPTION_LINE = 3.6;
/** Lines that a caption may take; each entry of it begins a new one. */
const CAPTION_LINES = 4;
const ABOVE_CAPTION = 3;
const CAPTION = ABOVE_CAPTION + CAPTION_LINES * CAPTION_LINE;
const TITLE_SIZE = 6;
const TEXT_SIZE = 3.2;

/** What is drawn, from the back, and how: the stitching is what one chooses by. */
const LOOKS: Readonly<Partial<Record<LayerId, Stroke>>> = {
  border: { width: 0.15, color: '#8a8a8a' },
  channel: { width: 0.16, color: '#555555' },
  stitch: { width: 0.42, color: '#111111' },
};

export const writeContactSheet = async (
  candidates: readonly Candidate[],
  options: ContactSheetOptions,
): Promise<ContactSheet> => {
  const pictures = candidates.map(pictureOf);
  const width = Math.max(...pictures.map((p) => boxWidth(p.box)));
  const height = Math.max(...pictures.map((p) => boxHeight(p.box)));
  const { setup, grid } = bestSetup(options.setups, candidates.length, width, height);
  const pdf = await startPdf({ ...options, pickTray: setup.pickTray });
  const onPage = grid.columns * grid.rows;
  for (let page = 0; page < grid.pages; page++) {
    const label = grid.pages > 1 ? `Page ${page + 1}` : 'Choices';
    const content = pdf.page({ width: setup.width, height: setup.height, label });
    drawHead(content, setup, grid, options, page);
    for (const [i, picture] of pictures.slice(page * onPage, (page + 1) * onPage).entries())
      drawPicture(content, picture, cellBox(setup, grid, i), grid);
  }
  return { bytes: await pdf.finish(), pages: grid.pages, paper: setup.name, reduction: grid.reduction };
};

interface Picture extends Candidate {
  readonly items: readonly { readonly item: Item; readonly stroke: Stroke }[];
  readonly box: Box;
}

const pictureOf = (candidate: Candidate): Picture => {
  const { layers } = candidate.drawing;
  const shown = (['border', 'channel', 'stitch'] as const).filter((id) => LOOKS[id]);
  const items = shown.flatMap((id) =>
    layers[id].map((item) => ({ item, stroke: strokeFor(item, LOOKS[id]!) })),
  );
  const empty = { fill: [], border: [], template: [], channel: [], stitch: [], marks: [], notes: [] };
  const only: Drawing = { title: '', layers: { ...empty, border: layers.border, stitch: layers.stitch } };
  return { ...candidate, items, box: inkOf(only).box };
};

/** Lines that the drawing dashes (margins, mitres) stay light and dashed. */
const strokeFor = (item: Item, look: Stroke): Stroke =>
  item.kind === 'path' && item.stroke.dash ? { width: 0.1, color: '#a8a8a8', dash: [0.9, 0.9] } : look;

const gridRoom = (setup: PageSetup) => ({
  width: boxWidth(setup.live),
  height: boxHeight(setup.live) - HEAD - FOOT,
  gutter: GUTTER,
  caption: CAPTION,
});

const bestSetup = (
  setups: readonly PageSetup[],
  count: number,
  width: number,
  height: number,
): { setup: PageSetup; grid: Grid } => {
  const tried = setups.map((setup) => ({ setup, grid: gridFor(count, width, height, gridRoom(setup)) }));
  const best = tried.reduce((a, b) => (b.grid.reduction < a.grid.reduction ? b : a), tried[0]!);
  return best;
};

const cellBox = (setup: PageSetup, grid: Grid, index: number): Box => {
  const room = gridRoom(setup);
  const width = (room.width - (grid.columns - 1) * GUTTER) / grid.columns;
  const height = (room.height - (grid.rows - 1) * GUTTER) / grid.rows;
  const column = index % grid.columns;
  const row = Math.floor(index / grid.columns);
  const minX = setup.live.minX + column * (width + GUTTER);
  const maxY = setup.live.maxY - HEAD - row * (height + GUTTER);
  return { minX, maxX: minX + width, minY: maxY - height, maxY };
};

const drawHead = (
  content: PageContent,
  { live }: PageSetup,
  grid: Grid,
  { title, summary, units }: ContactSheetOptions,
  page: number,
): void => {
  const bar = barFor(grid.reduction, units);
  const room = boxWidth(live) - bar.length - 10;
  const line = (text: string, y: number, size: number, bold: boolean, color: string): void =>
    content.text({
      text: fitText(bold ? content.faces.bold : content.faces.regular, text, size, room),
      at: { x: live.minX, y },
      size,
      color,
      bold,
    });
  line(title, live.maxY - TITLE_SIZE, TITLE_SIZE, true, INK.strong);
  line(summary, live.maxY - 12, TEXT_SIZE, false, INK.text);
  const right = live.maxX;
  const y = live.maxY - 6;
  content.lines(
    [
      { from: { x: right - bar.length, y }, to: { x: right, y } },
      { from: { x: right - bar.length, y: y - 1.5 }, to: { x: right - bar.length, y: y + 1.5 } },
      { from: { x: right, y: y - 1.5 }, to: { x: right, y: y + 1.5 } },
    ],
    { width: 0.3, color: INK.strong },
  );
  const at = { x: right, y: y - 6 };
  content.text({ text: `${bar.label} on the quilt`, at, size: TEXT_SIZE, color: INK.text, align: 'end' });
  const rule = live.maxY - HEAD + 5;
  content.lines([{ from: { x: live.minX, y: rule }, to: { x: live.maxX, y: rule } }], HAIRLINE);
  const foot =
    `${scaleWords(grid.reduction)} Print at 100 % / actual size, and the bar above measures ` +
    `${formatLength(bar.length, units === 'in' ? INCH_EIGHTH : MM_WHOLE)}.`;
  content.text({ text: foot, at: { x: live.minX, y: live.minY + 1 }, size: 2.7, color: INK.quiet });
  if (grid.pages > 1)
    content.text({
      text: `page ${page + 1} of ${grid.pages}`,
      at: { x: live.maxX, y: live.minY + 1 },
      size: 2.7,
      color: INK.quiet,
      align: 'end',
    });
};

export const scaleWords = (reduction: number): string =>
  reduction === 1 ? 'All are drawn at true size.' : `All are drawn to one scale, 1 : ${reduction}.`;

/** A bar of whole inches or centimetres on paper, and what it is on the quilt. */
const barFor = (reduction: number, units: Units): { length: number; label: string } => {
  const inches = units === 'in';
  const length = inches ? MM_PER_INCH : 20;
  return { length, label: formatLength(length * reduction, inches ? INCH_EIGHTH : MM_WHOLE) };
};

const drawPicture = (content: PageContent, picture: Picture, cell: Box, grid: Grid): void => {
  const scale = 1 / grid.reduction;
  const { box } = picture;
  const room = { ...cell, minY: cell.minY + CAPTION };
  // Pictures of a row stand on one line, so that depths can be compared across it.
  const x = room.minX - scale * box.minX;
  const y = room.maxY - scale * box.maxY;
  content.placed(
    shift(x, y),
    () => {
      for (const { item, stroke } of picture.items) if (item.kind === 'path') content.path(item.path, stroke);
    },
    scale,
  );
  const top = room.maxY - scale * boxHeight(box) - ABOVE_CAPTION;
  const { bold } = content.faces;
  const number = String(picture.number);
  content.text({
    text: number,
    at: { x: cell.minX, y: top - 0.78 * NUMBER_SIZE },
    size: NUMBER_SIZE,
    color: INK.strong,
    bold: true,
  });
  const indent = Math.max(9, bold.width(number, NUMBER_SIZE) + 3);
  const lines = captionLines(content, picture.caption, boxWidth(cell) - indent);
  lines.forEach((text, i) => {
    content.text({
      text,
      at: { x: cell.minX + indent, y: top - 0.8 * CAPTION_SIZE - i * CAPTION_LINE },
      size: CAPTION_SIZE,
      color: INK.text,
      bold: i === 0,
    });
  });
};

const captionLines = (content: PageContent, caption: readonly string[], width: number): readonly string[] => {
  const [head, ...rest] = caption;
  const { regular, bold } = content.faces;
  const lines = [
    fitText(bold, head ?? '', CAPTION_SIZE, width),
    ...rest.flatMap((text) => wrapText(regular, text, CAPTION_SIZE, width)),
  ];
  if (lines.length <= CAPTION_LINES) return lines;
  const last = fitText(regular, lines.slice(CAPTION_LINES - 1).join(' '), CAPTION_SIZE, width);
  return [...lines.slice(0, CAPTION_LINES - 1), last];
};
