/**
 * A band of our own invention, made in this file alone: the six sides of a regular hexagon, with corners of 120° at
 * which the runs meet. Search, channels, fields, marks, drawing, card and SVG take it as it is. Its measures are those
 * of regular hexagons: R/S = 1 and r/S = 0.8660 (Machinery's Handbook, 31st ed., p. 82), area 3√3/2 · S².
 */

import { describe, expect, test } from 'vitest';
import type { PathItem } from '../../src/drawing/drawing.ts';
import { drawPlan, SHEET, scopeOf, styled } from '../../src/drawing/index.ts';
import {
  distance,
  movePath,
  norm,
  type Point,
  pathEnd,
  pathStart,
  regionArea,
} from '../../src/geometry/index.ts';
import { MM_TENTH } from '../../src/length/index.ts';
import { cardOf } from '../../src/output/card/index.ts';
import { writeSvg } from '../../src/output/svg/index.ts';
import {
  alikeRepeats,
  type Design,
  designOf,
  type Field,
  type Fit,
  fitRuns,
  marksOf,
  placedPath,
  type Run,
  regionsOf,
  scoreOf,
  stitchTemplate,
  waysOf,
} from '../../src/swag/index.ts';
import { planOf, pointsAlong, profile } from './fit-helpers.ts';

const SIDE = 420;
const WIDTH = 150;
const MARGIN = 8;
const COUNT = 6;
const SIXTH = Math.PI / 3;
/** The side of the hexagon that lies `out` mm round the inner one: its apothem is as much longer. */
const sideAt = (out: number): number => SIDE + (2 * out) / Math.sqrt(3);
const APOTHEM = (SIDE * Math.sqrt(3)) / 2;
const areaOf = (side: number): number => ((3 * Math.sqrt(3)) / 2) * side ** 2;

/** From the inner seam its runs go clockwise round the centre, from the outer one counterclockwise. */
const hexagon = (from: 'inner' | 'outer'): Field => {
  const isInner = from === 'inner';
  const out = isInner ? MARGIN : WIDTH - MARGIN;
  const length = sideAt(out);
  const runs = Array.from({ length: COUNT }, (_, i): Run => {
    const angle = (isInner ? -1 : 1) * i * SIXTH;
    const away = isInner ? APOTHEM + out : -(APOTHEM + out);
    const place = {
      flip: false,
      angle,
      x: -Math.sin(angle) * away - (Math.cos(angle) * length) / 2,
      y: Math.cos(angle) * away - (Math.sin(angle) * length) / 2,
    };
    return {
      name: `side ${i + 1}`,
      length,
      seam: isInner ? SIDE : sideAt(WIDTH),
      ends: 0,
      curvature: 0,
      begins: `before ${i + 1}`,
      next: `side ${((i + 1) % COUNT) + 1}`,
      place,
      alone: place,
      drawn: length,
    };
  });
  const room = WIDTH - 2 * MARGIN;
  return {
    name: 'hexagon',
    runs,
    corners: 'meet',
    marksAt: 0,
    from,
    width: WIDTH,
    startMargin: MARGIN,
    farMargin: MARGIN,
    room,
    // Half of the turn at a corner more or less than square.
    mitre: Math.PI / 2 + (isInner ? -1 : 1) * (SIXTH / 2),
    around: { kind: 'quilt' },
    lines: [
      { role: 'seam', name: `${from} seam`, level: -MARGIN },
      { role: 'seam', name: 'far seam', level: WIDTH - MARGIN },
      { role: 'startLine', name: 'start line', level: 0 },
      { role: 'margin', name: 'margin', level: room },
    ],
    across: { from: -MARGIN, to: WIDTH - MARGIN },
    near: 0,
    far: room,
    isBounded: true,
  };
};

const PLAN = planOf(
  'units: mm\nlayout: { strip: { length: 500, width: 150 } }\nchannels: { outward: [6], inward: [5] }\nfills: { background: echo }',
);
const OUTWARD = 6;

const fitsOn = (field: Field, gap: number | 'auto'): readonly Fit[] => {
  const stitched = stitchTemplate(profile('baluster'), PLAN.foot.clearance);
  if (!stitched.ok) throw new Error('The baluster is sound');
  const counts = field.runs.map(() => ({ upTo: 12 }));
  const rules = { room: field.room - OUTWARD, gap };
  return waysOf(stitched.stitching, PLAN)
    .flatMap((way) => fitRuns(way, field, rules, counts, OUTWARD).fits)
    .toSorted((a, b) => scoreOf(a, field, OUTWARD).cost - scoreOf(b, field, OUTWARD).cost);
};

/** mm outside the inner hexagon, whose sides' normals stand a sixth of a turn apart. */
const outside = ({ x, y }: Point): number =>
  Math.max(...Array.from({ length: COUNT }, (_, i) => x * Math.sin(i * SIXTH) + y * Math.cos(i * SIXTH))) -
  APOTHEM;

const CASES = (['inner', 'outer'] as const).flatMap((from) =>
  ([0, 'auto'] as const).map((gap) => ({ from, gap })),
);

