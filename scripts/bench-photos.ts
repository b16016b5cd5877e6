/**
 * How well are photographs of the capture sheet measured? Synthetic ones by the tests' own camera: for every case what
 * its marks say and what is true. `node scripts/bench.mjs photos 64 8`: cases, and marks on the sheet.
 */

import { flatten, nearnessOf } from '../src/geometry/index.ts';
import { outlineDoubt, photoDoubt, tracePicture } from '../src/trace/index.ts';
import {
  numbers,
  type Place,
  photograph,
  pictured,
  SHEET_FIELD,
  type Shot,
  sheetWith,
} from '../tests/trace/camera.ts';

const CASES = Number(process.argv[3] ?? 64);
const MARKS = Number(process.argv[4] ?? 8);
const random = numbers(16);
const between = (a: number, b: number): number => a + (b - a) * random();

/** A heel and a crown end that are cut square, a straight back, and an edge of one wave: mm from the sheet's middle. */
const SHAPE: readonly Place[] = [
  { x: -55, y: -95 },
  { x: -55, y: 95 },
  { x: -10, y: 95 },
  ...Array.from({ length: 191 }, (_, i) => ({ x: 15 - 25 * Math.cos((i * Math.PI * 2) / 190), y: 95 - i })),
  { x: -10, y: -95 },
];

const liftOf = (kind: number): Shot['lift'] => {
  const [high, way, off] = [between(0.3, 3), between(0, Math.PI), between(-40, 40)];
  const [c, s] = [Math.cos(way), Math.sin(way)];
  if (kind === 0) return ({ x, y }) => high * (1 - ((c * x + s * y - off) / 120) ** 2);
  const [sx, sy] = [Math.sign(c), Math.sign(s)];
  return ({ x, y }) => 4 * high * Math.max(0, (sx * x + sy * y - 40) / 160) ** 2;
};

const shotOf = (i: number): Shot => {
  const away = between(300, 700);
  const million = between(2, 12);
  const height = Math.round(Math.sqrt((million * 1e6 * 4) / 3));
  const width = Math.round((height * 3) / 4);
  const cut = i % 4 === 3 ? between(0.02, 0.1) * width : 0;
  return {
    away,
    width,
    height,
    focal: (away * height) / between(380, 480),
    tilt: (between(0, 35) * Math.PI) / 180,
    axis: between(0, 2 * Math.PI),
    turn: between(-0.15, 0.15) + (i % 2) * Math.PI,
    k1: between(-0.15, 0.05),
    k2: between(-0.02, 0.02),
    aim: { x: between(-8, 8), y: between(-8, 8) },
    offCentre: { x: cut, y: -cut },
    lift: i % 3 === 2 ? liftOf(i % 2) : undefined,
  };
};

const sheet = sheetWith(MARKS, (context) => {
  context.fillStyle = '#222';
  context.beginPath();
  for (const { x, y } of SHAPE) context.lineTo(x, y);
  context.fill();
});

/** Farthest that the field's places are put from where they are, mm. */
const fieldError = (shot: Shot, toMm: (p: Place) => Place): number => {
  let most = 0;
  for (let x = -SHEET_FIELD.x; x <= SHEET_FIELD.x; x += SHEET_FIELD.x / 7)
    for (let y = -SHEET_FIELD.y; y <= SHEET_FIELD.y; y += SHEET_FIELD.y / 10) {
      const q = toMm(pictured(shot, { x, y }));
      most = Math.max(most, Math.hypot(q.x - 85 - x, q.y - 119 - y));
    }
  return most;
};

const toShape = ({ x, y }: Place): number => {
  let least = Number.POSITIVE_INFINITY;
  SHAPE.forEach((a, i) => {
    const b = SHAPE[(i + 1) % SHAPE.length]!;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.max(
      0,
      Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / Math.max(1e-12, dx * dx + dy * dy)),
    );
    least = Math.min(least, Math.hypot(x - a.x - t * dx, y - a.y - t * dy));
  });
  return least;
};

console.log('case   k1    tilt  away   Mpx paper  cut | marks  expected | field  outline deviation');
interface Row {
  readonly expected: number;
  readonly error: number;
  readonly isUnsure: boolean;
}
const rows: Row[] = [];
let refused = 0;
for (let i = 0; i < CASES; i++) {
  const shot = shotOf(i);
  const room = {
    light: between(0.5, 1),
    blur: between(0.5, 1.8),
    noise: between(2, 8),
    seed: i + 1,
  };
  const result = tracePicture(photograph(sheet, shot, room), {
    tolerance: 0.03,
    side: 'middle',
    pixelsPerMm: undefined,
    sheetScale: { x: 1, y: 1 },
  });
  const about = [
    String(i + 1).padStart(4),
    shot.k1.toFixed(3).padStart(6),
    `${((shot.tilt * 180) / Math.PI).toFixed(0)}°`.padStart(5),
    shot.away.toFixed(0).padStart(5),
    ((shot.width * shot.height) / 1e6).toFixed(1).padStart(5),
    shot.lift ? 'curls' : 'flat ',
    (shot.offCentre?.x ? 'cut' : '').padEnd(4),
  ].join(' ');
  if (!result.ok) {
    refused++;
    console.log(`${about} | ${result.problem.code}: ${result.problem.found ?? ''}`);
    continue;
  }
  const { toMm, capture, outline } = result.traced;
  const near = nearnessOf(outline.path.pieces);
  const error = Math.max(
    ...SHAPE.map(({ x, y }) => near.distance({ x: x + 85, y: y + 119 })),
    ...flatten(outline.path, 0.001).map(({ x, y }) => toShape({ x: x - 85, y: y - 119 })),
  );
  const isUnsure = photoDoubt(capture) ?? outlineDoubt(outline, (p) => p);
  rows.push({ expected: capture!.expected, error, isUnsure: isUnsure !== undefined });
  console.log(
    `${about} | ${capture!.misfit.toFixed(3)}  ${capture!.expected.toFixed(2)} ${isUnsure === undefined ? '      ' : 'unsure'} | ${fieldError(shot, toMm).toFixed(2)}  ${error.toFixed(2)}  ${outline.deviation.toFixed(2)}${error > capture!.expected ? '  more than said' : ''}`,
  );
}
const share = (a: readonly Row[], ok: (r: Row) => boolean): string => `${a.filter(ok).length} of ${a.length}`;
const sure = rows.filter((r) => !r.isUnsure);
console.log(`refused: ${refused}; within what is said: ${share(rows, (r) => r.error <= r.expected)}`);
console.log(
  `not called unsure: ${sure.length}; within 0.3 mm: ${share(sure, (r) => r.error <= 0.3)}; the greatest ${Math.max(0, ...sure.map((r) => r.error)).toFixed(2)} mm`,
);
