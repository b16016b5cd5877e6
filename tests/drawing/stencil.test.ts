/**
 * A stencil by areas: cut out of a sheet by GEOS it is one piece, its bridges are as wide as asked, every line lies in
 * its slots but for the bridges, and a slot is as large as a pen of its width sweeps (for a smooth line its length times
 * the width and a circle, by Pappus).
 */

import { describe, expect, it, test } from 'vitest';
import { drawPlan, quiltingAlone, SHEET, scopeOf, stencilled, styled } from '../../src/drawing/index.ts';
import {
  arc,
  boxesTouch,
  boxOfPoints,
  closedPath,
  flatten,
  growBox,
  openPath,
  type Path,
  pathBox,
  point,
  polyline,
} from '../../src/geometry/index.ts';
import { BLACK, drawingOf } from '../output/svg/fixture.ts';
import { partOf } from '../support/part-of.ts';
import { landOf } from './geos-land.ts';

/** How far (mm) the chords that GEOS is given lie from arcs. */
const FINE = 1e-3;

const pathsOf = ({ layers }: ReturnType<typeof quiltingAlone>): readonly Path[] =>
  [...layers.stitch, ...layers.channel].flatMap((item) => (item.kind === 'path' ? [item.path] : []));

const sheetRound = (paths: readonly Path[]) => {
  const { minX, minY, maxX, maxY } = growBox(boxOfPoints(paths.flatMap((path) => flatten(path, 0.1))), 20);
  const corners = [point(minX, minY), point(maxX, minY), point(maxX, maxY), point(minX, maxY)];
  return { corners, area: (maxX - minX) * (maxY - minY) };
};

const cutOut = async (lines: readonly Path[], slots: readonly Path[], fine = FINE) => {
  const { corners, area } = sheetRound(lines);
  const land = await landOf(
    corners,
    slots.map((path) => flatten(path, fine)),
    lines.map((path) => flatten(path, fine)),
  );
  return { ...land, slotArea: area - land.area };
};

const MEASURES = { slot: 1.5, bridge: 3, every: 50 };

const stencilOf = (drawing: ReturnType<typeof quiltingAlone>, measures = MEASURES): readonly Path[] => {
  const made = stencilled(drawing, measures);
  if (!made.ok) throw new Error(`at most ${made.widest}`);
  return pathsOf(made.drawing);
};

const PLANS = {
  'a strip with channels':
    'template: baluster\nlayout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }\nchannels: { outward: [1/4], inward: [1/4, 1/8] }\n',
  'a border whose swags turn the corners':
    'template: finial\nlayout: { border: { width: 6, inner: { top: 40, right: 44, bottom: 40, left: 44 }, margin: 1/2, corners: turn } }\nchannels: { outward: [1/4] }\n',
  'a wreath':
    'template: baluster\nlayout: { frame: { count: 8, around: 9, clearance: 1/2, within: 16 } }\nchannels: { inward: [1/4] }\n',
  'a wreath with channels on both sides':
    'template: finial\nlayout: { frame: { count: 8, around: 9, clearance: 1/2, within: 15 } }\nchannels: { outward: [1/4], inward: [1/4] }\n',
  'two rows on the same marks':
    'template: baluster\nlayout: { strip: { length: 36, width: 8, margin: 1/4 } }\nswag: { repeats: 3 }\nrows: [{ at: 0, marks: as row 1, apart: 1/2 }]\n',
} as const;

describe.each(Object.entries(PLANS))('the stencil of %s', (_, text) => {
  const { design, plan } = partOf(text);
  const scope = scopeOf(design, plan.layout.kind === 'border' ? 'corner' : 'all');
  if (!scope.ok) throw new Error('Nothing to show');
  const drawing = quiltingAlone(
    styled(drawPlan(design, plan, scope.scope, { withFills: false }).drawing, SHEET),
  );
  const lines = pathsOf(drawing);
  const slots = stencilOf(drawing);

  it('is one piece of land, with bridges as wide as asked, and leaves every line', async () => {
    const { pieces, line, lineInSlots, apart, slotArea } = await cutOut(lines, slots);
    expect(pieces).toBe(1);
    expect(slots.length).toBeGreaterThan(10);
    const boxes = slots.map((slot) => growBox(pathBox(slot), 4));
    let bridges = 0;
    for (let i = 0; i < slots.length; i++)
      for (let k = 0; k < i; k++) {
        if (!boxesTouch(boxes[i]!, boxes[k]!)) continue;
        const between = apart(i, k);
        // A line goes on from one slot to the next over a bridge; between channels 1/8 in apart there is land.
        const least = k === i - 1 ? MEASURES.bridge : Math.min(MEASURES.bridge, 25.4 / 8 - MEASURES.slot);
        expect(between).toBeGreaterThan(least - 2e-3);
        if (k === i - 1 && between < 2 * MEASURES.bridge) bridges++;
      }
    expect(bridges).toBeGreaterThan(5);
    // What is not in a slot is bridges: 3 mm each, without the round ends of the slots.
    const gaps = slots.length + lines.length;
    expect(line - lineInSlots).toBeLessThan(gaps * 1.3 * MEASURES.bridge);
    expect(lineInSlots / line).toBeGreaterThan(0.85);
    // At a bridge a slot's round end reaches half its width on along the line. Sharp points take a little away.
    const ends = slots.length - lines.filter((path) => !path.closed).length;
    const swept = (lineInSlots - ends * MEASURES.slot) * MEASURES.slot;
    expect(slotArea).toBeLessThan(swept + slots.length * (Math.PI / 4) * MEASURES.slot ** 2 + 1);
    expect(slotArea).toBeGreaterThan(0.97 * swept);
  });
});

