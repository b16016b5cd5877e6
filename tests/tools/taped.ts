/**
 * Sheets taped together in pixels, beside the same drawing painted in one go.
 *
 * As a person does it: the crosses are found where they are seen, each sheet is laid on the drawing by them alone,
 * what lies outside the trim lines is cut off or covered, and the result is compared with the one page. What is on
 * sheets only (frames, crosses, words) is known from sheets written for an empty drawing on the same plan, and is
 * left out of the comparison, with a rim for the white that words stand on.
 */

import { LAYERS, type StyledDrawing } from '../../src/drawing/index.ts';
import { type Box, growBox, inverse, type Motion, move, type Point } from '../../src/geometry/index.ts';
import { writeOnePage, writeSheets } from '../../src/output/pdf/index.ts';
import { textWidthOf } from '../../src/output/pdf/sheets.ts';
import { typefacesOf } from '../../src/output/pdf/typeface.ts';
import { inkOf, type Sheet, type SheetPlan } from '../../src/pagination/index.ts';
import { rawPages, WORDS } from '../output/pdf/read-back.ts';
import { type Gray, pagesOf } from './outside.ts';

const DPI = 100;
const PIXEL = DPI / 25.4;
/** Sheets are painted from pixels a quarter as large, because crosses are looked for on them; the large page from a third. */
const SHEETS_FINER = 4;
const PAGE_FINER = 3;

/**
 * How far (mm) a cross may be seen from where its sheet's others and the plan say, along either axis. Poppler moves
 * level and upright lines to whole pixels, of a quarter of 1/100 in here: at most 0.032 mm (0.027 was seen), and 0.1 mm must be told.
 */
const CROSS_SLACK = 0.05;
/** The same, in radians, for the tilt of a sheet that was laid by its crosses: 0.084 mm over the shortest join. */
const TILT_SLACK = 8e-4;
/** How far (mm) the picture on a sheet may lie from the one page's along either axis, over the whole sheet. */
const SHIFT_SLACK = 0.05;
/** How much larger or smaller it may be: lines at both ends of a sheet moved to whole pixels are 4e-4. */
const SCALE_SLACK = 5e-4;
/**
 * The darkest that the mean of any 5 × 5 pixels (1.27 mm) may differ by, 0 to 1. Antialiasing on two pixel grids
 * that lie a fraction of a pixel apart gives up to about half of this; a line of 0.35 mm missing gives 0.28.
 */
const PATCH_SLACK = 0.12;

export interface Taped {
  /** In words, one for each thing that is wrong. */
  readonly faults: readonly string[];
  readonly worst: {
    readonly cross: number;
    readonly shift: number;
    readonly scale: number;
    readonly patch: number;
  };
  /** The share of the one page's ink that the sheets' own marks lie on, and that is not compared. */
  readonly hidden: number;
  readonly sheets: number;
}

const EMPTY: StyledDrawing['layers'] = Object.fromEntries(
  LAYERS.map((id) => [id, []]),
) as unknown as StyledDrawing['layers'];

/**
 * @param plan what a person has in hand besides the paper: the crosses' places on the drawing
 * @param bare whether the sheets are those that are stitched through
 */
