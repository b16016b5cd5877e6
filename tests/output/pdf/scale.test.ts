import { beforeAll, describe, expect, it } from 'vitest';
import { writeSheets } from '../../../src/output/pdf/index.ts';
import {
  type LayOutOptions,
  layOut,
  type Orientation,
  type PaperId,
  type SheetPlan,
} from '../../../src/pagination/index.ts';
import { swagStrip } from '../../pagination/sample-drawings.ts';
import {
  openPages,
  type Picture,
  POINT,
  type Raw,
  rawPages,
  renderPage,
  seenLine,
  WORDS,
  walkPaths,
} from './read-back.ts';

/** The lengths (mm) that a quilter would measure on one sheet, by their names. */
type Lengths = Readonly<Record<string, number>>;

const TRUE: Lengths = {
  'square across': 50.8,
  'square up': 50.8,
  'square to tick across': 50,
  'square to tick up': 50,
  '6 in across': 152.4,
  '6 in up': 152.4,
  '150 mm across': 150,
  '150 mm up': 150,
};

/** Level 1: the numbers in the content streams of the forms. Forms are only ever moved, never scaled. */
const inBytes = (raw: Raw): Lengths => {
  for (const [cm] of raw.content.matchAll(/\S+ \S+ \S+ \S+ \S+ \S+ cm/g)) expect(cm).toMatch(/^1 0 0 1 /);
  const segments = (content: string): number[][] =>
    [...content.matchAll(/(\S+) (\S+) m\n?\s?(\S+) (\S+) l(?=\n)/g)].map((m) => m.slice(1).map(Number));
  const rectangle = (content: string): number[] =>
    /(\S+) (\S+) m \S+ \S+ l (\S+) (\S+) l/.exec(content)!.slice(1).map(Number);
  const forms = Object.values(raw.forms);
  const sides = forms.map((f) => (/ m .* h\n/.test(f) ? rectangle(f) : [0, 0, 0, 0]));
  const square = sides.findIndex((r) => Math.abs(r[2]! - 144) < 5 && Math.abs(r[3]! - 144) < 5);
  const frame = sides.findIndex((r) => r[2]! > 400);
  const [x0, y0, x1, y1] = sides[square]! as [number, number, number, number];
  const ticks = segments(forms[square]!);
  const rule = segments(forms[frame]!);
  const [fx0, fy0, fx1, fy1] = sides[frame]! as [number, number, number, number];
  /** Where the tick nearest to `mm` stands on the side of the frame given by the test. */
  const tick = (axis: 0 | 1, mm: number, on: (s: number[]) => boolean): number =>
    rule
      .filter(on)
      .map((s) => s[axis]!)
      .reduce((a, b) => (Math.abs(b - mm * POINT) < Math.abs(a - mm * POINT) ? b : a));
  return {
    'square across': (x1 - x0) / POINT,
    'square up': (y1 - y0) / POINT,
    'square to tick across': (ticks.find((s) => s[0] === s[2])![0]! - x0) / POINT,
    'square to tick up': (ticks.find((s) => s[1] === s[3])![1]! - y0) / POINT,
    '6 in across': (tick(0, 152.4, (s) => s[1] === fy0) - fx0) / POINT,
    '6 in up': (tick(1, 152.4, (s) => s[0] === fx0) - fy0) / POINT,
    '150 mm across': (tick(0, 150, (s) => s[1] === fy1) - fx0) / POINT,
    '150 mm up': (tick(1, 150, (s) => s[0] === fx1) - fy0) / POINT,
  };
};

/** Level 2: where things lie once every transform has been applied. */
const byWalk = async (page: Parameters<typeof walkPaths>[0]): Promise<Lengths> => {
  const paths = await walkPaths(page);
  const extent = (points: readonly { x: number; y: number }[]) => {
    const xs = points.map((p) => p.x);
    const ys = points.map((p) => p.y);
    return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
  };
  const boxes = paths.filter((p) => !p.curves && p.points.length === 4).map((p) => extent(p.points));
  const square = boxes.find((b) => Math.abs(b.x1 - b.x0 - 144) < 5 && Math.abs(b.y1 - b.y0 - 144) < 5)!;
  // The first large rectangle is the clip; the frame has the same corners.
  const frame = boxes.find((b) => b.x1 - b.x0 > 400 && b.y1 - b.y0 > 400)!;
  const segments = paths.flatMap((p) =>
    p.points.flatMap((a, i) => (i % 2 === 0 && p.points[i + 1] ? [[a, p.points[i + 1]!] as const] : [])),
  );
  const same = (a: number, b: number): boolean => Math.abs(a - b) < 0.005;
  const near = (values: readonly number[], wanted: number): number =>
    values.reduce((a, b) => (Math.abs(b - wanted) < Math.abs(a - wanted) ? b : a));
  const across = (y: number, x: number): number =>
    near(
      segments.filter(([a, b]) => same(a.y, y) && same(a.x, b.x)).map(([a]) => a.x),
      x,
    );
  const up = (x: number, y: number): number =>
    near(
      segments.filter(([a, b]) => same(a.x, x) && same(a.y, b.y)).map(([a]) => a.y),
      y,
    );
  return {
    'square across': (square.x1 - square.x0) / POINT,
    'square up': (square.y1 - square.y0) / POINT,
    'square to tick across': (across(square.y0, square.x0 + 50 * POINT) - square.x0) / POINT,
    'square to tick up': (up(square.x0, square.y0 + 50 * POINT) - square.y0) / POINT,
    '6 in across': (across(frame.y0, frame.x0 + 432) - frame.x0) / POINT,
    '6 in up': (up(frame.x0, frame.y0 + 432) - frame.y0) / POINT,
    '150 mm across': (across(frame.y1, frame.x0 + 150 * POINT) - frame.x0) / POINT,
    '150 mm up': (up(frame.x1, frame.y0 + 150 * POINT) - frame.y0) / POINT,
  };
};

