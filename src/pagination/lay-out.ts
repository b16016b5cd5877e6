/**
 * From a drawing to a plan of sheets: the orientation, quarter turn and shift for which the fewest sheets carry
 * ink, and everything on each sheet that helps to print, check, cut and tape it.
 */

import { type Problem, ProblemError } from '../document/index.ts';
import { roughTextWidth, type StyledDrawing } from '../drawing/index.ts';
import { type Box, boxHeight, boxWidth, isEmptyBox, type Motion, shift } from '../geometry/index.ts';
import {
  AS_READ,
  formatLength,
  INCH_SIXTEENTH,
  type LengthStyle,
  lengthsApart,
  type Units,
} from '../length/index.ts';
import { PAPERS, type Paper, type PaperId } from '../plan/index.ts';
import { CHECK_SECOND, CHECK_SIDE, type CheckPlace, leastLive, placeChecks } from './check-square.ts';
import { crossPoints, sharedEdge } from './edges.ts';
import { manyOf, oneOf } from './how-many.ts';
import { type Ink, inkOf, type TextWidth } from './ink.ts';
import { keepGrid, LEAST_OVERLAP } from './keep-grid.ts';
import {
  DEFAULT_MARGIN,
  DEFAULT_OVERLAP,
  evenMargins,
  LEAST_MARGIN,
  type Margins,
  type Orientation,
} from './margins.ts';
import type { Occupancy } from './occupancy.ts';
import {
  acrossAndUp,
  factorsFor,
  isCorrected,
  type PerAxis,
  type PerEdge,
  UNMEASURED,
} from './paper-edges.ts';
import { coverFor, type Roll, rollPage } from './roll.ts';
import { rulesFor } from './rules.ts';
import { seamWords } from './seam-words.ts';
import { fewestSheets, type WindowShape } from './search.ts';
import { type Rule, type SharedEdge, type SheetPlan, type Side, sheetLabel } from './sheet-plan.ts';
import { type Axis, type Tiling, windowOf } from './tiling.ts';

export interface LayOutOptions {
  readonly paper: PaperId | Roll;
  readonly orientation?: 'auto' | Orientation | undefined;
  /** mm, at every side or per side as the sheet is read; sides left out have the default. */
  readonly margins?: number | Partial<Margins> | undefined;
  /** mm that neighbouring sheets both show. */
  readonly overlap?: number | undefined;
  /** What a check length came out as on an uncorrected print, divided by what it should have been. */
  readonly measured?: PerEdge | undefined;
  /** The unit of the rules along the bottom and the left side; the other one runs along the other two. */
  readonly units?: Units | undefined;
  readonly mostSheets?: number | undefined;
  readonly textWidth?: TextWidth | undefined;
}

/** Taping more than this is no mock-up any more; the map would not be readable either. */
const MOST_SHEETS = 400;

/** A measured factor beyond this is a viewer that scales or a slip of the ruler, not a printer's error. */
const LEAST_MEASURED = 0.8;
const MOST_MEASURED = 1.25;

/** Windows that the grid may have before it is searched: so many mean a drawing of a wrong size. */
const MOST_WINDOWS = 20_000;

interface Layout {
  readonly orientation: Orientation;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  readonly live: Box;
  readonly shape: WindowShape;
}

