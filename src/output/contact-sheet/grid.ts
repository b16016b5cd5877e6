/** How pictures of different sizes are laid on pages: one grid and one scale for all, as large as can be. */

/** Pictures no smaller than a given size stand on a page in rows and columns. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly pages: number;
  /** Millimetres of the quilt to a millimetre of paper: a number that a person can reckon with. */
  readonly reduction: number;
  /** The share of a page's room that pictures and captions take, where that is what it was chosen by. */
  readonly filled?: number;
}

export interface GridRoom {
  /** Of the page's area for the grid, mm. */
  readonly width: number;
  readonly height: number;
  /** Between cells, mm. */
  readonly gutter: number;
  /** Of each cell, for its number and caption, mm. */
  readonly caption: number;
  /** Of each cell, beside the picture and below it, for a smaller one, mm. */
  readonly beside?: number;
  readonly below?: number;
  /** How many a page is to hold at least, where it can. */
  readonly wanted?: number;
  /** How narrow (mm) a column may be and still hold captions. */
  readonly narrowest?: number;
}

/** As a scale is written: 1 to one of these. */
const REDUCTIONS = [1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100];

/** More columns make captions too narrow to read, more rows pictures too small. */
const MOST_COLUMNS = 3;
const MOST_ROWS = 6;
/** Fewer on a page than this means leafing where one wants to compare; more makes a border's corner too small to judge. */
const WANTED_ON_PAGE = 4;
/** Captions of narrower columns (mm) would be cut off. */
const LEAST_CAPTIONED = 72;

/**
 * The grid for `count` pictures, the widest `width` and the highest `height` mm at true size; undefined where wide
 * margins leave no room for one.
 */
export const gridFor = (count: number, width: number, height: number, room: GridRoom): Grid | undefined => {
  const largest = largestGrid(
    count,
    width,
    height,
    room,
    Math.max(1, Math.ceil(count / (room.wanted ?? WANTED_ON_PAGE))),
  );
  if (!largest) return undefined;
  for (const reduction of REDUCTIONS) {
    if (!(reduction > largest.reduction && reduction <= A_LITTLE * largest.reduction)) continue;
    const grid = gridAt(count, width, height, room, reduction);
    const isReadable =
      grid && (grid.columns === 1 || columnWidth(grid.columns, room) >= (room.narrowest ?? LEAST_CAPTIONED));
    if (isReadable && grid.pages <= FAR_FEWER * largest.pages) return grid;
  }
  return largest;
};

/** Pictures this much smaller are hardly seen to be; this share of the pages is. */
const A_LITTLE = 1.25;
const FAR_FEWER = 2 / 3;

/**
 * The grid that leaves least of a page white, of those with at least `room.wanted` on a page; finer steps of scale let
 * pictures fill their cells.
 */
export const gridFilling = (
  count: number,
  width: number,
  height: number,
  room: GridRoom,
): Grid | undefined => {
  const onPage = Math.min(count, room.wanted ?? WANTED_ON_PAGE);
  const fits = (columns: number): boolean =>
    columns === 1 || columnWidth(columns, room) >= (room.narrowest ?? LEAST_CAPTIONED);
  const grids = [1, 2, 3].filter(fits).flatMap((columns) =>
    Array.from({ length: MOST_ROWS }, (_, i) => i + 1).flatMap((rows) => {
      const forWidth = columnWidth(columns, room);
      const forHeight = (room.height - (rows - 1) * room.gutter) / rows - underneath(room);
      const needed = Math.max(width / forWidth, height / forHeight, 1);
      const reduction = Math.ceil(needed / STEP - SCALE_NOISE) * STEP;
      if (columns * rows < onPage || !(forWidth > 0 && forHeight > 0)) return [];
      const pages = Math.ceil(count / (columns * rows));
      const share = (width * (height + reduction * underneath(room))) / reduction ** 2;
      const filled = (share * Math.min(count, columns * rows)) / (room.width * room.height);
      return [{ columns, rows, pages, reduction, filled }];
    }),
  );
  // Of those that fill a page as well, the one with the larger pictures.
  return grids.reduce<(typeof grids)[number] | undefined>(
    (best, grid) =>
      !best ||
      grid.filled > best.filled + 0.02 ||
      (grid.filled > best.filled - 0.02 && grid.reduction < best.reduction)
        ? grid
        : best,
    undefined,
  );
};