test('a straight slot is as large as its length says, and its bridges stand evenly', async () => {
  const line = polyline([point(0, 0), point(200, 0)]);
  const slots = stencilOf(drawingOf({ stitch: [{ kind: 'path', path: line, stroke: BLACK }] }));
  // Four bridges in 200 mm, 50 mm apart: five slots.
  expect(slots.length).toBe(5);
  const { slotArea, apart, line: length, lineInSlots } = await cutOut([line], slots, FINE / 10);
  for (let i = 1; i < 5; i++) expect(apart(i, i - 1)).toBeCloseTo(3, 2);
  expect(length - lineInSlots).toBeCloseTo(4 * 3, 2);
  // Without a bridge, and without half a round end on either side of it, the line is 200 − 4 · 4.5 mm.
  expect(slotArea).toBeCloseTo((200 - 4 * 4.5) * 1.5 + 5 * Math.PI * 0.75 ** 2, 2);
});

test('what lies inside a line that comes round is held by two bridges at least', async () => {
  for (const line of [
    closedPath([arc(point(0, 0), 8, 0.3, 2 * Math.PI)]),
    polyline([point(0, 0), point(30, 0), point(30, 18), point(0, 18)], true),
  ]) {
    const slots = stencilOf(drawingOf({ stitch: [{ kind: 'path', path: line, stroke: BLACK }] }));
    expect(slots.length).toBe(2);
    const { pieces, apart } = await cutOut([line], slots);
    expect(pieces).toBe(1);
    expect(apart(0, 1)).toBeGreaterThanOrEqual(3 - 1e-3);
  }
});

test('where two lines cross, the later gives way, and no bridge is narrower for it', async () => {
  const lines = [
    polyline([point(0, 0), point(160, 0)]),
    polyline([point(40, -60), point(75, 60)]),
    openPath([arc(point(120, 0), 30, -1, 2.5)]),
  ];
  const slots = stencilOf(
    drawingOf({ stitch: lines.map((path) => ({ kind: 'path', path, stroke: BLACK })) }),
  );
  const { pieces, apart, line, lineInSlots } = await cutOut(lines, slots);
  expect(pieces).toBe(1);
  for (let i = 0; i < slots.length; i++)
    for (let k = 0; k < i; k++) expect(apart(i, k)).toBeGreaterThanOrEqual(3 - 1e-3);
  expect(lineInSlots / line).toBeGreaterThan(0.8);
});

test('a slot wider than the space between lines is refused, and how wide it may be is said', () => {
  const beside = drawingOf({
    stitch: [{ kind: 'path', path: polyline([point(0, 0), point(100, 0)]), stroke: BLACK }],
    channel: [{ kind: 'path', path: polyline([point(0, 6), point(100, 6)]), stroke: BLACK }],
  });
  // 1 mm of land is left between two slots of 5 mm.
  expect(stencilled(beside, { slot: 5, bridge: 3, every: 50 }).ok).toBe(true);
  expect(stencilled(beside, { slot: 5.1, bridge: 3, every: 50 })).toEqual({
    ok: false,
    widest: expect.closeTo(5, 6),
  });
  expect(stencilled(beside, { slot: 7, bridge: 3, every: 50 })).toEqual({
    ok: false,
    widest: expect.closeTo(5, 6),
  });
});

test('a slot that would go round what lies in it is refused', () => {
  // Nearly a whole circle of 20 mm round: between its ends, and inside it, a slot of 3 mm closes the way out.
  const horseshoe = openPath([arc(point(0, 0), 3, 0.4, 2 * Math.PI - 0.8)]);
  const drawing = drawingOf({ stitch: [{ kind: 'path', path: horseshoe, stroke: BLACK }] });
  expect(stencilled(drawing, { slot: 1, bridge: 3, every: 50 }).ok).toBe(true);
  expect(stencilled(drawing, { slot: 2.6, bridge: 3, every: 50 }).ok).toBe(false);
});