export const tape = async (
  drawing: StyledDrawing,
  plan: SheetPlan,
  printed: SheetPlan = plan,
  paint: StyledDrawing = drawing,
  bare = false,
): Promise<Taped> => {
  const paintedSheets = async (of: StyledDrawing): Promise<readonly Gray[]> =>
    (await pagesOf(await writeSheets(of, printed, { ...WORDS, bare }), DPI, SHEETS_FINER)).slice(
      -printed.sheets.length,
    );
  const pages = await paintedSheets(paint);
  const unpainted = await paintedSheets({ ...paint, layers: EMPTY });
  const { one, frame } = await onePageOf(drawing);

  const faults: string[] = [];
  const worst = { cross: 0, shift: 0, scale: 0, patch: 0 };
  const taped = new Float32Array(one.dark.length);
  /** 0 no sheet, 1 compared, 2 under a sheet's own marks. */
  const state = new Uint8Array(one.dark.length);
  for (const sheet of plan.sheets) {
    const index = printed.sheets.findIndex((s) => s.label === sheet.label);
    const [page, own] = [pages[index], unpainted[index]];
    if (!page || !own) {
      faults.push(`${sheet.label}: there is no such sheet`);
      continue;
    }
    if (!showsAll(own, page))
      faults.push(`${sheet.label}: its marks are not those of a sheet without a drawing`);
    const laid = layByCrosses(plan, sheet, own, bare ? BARE_ARMS : ARMS);
    worst.cross = Math.max(worst.cross, laid.off);
    faults.push(...laid.faults);
    const seen = lay(plan, sheet, laid.place, page, own, one, frame, taped, state);
    if (seen) {
      worst.shift = Math.max(worst.shift, Math.abs(seen.x), Math.abs(seen.y));
      worst.scale = Math.max(worst.scale, Math.abs(seen.scaleX), Math.abs(seen.scaleY));
      if (!(Math.max(Math.abs(seen.x), Math.abs(seen.y)) <= SHIFT_SLACK))
        faults.push(`${sheet.label}: its picture is off by ${seen.x.toFixed(3)}, ${seen.y.toFixed(3)} mm`);
      if (!(Math.max(Math.abs(seen.scaleX), Math.abs(seen.scaleY)) <= SCALE_SLACK))
        faults.push(
          `${sheet.label}: its scale is off by ${seen.scaleX.toExponential(1)}, ${seen.scaleY.toExponential(1)}`,
        );
    }
  }
  const patch = worstPatch(one, taped, state, frame, growBox(plan.ink, 1));
  worst.patch = patch.most;
  if (!(patch.most <= PATCH_SLACK))
    faults.push(
      `a patch near ${patch.at.x.toFixed(1)}, ${patch.at.y.toFixed(1)} differs by ${patch.most.toFixed(3)}`,
    );
  return { faults, worst, hidden: patch.hidden, sheets: plan.sheets.length };
};

const painted = new WeakMap<StyledDrawing, Promise<{ one: Gray; frame: Frame }>>();

/** Painted once for each drawing. */
const onePageOf = (drawing: StyledDrawing): Promise<{ one: Gray; frame: Frame }> => {
  const paint = async () => {
    const pdf = await writeOnePage(drawing, WORDS);
    const [one] = await pagesOf(pdf, DPI, PAGE_FINER);
    return { one: one!, frame: await placeOnOnePage(drawing, pdf) };
  };
  const found = painted.get(drawing) ?? paint();
  painted.set(drawing, found);
  return found;
};

/** The one page's margin, the room round the ink, and the room for words below it, mm: a page of another size is told. */
const ONE_PAGE = { margin: 12.7, padding: 6, foot: 12.5 } as const;

/** From the drawing to the one page, mm. */
const placeOnOnePage = async (drawing: StyledDrawing, pdf: Uint8Array): Promise<Frame> => {
  const { box } = inkOf(drawing, textWidthOf(typefacesOf(WORDS.fonts)));
  const { margin, padding, foot } = ONE_PAGE;
  const [page] = await rawPages(pdf);
  const [width, height] = page!.mediaBox.slice(2).map((points) => (points * 25.4) / 72) as [number, number];
  const rest = [
    width - (box.maxX - box.minX) - 2 * (margin + padding),
    height - (box.maxY - box.minY) - 2 * (margin + padding) - foot,
  ];
  // Sizes of pages are written in thousandths of a point.
  if (!(Math.max(...rest.map(Math.abs)) < 1e-3))
    throw new Error('The one page is not of the size that it was.');
  return { x: margin + padding - box.minX, y: margin + padding + foot - box.minY, height };
};

/** Whether all that is dark on a sheet without a drawing is dark on the sheet itself: the same marks in the same places. */
const showsAll = (own: Gray, page: Gray): boolean => {
  let missing = 0;
  let all = 0;
  for (let i = 0; i < own.dark.length; i++) {
    if (own.dark[i]! < 0.15) continue;
    all++;
    if (page.dark[i]! < own.dark[i]! - 0.1) missing++;
  }
  // Marks over a drawing of a lighter colour may differ at their rims.
  return all > 0 && missing <= 0.002 * all;
};

/** The tint of the bands (0.05) and no more: it lies on one side of the crosses only, and would pull their centre over. */
const TINT = 0.06;

