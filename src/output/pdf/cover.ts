/** The cover: what this is, the map of its sheets, and how to print, check, cut and tape them. */

import type { LegendEntry } from '../../drawing/index.ts';
import type { Box } from '../../geometry/index.ts';
import type { Units } from '../../length/index.ts';
import { factorsFor, isCorrected, type PerEdge, type SheetPlan } from '../../pagination/index.ts';
import type { Pdf } from './document.ts';
import { type Block, balancedColumns, drawFlow, setBlocks } from './flow.ts';
import { makeSquare } from './furniture.ts';
import { drawLegend, legendHeight, legendRows } from './legend.ts';
import { HAIRLINE, INK, LEADING, TYPE } from './look.ts';
import { NO_CORRECTION, type PageContent } from './page-content.ts';
import { type Typefaces, wrapText } from './typeface.ts';

export interface CoverWords {
  readonly title: string;
  readonly summary: readonly string[];
  readonly cautions: readonly string[];
  readonly units: Units;
}

/** The picture on the cover, at the top of a box: the map of the sheets, or the quilt that they are parts of. */
export interface CoverPicture {
  /** How large it is there, and where it ends. */
  readonly place: (room: Box) => { readonly scale: number; readonly bottom: number };
  readonly draw: (content: PageContent, room: Box) => void;
  /** A sentence each. */
  readonly caption: (scale: number) => readonly string[];
  readonly legend: readonly LegendEntry[];
}

/** What is printed after the cover. */
export interface Printed extends Pick<SheetPlan, 'paper' | 'cover'> {
  /** Such as `True size: 6 sheets of Letter`. */
  readonly words: readonly string[];
  /** What the printer was found to do. */
  readonly measured: PerEdge;
  /** Whether sheets join others. */
  readonly isTaped: boolean;
  /** The check square's measures, where the sheets are bare and the cover has the only one. */
  readonly check?: SheetPlan['check'] | undefined;
}

/** Between the words and the check square below them, mm. */
const ABOVE_CHECK = 4;

/** More pages than this would be a caller's mistake. */
const MOST_COVER_PAGES = 6;

const GUTTER = 9;

/** Returns how many pages it took. */
export const drawCover = (pdf: Pdf, picture: CoverPicture, printed: Printed, words: CoverWords): number => {
  // Always upright: it is read, not taped.
  const { width, height } = printed.cover;
  const { check } = printed;
  const area: Box = {
    minX: SIDE,
    minY: check ? SIDE + check.side + ABOVE_CHECK : SIDE,
    maxX: width - SIDE,
    maxY: height - SIDE,
  };
  const content = pdf.page({ width, height, label: 'Cover' });
  if (check) {
    const factors = factorsFor(printed.measured, 'portrait');
    const square = makeSquare(pdf, { check }, 'portrait', { ...NO_CORRECTION, ...factors });
    content.form(square, { x: SIDE, y: SIDE });
  }
  const below = drawHead(content, printed, words, area);
  const blocks = blocksFor(printed, words);
  const layout = layoutOf(pdf.faces, picture, blocks, { ...area, maxY: below });
  picture.draw(content, layout.room);
  drawCaption(content, layout);
  drawLegend(content, layout.rows, layout.room.minX, layout.legendTop);
  let rest: readonly Block[] = flowOnto(content, blocks, layout.columns);
  let page = 1;
  while (rest.length > 0 && page < MOST_COVER_PAGES) {
    page++;
    rest = flowOnto(pdf.page({ width, height, label: `Cover ${page}` }), rest, columnsIn(area));
  }
  return page;
};

const flowOnto = (
  content: PageContent,
  blocks: readonly Block[],
  columns: readonly Box[],
): readonly Block[] => {
  const flow = setBlocks(content.faces, blocks, balancedColumns(content.faces, blocks, columns));
  drawFlow(content, flow);
  return flow.rest;
};

/** Between the map and its caption, between the caption and the words, and above the legend, mm. */
const CAPTION = 5;
const UNDER_CAPTION = 7;
/** The legend belongs to the map: nearer to its caption than to the words below. */
const LEGEND_UP = 3.5;

