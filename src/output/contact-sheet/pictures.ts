/**
 * Small copies of drawings with captions, in a grid, to one stated scale on each page: for choosing by eye, and
 * for drawing over. Pages come in sections, and all are of one paper, held one way.
 */

import type { Problem } from '../../document/index.ts';
import type { StyledPath } from '../../drawing/index.ts';
import { type Box, boxHeight, boxWidth, shift } from '../../geometry/index.ts';
import { formatLength, INCH_EIGHTH, MM_PER_INCH, MM_WHOLE, type Units } from '../../length/index.ts';
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
import { type Grid, type GridRoom, gridAt, gridFilling, gridFor, gridOnOnePage } from './grid.ts';

export interface PictureItem {
  /** Its stroke is as it is on paper, whatever the scale. */
  readonly line: StyledPath;
  /** Whether the line gets finer in a smaller picture: a fill's lines come closer there. */
  readonly shrinks?: boolean;
}

export interface Picture {
  /** What a person calls it by, such as `3`. */
  readonly number?: string;
  /** From the back. */
  readonly items: readonly PictureItem[];
  /** What of the drawing stands in the cell, mm at true size. */
  readonly box: Box;
  /** A few short lines; the first stands out. */
  readonly caption: readonly string[];
  /** All of it, much smaller, beside the picture or below it. */
  readonly whole?: Whole;
}

export interface Whole {
  readonly items: readonly PictureItem[];
  readonly box: Box;
}

/** Where each picture has its whole beside it or below it, and how wide or how high (mm) it may be. */
export interface WholeRoom {
  readonly at: 'beside' | 'below';
  readonly size: number;
}

export interface PictureSection {
  readonly title: string;
  /** What is shown, under the title. */
  readonly summary: string;
  /** What a viewer calls its pages. */
  readonly label: string;
  readonly pictures: readonly Picture[];
}

export interface PictureOptions {
  readonly title: string;
  readonly units: Units;
  /** The ways in which the paper may be held; the one that gives the larger pictures is taken. */
  readonly setups: readonly PageSetup[];
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
  /** Lines that a caption may take; each entry of it begins a new one. 0 leaves captions and numbers out. */
  readonly captionLines: number;
  /** True size over the pictures' size; otherwise as large as a few pages allow. */
  readonly reduction?: number | undefined;
  /** How many a page holds at least, where they can be told apart there. */
  readonly leastOnPage?: number;
  /** Room for the whole of each, in small. */
  readonly whole?: WholeRoom | undefined;
  /** All of a section's pictures on one page. */
  readonly onOnePage?: boolean;
  /** As little of a page as can be is left white. */
  readonly filled?: boolean;
}

/** What of them says how pictures lie on pages. */
export type LayingOptions = Omit<PictureOptions, 'title' | 'units' | 'deflate' | 'fonts'>;

export interface WrittenPictures {
  readonly bytes: Uint8Array;
  readonly pages: number;
  readonly paper: string;
  /** True size over the pictures' size, for each section. */
  readonly reductions: readonly number[];
}

/** mm */
const HEAD = 21;
const FOOT = 7;
const GUTTER = 8;
const NUMBER_SIZE = 6.5;
const CAPTION_SIZE = 2.9;
const CAPTION_LINE = 4;
const ABOVE_CAPTION = 3;
const TITLE_SIZE = 6;
const TEXT_SIZE = 3.2;
/** Lines get no finer than this (mm): printers break finer ones. */
const THINNEST = 0.1;

/** For the commands that write pictures on pages. */
export const PAGE_TOO_SMALL: Problem = {
  code: 'page-too-small',
  message: 'not even one picture fits the page',
  hint: 'take a larger paper, or narrower margins',
};

/** Undefined where not even one picture fits a page, at the reduction that is asked for if there is one. */
export const writePictures = async (
  sections: readonly PictureSection[],
  options: PictureOptions,
): Promise<WrittenPictures | undefined> => {
  const laid = bestSetup(sections, options);
  if (!laid) return undefined;
  const { setup, grids } = laid;
  const pdf = await startPdf({ ...options, pickTray: setup.pickTray });
  const pages = grids.reduce((sum, grid) => sum + grid.pages, 0);
  let page = 0;
  for (const [k, section] of sections.entries()) {
    const grid = grids[k]!;
    const largest = {
      width: Math.max(...section.pictures.map((p) => boxWidth(p.box))) / grid.reduction,
      height: Math.max(...section.pictures.map((p) => boxHeight(p.box))) / grid.reduction,
    };
    const onPage = grid.columns * grid.rows;
    for (let i = 0; i < grid.pages; i++) {
      const label = grid.pages > 1 ? `${section.label} ${i + 1}` : section.label;
      const content = pdf.page({ width: setup.width, height: setup.height, label });
      page++;
      drawHead(content, setup, grid, section, options.units, pages > 1 ? `page ${page} of ${pages}` : '');
      for (const [at, picture] of section.pictures.slice(i * onPage, (i + 1) * onPage).entries())
        drawPicture(content, picture, cellBox(setup, grid, at, options), grid, options, largest);
    }
  }
  return { bytes: await pdf.finish(), pages, paper: setup.name, reductions: grids.map((g) => g.reduction) };
};