/** Throws a ProblemError for margins, overlaps and sizes that no sheet can have. */
export const layOut = (drawing: StyledDrawing, options: LayOutOptions): SheetPlan => {
  const margins = marginsFrom(options.margins);
  const overlap = options.overlap ?? DEFAULT_OVERLAP;
  const measured = options.measured ?? UNMEASURED;
  const style = AS_READ[options.units ?? 'in'];
  check(marginProblems(margins, style), measuredProblems(measured), overlapProblems(overlap, style));

  const ink = inkOf(drawing, options.textWidth ?? roughTextWidth);
  if (isEmptyBox(ink.box))
    check([{ code: 'nothing-to-print', message: 'the drawing holds nothing to print' }]);

  const { paper, orientation, turns } =
    typeof options.paper === 'string'
      ? { paper: PAPERS[options.paper], orientation: options.orientation ?? 'auto', turns: [false, true] }
      : rollPage(ink.box, options.paper, margins, overlap, measured, style);
  const layouts = layoutsFor(paper, margins, overlap, orientation, turns);
  for (const { live } of layouts) check(liveProblems(live, paper, overlap, style));

  const most = options.mostSheets ?? MOST_SHEETS;
  check(sizeProblems(ink, layouts, paper, most));
  const first = leastOf(ink, layouts, paper, most);
  const { layout, tiling, grid } = isCorrected(measured)
    ? corrected(ink, first, measured, paper, most)
    : first;
  check(liveProblems(layout.live, paper, overlap, style));
  const rules = rulesFor(layout.live, options.units === undefined || options.units === 'in' ? 'in' : 'mm');
  const shared: PerAxis = layout.turned
    ? { x: tiling.y.overlap, y: tiling.x.overlap }
    : { x: tiling.x.overlap, y: tiling.y.overlap };
  const { cells, sheets, checks } = tidiest(
    slides(ink, tiling).map((slid) => {
      const laid = cellsOf(slid, layout.turned);
      const bare = sheetsOf(laid, layout, rules, shared);
      return { cells: laid, sheets: bare, checks: placeChecks(ink, grid, layout.live, bare) };
    }),
  );
  const rows = Math.max(...cells.map((c) => c.row)) + 1;
  const columns = Math.max(...cells.map((c) => c.column)) + 1;
  return {
    paper,
    cover: coverFor(paper, style !== INCH_SIXTEENTH),
    orientation: layout.orientation,
    turned: layout.turned,
    width: layout.width,
    height: layout.height,
    margins,
    overlap: shared,
    measured,
    factors: factorsFor(measured, layout.orientation),
    live: layout.live,
    rules,
    check: { side: CHECK_SIDE, second: CHECK_SECOND },
    rows,
    columns,
    sheets: sheets.map((sheet, i) => {
      const { at, clear } = checks[i]!;
      const check = { minX: at.x, minY: at.y, maxX: at.x + CHECK_SIDE, maxY: at.y + CHECK_SIDE };
      const words = seamWords({ live: layout.live, check, sheet, ink });
      return { ...sheet, check: at, checkIsClear: clear, words };
    }),
    skipped: cells
      .filter((c) => !c.printed)
      .map(({ row, column, window }) => ({ label: sheetLabel(row, column), row, column, window })),
    ink: ink.box,
  };
};

/** How the sheets lie: which way the paper is held, and the windows on it. */
interface Laid {
  readonly layout: Layout;
  readonly tiling: Tiling;
  readonly grid: Occupancy;
}

const leastOf = (ink: Ink, layouts: readonly Layout[], paper: Paper, most: number): Laid => {
  const found = fewestSheets(
    ink,
    layouts.map((l) => l.shape),
    most,
  );
  if (!found) throw new ProblemError([tooMany(paper, `more than ${most}`, most)]);
  return { ...found, layout: layouts[found.shape]! };
};

/**
 * The same for a printer that is out: the paper is held as it was without the correction, because the person who
 * measured that print expects the same sheets; and they are the same wherever their bands can take up the difference.
 */
const corrected = (ink: Ink, first: Laid, measured: PerEdge, paper: Paper, most: number): Laid => {
  const { grid } = first;
  const layout = measuredLayout(first.layout, measured);
  const tiling = keepGrid(ink, grid, slides(ink, first.tiling)[0]!, layout.shape);
  return tiling ? { layout, tiling, grid } : leastOf(ink, [layout], paper, most);
};

/** What the file's live area measures once it is printed. */
const measuredLayout = (layout: Layout, measured: PerEdge): Layout => {
  const { live, turned, orientation, shape } = layout;
  const { x, y } = acrossAndUp(measured, orientation);
  const printed: Box = {
    ...live,
    maxX: live.minX + boxWidth(live) * x,
    maxY: live.minY + boxHeight(live) * y,
  };
  return { ...layout, live: printed, shape: { ...shape, ...windowOn(printed, turned) } };
};

/** A sheet's window in the drawing, mm. */
const windowOn = (live: Box, turned: boolean): { readonly width: number; readonly height: number } =>
  turned
    ? { width: boxHeight(live), height: boxWidth(live) }
    : { width: boxWidth(live), height: boxHeight(live) };

/** Every way to lay the paper and the drawing; one of each shape of window, upright and unturned first. */
const layoutsFor = (
  paper: Paper,
  margins: Margins,
  overlap: number,
  asked: 'auto' | Orientation,
  turns: readonly boolean[],
): Layout[] => {
  const layouts: Layout[] = [];
  for (const turned of turns) {
    for (const orientation of ['portrait', 'landscape'] as const) {
      if (asked !== 'auto' && asked !== orientation) continue;
      const width = orientation === 'portrait' ? paper.width : paper.height;
      const height = orientation === 'portrait' ? paper.height : paper.width;
      const live: Box = {
        minX: margins.left,
        minY: margins.bottom,
        maxX: margins.left + (width - margins.left - margins.right),
        maxY: margins.bottom + (height - margins.bottom - margins.top),
      };
      const shape = { ...windowOn(live, turned), overlapX: overlap, overlapY: overlap };
      const known = layouts.some(
        (l) =>
          Math.abs(l.shape.width - shape.width) < SAME_SIZE &&
          Math.abs(l.shape.height - shape.height) < SAME_SIZE,
      );
      if (!known) layouts.push({ orientation, turned, width, height, live, shape });
    }
  }
  return layouts;
};

