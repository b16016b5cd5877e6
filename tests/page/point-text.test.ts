/** Points measured off a mat, as people type and paste them. */

import { describe, expect, test } from 'vitest';
import {
  MOST_POINTS,
  pointAt,
  pointsIn,
  templateOfPoints,
  withPoint,
} from '../../src/page/plan/point-text.ts';
import { readTemplate } from '../../src/template/index.ts';

const places = (text: string, units: 'in' | 'cm' | 'mm' = 'in') =>
  pointsIn(text, units).points.map((p) => [p.x, p.y, p.isCorner]);

describe('a point', () => {
  // 3 1/4 in = 82.55 mm, 1/8 in = 3.175 mm: an inch is 25.4 mm.
  test.each([
    ['3 1/4, 1/8'],
    ['3 1/4; 1/8'],
    ['3 1/4\t1/8'],
    ['3.25 0.125'],
    ['3 1/4   1/8'],
    ['[3 1/4, 1/8],'],
    ['- [3 1/4, 1/8]'],
    ['(3 1/4, 1/8)'],
    ['82.55 mm, 3.175 mm'],
  ])('is read as it is typed: %s', (line) => {
    expect(places(line)).toEqual([[expect.closeTo(82.55, 9), expect.closeTo(3.175, 9), false]]);
  });

  test('says that the edge has a corner, and may lie to the left and below', () => {
    expect(places('1, -1/2, corner\n-2 0 corner')).toEqual([
      [25.4, -12.7, true],
      [-50.8, 0, true],
    ]);
    expect(places('[2, 1, corner]', 'cm')).toEqual([[20, 10, true]]);
  });

  test('of a million lines no more are read than tell that they are too many', () => {
    expect(pointsIn('1 2\n'.repeat(1e6), 'in').points).toHaveLength(MOST_POINTS + 1);
    expect(pointsIn('newel\n'.repeat(1e6), 'in').unread.length).toBeLessThanOrEqual(1000);
  });

  test('that is none is named by its line, and the others are read', () => {
    const { points, unread } = pointsIn('0, 0\n\nabout 3\n1, 2, 3\n2, 1', 'in');
    expect(points).toHaveLength(2);
    expect(unread).toEqual([
      { line: 3, text: 'about 3' },
      { line: 4, text: '1, 2, 3' },
    ]);
  });

  test('that is dragged changes its own line and no other', () => {
    const text = '0, 0\nnot a point\n1, 3/4\n2, 1, corner';
    expect(withPoint(text, 1, { x: 50.8, y: 12.7 }, 'in')).toBe('0, 0\nnot a point\n2, 0.5\n2, 1, corner');
    expect(withPoint(text, 2, { x: -0.001, y: 20 }, 'mm')).toBe('0, 0\nnot a point\n1, 3/4\n0, 20, corner');
  });
});

describe('the template of points', () => {
  test('is read as any template, and runs through them', () => {
    // Points of a circle of radius 4 in.
    const text = Array.from({ length: 9 }, (_, i) => {
      const angle = (Math.PI * (150 - 15 * i)) / 180;
      return `${(4 * Math.cos(angle)).toFixed(3)}, ${(4 * Math.sin(angle)).toFixed(3)}`;
    }).join('\n');
    const reading = readTemplate(
      templateOfPoints('Corbel', pointsIn(text, 'in').points, 'in'),
      'corbel.yaml',
    );
    if (!reading.ok) throw new Error(reading.problems[0]!.message);
    expect(reading.template.title).toBe('Corbel');
    for (const p of reading.template.edge.pieces)
      expect(Math.abs(Math.hypot(p.to.x, p.to.y) - 4 * 25.4)).toBeLessThan(25.4 / 64);
  });

  test('says of which point a fault is told', () => {
    const { points } = pointsIn('0, 0\n1, 0.5\n1, 0.5\n2, 0.5', 'in');
    const reading = readTemplate(templateOfPoints('Corbel', points, 'in'), 'corbel.yaml');
    if (reading.ok) throw new Error('Two points in one place are no edge');
    const { place } = reading.problems[0]!;
    expect(pointAt(`corbel.yaml:${place?.line}:${place?.column}`, points.length)).toBe(2);
    expect(pointAt('corbel.yaml:2:1', points.length)).toBeUndefined();
  });
});