const captionHeight = (lines: number): number => (lines > 0 ? ABOVE_CAPTION + lines * CAPTION_LINE : 0);

const gridRoom = (
  setup: PageSetup,
  { captionLines, leastOnPage, whole, filled }: LayingOptions,
): GridRoom => ({
  width: boxWidth(setup.live),
  height: boxHeight(setup.live) - HEAD - FOOT,
  gutter: leastOnPage === undefined && !filled ? GUTTER : CLOSE_GUTTER,
  caption: captionHeight(captionLines),
  ...(leastOnPage !== undefined && { wanted: leastOnPage, narrowest: NARROWEST }),
  ...(whole && { [whole.at]: whole.size + WHOLE_APART }),
});

/** mm between cells that stand close; the narrowest column, of which captions take more lines; from a picture to its whole. */
const CLOSE_GUTTER = 6;
const NARROWEST = 54;
const WHOLE_APART = 3;

interface Laid {
  readonly setup: PageSetup;
  readonly grids: readonly Grid[];
}

const bestSetup = (sections: readonly PictureSection[], options: LayingOptions): Laid | undefined => {
  const tried = options.setups.flatMap((setup): readonly Laid[] => {
    const room = gridRoom(setup, options);
    const grids = sections.flatMap(({ pictures }) => {
      const width = Math.max(...pictures.map((p) => boxWidth(p.box)));
      const height = Math.max(...pictures.map((p) => boxHeight(p.box)));
      const grid =
        options.reduction !== undefined
          ? gridAt(pictures.length, width, height, room, options.reduction)
          : options.onOnePage
            ? gridOnOnePage(pictures.length, width, height, room)
            : options.filled
              ? gridFilling(pictures.length, width, height, room)
              : gridFor(pictures.length, width, height, room);
      return grid ? [grid] : [];
    });
    return grids.length === sections.length ? [{ setup, grids }] : [];
  });
  const cost = ({ grids }: Laid): number =>
    grids.reduce((sum, g) => sum + (g.filled ? -g.filled : g.reduction * g.pages ** PAGE_WEIGHT), 0);
  return tried.reduce<Laid | undefined>((a, b) => (!a || cost(b) < cost(a) ? b : a), undefined);
};

export interface PagesFor {
  /** How many pictures a page holds. */
  readonly onPage: number;
  readonly pages: number;
  readonly paper: string;
}

/** The pages that so many pictures take, each as large as the box; undefined where not one fits a page. */
export const pagesFor = (box: Box, count: number, options: LayingOptions): PagesFor | undefined => {
  const pictures = Array.from({ length: count }, () => ({ items: [], box, caption: [] }));
  const laid = bestSetup([{ title: '', summary: '', label: '', pictures }], options);
  if (!laid) return undefined;
  const { columns, rows, pages } = laid.grids[0]!;
  return { onPage: columns * rows, pages, paper: laid.setup.name };
};

/** Half as many pages are worth pictures a fifth smaller, as a matter of judgement. */
const PAGE_WEIGHT = 0.3;

const cellBox = (setup: PageSetup, grid: Grid, index: number, options: PictureOptions): Box => {
  const room = gridRoom(setup, options);
  const width = (room.width - (grid.columns - 1) * room.gutter) / grid.columns;
  const height = (room.height - (grid.rows - 1) * room.gutter) / grid.rows;
  const column = index % grid.columns;
  const row = Math.floor(index / grid.columns);
  const minX = setup.live.minX + column * (width + room.gutter);
  const maxY = setup.live.maxY - HEAD - row * (height + room.gutter);
  return { minX, maxX: minX + width, minY: maxY - height, maxY };
};