/** Windows that differ by less than this (mm) are the same but for rounding. */
const SAME_SIZE = 1e-9;

/**
 * One row or one column of sheets can slide across the ink, which lies wholly in it: centred if nothing speaks
 * against it, else to either end, where it may leave a clear place for the check square.
 */
const slides = (ink: Ink, t: Tiling): Tiling[] => {
  const rows = new Set<number>();
  const columns = new Set<number>();
  for (const [index, printed] of t.printed.entries()) {
    if (!printed) continue;
    columns.add(index % t.x.count);
    rows.add(Math.floor(index / t.x.count));
  }
  const { minX, maxX, minY, maxY } = ink.box;
  const xs = columns.size === 1 ? slidesAlong(t.x, [...columns][0]!, minX, maxX) : [t.x];
  const ys = rows.size === 1 ? slidesAlong(t.y, [...rows][0]!, minY, maxY) : [t.y];
  return ys.flatMap((y) => xs.map((x) => ({ ...t, x, y })));
};

/** Kept between the ink and the frame when it slides to an end (mm): clear of the frame's ticks and numbers. */
const OFF_FRAME = 8;

const slidesAlong = (axis: Axis, index: number, min: number, max: number): Axis[] => {
  const length = axis.step + axis.overlap;
  const centred = (min + max - length) / 2;
  const room = Math.max(0, (length - (max - min)) / 2 - OFF_FRAME);
  return [centred, centred - room, centred + room].map((at) => ({ ...axis, start: at - index * axis.step }));
};

/** The first with the most check squares that cover no ink. */
const tidiest = <T extends { readonly checks: readonly CheckPlace[] }>(all: readonly T[]): T => {
  const clear = (one: T): number => one.checks.filter((c) => c.clear).length;
  return all.reduce((best, one) => (clear(one) > clear(best) ? one : best));
};

interface Cell {
  readonly row: number;
  readonly column: number;
  readonly window: Box;
  readonly printed: boolean;
}

/** The rows and columns that hold a printed sheet, as they lie on the table: row by row from the top. */
const cellsOf = (t: Tiling, turned: boolean): Cell[] => {
  const all: Cell[] = [];
  for (let j = 0; j < t.y.count; j++) {
    for (let i = 0; i < t.x.count; i++) {
      // A quarter turn clockwise takes the drawing's x down the table and its y to the right.
      const column = turned ? j : i;
      const row = turned ? i : t.y.count - 1 - j;
      const printed = t.printed[j * t.x.count + i]!;
      all.push({ row, column, window: windowOf(t.x, t.y, i, j), printed });
    }
  }
  const inUse = all.filter((c) => c.printed);
  const top = Math.min(...inUse.map((c) => c.row));
  const bottom = Math.max(...inUse.map((c) => c.row));
  const left = Math.min(...inUse.map((c) => c.column));
  const right = Math.max(...inUse.map((c) => c.column));
  return all
    .filter((c) => c.row >= top && c.row <= bottom && c.column >= left && c.column <= right)
    .map((c) => ({ ...c, row: c.row - top, column: c.column - left }))
    .sort((a, b) => a.row - b.row || a.column - b.column);
};

interface BareSheet {
  readonly label: string;
  readonly row: number;
  readonly column: number;
  readonly window: Box;
  readonly place: Motion;
  readonly edges: readonly SharedEdge[];
}

const sheetsOf = (
  cells: readonly Cell[],
  layout: Layout,
  rules: readonly Rule[],
  overlap: PerAxis,
): BareSheet[] => {
  const printed = cells.filter((c) => c.printed);
  const at = new Map(printed.map((c) => [sheetLabel(c.row, c.column), c]));
  return printed.map((cell) => {
    const place = placeOf(cell.window, layout);
    const edges: SharedEdge[] = [];
    for (const rule of rules) {
      const { side } = rule;
      const neighbour = sheetLabel(...beside(cell, side));
      const other = at.get(neighbour);
      if (!other) continue;
      const before = side === 'right' || side === 'bottom';
      // In the same order for both sheets, so that both get the same numbers to the last bit.
      const crosses = before
        ? crossPoints(cell.window, other.window)
        : crossPoints(other.window, cell.window);
      const depth = side === 'left' || side === 'right' ? overlap.x : overlap.y;
      edges.push(sharedEdge(layout.live, depth, rule, neighbour, place, crosses));
    }
    const { row, column, window } = cell;
    return { label: sheetLabel(row, column), row, column, window, place, edges };
  });
};

