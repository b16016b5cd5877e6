/**
 * How fast is the fit search, and how does its time grow with templates and with counts? Prints medians of
 * repeated runs after a warm start, and the processor's own time, which other programs disturb less. Run it with
 * `npx rolldown scripts/bench-fit.ts --platform node --file /tmp/bench-fit.mjs && node /tmp/bench-fit.mjs`.
 */

import { readFileSync } from 'node:fs';
import { readPlan } from '../src/plan/index.ts';
import { type Stitching, searchFits, stitchTemplate } from '../src/swag/index.ts';
import { readTemplate } from '../src/template/index.ts';

const NAMES = ['baluster', 'finial', 'newel'];
const SIDES = '{ top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }';
const LAYOUTS = {
  'border, sides all unlike, corners meet': `border: { width: 6, inner: { top: 60, right: 72, bottom: 62, left: 70 }, margin: 1/2, corners: meet }`,
  'strip, 60 in': 'strip: { length: 60, width: 6, margin: 1/2 }',
  'border, corners turn': `border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: turn }`,
  'border, corners meet': `border: { width: 6, inner: ${SIDES}, margin: 1/2, corners: meet }`,
  'border, corners left open': `border: { width: 6, inner: ${SIDES}, margin: 1/2 }`,
  'border from outside, corners left open': `border: { width: 6, inner: ${SIDES}, margin: 1/2, from: outer }`,
};
const RUNS = 9;

const planOf = (layout: string, more = '') => {
  const reading = readPlan(`template: baluster\nlayout: { ${layout} }\n${more}`, 'bench.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.parts[0].plan;
};

const stitchings = NAMES.map((name): Stitching => {
  const template = readTemplate(readFileSync(`profiles/${name}.yaml`, 'utf8'), `${name}.yaml`);
  if (!template.ok) throw new Error(JSON.stringify(template.problems));
  const stitched = stitchTemplate(template.template, 6.35);
  if (!stitched.ok) throw new Error(JSON.stringify(stitched.fault));
  return stitched.stitching;
});

const measure = (
  label: string,
  plan: ReturnType<typeof planOf>,
  with_: readonly Stitching[],
  beyond: readonly (readonly Stitching[])[] = [],
): void => {
  const times: number[] = [];
  const busy: number[] = [];
  let found = searchFits(plan, with_, 'bind', beyond);
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now();
    const before = process.cpuUsage();
    found = searchFits(plan, with_, 'bind', beyond);
    times.push(performance.now() - start);
    const { user, system } = process.cpuUsage(before);
    busy.push((user + system) / 1000);
  }
  const [least, middle] = times.sort((a, b) => a - b).filter((_, i) => i === 0 || i === RUNS >> 1);
  const rate = Math.round((found.tried / middle!) * 1000).toLocaleString('en');
  console.log(
    `${label.padEnd(42)} ${middle!.toFixed(1).padStart(7)} ms (least ${least!.toFixed(1)}, processor ${Math.min(...busy).toFixed(1)}) ` +
      `${String(found.tried).padStart(6)} candidates, ${String(found.results.length).padStart(5)} fit, ${rate.padStart(10)} candidates a second`,
  );
};

for (let i = 0; i < 5; i++) for (const l of Object.values(LAYOUTS)) searchFits(planOf(l), stitchings);
console.log('Three templates, all settings, counts 1 to 40');
for (const [label, layout] of Object.entries(LAYOUTS)) measure(label, planOf(layout), stitchings);
console.log('\nA second row on the marks of the first, among the same templates, in a width of 8 in');
for (const at of ['0', '1'])
  for (const [label, layout] of Object.entries(LAYOUTS)) {
    const plan = planOf(layout.replace('width: 6', 'width: 8'), `rows: [{ at: ${at} }]\n`);
    measure(`${label}, at ${at}`, plan, stitchings, [stitchings]);
  }
console.log('\nMore templates (the three over again), corners turn');
for (const times of [1, 2, 4, 8])
  measure(
    `${3 * times} templates`,
    planOf(LAYOUTS['border, corners turn']),
    Array.from({ length: times }, () => stitchings).flat(),
  );
console.log('\nLonger sides, and so more counts, corners turn');
for (const side of [30, 60, 120, 240])
  measure(
    `${side} in`,
    planOf(`border: { width: 6, inner: ${side}, margin: 1/2, corners: turn }`),
    stitchings,
  );
console.log('\nAsked for, corners left open');
const WISHES = ['gap: 0', 'span: about 10, gap: 0', 'depth: at least 3', 'repeats: odd', 'use: about 3/4'];
for (const swag of ['repeats: auto', ...WISHES])
  measure(swag, planOf(LAYOUTS['border, corners left open'], `swag: { ${swag} }`), stitchings);
console.log('\nA corner of its own among the same templates, in a width of 6 in');
const CORNERED = {
  'round the corners': 'corners: turn',
  'from outside, round them': 'from: outer, corners: turn',
  'across them': 'from: outer, corners: across',
};
const OWN_WISHES = [
  'repeats: auto',
  'use: about 3/4',
  'span: about 9, depth: about 3',
  'span: about 9, gap: about 1/2',
  'repeats: odd',
];
for (const [label, more] of Object.entries(CORNERED))
  for (const swag of OWN_WISHES) {
    const layout = `border: { width: 6, inner: ${SIDES}, margin: 1/2, ${more} }`;
    const plan = planOf(layout, `swag: { ${swag} }\ncorner: { template: baluster }\n`);
    measure(`${label}; ${swag}`, plan, stitchings, [stitchings]);
  }
