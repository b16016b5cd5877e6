/**
 * Keeps the drawings of many plans as numbers, and compares today's with what was kept: for moving code without
 * moving a line. `node scripts/bench.mjs drawings keep out/drawings.json`, and later the same with `compare`, which
 * names every plan whose lines differ by more than 1e-9 mm.
 */

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { drawPlan, type Item, LAYERS, scopeOf } from '../src/drawing/index.ts';
import type { Path } from '../src/geometry/index.ts';
import { readPlan } from '../src/plan/index.ts';
import { designFromPlan } from '../src/swag/index.ts';
import { readTemplate } from '../src/template/index.ts';

/** mm, and radians for the few angles. */
const SAME = 1e-9;

const SIDES = '{ top: 32, right: 21, bottom: 32 1/2, left: 21 1/2 }';
const border = (width: number, more: string): string =>
  `{ border: { width: ${width}, inner: ${SIDES}, margin: 1/2, ${more} } }`;

const LAYOUTS: Readonly<Record<string, string>> = {
  strip: '{ strip: { length: 40, width: 7, margin: 1/4 } }',
  turnInner: border(6, 'from: inner, corners: turn'),
  turnOuter: border(9, 'from: outer, corners: turn'),
  meetInner: border(6, 'from: inner, corners: meet'),
  meetOuter: border(7, 'from: outer, corners: meet'),
  openInner: border(6, 'from: inner, corners: open'),
  openOuter: border(6, 'from: outer, corners: open'),
  block: '{ frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 24 } }',
  ringOut: '{ frame: { count: 8, around: 9, clearance: 1/2, within: 18 } }',
  ringFree: '{ frame: { count: 6, around: 7, clearance: 1/4 } }',
  ringIn: '{ frame: { count: 8, around: 14, clearance: 1/2, within: 30, from: outer } }',
};

const SWAGS: Readonly<Record<string, string>> = {
  crown: '{ setting: crown-on-centre }',
  line: '{ setting: alignment-line }',
  flat: '{ setting: flat-on-guide }',
  outside: '{ side: outside, setting: crown-on-centre }',
  crownFirst: '{ direction: crown-first, setting: crown-on-centre }',
};

const FILLS = ['feather', 'stipple', 'crosshatch', 'echo', 'pebbles', 'lines', 'swirls'];

const plans = (): ReadonlyMap<string, string> => {
  const found = new Map<string, string>();
  for (const name of readdirSync('samples').filter((n) => n.endsWith('.yaml')))
    found.set(name, readFileSync(`samples/${name}`, 'utf8'));
  let turn = 0;
  for (const [layout, text] of Object.entries(LAYOUTS))
    for (const [swag, choices] of Object.entries(SWAGS)) {
      const fill = FILLS[turn++ % FILLS.length]!;
      const lines = [
        'template: [baluster, finial, newel]',
        `layout: ${text}`,
        `swag: ${choices}`,
        'channels: { outward: [1/4, 1/8], inward: [1/4] }',
        `fills: { swag: { kind: ${fill}, spacing: 1/2 }, background: { kind: ${FILLS[turn % FILLS.length]}, spacing: 1/2 } }`,
      ];
      found.set(`${layout} ${swag}`, lines.join('\n'));
    }
  return found;
};

const profile = (name: string) => {
  const read = readTemplate(readFileSync(`profiles/${name}.yaml`, 'utf8'), name);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.template;
};

const numbersOf = (path: Path): readonly number[] =>
  path.pieces.flatMap((p) => [
    p.from.x,
    p.from.y,
    p.to.x,
    p.to.y,
    ...(p.kind === 'arc' ? [p.center.x, p.center.y, p.radius, p.sweep] : []),
  ]);

/** What it is in words, and where it lies in numbers. */
type Kept = readonly [string, readonly number[]];

const keptItem = (layer: string, item: Item): Kept => {
  const what = [layer, item.kind, JSON.stringify(item.kind === 'text' ? item.text : (item.facts ?? {}))];
  if (item.kind === 'text') return [what.join(' '), [item.at.x, item.at.y, item.size, item.angle]];
  const paths = item.kind === 'path' ? [item.path] : item.loops;
  return [what.join(' '), paths.flatMap(numbersOf)];
};

const drawn = (name: string, text: string): readonly Kept[] => {
  const reading = readPlan(text, `${name}.yaml`);
  if (!reading.ok) throw new Error(`${name}: ${JSON.stringify(reading.problems)}`);
  const made = designFromPlan(reading.parts[0].plan, reading.parts[0].plan.templates.map(profile));
  if (!made.ok) return [[`nothing: ${made.problems.map((p) => p.message).join('; ')}`, []]];
  const scoped = scopeOf(made.design, 'all');
  if (!scoped.ok) throw new Error(`${name}: nothing to show`);
  const { drawing, messages } = drawPlan(scoped.design, reading.parts[0].plan, scoped.scope);
  return [
    ...LAYERS.flatMap((id) => drawing.layers[id].map((item) => keptItem(id, item))),
    ...messages.map((m): Kept => [`message ${m}`, []]),
  ];
};

/** Items of different words may change places within their layer; those of the same words stay in their order. */
const inOrder = (items: readonly Kept[]): readonly Kept[] =>
  items.toSorted(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));

const differences = (before: readonly Kept[], after: readonly Kept[]): readonly string[] => {
  if (before.length !== after.length) return [`${before.length} items before, ${after.length} now`];
  const [a, b] = [inOrder(before), inOrder(after)];
  return a.flatMap(([what, numbers], i): readonly string[] => {
    const [now, others] = b[i]!;
    if (now !== what) return [`“${what}” is “${now}”`];
    if (numbers.length !== others.length) return [`${what}: of other pieces`];
    const far = numbers.reduce((most, n, k) => Math.max(most, Math.abs(n - others[k]!)), 0);
    return far <= SAME ? [] : [`${what}: ${far} mm off`];
  });
};

const [, , , task, file] = process.argv;
if ((task !== 'keep' && task !== 'compare') || !file) {
  console.error('Say keep or compare, and a file, such as out/drawings.json');
  process.exit(2);
}
const now = new Map([...plans()].map(([name, text]) => [name, drawn(name, text)]));
if (task === 'keep') {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, JSON.stringify([...now]));
  console.log(`${now.size} plans kept in ${file}`);
} else {
  const before = new Map(JSON.parse(readFileSync(file, 'utf8')) as [string, Kept[]][]);
  let other = 0;
  for (const [name, kept] of before) {
    const found = differences(kept, now.get(name) ?? []);
    if (found.length === 0) continue;
    other++;
    console.log(`${name}: ${found.length} differ; ${found.slice(0, 3).join('; ')}`);
  }
  console.log(`${before.size} plans compared, ${other} differ`);
  process.exitCode = other > 0 ? 1 : 0;
}
