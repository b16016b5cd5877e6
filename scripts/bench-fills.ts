/**
 * How long fills take, and how the time grows: every fill in a swag about 8 in wide, and the fills of many elements in
 * squares of growing size. Prints the best and the median of five runs, and for the growth the time over n·log n, which
 * must not rise.
 */

import { FILLS } from '../src/fill/index.ts';
import { polyline, type Region, regionOf } from '../src/geometry/index.ts';
import { SWAG_REGIONS } from '../tests/fill/sample-regions.ts';

const SPACING = 6.35;
const RUNS = 5;

const times = (run: () => unknown): { best: number; median: number } => {
  const taken: number[] = [];
  for (let k = 0; k < RUNS; k++) {
    const start = performance.now();
    run();
    taken.push(performance.now() - start);
  }
  taken.sort((a, b) => a - b);
  return { best: taken[0]!, median: taken[Math.floor(RUNS / 2)]! };
};

console.log(`spacing ${SPACING} mm: best / median ms of ${RUNS}`);
for (const fill of FILLS) {
  const row = Object.entries(SWAG_REGIONS).map(([name, region]) => {
    const { best, median } = times(() => fill.fill(region, { spacing: SPACING, seed: 1 }));
    return `${name} ${best.toFixed(0)}/${median.toFixed(0)}`;
  });
  console.log(`${fill.name.padEnd(11)} ${row.join('  ')}`);
}

const square = (side: number): Region =>
  regionOf([
    polyline(
      [
        { x: 0, y: 0 },
        { x: side, y: 0 },
        { x: side, y: side },
        { x: 0, y: side },
      ],
      true,
    ),
  ]);

console.log('\ngrowth: n (squares of one spacing in the area), best ms, µs per n·log2(n)');
for (const name of ['stipple', 'pebbles', 'swirls', 'crosshatch', 'echo']) {
  const fill = FILLS.find((f) => f.name === name)!;
  const row = [12, 24, 48, 96].map((spacings) => {
    const region = square(spacings * SPACING);
    const { best } = times(() => fill.fill(region, { spacing: SPACING, seed: 1 }));
    const n = spacings * spacings;
    return `${n}: ${best.toFixed(0)} ms, ${((best * 1000) / (n * Math.log2(n))).toFixed(2)}`;
  });
  console.log(`${name.padEnd(11)} ${row.join('   ')}`);
}