/**
 * The centre of darkness along one axis (mm on paper), within `reach` of `near`, over stretches of the other axis;
 * in the small pixels, because a window rounded to large ones takes in a piece of a cross's ring on one side only.
 */
const centreOf = (
  page: Gray,
  height: number,
  axis: 'x' | 'y',
  near: number,
  stretches: readonly (readonly [number, number])[],
  reach = 0.45,
): number => {
  const { fine } = page;
  const pixel = PIXEL * SHEETS_FINER;
  let mass = 0;
  let moment = 0;
  const toPixel = (along: 'x' | 'y', mm: number): number => (along === 'x' ? mm : height - mm) * pixel;
  const middle = toPixel(axis, near);
  const other = axis === 'x' ? 'y' : 'x';
  for (const [from, to] of stretches) {
    const ends = [toPixel(other, from), toPixel(other, to)].sort((p, q) => p - q) as [number, number];
    for (let b = Math.round(ends[0]); b < Math.round(ends[1]); b++)
      for (let a = Math.round(middle - reach * pixel); a < Math.round(middle + reach * pixel); a++) {
        const at = fine.start + (axis === 'x' ? b : a) * fine.width + (axis === 'x' ? a : b);
        const dark = Math.max(0, 1 - (fine.bytes[at] ?? 255) / 255 - TINT);
        mass += dark;
        moment += dark * (a + 0.5);
      }
  }
  if (!(mass > 0.5)) return Number.NaN;
  const seen = moment / mass / pixel;
  return axis === 'x' ? seen : height - seen;
};

/** The stretches of a cross's arms that are clear of its ring and of the line across, mm from its middle. */
const ARMS = [
  [-2.6, -2],
  [-1, -0.5],
  [0.5, 1],
  [2, 2.6],
] as const;

/** The same of crosses without a ring, and with shorter arms. */
const BARE_ARMS = [
  [-1.4, -0.5],
  [0.5, 1.4],
] as const;

interface Laid {
  readonly place: Motion;
  readonly off: number;
  readonly faults: readonly string[];
}

/** Lays a sheet on the drawing by its crosses as they are seen. A sheet alone has none, and lies where the plan says. */
const layByCrosses = (
  plan: SheetPlan,
  sheet: Sheet,
  own: Gray,
  arms: readonly (readonly [number, number])[],
): Laid => {
  const crosses = sheet.edges.flatMap((edge) => edge.crosses);
  if (crosses.length === 0) {
    const alone = plan.sheets.length === 1;
    return {
      place: sheet.place,
      off: 0,
      faults: alone ? [] : [`${sheet.label}: it has no crosses to lay it by`],
    };
  }
  const pairs = crosses.map(({ drawing, paper }) => ({
    drawing,
    paper,
    seen: {
      x: centreOf(
        own,
        plan.height,
        'x',
        paper.x,
        arms.map(([a, b]) => [paper.y + a, paper.y + b] as const),
      ),
      y: centreOf(
        own,
        plan.height,
        'y',
        paper.y,
        arms.map(([a, b]) => [paper.x + a, paper.x + b] as const),
      ),
    },
  }));
  const mean = (of: (p: (typeof pairs)[number]) => number): number =>
    pairs.reduce((sum, p) => sum + of(p), 0) / pairs.length;
  const from = { x: mean((p) => p.drawing.x), y: mean((p) => p.drawing.y) };
  const to = { x: mean((p) => p.seen.x), y: mean((p) => p.seen.y) };
  // The turn that brings the crosses nearest to where they are seen, in the sense of least squares.
  let [along, across] = [0, 0];
  for (const p of pairs) {
    const [ax, ay] = [p.drawing.x - from.x, p.drawing.y - from.y];
    const [bx, by] = [p.seen.x - to.x, p.seen.y - to.y];
    along += ax * bx + ay * by;
    across += ax * by - ay * bx;
  }
  const angle = Math.atan2(across, along);
  const centre = move({ flip: false, angle, x: 0, y: 0 }, from);
  const place: Motion = { flip: false, angle, x: to.x - centre.x, y: to.y - centre.y };
  const faults: string[] = [];
  const tilt = Math.abs(Math.sin(2 * angle) / 2);
  if (!(tilt <= TILT_SLACK))
    faults.push(`${sheet.label}: laid by its crosses it is tilted by ${tilt.toFixed(6)}`);
  let off = 0;
  for (const { drawing, paper, seen } of pairs) {
    const laid = move(place, drawing);
    const away = Math.max(...[laid, paper].flatMap((p) => [Math.abs(p.x - seen.x), Math.abs(p.y - seen.y)]));
    off = Math.max(off, away);
    if (!(away <= CROSS_SLACK))
      faults.push(
        `${sheet.label}: the cross of ${drawing.x.toFixed(1)}, ${drawing.y.toFixed(1)} is ${away.toFixed(3)} mm off`,
      );
  }
  return { place, off, faults };
};

