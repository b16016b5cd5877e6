/**
 * The capture sheet: eight marks of known place round an empty field. Laid under a template, or drawn on, it lets a
 * photograph be measured. The words stand outside the marks, where nothing is looked for.
 */

import { arc, closedPath, type Path, type Point, shift, TURN } from '../../geometry/index.ts';
import { CAPTURE_INSET, MARK_PLACES, MARK_RADII, MARK_SPAN } from '../../trace/index.ts';
import {
  type Deflate,
  type FontBytes,
  HAIRLINE,
  INK,
  type PageContent,
  type PageSetup,
  startPdf,
  TYPE,
} from '../pdf/index.ts';

export interface CaptureSheetOptions {
  /** Upright. */
  readonly setup: PageSetup;
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
}

const BLACK = '#000000';
/** mm */
const TICK_LENGTH = 6;
const TICK_INSET = CAPTURE_INSET - 2;

export const writeCaptureSheet = async ({
  setup,
  deflate,
  fonts,
}: CaptureSheetOptions): Promise<Uint8Array> => {
  const pdf = await startPdf({ title: 'Capture sheet', deflate, fonts, pickTray: setup.pickTray });
  const page = pdf.page({ width: setup.width, height: setup.height, label: 'Capture sheet' });
  const origin = { x: (setup.width - MARK_SPAN.width) / 2, y: (setup.height - MARK_SPAN.height) / 2 };
  page.placed(shift(origin.x, origin.y), () => {
    for (const place of MARK_PLACES) drawMark(page, place);
    drawField(page);
    drawWords(page, setup.name);
  });
  return pdf.finish();
};

const circle = (middle: Point, radius: number): Path =>
  closedPath([arc(middle, radius, 0, TURN / 2), arc(middle, radius, TURN / 2, TURN / 2)]);

/** Even-odd: black disc, white ring, black middle. */
const drawMark = (page: Pick<PageContent, 'area'>, middle: Point): void =>
  page.area(
    [MARK_RADII.disc, MARK_RADII.ring, MARK_RADII.middle].map((r) => circle(middle, r)),
    BLACK,
  );

/** Faint corners of the field in which the template has to lie. */
const drawField = (page: PageContent): void => {
  const left = TICK_INSET;
  const right = MARK_SPAN.width - TICK_INSET;
  const top = MARK_SPAN.height - TICK_INSET;
  const bottom = TICK_INSET;
  const corners = [
    { x: left, y: bottom, dx: 1, dy: 1 },
    { x: right, y: bottom, dx: -1, dy: 1 },
    { x: right, y: top, dx: -1, dy: -1 },
    { x: left, y: top, dx: 1, dy: -1 },
  ];
  page.lines(
    corners.flatMap(({ x, y, dx, dy }) => [
      { from: { x, y }, to: { x: x + dx * TICK_LENGTH, y } },
      { from: { x, y }, to: { x, y: y + dy * TICK_LENGTH } },
    ]),
    HAIRLINE,
  );
};

const drawWords = (page: PageContent, paper: string): void => {
  const { width, height } = MARK_SPAN;
  const line = (text: string, y: number, size: number = TYPE.small, bold = false): void =>
    page.text({ text, at: { x: width / 2, y }, size, color: INK.text, align: 'middle', bold });
  line('Capture sheet', height + 12.5, TYPE.heading, true);
  line(
    'Lay the template between the corner ticks, draw round it with a sharp dark pencil, and take it away.',
    height + 8.6,
  );
  line('Photograph the whole sheet flat, from straight above, with all eight marks sharp.', -8.6);
  line(
    `Print at 100 % / actual size (${paper}). Middle to middle the corner marks measure ` +
      `${width} mm (6.69 in) across and ${height} mm (9.37 in) up;`,
    -12,
    TYPE.fine,
  );
  line(
    `if not, print it again; at the terminal what you read will do: --measured ${width}mm=169mm,${height}mm=237mm`,
    -15,
    TYPE.fine,
  );
};