/** An eighth, as the bar beside the title is told: 1 : 2.125 is 2 1/8 in to the inch. */
const STEP = 0.125;

const underneath = ({ caption, below = 0 }: GridRoom): number => caption + below;

const columnWidth = (columns: number, room: GridRoom): number =>
  (room.width - (columns - 1) * room.gutter) / columns;

/** As many pictures as one page of this kind ever holds. */
export const MOST_ON_PAGE = MOST_COLUMNS * MOST_ROWS;

/** The grid that holds all pictures on one page; undefined for more than `MOST_ON_PAGE`. */
export const gridOnOnePage = (
  count: number,
  width: number,
  height: number,
  room: GridRoom,
): Grid | undefined => largestGrid(count, width, height, room, 1);

/** The grid at a given reduction; undefined where not even one picture fits. */
export const gridAt = (
  count: number,
  width: number,
  height: number,
  room: GridRoom,
  reduction: number,
): Grid | undefined => {
  const columns = fitting(width / reduction + (room.beside ?? 0), room.width, room.gutter);
  const rows = fitting(height / reduction + underneath(room), room.height, room.gutter);
  if (!(columns >= 1 && rows >= 1)) return undefined;
  const used = Math.min(columns, count);
  const needed = Math.min(rows, Math.ceil(count / used));
  return { columns: used, rows: needed, pages: Math.ceil(count / (used * needed)), reduction };
};

const fitting = (size: number, room: number, gutter: number): number =>
  Math.floor((room + gutter) / (size + gutter) + SCALE_NOISE);

const largestGrid = (
  count: number,
  width: number,
  height: number,
  room: GridRoom,
  mostPages: number,
): Grid | undefined => {
  let best: Grid | undefined;
  for (let columns = 1; columns <= MOST_COLUMNS; columns++) {
    for (let rows = 1; rows <= MOST_ROWS; rows++) {
      const pages = Math.ceil(count / (columns * rows));
      if (pages > mostPages) continue;
      const cellWidth = columnWidth(columns, room);
      const forWidth = cellWidth - (room.beside ?? 0);
      const forHeight = (room.height - (rows - 1) * room.gutter) / rows - underneath(room);
      const needed = Math.max(width / forWidth, height / forHeight);
      if (!(forWidth > 0 && forHeight > 0)) continue;
      if (room.caption > 0 && columns > 1 && cellWidth < (room.narrowest ?? LEAST_CAPTIONED)) continue;
      const reduction = REDUCTIONS.find((r) => r >= needed - SCALE_NOISE) ?? Math.ceil(needed);
      const better =
        !best ||
        reduction < best.reduction ||
        (reduction === best.reduction && columns * rows < best.columns * best.rows && pages <= best.pages);
      if (better) best = { columns, rows, pages, reduction };
    }
  }
  return best && fuller(best, count, height, room);
};

/** The same scale and columns with as many rows as there is room for, shared out evenly over fewer pages. */
const fuller = ({ columns, reduction }: Grid, count: number, height: number, room: GridRoom): Grid => {
  const most = Math.max(1, fitting(height / reduction + underneath(room), room.height, room.gutter));
  const pages = Math.ceil(count / (columns * most));
  const rows = Math.min(most, Math.ceil(Math.ceil(count / pages) / columns));
  return { columns, rows, pages: Math.ceil(count / (columns * rows)), reduction };
};

/** Scales that differ by no more are one. */
const SCALE_NOISE = 1e-9;
