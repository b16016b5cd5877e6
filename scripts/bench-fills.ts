/**
 * How long fills take, and how the time grows: every fill in a swag about 8 in wide, in the background of the whole
 * raffle border (in processor time, with lines and arcs a second), and the fills of many elements in squares of growing
 * size. Prints the best and the median of five runs, and for the growth the time over n·log n, which
 * must not rise.
 */

import { readFileSync } from 'node:fs';
import { fillOpenArea } from '../src/drawing/index.ts';
import { FILLS } from '../src/fill/index.ts';
import { polyline, type Region, regionOf } from '../src/geometry/index.ts';
import { readPlan } from '../src/plan/index.ts';
import { designFromPlan, openAreaOf } from '../src/swag/index.ts';
import { readTemplate } from '../src/template/index.ts';
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

/** The raffle border's background. */
const raffle = () => {
  const reading = readPlan(readFileSync('samples/raffle-border.yaml', 'utf8'), 'raffle-border.yaml');
  if (!reading.ok) throw new Error('the sample is not read');
  const { plan } = reading.parts[0];
  const profiles = plan.templates.map((name) => {
    const read = readTemplate(readFileSync(`profiles/${name}.yaml`, 'utf8'), name);
    if (!read.ok) throw new Error(`${name} is not read`);
    return read.template;
  });
  const made = designFromPlan(plan, profiles);
  if (!made.ok) throw new Error('nothing fits the sample');
  return openAreaOf(made.design, plan.channels);
};

console.log(
  `\nbackground of the whole raffle border, ${SPACING} mm: processor time, elements, elements a second`,
);
const background = raffle();
for (const fill of FILLS.filter((f) => f.suits === 'area')) {
  const before = process.cpuUsage();
  const { paths } = fillOpenArea(fill, background, { spacing: SPACING });
  const { user, system } = process.cpuUsage(before);
  const seconds = (user + system) / 1e6;
  const elements = paths.reduce((sum, p) => sum + p.pieces.length, 0);
  console.log(
    `${fill.name.padEnd(11)} ${seconds.toFixed(2)} s  ${elements} in ${paths.length} paths  ${Math.round(elements / seconds)}`,
  );
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