/** Room round the cover's text, mm: wider than any printer's edge. */
const SIDE = 17;

/** Where the map, what stands under it, and the words go. */
interface CoverLayout {
  readonly room: Box;
  readonly caption: readonly string[];
  readonly captionTop: number;
  readonly rows: ReturnType<typeof legendRows>;
  readonly legendTop: number;
  readonly columns: readonly Box[];
}

/** The map may have these shares of the height that is left; the largest that leaves room for the words is taken. */
const MAP_SHARES = [0.6, 0.54, 0.48, 0.42, 0.36, 0.32, 0.28, 0.24, 0.2, 0.16];

/**
 * The map across the page over the words, or over the left column only: whichever lets it be larger with all words on
 * the page, since a page with nothing but the last words on it would be wasted. Where they never have room, as with a
 * long list of cautions, they go on overleaf.
 */
const layoutOf = (
  faces: Typefaces,
  picture: CoverPicture,
  blocks: readonly Block[],
  area: Box,
): CoverLayout => {
  const [left, right] = columnsIn(area) as [Box, Box];
  const tall = area.maxY - area.minY;
  const laid = (across: Box, share: number): CoverLayout => {
    const room = { ...across, minY: across.maxY - share * tall };
    const { scale, bottom } = picture.place(room);
    const width = room.maxX - room.minX;
    const sentences = picture.caption(scale);
    const whole = sentences.join(' ');
    const caption = faces.regular.width(whole, TYPE.small) <= width ? [whole] : sentences;
    const rows = legendRows(picture.legend, width, faces);
    const captionTop = bottom - CAPTION;
    const wordsTop =
      captionTop - (caption.length - 1) * LEADING * TYPE.small - UNDER_CAPTION - legendHeight(rows);
    const under = { ...across, maxY: wordsTop };
    return {
      room,
      caption,
      captionTop,
      rows,
      legendTop: wordsTop + legendHeight(rows) + LEGEND_UP,
      columns: across === left ? [under, right] : columnsIn(under),
    };
  };
  const fits = (layout: CoverLayout): boolean => setBlocks(faces, blocks, layout.columns).rest.length === 0;
  const scaleOf = ({ room }: CoverLayout): number => picture.place(room).scale;
  const found = [area, left].flatMap(
    (across) => MAP_SHARES.map((share) => laid(across, share)).find(fits) ?? [],
  );
  return found.length > 0
    ? found.reduce((a, b) => (scaleOf(b) > scaleOf(a) ? b : a))
    : laid(area, MAP_SHARES[3]!);
};

const columnsIn = (area: Box): Box[] => {
  const width = (area.maxX - area.minX - GUTTER) / 2;
  return [
    { ...area, maxX: area.minX + width },
    { ...area, minX: area.maxX - width },
  ];
};

/** The title, what the sheets are, and the caller's summary; returns where the next thing may start. */
const drawHead = (content: PageContent, printed: Printed, words: CoverWords, area: Box): number => {
  const width = area.maxX - area.minX;
  let y = area.maxY + 0.2 * TYPE.title;
  for (const line of wrapText(content.faces.bold, words.title, TYPE.title, width)) {
    y -= 1.2 * TYPE.title;
    content.text({ text: line, at: { x: area.minX, y }, size: TYPE.title, color: INK.strong, bold: true });
  }
  y -= 2;
  for (const text of [...printed.words, ...words.summary]) {
    for (const line of wrapText(content.faces.regular, text, TYPE.body, width)) {
      y -= LEADING * TYPE.body;
      content.text({ text: line, at: { x: area.minX, y }, size: TYPE.body, color: INK.text });
    }
  }
  y -= 4;
  content.lines([{ from: { x: area.minX, y }, to: { x: area.maxX, y } }], HAIRLINE);
  return y - 6;
};

const drawCaption = (content: PageContent, { room, caption, captionTop }: CoverLayout): void => {
  caption.forEach((text, i) => {
    content.text({
      text,
      at: { x: (room.minX + room.maxX) / 2, y: captionTop - i * LEADING * TYPE.small },
      size: TYPE.small,
      color: INK.quiet,
      align: 'middle',
    });
  });
};

