/**
 * What the words and figures on the paper say, held against what the paper shows. All is read from the PDF: where a
 * label stands, which lines are dashed, which picture is in a cell of the map. The plan of the sheets is not asked.
 */

import { beforeAll, describe, expect, it } from 'vitest';
import type { StyledDrawing } from '../../../src/drawing/index.ts';
import { line, openPath, point } from '../../../src/geometry/index.ts';
import { writeSheets } from '../../../src/output/pdf/index.ts';
import { type LayOutOptions, layOut } from '../../../src/pagination/index.ts';
import { drawingOf, STITCH, stroked } from '../../pagination/sample-drawings.ts';
import { openPages, POINT, readTexts, type Spot, WORDS, type Written, walkPaths } from './read-back.ts';

/** Strokes of 8 mm, each at an angle of its own, so that each is known again on its sheets and on the map. */
const STROKE = 8;
const COLUMNS = 11;
const ROWS = 8;
const landmarks = (): StyledDrawing => {
  const stitch = Array.from({ length: COLUMNS * ROWS }, (_, i) => {
    const angle = ((i + 0.5) * Math.PI) / (COLUMNS * ROWS);
    const x = 53 * (i % COLUMNS);
    const y = 57 * Math.floor(i / COLUMNS);
    const [dx, dy] = [(Math.cos(angle) * STROKE) / 2, (Math.sin(angle) * STROKE) / 2];
    return stroked(openPath([line(point(x - dx, y - dy), point(x + dx, y + dy))]), STITCH);
  });
  return drawingOf('Landmarks', { stitch });
};