const within = (p: Point, box: Box): boolean =>
  p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY;

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

/** Puts a sheet's part into the taped picture; tells where that part lies beside the one page's. */
const lay = (
  plan: SheetPlan,
  sheet: Sheet,
  place: Motion,
  page: Gray,
  own: Gray,
  one: Gray,
  frame: Frame,
  taped: Float32Array,
  state: Uint8Array,
): Seen | undefined => {
  const marks = nearMarks(own);
  const back = inverse(place);
  const corners = [
    move(back, { x: plan.live.minX, y: plan.live.minY }),
    move(back, { x: plan.live.maxX, y: plan.live.maxY }),
  ];
  const columns = corners.map((p) => (p.x + frame.x) * PIXEL);
  const rows = corners.map((p) => (frame.height - p.y - frame.y) * PIXEL);
  const box = {
    left: Math.max(0, Math.floor(Math.min(...columns))),
    right: Math.min(one.width, Math.ceil(Math.max(...columns))),
    top: Math.max(0, Math.floor(Math.min(...rows))),
    bottom: Math.min(one.height, Math.ceil(Math.max(...rows))),
  };
  const fit = fitter((box.left + box.right) / 2, (box.top + box.bottom) / 2);
  for (let row = box.top; row < box.bottom; row++)
    for (let column = box.left; column < box.right; column++) {
      const drawing = {
        x: (column + 0.5) / PIXEL - frame.x,
        y: frame.height - (row + 0.5) / PIXEL - frame.y,
      };
      const paper = move(place, drawing);
      // Cut off, or covered by the neighbour.
      if (!within(paper, plan.live) || sheet.edges.some((edge) => within(paper, edge.outer))) continue;
      const x = paper.x * PIXEL - 0.5;
      const y = (plan.height - paper.y) * PIXEL - 0.5;
      const at = row * one.width + column;
      const nearest = Math.round(y) * page.width + Math.round(x);
      if (marks[nearest]) {
        if (state[at] === 0) state[at] = 2;
        continue;
      }
      taped[at] = between(page, x, y);
      state[at] = 1;
    }
  for (let row = box.top + 1; row < box.bottom - 1; row++)
    for (let column = box.left + 1; column < box.right - 1; column++) {
      const at = row * one.width + column;
      const near = [at, at - 1, at + 1, at - one.width, at + one.width];
      if (near.some((k) => state[k] !== 1)) continue;
      const slopeX = (one.dark[at + 1]! - one.dark[at - 1]! + taped[at + 1]! - taped[at - 1]!) / 4;
      const slopeY =
        (one.dark[at + one.width]! -
          one.dark[at - one.width]! +
          taped[at + one.width]! -
          taped[at - one.width]!) /
        4;
      if (slopeX !== 0 || slopeY !== 0) fit.add(column, row, slopeX, slopeY, one.dark[at]! - taped[at]!);
    }
  return fit.solve();
};

const between = (page: Gray, x: number, y: number): number => {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [x - left, y - top];
  const at = (column: number, row: number): number => page.dark[row * page.width + column] ?? 0;
  return (
    (at(left, top) * (1 - fx) + at(left + 1, top) * fx) * (1 - fy) +
    (at(left, top + 1) * (1 - fx) + at(left + 1, top + 1) * fx) * fy
  );
};

/** The rim round marks, pixels: 0.76 mm, more than the white that words stand on and what antialiasing spreads. */
const RIM = 3;