const blocksFor = (printed: Printed, words: CoverWords): Block[] => [
  { kind: 'heading', text: 'Print' },
  ...points(printing(printed)),
  { kind: 'heading', text: 'Check the scale' },
  ...points(checking(words.units, printed)),
  { kind: 'heading', text: 'How true it is' },
  { kind: 'text', text: claim(words.units, printed) },
  ...(printed.isTaped
    ? [{ kind: 'heading', text: 'Cut and tape' } as const, ...points(taping(printed))]
    : []),
  ...(words.cautions.length > 0
    ? [{ kind: 'heading', text: 'Take care' } as const, ...points(words.cautions, '–')]
    : []),
];

const points = (texts: readonly string[], mark?: string): Block[] =>
  texts.map((text, i) => ({ kind: 'point', text, mark: mark ?? `${i + 1}` }));

const printing = (printed: Printed): string[] => [
  loading(printed),
  'In the print window choose “actual size” or 100 %, not “fit” or “shrink”. Look each time: some viewers keep an old setting.',
  'Borderless off, one-sided.',
  ...(printed.check
    ? []
    : [
        'The thin frame must be whole on every sheet. Where a side is missing, the printer does not reach so far: ask for a wider margin there.',
      ]),
];

const loading = ({ paper, cover, check }: Printed): string => {
  if (paper.id === 'roll')
    return `This page is for a sheet of ${cover.name} paper; all after it are for the roll. If a shop prints them, ask for pages as wide as the roll, and for no scaling.`;
  const load = `Load ${paper.name} paper${paper.inTray ? '' : ', whichever you have: the pages fit both'}.`;
  return check
    ? `${load} Print this page first and check its square; then load what you stitch through, and print the rest in the same way.`
    : load;
};

const checking = (units: Units, { measured, check }: Printed): string[] => [
  'Lay a ruler along two sides of the check square: 2 in to its sides, 50 mm to the ticks.',
  ...(check
    ? []
    : [
        `Then lay it along the frame, which is marked in ${units === 'in' ? 'inches and millimetres' : 'millimetres and inches'} on all four sides. A small error only shows on a long measure.`,
      ]),
  `${check ? '50 mm reads 47, 48 or 48.5' : '100 mm reads 94, 96 or 97'}: the viewer shrank the page. Print again at 100 %.`,
  `It is off by less, or differently along the two edges of the paper: that is the printer. ${
    isCorrected(measured)
      ? 'This print is corrected already: measure one that is not, and give what that one measured.'
      : `Give what you measured, the short edge first, and print again${check ? '' : ': each sheet then says by how much it was corrected'}. Do not mix the two prints.`
  }`,
];

const taping = ({ check }: Printed): string[] => [
  `Lay the sheets out as on the map. Each ${check ? 'has its name in the margin over its top left corner' : 'names its neighbours at its edges'}.`,
  `On every sheet cut ${check ? 'straight through its crosses' : 'along the dashed line'}, at its left and its top. Leave the right and the bottom uncut.`,
  'Start at the top left. Lay each cut edge on its neighbour so that the half crosses meet the whole ones. Never go by the edge of the paper.',
  'Tape, and check across a join that the lines run on.',
];

/** Judged from the spread of printers, paper and taping: the file itself is exact to 0.01 pt. */
const claim = (units: Units, { check }: Printed): string =>
  units === 'in'
    ? `The file is exact to better than 1/5000 in. On paper, when ${check ? 'the 2 in square reads right within 1/64 in, count on about 1/8 in' : '6 in on the frame reads right within 1/64 in, count on about 1/16 in'} over 10 in, and 1/64 to 1/32 in more at each taped join. Paper swells and shrinks with the weather.`
    : `The file is exact to better than 0.005 mm. On paper, when ${check ? '50 mm on the square reads right within 0.4 mm, count on about 3 mm' : '150 mm on the frame reads right within 0.4 mm, count on about 1.6 mm'} over 250 mm, and 0.4 to 0.8 mm more at each taped join. Paper swells and shrinks with the weather.`;