const beside = ({ row, column }: Cell, side: Side): [number, number] => {
  switch (side) {
    case 'left':
      return [row, column - 1];
    case 'right':
      return [row, column + 1];
    case 'top':
      return [row - 1, column];
    case 'bottom':
      return [row + 1, column];
  }
};

const placeOf = (window: Box, { live, turned }: Layout): Motion =>
  turned
    ? { flip: false, angle: -Math.PI / 2, x: live.minX - window.minY, y: live.minY + window.maxX }
    : shift(live.minX - window.minX, live.minY - window.minY);

const marginsFrom = (asked: number | Partial<Margins> | undefined): Margins =>
  typeof asked === 'number' ? evenMargins(asked) : { ...evenMargins(DEFAULT_MARGIN), ...asked };

const check = (...problems: readonly (readonly Problem[])[]): void => {
  const all = problems.flat();
  if (all.length > 0) throw new ProblemError(all);
};

/** Lengths typed as 1/4 in may come out a hair below it. */
const LENGTH_NOISE = 1e-9;

const marginProblems = (margins: Margins, style: LengthStyle): Problem[] =>
  Object.entries(margins)
    .filter(([, value]) => !(value >= LEAST_MARGIN - LENGTH_NOISE && Number.isFinite(value)))
    .map(([side, value]) => ({
      code: 'margin-too-small',
      message: `the ${side} margin is nearer to the paper's edge than printers reach`,
      found: foundWords(value, LEAST_MARGIN, style),
      expected: 'at least 1/4 in (6.35 mm)',
    }));

const measuredProblems = (measured: PerEdge): Problem[] =>
  Object.entries(measured)
    .filter(([, value]) => !(value >= LEAST_MEASURED && value <= MOST_MEASURED))
    .map(([edge, value]) => ({
      code: 'measured-out-of-range',
      message: `the measured factor along the ${edge} edge is no printer's error`,
      found: `${value}`,
      expected: `${LEAST_MEASURED} to ${MOST_MEASURED} (measured length divided by true length)`,
      hint: 'print again at 100 % / actual size, and measure that print',
    }));

const overlapProblems = (overlap: number, style: LengthStyle): Problem[] =>
  overlap >= LEAST_OVERLAP - LENGTH_NOISE && Number.isFinite(overlap)
    ? []
    : [
        {
          code: 'overlap-too-small',
          message: 'the overlap is too narrow to tape',
          found: foundWords(overlap, LEAST_OVERLAP, style),
          expected: 'at least 1/4 in (6.35 mm)',
        },
      ];

/** Short of a limit; what is no length is said as it is. */
const foundWords = (mm: number, limit: number, style: LengthStyle): string =>
  Number.isFinite(mm) ? lengthsApart(mm, limit, style)[0] : String(mm);

const liveProblems = (live: Box, paper: Paper, overlap: number, style: LengthStyle): Problem[] => {
  const least = Math.max(leastLive(overlap), 3 * overlap);
  if (boxWidth(live) >= least && boxHeight(live) >= least) return [];
  return [
    {
      code: 'no-room-on-paper',
      message: `the margins and the overlap leave too little of ${oneOf(paper)} to print on`,
      found: [boxWidth(live), boxHeight(live)].map((mm) => lengthsApart(mm, least, style)[0]).join(' × '),
      expected: `at least ${formatLength(least, style)} each way`,
      hint: 'take smaller margins, a smaller overlap or a larger paper',
    },
  ];
};

const sizeProblems = (ink: Ink, layouts: readonly Layout[], paper: Paper, most: number): Problem[] => {
  const windows = layouts.map(
    ({ shape: s }) =>
      (boxWidth(ink.box) / (s.width - s.overlapX) + 2) * (boxHeight(ink.box) / (s.height - s.overlapY) + 2),
  );
  return Math.max(...windows) <= MOST_WINDOWS ? [] : [tooMany(paper, 'far more', most)];
};

const tooMany = (paper: Paper, found: string, most: number): Problem => ({
  code: 'too-many-sheets',
  message: `the drawing does not fit on ${manyOf(paper, most)}`,
  found,
  hint: 'print a part of it (one repeat, one side, a corner), take a larger paper, or write it as one page for a wide printer',
});
