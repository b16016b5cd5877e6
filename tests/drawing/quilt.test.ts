import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  type Drawing,
  drawPlan,
  drawQuilt,
  type Facts,
  type QuiltPart,
  scopeOf,
} from '../../src/drawing/index.ts';
import {
  type Box,
  boxHeight,
  boxWidth,
  EMPTY_BOX,
  joinBoxes,
  pathBox,
  pathLength,
} from '../../src/geometry/index.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';
import { designFromPlan } from '../../src/swag/index.ts';
import { profile } from '../swag/fit-helpers.ts';

const INCH = 25.4;

const drawn = (plan: Plan): QuiltPart => {
  const made = designFromPlan(plan, plan.templates.map(profile));
  if (!made.ok || !plan.part) throw new Error(JSON.stringify(made));
  const scoped = scopeOf(made.design, 'all');
  if (!scoped.ok) throw new Error('all');
  return {
    part: plan.part,
    drawing: drawPlan(made.design, plan, scoped.scope, { withFills: false }).drawing,
  };
};

const partsOf = (text: string): readonly QuiltPart[] => {
  const reading = readPlan(text, 'quilt.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.parts.map(({ plan }) => drawn(plan));
};

const says = (facts: Facts = {}, wanted: Facts): boolean =>
  Object.entries(wanted).every(([key, value]) => facts[key] === value);

const boxOf = (drawing: Drawing, wanted: Facts): Box => {
  let box = EMPTY_BOX;
  for (const layer of ['border', 'stitch'] as const)
    for (const item of drawing.layers[layer])
      if (item.kind === 'path' && says(item.facts, wanted)) box = joinBoxes(box, pathBox(item.path));
  return box;
};

const SAMPLE = readFileSync('samples/lathe-street-quilt.yaml', 'utf8');
const parts = partsOf(SAMPLE);
const quilt = drawQuilt('quilt', parts);

test('an inner border lies in the outer one, and both round the middle', () => {
  const outer = boxOf(quilt, { part: 'outer border', line: 'far seam' });
  const inner = boxOf(quilt, { part: 'outer border', line: 'inner seam' });
  const within = boxOf(quilt, { part: 'inner border', line: 'far seam' });
  // The longer of opposite sides and twice the width: 45 1/8 + 12 by 45 + 12 in.
  expect(boxWidth(outer)).toBeCloseTo(57.125 * INCH, 6);
  expect(boxHeight(outer)).toBeCloseTo(57 * INCH, 6);
  for (const key of ['minX', 'minY', 'maxX', 'maxY'] as const) {
    expect(within[key]).toBeCloseTo(inner[key], 6);
    expect(outer[key] * (key.startsWith('min') ? -1 : 1)).toBeGreaterThan(0);
  }
  expect(outer.minX + outer.maxX).toBeCloseTo(0, 6);
  expect(outer.minY + outer.maxY).toBeCloseTo(0, 6);
});

test('a block lies where its place says, and so does each copy', () => {
  const places = [
    [-12, 12],
    [12, 12],
    [12, -12],
    [-12, -12],
  ] as const;
  places.forEach(([x, y], i) => {
    const block = boxOf(quilt, { part: 'corner blocks', copy: `${i + 1}`, line: 'block' });
    expect(boxWidth(block)).toBeCloseTo(6 * INCH, 6);
    expect((block.minX + block.maxX) / 2).toBeCloseTo(x * INCH, 6);
    expect((block.minY + block.maxY) / 2).toBeCloseTo(y * INCH, 6);
  });
});

test('a round frame lies round the middle, and holds to its limit', () => {
  const wreath = boxOf(quilt, { part: 'wreath' });
  expect(Math.max(wreath.maxX, -wreath.minX, wreath.maxY, -wreath.minY)).toBeCloseTo(7.5 * INCH, 6);
});

test('a part that is turned is turned about its own middle, counterclockwise', () => {
  const strips = partsOf(`template: finial
parts:
  sash: { at: [10, 20], turn: 90, layout: { strip: { length: 40, width: 4 } } }
`);
  const turned = drawQuilt('quilt', strips);
  const box = boxOf(turned, { line: 'inner seam' });
  // The seam that the swags leave from lies below a strip, and so on the right of one that is turned upright.
  expect(box.minX).toBeCloseTo(12 * INCH, 6);
  expect(box.maxX).toBeCloseTo(12 * INCH, 6);
  expect([box.minY, box.maxY].map((y) => y / INCH)).toEqual([expect.closeTo(0, 6), expect.closeTo(40, 6)]);
});

test('no word stands on its head, however its part is turned', () => {
  for (const turn of [0, 90, 135, 180, 225, 270, -90, -180]) {
    const strips = partsOf(
      `template: finial\nparts: { sash: { turn: ${turn}, layout: { strip: { length: 40, width: 4 } } } }`,
    );
    const angles = drawQuilt('quilt', strips).layers.marks.flatMap((item) =>
      item.kind === 'text' ? [item.angle] : [],
    );
    expect(angles.length).toBeGreaterThan(3);
    for (const angle of angles) expect(Math.abs(angle)).toBeLessThanOrEqual(Math.PI / 2 + 1e-6);
  }
});

test('nothing is lost or stretched: each part has as much stitching as by itself, a copy each', () => {
  const stitched = (drawing: Drawing, part?: string): number =>
    drawing.layers.stitch.reduce(
      (sum, item) =>
        item.kind === 'path' && says(item.facts, part === undefined ? {} : { part })
          ? sum + pathLength(item.path)
          : sum,
      0,
    );
  for (const { part, drawing } of parts)
    expect(stitched(quilt, part.name)).toBeCloseTo(part.places.length * stitched(drawing), 4);
});