const nearMarks = (own: Gray): Uint8Array => {
  const { width, height, dark } = own;
  const wide = new Uint8Array(dark.length);
  const marks = new Uint8Array(dark.length);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      if (dark[row * width + column]! > 0.01)
        wide.fill(
          1,
          row * width + Math.max(0, column - RIM),
          row * width + Math.min(width, column + RIM + 1),
        );
  for (let row = 0; row < height; row++)
    for (let other = Math.max(0, row - RIM); other <= Math.min(height - 1, row + RIM); other++)
      for (let column = 0; column < width; column++)
        if (wide[other * width + column]) marks[row * width + column] = 1;
  return marks;
};

interface Seen {
  /** mm */
  readonly x: number;
  readonly y: number;
  readonly scaleX: number;
  readonly scaleY: number;
}

/**
 * Where a picture lies beside another, to a hundredth of a pixel: the shift and the stretch that, by the slopes of
 * darkness, explain their differences best (B. D. Lucas and T. Kanade, IJCAI 1981, from memory).
 */
const fitter = (middleX: number, middleY: number) => {
  const sums = Array.from({ length: 4 }, () => new Float64Array(5));
  let used = 0;
  return {
    add: (column: number, row: number, slopeX: number, slopeY: number, difference: number): void => {
      used++;
      const terms = [slopeX, slopeY, slopeX * (column - middleX), slopeY * (row - middleY)];
      for (let i = 0; i < 4; i++) {
        for (let k = 0; k < 4; k++) sums[i]![k]! += terms[i]! * terms[k]!;
        sums[i]![4]! += terms[i]! * difference;
      }
    },
    /** Nothing where the sheet shows too little to tell: lines in one direction only, or next to none. */
    solve: (): Seen | undefined => {
      if (used < 400) return undefined;
      const matrix = sums.map((row) => Array.from(row));
      for (let i = 0; i < 4; i++) {
        const pivot = matrix[i]![i]!;
        if (!(pivot > 1e-3 * sums[i]![i]! && pivot > 1)) return undefined;
        for (let k = i + 1; k < 4; k++) {
          const by = matrix[k]![i]! / pivot;
          for (let j = i; j < 5; j++) matrix[k]![j]! -= by * matrix[i]![j]!;
        }
      }
      const answer = [0, 0, 0, 0];
      for (let i = 3; i >= 0; i--) {
        let rest = matrix[i]![4]!;
        for (let k = i + 1; k < 4; k++) rest -= matrix[i]![k]! * answer[k]!;
        answer[i] = rest / matrix[i]![i]!;
      }
      return { x: answer[0]! / PIXEL, y: answer[1]! / PIXEL, scaleX: answer[2]!, scaleY: answer[3]! };
    },
  };
};

/** Half the side of a patch, pixels. */
const HALF_PATCH = 2;

const worstPatch = (one: Gray, taped: Float32Array, state: Uint8Array, frame: Frame, ink: Box) => {
  const left = Math.max(HALF_PATCH, Math.floor((ink.minX + frame.x) * PIXEL));
  const right = Math.min(one.width - HALF_PATCH, Math.ceil((ink.maxX + frame.x) * PIXEL));
  const top = Math.max(HALF_PATCH, Math.floor((frame.height - ink.maxY - frame.y) * PIXEL));
  const bottom = Math.min(one.height - HALF_PATCH, Math.ceil((frame.height - ink.minY - frame.y) * PIXEL));
  let most = 0;
  let at = { x: Number.NaN, y: Number.NaN };
  let [hidden, all] = [0, 0];
  for (let row = top; row < bottom; row++)
    for (let column = left; column < right; column++) {
      const here = row * one.width + column;
      all += one.dark[here]!;
      if (state[here] === 2) hidden += one.dark[here]!;
      let sum = 0;
      for (let r = row - HALF_PATCH; r <= row + HALF_PATCH; r++)
        for (let c = column - HALF_PATCH; c <= column + HALF_PATCH; c++) {
          const k = r * one.width + c;
          // Where no sheet lies the table is white.
          if (state[k] !== 2) sum += one.dark[k]! - taped[k]!;
        }
      const mean = Math.abs(sum) / (2 * HALF_PATCH + 1) ** 2;
      if (mean > most) {
        most = mean;
        at = { x: (column + 0.5) / PIXEL - frame.x, y: frame.height - (row + 0.5) / PIXEL - frame.y };
      }
    }
  return { most, at, hidden: all > 0 ? hidden / all : Number.NaN };
};