/** Level 3: what is seen at 300 dpi, by the centre of darkness of each line. */
const byEye = (picture: Picture, plan: SheetPlan, fx: number, fy: number): Lengths => {
  const { minX, minY } = plan.live;
  // The factors only say where to look; a third of a millimetre to either side is looked at.
  const check = {
    x: minX + fx * (plan.sheets[0]!.check.x - minX),
    y: minY + fy * (plan.sheets[0]!.check.y - minY),
  };
  const maxX = plan.width - plan.margins.right;
  const maxY = plan.height - plan.margins.top;
  const x = (near: number, from: number, to: number): number => seenLine(picture, 'x', near, from, to);
  const y = (near: number, from: number, to: number): number => seenLine(picture, 'y', near, from, to);
  const squareLeft = x(check.x, check.y + 12, check.y + 40);
  const squareLow = y(check.y, check.x + 12, check.x + 40);
  const left = x(minX, minY + 30, minY + 31.5);
  const low = y(minY, minX + 30, minX + 31.5);
  return {
    'square across': x(check.x + fx * 50.8, check.y + 12, check.y + 40) - squareLeft,
    'square up': y(check.y + fy * 50.8, check.x + 12, check.x + 40) - squareLow,
    'square to tick across': x(check.x + fx * 50, check.y + 0.6, check.y + 1.7) - squareLeft,
    'square to tick up': y(check.y + fy * 50, check.x + 0.6, check.x + 1.7) - squareLow,
    '6 in across': x(minX + fx * 152.4, minY + 0.6, minY + 2.2) - left,
    '6 in up': y(minY + fy * 152.4, minX + 0.6, minX + 2.2) - low,
    '150 mm across': x(minX + fx * 150, maxY - 2.2, maxY - 0.6) - left,
    '150 mm up': y(minY + fy * 150, maxX - 2.2, maxX - 0.6) - low,
  };
};

/** The largest departures from what the lengths should be, times the factors: across and up, mm. */
const worst = (found: Lengths, across = 1, up = 1): { across: number; up: number } => {
  const errors = Object.entries(TRUE).map(
    ([name, length]) =>
      [name, Math.abs(found[name]! - length * (name.endsWith('across') ? across : up))] as const,
  );
  expect(errors).toHaveLength(8);
  const most = (axis: string): number =>
    errors.reduce((m, [name, e]) => (name.endsWith(axis) && !(e <= m) ? e : m), 0);
  return { across: most('across'), up: most('up') };
};

/** 0.001 pt is 0.00035 mm; two rounded ends. At 300 dpi a pixel is 0.085 mm. */
const TOLERANCE = { bytes: 0.0004, walk: 0.0006, eye: 0.01 } as const;

const measureAll = async (options: LayOutOptions, fx = 1, fy = 1) => {
  const plan = layOut(swagStrip(1, 170, 50), options);
  const bytes = await writeSheets(swagStrip(1, 170, 50), plan, WORDS);
  const raw = (await rawPages(bytes))[1]!;
  const pages = await openPages(bytes);
  const page = await pages.getPage(2);
  return { bytes: inBytes(raw), walk: await byWalk(page), eye: byEye(await renderPage(page), plan, fx, fy) };
};

describe.each([
  ['letter', 'portrait'],
  ['letter', 'landscape'],
  ['a4', 'portrait'],
  ['a4', 'landscape'],
] as const)('the scale on %s, %s', (paper: PaperId, orientation: Orientation) => {
  // One printer: 0.998 along the short edge of the paper, 1.001 along the long one, whichever way the page is read.
  const [across, up] = orientation === 'portrait' ? [0.998, 1.001] : [1.001, 0.998];
  let right: Awaited<ReturnType<typeof measureAll>>;
  let large: Awaited<ReturnType<typeof measureAll>>;
  let uneven: Awaited<ReturnType<typeof measureAll>>;

  beforeAll(async () => {
    right = await measureAll({ paper, orientation });
    // A page that is 0.1 % too large, as if for a printer that shrinks by as much.
    large = await measureAll({ paper, orientation, measured: { short: 1 / 1.001, long: 1 / 1.001 } });
    uneven = await measureAll(
      { paper, orientation, measured: { short: 1 / 0.998, long: 1 / 1.001 } },
      across,
      up,
    );
  }, 60_000);

  it.each(['bytes', 'walk', 'eye'] as const)('is right on both axes by %s', (level) => {
    const error = worst(right[level]);
    expect(error.across).toBeLessThan(TOLERANCE[level]);
    expect(error.up).toBeLessThan(TOLERANCE[level]);
  });

  it.each(['bytes', 'walk', 'eye'] as const)(
    'a page 0.1 percent too large fails the check on both axes by %s',
    (level) => {
      const error = worst(large[level]);
      // 0.1 % of 150 mm is 0.15 mm.
      expect(error.across).toBeGreaterThan(TOLERANCE[level] * 4);
      expect(error.up).toBeGreaterThan(TOLERANCE[level] * 4);
    },
  );

  it.each(['bytes', 'walk', 'eye'] as const)('a correction acts along its own edge only, by %s', (level) => {
    const error = worst(uneven[level], across, up);
    expect(error.across).toBeLessThan(TOLERANCE[level] * 2);
    expect(error.up).toBeLessThan(TOLERANCE[level] * 2);
  });
});