interface Rect {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

interface Seen {
  readonly texts: readonly Written[];
  readonly boxes: readonly Rect[];
  /** Straight strokes, each by itself. */
  readonly lines: readonly { readonly from: Spot; readonly to: Spot; readonly dashed: boolean }[];
  readonly width: number;
  readonly height: number;
}

const seePage = async (pages: Awaited<ReturnType<typeof openPages>>, number: number): Promise<Seen> => {
  const page = await pages.getPage(number);
  const paths = await walkPaths(page);
  const mm = ({ x, y }: Spot): Spot => ({ x: x / POINT, y: y / POINT });
  const straight = paths.filter((p) => !p.curves).map((p) => ({ ...p, points: p.points.map(mm) }));
  const isBox = (points: readonly Spot[]): boolean =>
    points.length === 4 &&
    new Set(points.map((p) => p.x.toFixed(3))).size === 2 &&
    points[0]!.x !== points[1]!.x;
  return {
    texts: await readTexts(page),
    boxes: straight
      .filter((p) => isBox(p.points) && Math.abs(p.points[1]!.x - p.points[2]!.x) < 1e-3)
      .map(({ points }) => ({
        minX: Math.min(...points.map((p) => p.x)),
        minY: Math.min(...points.map((p) => p.y)),
        maxX: Math.max(...points.map((p) => p.x)),
        maxY: Math.max(...points.map((p) => p.y)),
      })),
    lines: straight.flatMap(({ points, dashed }) =>
      (isBox(points) ? [] : points).flatMap((from, i) =>
        i % 2 === 0 && points[i + 1] ? [{ from, to: points[i + 1]!, dashed }] : [],
      ),
    ),
    width: page.view[2]! / POINT,
    height: page.view[3]! / POINT,
  };
};

const wide = (b: Rect): number => b.maxX - b.minX;
const high = (b: Rect): number => b.maxY - b.minY;
const holds = (b: Rect, p: Spot): boolean => p.x >= b.minX && p.x <= b.maxX && p.y >= b.minY && p.y <= b.maxY;

const SHEET_NAME = /^[A-Z]+\d+$/;

/** A sheet as it is found on its page. */
interface FoundSheet extends Seen {
  readonly label: string;
  readonly frame: Rect;
  readonly square: Rect;
}

const asSheet = (seen: Seen): FoundSheet => {
  const frame = seen.boxes.find((b) => wide(b) > 150 && high(b) > 150)!;
  const square = seen.boxes.find((b) => Math.abs(wide(b) - 50.8) < 2 && Math.abs(high(b) - 50.8) < 2)!;
  // The largest letters on a sheet are its name.
  const label = seen.texts.reduce((a, b) => (b.size > a.size ? b : a)).text;
  return { ...seen, label, frame, square };
};

const SIDES = ['left', 'right', 'top', 'bottom'] as const;
type Side = (typeof SIDES)[number];

const nearestSide = (frame: Rect, p: Spot): { readonly side: Side; readonly off: number } =>
  SIDES.map((side) => ({
    side,
    off: {
      left: p.x - frame.minX,
      right: frame.maxX - p.x,
      top: frame.maxY - p.y,
      bottom: p.y - frame.minY,
    }[side],
  })).reduce((a, b) => (b.off < a.off ? b : a));

const angleOf = ({ from, to }: { from: Spot; to: Spot }): number => {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  return angle < 0 ? angle + Math.PI : angle;
};
const middleOf = ({ from, to }: { from: Spot; to: Spot }): Spot => ({
  x: (from.x + to.x) / 2,
  y: (from.y + to.y) / 2,
});

/** The landmarks of a picture at a scale, by their angles as they lie there. */
const landmarksIn = (seen: Seen, scale: number): ReadonlyMap<number, Spot> => {
  const found = new Map<number, Spot>();
  for (const l of seen.lines) {
    const length = Math.hypot(l.to.x - l.from.x, l.to.y - l.from.y);
    const turns = (angleOf(l) * COLUMNS * ROWS) / Math.PI - 0.5;
    if (Math.abs(length - STROKE * scale) < 0.005 && Math.abs(turns - Math.round(turns)) < 0.05)
      found.set(Math.round(turns), middleOf(l));
  }
  return found;
};

const readPdf = async (options: LayOutOptions) => {
  const drawing = landmarks();
  const plan = layOut(drawing, options);
  const pages = await openPages(await writeSheets(drawing, plan, WORDS));
  const seen: Seen[] = [];
  for (let n = 1; n <= pages.numPages; n++) seen.push(await seePage(pages, n));
  const [cover, ...rest] = seen as [Seen, ...Seen[]];
  const names = cover.texts.filter((t) => SHEET_NAME.test(t.text));
  const cells = new Map(
    names.map((name) => [
      name.text,
      cover.boxes.filter((b) => holds(b, name.from)).reduce((a, b) => (wide(b) < wide(a) ? b : a)),
    ]),
  );
  return { cover, cells, sheets: rest.map(asSheet) };
};

const beside = (cells: ReadonlyMap<string, Rect>, label: string, side: Side): string | undefined => {
  const own = cells.get(label)!;
  const near = 0.2;
  const at: Spot = {
    left: { x: own.minX - near, y: (own.minY + own.maxY) / 2 },
    right: { x: own.maxX + near, y: (own.minY + own.maxY) / 2 },
    top: { x: (own.minX + own.maxX) / 2, y: own.maxY + near },
    bottom: { x: (own.minX + own.maxX) / 2, y: own.minY - near },
  }[side];
  return [...cells].find(([, box]) => holds(box, at))?.[0];
};

const wordsOf = (seen: Seen): string => seen.texts.map((t) => t.text).join(' ');

describe.each([
  ['letter, portrait', { paper: 'letter', orientation: 'portrait' }],
  ['letter, landscape', { paper: 'letter', orientation: 'landscape' }],
  ['A4, portrait', { paper: 'a4', orientation: 'portrait' }],
  ['A4, landscape', { paper: 'a4', orientation: 'landscape' }],
] as const)('printed on %s', (_name, options) => {
  let pdf: Awaited<ReturnType<typeof readPdf>>;
  beforeAll(async () => {
    pdf = await readPdf(options);
  });

  it('the map names every sheet: letters down, numbers to the right', () => {
    const { cells, sheets } = pdf;
    expect([...cells.keys()].sort()).toEqual(sheets.map((s) => s.label).sort());
    expect(cells.size).toBeGreaterThan(5);
    for (const [a, one] of cells)
      for (const [b, other] of cells) {
        const rows = b.charCodeAt(0) - a.charCodeAt(0);
        const columns = Number(b.slice(1)) - Number(a.slice(1));
        expect(Math.sign(Math.round(one.maxY - other.maxY))).toBe(Math.sign(rows));
        expect(Math.sign(Math.round(other.minX - one.minX))).toBe(Math.sign(columns));
      }
  });

  it('each cell of the map shows what is on the sheet of its name, where it is there', () => {
    const { cover, cells, sheets } = pdf;
    let compared = 0;
    for (const sheet of sheets) {
      const cell = cells.get(sheet.label)!;
      // Half of 1/2 in is cut off or covered on each side that has a neighbour.
      const trim = (side: Side): number => (beside(cells, sheet.label, side) ? 6.35 : 0);
      const scale = wide(cell) / (wide(sheet.frame) - trim('left') - trim('right'));
      expect(high(cell) / (high(sheet.frame) - trim('top') - trim('bottom'))).toBeCloseTo(scale, 4);
      const caption = Number(/Map, about (\d+) % of true size/.exec(wordsOf(cover))![1]);
      expect(Math.abs(100 * scale - caption)).toBeLessThanOrEqual(0.51);
      const small = landmarksIn(cover, scale);
      for (const [mark, at] of landmarksIn(sheet, 1)) {
        const shown = small.get(mark)!;
        const expected = {
          x: cell.minX + scale * (at.x - sheet.frame.minX - trim('left')),
          y: cell.minY + scale * (at.y - sheet.frame.minY - trim('bottom')),
        };
        expect(Math.hypot(shown.x - expected.x, shown.y - expected.y)).toBeLessThan(0.01);
        compared++;
      }
    }
    // Those in the bands are on two sheets.
    expect(compared).toBeGreaterThanOrEqual(COLUMNS * ROWS);
  });

  it('the map stands over its caption, as wide to the left as to the right of it', () => {
    const { cover, cells } = pdf;
    const all = [...cells.values()];
    const caption = cover.texts.find((t) => t.text.startsWith('Map, about'))!;
    const center = (Math.min(...all.map((b) => b.minX)) + Math.max(...all.map((b) => b.maxX))) / 2;
    expect(Math.abs((caption.from.x + caption.to.x) / 2 - center)).toBeLessThan(0.1);
    const gap = Math.min(...all.map((b) => b.minY)) - caption.from.y;
    expect(gap).toBeGreaterThan(3);
    expect(gap).toBeLessThan(7);
    const rule = cover.lines.find((l) => l.from.y === l.to.y && l.to.x - l.from.x > 150)!;
    const above = rule.from.y - Math.max(...all.map((b) => b.maxY));
    expect(above).toBeGreaterThan(4);
    expect(above).toBeLessThan(8);
  });

  it('each shared edge names the sheet that lies there on the map', () => {
    const { cells, sheets } = pdf;
    const arrows: Readonly<Record<string, Side>> = { '▴': 'top', '▾': 'bottom', '▸': 'right', '◂': 'left' };
    for (const sheet of sheets) {
      const named = new Map<Side, string>();
      for (const text of sheet.texts) {
        const name = /^([A-Z]+\d+)(?: ([▴▾▸◂]))?$/.exec(text.text);
        // Its own name is larger, the name of the paper (A4) smaller.
        if (!name || text.size > 5 || text.size < 2.5) continue;
        const { side, off } = nearestSide(sheet.frame, middleOf(text));
        // In the half of the band that is outside the cut.
        expect(off).toBeLessThan(6.35);
        if (name[2]) expect(arrows[name[2]]).toBe(side);
        named.set(side, name[1]!);
      }
      for (const side of SIDES) expect(named.get(side)).toBe(beside(cells, sheet.label, side));
    }
  });

  it('what is said to be cut is dashed, on the sheets and on the cover', () => {
    const { cover, cells, sheets } = pdf;
    const told =
      /cut along the dashed line, at its (\w+) and its (\w+)\. Leave the (\w+) and the (\w+) uncut/.exec(
        wordsOf(cover),
      )!;
    const [cut, uncut] = [told.slice(1, 3), told.slice(3, 5)];
    expect([...cut, ...uncut].sort()).toEqual([...SIDES].sort());
    // Sheets go down from the top left, each cut edge on the one before.
    expect(wordsOf(cover)).toContain('Start at the top left.');
    expect([...cut].sort()).toEqual(['left', 'top']);
    for (const sheet of sheets) {
      const long = sheet.lines.filter((l) => Math.hypot(l.to.x - l.from.x, l.to.y - l.from.y) > 150);
      const seen = (dashed: boolean): string[] =>
        long
          .filter((l) => l.dashed === dashed)
          .map((l) => nearestSide(sheet.frame, middleOf(l)))
          .filter(({ off }) => Math.abs(off - 6.35) < 0.01)
          .map(({ side }) => side)
          .sort();
      const joined = (sides: readonly string[]): string[] =>
        sides.filter((side) => beside(cells, sheet.label, side as Side)).sort();
      expect(seen(true)).toEqual(joined(cut));
      expect(seen(false)).toEqual(joined(uncut));
      const words = /Cut along the dashes \(([^)]*)\)/.exec(wordsOf(sheet))?.[1];
      expect((words ?? '').split(', ').filter(Boolean).sort()).toEqual(joined(cut));
    }
  });

  it('the figures along the frame stand at their ticks', () => {
    const [sheet] = pdf.sheets as [FoundSheet];
    const { frame } = sheet;
    const units = { in: 25.4, mm: 1 } as const;
    const found: Record<Side, string> = { left: '', right: '', top: '', bottom: '' };
    for (const side of SIDES) {
      const level = side === 'top' || side === 'bottom';
      const figures = sheet.texts
        .filter((t) => /^\d+( in| mm)?$/.test(t.text) && t.isUpright === level)
        .filter((t) => {
          const near = nearestSide(frame, middleOf(t));
          return near.side === side && near.off < 3;
        })
        .map((t) => {
          const along = level ? t.to.x - frame.minX : t.to.y - frame.minY;
          return { value: Number.parseInt(t.text, 10), unit: /in|mm/.exec(t.text)?.[0], along };
        })
        .sort((a, b) => a.along - b.along);
      const unit = figures.at(-1)!.unit as 'in' | 'mm';
      found[side] = unit;
      const room = level ? wide(frame) : high(frame);
      const whole = Math.floor((room - 0.5) / units[unit]);
      if (unit === 'in')
        expect(figures.map((f) => f.value)).toEqual(Array.from({ length: whole }, (_, i) => i + 1));
      else
        expect(figures.map((f) => f.value)).toEqual(
          expect.arrayContaining([20, 40, 100, 10 * Math.floor(whole / 10)]),
        );
      for (const { value, along } of figures) {
        const at = value * units[unit];
        // The figure ends just before its tick, which is a long one.
        expect(along).toBeGreaterThan(at - 1);
        expect(along).toBeLessThan(at);
        const tick = sheet.lines.find((l) => {
          const place = level ? l.from.x - frame.minX : l.from.y - frame.minY;
          const near = nearestSide(frame, l.from);
          return Math.abs(place - at) < 0.01 && near.side === side && Math.abs(near.off) < 0.01;
        });
        expect(Math.hypot(tick!.to.x - tick!.from.x, tick!.to.y - tick!.from.y)).toBeGreaterThan(2);
      }
    }
    expect(found).toEqual({ bottom: 'in', left: 'in', top: 'mm', right: 'mm' });
    expect(wordsOf(pdf.cover)).toContain('marked in inches and millimetres on all four sides');
  });
});

