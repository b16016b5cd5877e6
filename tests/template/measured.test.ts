/** Edges from measured points: handbook arcs, fairness, wrong points and too few of them. */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { flatten, nearnessOf, type Path } from '../../src/geometry/index.ts';
import { readTemplate, writeTemplate } from '../../src/template/index.ts';
import { edgeFromPoints, MEASURED_TOLERANCE } from '../../src/template/measured.ts';

const file = (points: string, more = ''): string => `units: in\nedge:\n  points: ${points}\n${more}`;

const problems = (text: string): string[] => {
  const reading = readTemplate(text, 't.yaml');
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

const edgeOf = (text: string): Path => {
  const reading = readTemplate(text, 't.yaml');
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  return reading.template.edge;
};

const radiusIn = (text: string): number => {
  const [piece, ...more] = edgeOf(text).pieces;
  if (piece?.kind !== 'arc' || more.length > 0) throw new Error('not one arc');
  return piece.radius / 25.4;
};

describe('an arc as a ruler measures it', () => {
  // Machinery's Handbook, 31st ed. (2020), p. 79: chord 16 and height 6 are a radius of 8 1/3; by the formula of
  // p. 83 chord 10 and height 1 are 13, chord 12 and height 3 are 7 1/2, exactly.
  // MatheAss, "Circular Sections": chord 21 and height 6 are 12.1875.
  test.each([
    [16, 6, 25 / 3],
    [10, 1, 13],
    [12, 3, 7.5],
    [21, 6, 12.1875],
  ])('chord %s and rise %s are a radius of %s, said in any of three ways', (chord, rise, radius) => {
    const half = chord / 2;
    expect(radiusIn(file(`[[0, 0], [${half}, ${rise}], [${chord}, 0]]`))).toBeCloseTo(radius, 9);
    const steps = (arc: string): string =>
      `units: in\nedge:\n  - start: [0, 0]\n  - arc: { to: [${chord}, 0], ${arc} }\n`;
    expect(radiusIn(steps(`rise: ${rise}`))).toBeCloseTo(radius, 9);
    expect(radiusIn(steps(`through: [${half}, ${rise}]`))).toBeCloseTo(radius, 9);
  });
});

/** Points on a circle of 40 mm, over 2 radians. */
const onCircle = (count: number) =>
  Array.from({ length: count }, (_, i) => {
    const a = Math.PI - (2 * i) / (count - 1);
    return { at: { x: 40 * Math.cos(a), y: 40 * Math.sin(a) }, corner: false };
  });

describe('a fair curve', () => {
  test('through points of a circle is the circle', () => {
    const made = edgeFromPoints(onCircle(9));
    if (!made.ok) throw new Error('refused');
    for (const p of flatten(made.edge.path, 0.001))
      expect(Math.abs(Math.hypot(p.x, p.y) - 40)).toBeLessThan(0.01);
    expect(made.edge.path.pieces.length).toBeLessThan(4);
  });

  test('stays within its tolerance of every point, and takes the grid out of them', () => {
    for (const tolerance of [0.3, MEASURED_TOLERANCE, 0.8]) {
      // Read off in 1/32 in.
      const grid = 25.4 / 32;
      const rounded = onCircle(12).map((p) => ({
        ...p,
        at: { x: Math.round(p.at.x / grid) * grid, y: Math.round(p.at.y / grid) * grid },
      }));
      const made = edgeFromPoints(rounded, tolerance);
      if (!made.ok) throw new Error(made.faults.map((f) => f.message).join());
      const near = nearnessOf(made.edge.path.pieces);
      for (const p of rounded) expect(near.distance(p.at)).toBeLessThanOrEqual(tolerance);
    }
  });

  test('has its corners where they are flagged', () => {
    const reading = readTemplate(file('[[0, 0], [1, 3/4], [2, 1, corner], [3, 1 3/4], [4, 2]]'), 't.yaml');
    if (!reading.ok) throw new Error('refused');
    expect(reading.template.breaks.map((b) => [b.kind, b.point.x / 25.4, b.point.y / 25.4])).toEqual([
      ['notch', 2, 1],
    ]);
  });
});

describe('what is wrong with points is said where it is', () => {
  test('a point that makes the curve jump', () => {
    const points = onCircle(12);
    points[4] = { ...points[4]!, at: { x: points[4]!.at.x, y: points[4]!.at.y + 3 } };
    const made = edgeFromPoints(points);
    if (made.ok) throw new Error('not seen');
    expect(made.faults.length).toBe(1);
    expect(made.faults[0]).toMatchObject({
      step: 4,
      message: expect.stringMatching(
        /^the curve through the other points misses this one by [23](\.\d)? mm$/,
      ),
    });
  });

  test('a wrong point is quoted, and its miss is said, in the units of the file', () => {
    // A sine of 9 in by 1 in with its fourth point an inch too high: 2 1/2 written for 1 1/2.
    const points =
      '[[0, 0], [1, 11/16], [2, 1 1/4], [3, 2 1/2], [4, 1 1/4], [5, 11/16], [6, 0], [7, -11/16], [8, -1 1/4], [9, -1 1/2]]';
    const [line] = problems(file(points));
    expect(line).toMatch(
      /edge\.points\.4: the curve through the other points misses this one by (1|1 1\/\d+|\d+\/\d+) in; found \[3 in, 2 1\/2 in\];/,
    );
  });

  test.each([
    [
      '[[0, 0], [1, 1]]',
      [
        't.yaml:2:1: edge: too few points; expected at least three; a curve wants one every inch, and more where it bends; a straight edge is a line: start, then line',
      ],
    ],
    [
      '[[0, 0], [0, 0], [1, 1]]',
      [
        't.yaml:3:20: edge.points.2: this point lies on the one before; expected points at least 0.5 mm apart',
      ],
    ],
    [
      '[[0, 0], [1, 1], [2, 0], [3, 0]]',
      [
        't.yaml:3:20: edge.points.2: too few points to tell how the edge bends; found a turn of 90° at [1 in, 1 in]; expected at most 50°; measure one more on each side of it; if the edge has a corner here write [x, y, corner]',
      ],
    ],
    [
      '[[0, 0], [1, 1, cornre], [2, 0]]',
      [
        't.yaml:3:20: edge.points.2: this does not fit here; found a list of 3; expected a point such as [3 1/4, 1/8], or [3 1/4, 1/8, corner]',
      ],
    ],
    [
      '7',
      [
        't.yaml:3:11: edge.points: this does not fit here; found 7; expected a list of points such as [[0, 0], [1, 3/4], [2, 1, corner]]',
      ],
    ],
  ])('%s', (points, lines) => {
    const said = problems(file(points));
    expect(said.map((l) => l.replace(/^t\.yaml:\d+:\d+/, ''))).toEqual(
      lines.map((l) => l.replace(/^t\.yaml:\d+:\d+/, '')),
    );
    for (const line of said) expect(line).toMatch(/^t\.yaml:\d+:\d+: /);
  });

  test('too few points in a bend, with where to measure', () => {
    // A quarter circle of 60 mm and half a turn of 20 mm, seen at three points each.
    const a = [0, 0.75, 1.5].map((t) => ({ x: 60 * Math.sin(t), y: 60 - 60 * Math.cos(t) }));
    const b = [0.6, 1.2, 1.8].map((t) => ({ x: 39.9 + 20 * Math.cos(t), y: 55.8 + 20 * Math.sin(t) }));
    const made = edgeFromPoints([...a, ...b].map((at) => ({ at, corner: false })));
    if (made.ok) throw new Error('taken');
    expect(made.faults[0]?.message).toBe('too few points to tell how the edge bends');
    expect(made.faults[0]?.hint).toMatch(/^measure one more /);
  });

  test('in two bends apart, each is told, and two points that ask for one between them tell it once', () => {
    // Two equal waves with a straight way between them: what is unsure in one is unsure in the other.
    const wave = [0, 12, 16, 12, 0].map((y, i) => ({ x: 12 * i, y }));
    const flat = Array.from({ length: 8 }, (_, i) => ({ x: 48 + 12 * (i + 1), y: 0 }));
    const again = wave.slice(1).map(({ x, y }) => ({ x: x + 144, y }));
    const made = edgeFromPoints([...wave, ...flat, ...again].map((at) => ({ at, corner: false })));
    if (made.ok) throw new Error('taken');
    const steps = made.faults.map((f) => f.step ?? -1);
    expect(steps.some((step) => step < 6)).toBe(true);
    expect(steps.some((step) => step > 10)).toBe(true);
    const gaps = made.faults.map((f) => (f.step ?? 0) + (f.hint?.includes('after') ? 0.5 : -0.5));
    expect(new Set(gaps).size).toBe(gaps.length);
  });
});

describe('what is found and what is expected are told apart', () => {
  test('of points that leave the curve in doubt by a hair more than they may', () => {
    const told: string[] = [];
    // A wave with four points to its half, higher and higher: the doubt grows from nothing through the limit.
    for (let rise = 0.4; rise < 0.8; rise += 0.005) {
      const points = Array.from({ length: 13 }, (_, i) => [
        i / 2,
        (rise * Math.sin((i * Math.PI) / 4)).toFixed(4),
      ]);
      told.push(...problems(file(JSON.stringify(points))).filter((line) => line.includes('a doubt of')));
    }
    const figures = told.map((line) => [
      /a doubt of (.+?) at \[/.exec(line)?.[1],
      /at most (.+?);/.exec(line)?.[1],
    ]);
    expect(figures).toContainEqual(['a little more than 1/64 in', '1/64 in']);
    for (const [found, most] of figures) expect(found).not.toBe(most);
  });

  test('of an edge a hair too long', () => {
    const text = 'units: in\nedge:\n  - start: [0, 0]\n  - line: { to: [120.02, 0] }\n';
    expect(problems(text)[0]).toMatch(/too long; found 120 1\/32 in; expected at most 120 in in all$/);
  });

  test('of a turn half a degree too sharp', () => {
    // Three points mean an arc up to a turn of 100°: the chord's slope turns from 50.2° to -50.2°.
    const up = Math.tan((50.2 * Math.PI) / 180);
    expect(problems(file(`[[0, 0], [2, ${2 * up}], [4, 0]]`))[0]).toMatch(
      /found a turn of 100\.4° at .*; expected at most 100°/,
    );
  });
});

test('a template that is written is read as it was', () => {
  const reading = readTemplate(
    'units: mm\nedge:\n  - start: [0, 0]\n  - arc: { to: [40, 10], rise: 8 }\n  - line: { to: [70, 10] }\n  - arc: { to: [90, 0], rise: -3 }\n',
    't.yaml',
  );
  if (!reading.ok) throw new Error('refused');
  const { edge } = reading.template;
  for (const units of ['mm', 'in'] as const) {
    const text = writeTemplate({
      title: 'Yes',
      units,
      comments: ['Invented.'],
      edge,
      breaks: [{ at: 60, name: 'mark 1' }],
      decimals: 6,
    });
    const again = readTemplate(text, 'again.yaml');
    if (!again.ok) throw new Error(text);
    expect(again.template.title).toBe('Yes');
    expect(again.template.breaks.filter((b) => b.name === 'mark 1').map((b) => b.at)[0]).toBeCloseTo(60, 4);
    const near = nearnessOf(edge.pieces);
    for (const p of flatten(again.template.edge, 0.001)) expect(near.distance(p)).toBeLessThan(1e-4);
    // The line in which the mark stands is cut in two.
    expect(again.template.edge.pieces.length).toBe(edge.pieces.length + 1);
  }
});
