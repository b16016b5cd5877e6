/** A stretch of a traced outline that is set right by hand, on shapes whose true outline is known in closed form. */

import { describe, expect, test } from 'vitest';
import {
  closedPath,
  line,
  nearnessOf,
  openPath,
  type Path,
  type Point,
  pathLength,
} from '../../src/geometry/index.ts';
import { templateFromTrace } from '../../src/jobs/traced-template.ts';
import { mendOutline, type Outline, type Traced } from '../../src/trace/index.ts';
import { cornersOf } from '../../src/trace/working-edge.ts';
import { apart } from './printed.ts';

const ring = (points: readonly Point[]): Path =>
  closedPath(points.map((p, i) => line(p, points[(i + 1) % points.length]!)));

const outlineOf = (path: Path): Outline => ({
  path,
  corners: cornersOf(path),
  deviation: 0,
  farthest: undefined,
  roughness: 0,
});

/** 150 mm by 30 mm, clockwise from the lower left corner; on its upper side a smudge 4 mm wide and 2 mm high. */
const SMUDGED = ring([
  { x: 0, y: 0 },
  { x: 0, y: 30 },
  { x: 60, y: 30 },
  { x: 60, y: 32 },
  { x: 64, y: 32 },
  { x: 64, y: 30 },
  { x: 150, y: 30 },
  { x: 150, y: 0 },
]);
const CLEAN = ring([
  { x: 0, y: 0 },
  { x: 0, y: 30 },
  { x: 150, y: 30 },
  { x: 150, y: 0 },
]);

const mended = (path: Path, from: Point, to: Point, through: readonly Point[] = []): Outline => {
  const made = mendOutline(outlineOf(path), [{ from, to, through }]);
  if (!made.ok) throw new Error(made.problem.message);
  return made.outline;
};

describe('a stretch that is made straight', () => {
  test.each([
    ['left to right', { x: 57, y: 31 }, { x: 70, y: 29.5 }],
    ['right to left', { x: 70, y: 29.5 }, { x: 57, y: 31 }],
  ] as const)('is the line between its ends, said from %s, and leaves no corner', (_, from, to) => {
    const outline = mended(SMUDGED, from, to);
    expect(apart(outline.path, CLEAN)).toBeLessThan(1e-6);
    expect(pathLength(outline.path)).toBeCloseTo(360, 6);
    expect(outline.corners).toHaveLength(4);
    for (const c of outline.corners) expect(nearnessOf(CLEAN.pieces).distance(c.point)).toBeLessThan(1e-6);
  });

  test('goes over the place where the outline begins as over any other', () => {
    const begun = closedPath([...SMUDGED.pieces.slice(3), ...SMUDGED.pieces.slice(0, 3)]);
    const outline = mended(begun, { x: 57, y: 30 }, { x: 70, y: 30 });
    expect(apart(outline.path, CLEAN)).toBeLessThan(1e-6);
    expect(outline.corners).toHaveLength(4);
  });

  test('of an edge that is open is what lies between its places, however long', () => {
    const open = openPath(SMUDGED.pieces.slice(1, 6));
    const made = mendOutline(outlineOf(open), [
      { from: { x: 140, y: 30 }, to: { x: 10, y: 30 }, through: [] },
    ]);
    if (!made.ok) throw new Error(made.problem.message);
    const { path, corners } = made.outline;
    expect(path.closed).toBe(false);
    // From (0, 30) to (150, 30), and no smudge.
    expect([path.pieces[0]!.from, path.pieces.at(-1)!.to]).toEqual([
      { x: 0, y: 30 },
      { x: 150, y: 30 },
    ]);
    expect(pathLength(path)).toBeCloseTo(150, 9);
    expect(corners).toHaveLength(0);
  });

  test('that would be a place is refused', () => {
    const made = mendOutline(outlineOf(CLEAN), [
      { from: { x: 20, y: 30 }, to: { x: 20.2, y: 30 }, through: [] },
    ]);
    expect(made).toMatchObject({ ok: false, problem: { code: 'no-stretch' } });
  });
});

describe('a stretch that is taken again', () => {
  test('is the arc of a circle through places on one, whatever order they are tapped in', () => {
    // A half circle of 40 mm on the upper side, which a shadow has cut off: the outline has its diameter.
    const at = (degrees: number): Point => ({
      x: 75 - 40 * Math.cos((degrees * Math.PI) / 180),
      y: 30 + 40 * Math.sin((degrees * Math.PI) / 180),
    });
    const taps = [90, 20, 160, 55, 125, 38, 142, 8, 172, 72, 108].map(at);
    const outline = mended(CLEAN, { x: 35, y: 30 }, { x: 115, y: 30 }, taps);
    const near = nearnessOf(outline.path.pieces);
    for (let d = 0; d <= 180; d += 3) expect(near.distance(at(d))).toBeLessThan(0.15);
    expect(outline.corners).toHaveLength(6);
  });

  test('through one place is the arc through three', () => {
    const outline = mended(CLEAN, { x: 35, y: 30 }, { x: 115, y: 30 }, [{ x: 75, y: 50 }]);
    // Radius by chord and rise: (40² + 20²) / (2 · 20) = 50.
    const near = nearnessOf(outline.path.pieces);
    const centre = { x: 75, y: 0 };
    for (const x of [40, 60, 90, 110])
      expect(near.distance({ x, y: centre.y + Math.sqrt(50 ** 2 - (x - 75) ** 2) })).toBeLessThan(1e-6);
  });
});