describe.each(CASES)('a hexagon from the $from seam, gap $gap', ({ from, gap }) => {
  const field = hexagon(from);
  const fits = fitsOn(field, gap);
  const best = designOf(field, fits[0]!);
  const startSide = sideAt(from === 'inner' ? MARGIN : WIDTH - MARGIN);

  test('every fit fills six runs: L = n(2h + g)', () => {
    expect(fits.length).toBeGreaterThan(3);
    for (const { sides } of fits) {
      expect(sides).toHaveLength(COUNT);
      for (const { repeats, seat } of sides)
        expect(repeats * (2 * seat.pose.halfSpan + seat.gap)).toBeCloseTo(startSide, 6);
    }
  });

  test('runs end where the next begins, as far from the centre as a side is long', () => {
    const ends = (design: Design, i: number): readonly [Point, Point] => {
      const own = design.halves.filter((h) => h.side === `side ${i + 1}`).map(placedPath);
      return [pathStart(own[0]!)!, pathStart(own.at(-1)!)!];
    };
    for (let i = 0; i < COUNT; i++) {
      const [begin, end] = ends(best, i);
      const [next] = ends(best, (i + 1) % COUNT);
      const half = best.sides[i]!.fit.seat.gap / 2;
      // Half a gap from the corner on either side, 120° apart: c² = 2·(g/2)²·(1 − cos 120°).
      expect(distance(end, next)).toBeCloseTo(half * Math.sqrt(3), 6);
      expect(distance(begin, end)).toBeCloseTo(startSide - 2 * half, 6);
      if (half === 0) expect(norm(begin)).toBeCloseTo(startSide, 6);
    }
  });

  test('all stitching and channels keep the margins', () => {
    const scoped = scopeOf(best, 'all');
    if (!scoped.ok) throw new Error('All of it');
    const { drawing } = drawPlan(best, PLAN, scoped.scope, { withFills: false });
    let seen = 0;
    for (const id of ['stitch', 'channel'] as const)
      for (const item of drawing.layers[id])
        for (const p of pointsAlong((item as PathItem).path, 2)) {
          seen++;
          expect(outside(p)).toBeGreaterThan(MARGIN - 1e-6);
          expect(outside(p)).toBeLessThan(WIDTH - MARGIN + 1e-6);
        }
    expect(seen).toBeGreaterThan(2000);
    // Seams: six sides of both hexagons, and a mitre at each corner as long as between their corners.
    const lengthOf = ({ path }: PathItem): number => distance(pathStart(path)!, pathEnd(path)!);
    const named = (wanted: string): number[] =>
      drawing.layers.border.flatMap((item) => {
        if (item.kind !== 'path') return [];
        const { line } = item.facts ?? {};
        return line === wanted ? [lengthOf(item)] : [];
      });
    const [near, far] = from === 'inner' ? [SIDE, sideAt(WIDTH)] : [sideAt(WIDTH), SIDE];
    expect(named(`${from} seam`)).toEqual(Array(COUNT).fill(expect.closeTo(near, 6)));
    expect(named('far seam')).toEqual(Array(COUNT).fill(expect.closeTo(far, 6)));
    expect(named('mitre')).toEqual(Array(COUNT).fill(expect.closeTo(sideAt(WIDTH) - SIDE, 6)));
  });

  test('what can be filled makes up the band between its margins, of wide swags and of narrow ones', () => {
    const whole = Math.abs(areaOf(sideAt(WIDTH - MARGIN)) - areaOf(sideAt(MARGIN)));
    // From outside the mitres lean over the cells, over several of these.
    const narrow = fits.toSorted((a, b) => a.sides[0]!.seat.span - b.sides[0]!.seat.span)[0]!;
    expect(narrow.sides[0]!.seat.span).toBeLessThan((WIDTH - 2 * MARGIN) / Math.tan(SIXTH));
    for (const design of [best, designOf(field, narrow)]) {
      const sum = alikeRepeats(design, design.halves)
        .map(({ cell, ends, halves }) => {
          const regions = regionsOf(cell, design, PLAN.channels, ends);
          return (regions.reduce((a, r) => a + regionArea(r.region), 0) * halves.length) / 2;
        })
        .reduce((a, b) => a + b, 0);
      expect(Math.abs(sum - whole)).toBeLessThan(1e-6 * whole);
    }
  });

  test('one sixth of a turn leads from each side to the next', () => {
    const sixth = { flip: false, angle: (from === 'inner' ? -1 : 1) * SIXTH, x: 0, y: 0 };
    const first = best.halves.filter((h) => h.side === 'side 1');
    const second = best.halves.filter((h) => h.side === 'side 2');
    first.forEach((h, i) => {
      expect(
        distance(pathEnd(movePath(placedPath(h), sixth))!, pathEnd(placedPath(second[i]!))!),
      ).toBeLessThan(1e-9);
    });
  });

  test('it is marked, written on a card and drawn as SVG', () => {
    const marks = marksOf(best, MM_TENTH);
    expect(marks.map((m) => m.side)).toEqual(field.runs.map((r) => r.name));
    for (const m of marks) expect(m.marks.at(-1)).toMatchObject({ kind: 'end', at: startSide });
    const tables = cardOf(best, PLAN, []).sections.find((s) => s.id === 'marks')!.blocks;
    expect(tables.filter((b) => b.kind === 'table')).toHaveLength(COUNT);
    const corner = scopeOf(best, 'corner before 3');
    expect(corner.ok && corner.scope.stretches.map((s) => s.side.run.name)).toEqual(['side 2', 'side 3']);
    const scoped = scopeOf(best, 'all');
    if (!scoped.ok) throw new Error('All of it');
    const { drawing, problems } = drawPlan(best, PLAN, scoped.scope);
    expect(problems).toEqual([]);
    const svg = writeSvg(styled(drawing, SHEET));
    for (const h of best.halves) expect(svg).toContain(`data-repeat="${h.repeat}"`);
  });
});