describe.each([
  ['letter', 'portrait', { short: 0.99, long: 1.004 }],
  ['letter', 'landscape', { short: 0.99, long: 1.004 }],
  ['a4', 'portrait', { short: 1.006, long: 0.985 }],
  ['a4', 'landscape', { short: 1.006, long: 0.985 }],
  ['a4', 'landscape', undefined],
] as const)('the check square on %s, %s, measured %j', (paper, orientation, measured) => {
  let sheets: readonly FoundSheet[];
  let cover: Seen;
  beforeAll(async () => {
    ({ sheets, cover } = await readPdf({ paper, orientation, measured }));
  });
  const error = measured ?? { short: 1, long: 1 };

  it('says of each side which edge of the paper it runs along', () => {
    for (const { texts, width, height, square } of sheets) {
      const named = texts.filter((t) => / edge of the paper/.test(t.text));
      expect(named).toHaveLength(2);
      for (const t of named) {
        expect(holds(square, t.from) && holds(square, t.to)).toBe(true);
        const runs = t.isUpright ? width : height;
        expect(t.text).toBe(`◂ ${runs === Math.min(width, height) ? 'short' : 'long'} edge of the paper ▸`);
      }
      expect(named.map((t) => t.isUpright).sort()).toEqual([false, true]);
    }
  });

  it('is what it says, once this printer has printed it', () => {
    expect(wordsOf(cover)).toContain('2 in to its sides, 50 mm to the ticks');
    for (const { texts, lines, square, width, height } of sheets) {
      const [across, up] = width < height ? [error.short, error.long] : [error.long, error.short];
      expect(wide(square) * across).toBeCloseTo(2 * 25.4, 3);
      expect(high(square) * up).toBeCloseTo(2 * 25.4, 3);
      const inside = texts.filter((t) => holds(square, t.from));
      const [side, ...more] = inside.filter((t) => t.text === '2 in');
      expect(more).toEqual([]);
      expect(square.maxX - side!.to.x).toBeLessThan(2);
      expect(square.maxY - side!.to.y).toBeLessThan(4);
      const second = inside.filter((t) => /^\d+ mm$/.test(t.text));
      expect(second.map((t) => t.isUpright).sort()).toEqual([false, true]);
      for (const t of second) {
        const end = t.isUpright ? t.to.x - square.minX : t.to.y - square.minY;
        const tick = Number.parseInt(t.text, 10) / (t.isUpright ? across : up);
        expect(end).toBeGreaterThan(tick - 2);
        expect(end).toBeLessThan(tick);
        const drawn = lines.some((l) => {
          const base = t.isUpright ? l.from.y - square.minY : l.from.x - square.minX;
          const along = t.isUpright ? l.from.x - square.minX : l.from.y - square.minY;
          return Math.abs(base) < 0.002 && Math.abs(along - tick) < 0.002;
        });
        expect(drawn).toBe(true);
      }
    }
  });

  it('says on the cover what to do with what is measured, which on a corrected print is another thing', () => {
    const words = wordsOf(cover);
    const isFirst = words.includes('each sheet then says by how much it was corrected');
    expect(isFirst).toBe(!measured);
    expect(words.includes('This print is corrected already: measure one that is not')).toBe(
      Boolean(measured),
    );
  });

  it('says by how much each edge was corrected, as the square was', () => {
    for (const sheet of sheets) {
      const words = wordsOf(sheet);
      if (!measured) {
        expect(words).not.toMatch(/correct/i);
        continue;
      }
      const told = /Corrected for your printer: short edge × (\d\.\d{4}), long edge × (\d\.\d{4})\./.exec(
        words,
      )!;
      const { square, width, height } = sheet;
      const [short, long] = width < height ? [wide(square), high(square)] : [high(square), wide(square)];
      expect(Number(told[1])).toBeCloseTo(short / 50.8, 3.9);
      expect(Number(told[2])).toBeCloseTo(long / 50.8, 3.9);
    }
  });
});