describe('what she says of a traced template', () => {
  const traced: Traced = {
    kind: 'solid',
    leftOut: [],
    lineWidth: undefined,
    side: undefined,
    touched: undefined,
    source: 'scan',
    byMarks: false,
    capture: undefined,
    lowered: 0,
    hasBody: false,
    isLight: false,
    lineArt: false,
    outline: outlineOf(SMUDGED),
    dots: [],
    pixelsPerMm: 10,
    toPixels: (p) => ({ x: 10 * p.x, y: -10 * p.y }),
    toMm: (p) => ({ x: p.x / 10, y: -p.y / 10 }),
  };
  const wants = {
    picture: 'scan.png',
    fileName: 'scan.yaml',
    title: 'Corbel',
    units: 'mm',
    choice: {
      heel: { kind: 'point', point: { x: 0, y: 30 } },
      crown: { kind: 'point', point: { x: 150, y: 30 } },
      foot: 'left',
    },
  } as const;
  const said = {
    mends: [{ from: { x: 57, y: 30 }, to: { x: 70, y: 30 }, through: [] }],
    breaks: [
      { at: { x: 100, y: 30.4 }, name: 'shoulder' },
      { at: { x: 75, y: 0 }, name: 'on the back' },
    ],
    thickness: 6.35,
    across: [
      { name: 'A', at: 10 },
      { name: 'B', at: { x: 25, y: 12 } },
    ],
    along: [{ x: 75, y: 24 }, 12],
  };

  test('stands in its file: straight stretch, breaks, thickness and etched lines', () => {
    const made = templateFromTrace(traced, { ...wants, said });
    if (!made.ok) throw new Error(made.problem.message);
    const { template } = made;
    expect(template.edge.pieces.length).toBeLessThanOrEqual(4);
    expect(pathLength(template.edge)).toBeCloseTo(150, 2);
    expect(template.thickness).toBeCloseTo(6.35, 6);
    expect(template.breaks).toHaveLength(1);
    expect(template.breaks[0]).toMatchObject({ kind: 'mark', name: 'shoulder' });
    expect(template.breaks[0]!.at).toBeCloseTo(100, 2);
    expect(template.alignment.map((a) => [a.name, Number(a.at.toFixed(2))])).toEqual([
      ['A', 10],
      ['B', 25],
    ]);
    expect(template.channelLines.map((mm) => Number(mm.toFixed(2)))).toEqual([6, 12]);
    expect(made.text).toContain('but for 1 stretch set right by hand');
    expect(made.text).not.toContain('Say the thickness');
  });

  test('a name at a corner names the corner, and no break is added beside it', () => {
    const made = templateFromTrace(traced, {
      ...wants,
      said: { breaks: [{ at: { x: 61, y: 30.8 }, name: 'step' }] },
    });
    if (!made.ok) throw new Error(made.problem.message);
    expect(made.template.breaks.map((b) => [b.kind, b.name])).toEqual([
      ['notch', 'step'],
      ['corner', undefined],
      ['corner', undefined],
      ['notch', undefined],
    ]);
  });

  test('that is no such line is said as that, and not as a fault of the outline', () => {
    const made = templateFromTrace(traced, { ...wants, said: { across: [{ name: 'A', at: 5000 }] } });
    expect(made.ok).toBe(false);
    if (made.ok) return;
    expect(made.problem.code).not.toBe('no-working-edge');
    expect(made.found).toBeDefined();
  });

  test('lies level as she says: by its long side, by its ends, or as in the picture', () => {
    const slanted = ring([
      { x: 0, y: 0 },
      { x: 0, y: 20 },
      { x: 75, y: 32 },
      { x: 150, y: 50 },
      { x: 150, y: 15 },
    ]);
    const rise = (level: 'back' | 'ends' | 'picture'): number => {
      const made = templateFromTrace(
        { ...traced, outline: outlineOf(slanted) },
        {
          ...wants,
          choice: {
            heel: { kind: 'point', point: { x: 0, y: 20 } },
            crown: { kind: 'point', point: { x: 150, y: 50 } },
            foot: 'left',
            level,
          },
        },
      );
      if (!made.ok) throw new Error(made.problem.message);
      return made.template.edge.pieces.at(-1)!.to.y;
    };
    expect(rise('picture')).toBeCloseTo(30, 2);
    expect(rise('ends')).toBeCloseTo(0, 2);
    // The back rises by 15 in 150, and the ends by 30 in 150.
    const [back, ends] = [Math.atan2(15, 150), Math.atan2(30, 150)];
    expect(rise('back')).toBeCloseTo(Math.hypot(150, 30) * Math.sin(ends - back), 2);
  });
});