const drawHead = (
  content: PageContent,
  { live }: PageSetup,
  grid: Grid,
  { title, summary }: PictureSection,
  units: Units,
  pageWords: string,
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
  content.text({
    text: pageWords,
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

const drawPicture = (
  content: PageContent,
  picture: Picture,
  cell: Box,
  grid: Grid,
  { captionLines, whole }: PictureOptions,
  largest: Size,
): void => {
  const scale = 1 / grid.reduction;
  const { box } = picture;
  const room = { ...cell, minY: cell.minY + captionHeight(captionLines) };
  // Pictures of a row stand on one line, so that depths can be compared across it.
  const x = room.minX - scale * box.minX;
  const y = room.maxY - scale * box.maxY;
  placeLines(content, picture.items, { x, y }, scale);
  const below = whole && picture.whole ? drawWhole(content, picture, cell, scale, whole, largest) : 0;
  if (captionLines === 0) return;
  const top = room.maxY - scale * boxHeight(box) - below - ABOVE_CAPTION;
  const { number } = picture;
  if (number !== undefined)
    content.text({
      text: number,
      at: { x: cell.minX, y: top - 0.78 * NUMBER_SIZE },
      size: NUMBER_SIZE,
      color: INK.strong,
      bold: true,
    });
  const indent = number === undefined ? 0 : Math.max(9, content.faces.bold.width(number, NUMBER_SIZE) + 3);
  setCaption(content, picture.caption, boxWidth(cell) - indent, captionLines).forEach(({ text, bold }, i) => {
    content.text({
      text,
      at: { x: cell.minX + indent, y: top - 0.8 * CAPTION_SIZE - i * CAPTION_LINE },
      size: CAPTION_SIZE,
      color: INK.text,
      bold,
    });
  });
};

const placeLines = (
  content: PageContent,
  items: readonly PictureItem[],
  { x, y }: { readonly x: number; readonly y: number },
  scale: number,
  thinner = 1,
): void =>
  content.placed(
    shift(x, y),
    () => {
      for (const { line, shrinks } of items) {
        const { path, stroke } = line;
        const width = shrinks ? Math.max(THINNEST, stroke.width * Math.sqrt(scale)) : stroke.width * thinner;
        content.path(path, { ...stroke, width: Math.max(Math.min(THINNEST, stroke.width), width) });
      }
    },
    scale,
  );

/** How much finer than the picture's the lines of its whole are: they lie much closer. */
const WHOLE_LINES = 0.5;

/** mm on paper. */
interface Size {
  readonly width: number;
  readonly height: number;
}

/** All of it in what the picture leaves free; how many mm of the cell it takes below the picture. */
const drawWhole = (
  content: PageContent,
  { box, whole }: Picture,
  cell: Box,
  scale: number,
  { at, size }: WholeRoom,
  largest: Size,
): number => {
  if (!whole) return 0;
  const height = scale * boxHeight(box);
  // To one scale for all, as the pictures are.
  const [most, highest] =
    at === 'beside' ? [boxWidth(cell) - largest.width - WHOLE_APART, largest.height] : [boxWidth(cell), size];
  const small = Math.min(most / boxWidth(whole.box), highest / boxHeight(whole.box));
  const left = at === 'beside' ? cell.maxX - small * boxWidth(whole.box) : cell.minX;
  const top = at === 'beside' ? cell.maxY : cell.maxY - height - WHOLE_APART;
  placeLines(
    content,
    whole.items,
    { x: left - small * whole.box.minX, y: top - small * whole.box.maxY },
    small,
    WHOLE_LINES,
  );
  const under = small * boxHeight(whole.box);
  return at === 'beside' ? Math.max(0, under - height) : WHOLE_APART + under;
};

interface CaptionLine {
  readonly text: string;
  readonly bold: boolean;
}

/** The first entry is bold, and is broken as the others are; what has no room is cut off. */
const setCaption = (
  content: PageContent,
  caption: readonly string[],
  width: number,
  most: number,
): readonly CaptionLine[] => {
  const { regular, bold } = content.faces;
  const lines = caption.flatMap((text, i): readonly CaptionLine[] =>
    wrapText(i === 0 ? bold : regular, text, CAPTION_SIZE, width).map((line) => ({
      text: line,
      bold: i === 0,
    })),
  );
  if (lines.length <= most) return lines;
  const last = lines.slice(most - 1);
  const isBold = last[0]!.bold;
  const rest = last.filter((line) => line.bold === isBold).map((line) => line.text);
  return [
    ...lines.slice(0, most - 1),
    { text: fitText(isBold ? bold : regular, rest.join(' '), CAPTION_SIZE, width), bold: isBold },
  ];
};
