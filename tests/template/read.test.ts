import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import {
  distance,
  findEdgeFault,
  type Piece,
  type Point,
  pathEnd,
  pathLength,
  pathStart,
  pieceAt,
  pieceDirection,
} from '../../src/geometry/index.ts';
import { readTemplate, sectionsOf, type Template } from '../../src/template/index.ts';
import type { TemplateReading } from '../../src/template/read.ts';
import { runs } from '../support/runs.ts';
import { BALUSTER, withEdge } from './sample.ts';

type Good = Extract<TemplateReading, { ok: true }>;

const good = (text: string, fileName = 'profiles/baluster.yaml'): Good => {
  const reading = readTemplate(text, fileName);
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  return reading;
};
const template = (text: string): Template => good(text).template;
const edgeOf = (steps: readonly string[], units = 'mm'): readonly Piece[] =>
  template(withEdge(steps, units)).edge.pieces;

/** The distance from a point to the circle that an arc lies on. */
const offCircle = (piece: Piece, p: Point): number =>
  piece.kind === 'arc' ? Math.abs(distance(piece.center, p) - piece.radius) : Number.NaN;

describe('readTemplate', () => {
  test('reads the sample: lengths in mm, named by its file, lines in order', () => {
    const t = template(BALUSTER);
    expect(t).toMatchObject({
      name: 'baluster',
      title: 'Baluster',
      thickness: 6.35,
      alignment: [{ name: 'A', at: 6.35 }],
      channelLines: [3.175, 6.35, 9.525],
      rollsRoundCrown: false,
    });
    expect(pathStart(t.edge)).toEqual({ x: 0, y: 0 });
    expect(pathEnd(t.edge)).toEqual({ x: 177.8, y: 19.05 });
    expect(t.breaks.map((b) => [b.kind, b.name])).toEqual([['notch', 'shoulder']]);
    expect(sectionsOf(t, pathLength(t.edge)).map((s) => [s.number, s.name])).toEqual([
      [1, undefined],
      [2, 'shoulder'],
    ]);
  });

  test('says what it does when nothing is said', () => {
    const t = template('edge: [{ start: [0, 0] }, { line: { to: [1, 0] } }]');
    expect(t).toMatchObject({
      title: 'baluster',
      thickness: undefined,
      alignment: [],
      channelLines: [],
      rollsRoundCrown: false,
    });
    expect(pathLength(t.edge)).toBe(25.4);
  });

  test('the same file as JSON gives the same template', () => {
    const json = JSON.stringify({
      $schema: './template.schema.json',
      title: 'Baluster',
      units: 'in',
      thickness: '1/4',
      edge: [
        { start: [0, 0] },
        { arc: { to: ['3 1/4', '1/8'], rise: '3/4' } },
        { break: 'shoulder' },
        { line: { to: [5, '1/8'] } },
        {
          curve: {
            to: [7, '3/4'],
            handles: [
              ['5 3/4', '1/8'],
              ['6 1/2', '1/4'],
            ],
          },
        },
      ],
      alignment: [{ name: 'A', at: 0.25 }],
      channelLines: ['1/4', '3/8', '1/8'],
    });
    expect(template(json)).toEqual(template(BALUSTER));
  });

  test('a foot may roll round the crown end, and one channel line needs no brackets', () => {
    const t = template(`${BALUSTER.replace(/channelLines.*/, 'channelLines: 1/4')}crownEnd: corner\n`);
    expect([t.rollsRoundCrown, t.channelLines]).toEqual([true, [6.35]]);
  });

  test('knows the line of whatever makes the edge at a length from the heel', () => {
    const { placeAlong, placeAt, template: t } = good(BALUSTER);
    const [shoulder] = t.breaks;
    expect(placeAlong(1).line).toBe(6);
    expect(placeAlong(shoulder!.at + 1).line).toBe(8);
    expect(placeAlong(pathLength(t.edge)).line).toBe(9);
    expect(placeAt(['thickness'])).toEqual({ file: 'profiles/baluster.yaml', line: 3, column: 12 });
    expect(placeAt(['crownEnd']).file).toBe('profiles/baluster.yaml');
  });
});

describe('arcs', () => {
  /**
   * Handbook: c = 16, h = 6 gives r = 8 1/3 exactly (Machinery's Handbook, 31st ed., p. 79). Closed form with
   * whole numbers: c = 12, h = 3 gives r = 7.5 and an arc of 13.9094283 (r·4·atan(2h/c)).
   */
  test.each([
    [16, 6, 25 / 3, undefined],
    [12, 3, 7.5, 13.9094283],
  ])('chord %d and rise %d give radius %d', (chord, rise, radius, length) => {
    const [piece] = edgeOf(['start: [0, 0]', `arc: { to: [${chord}, 0], rise: ${rise} }`]);
    if (piece?.kind !== 'arc') throw new Error('not an arc');
    expect(piece.radius).toBeCloseTo(radius, 10);
    expect(pieceAt(piece, 0.5).y).toBeCloseTo(rise, 10);
    if (length !== undefined) expect(pathLength({ pieces: [piece], closed: false })).toBeCloseTo(length, 6);
  });

  // On the circle round (6, −4.5) with r = 7.5: (6, 3) is its top, (10.5, 1.5) the corner of a 3-4-5 triangle.
  test.each(['[6, 3]', '[10.5, 1.5]', '[1.5, 1.5]'])('through %s it is the same arc', (through) => {
    const [piece] = edgeOf(['start: [0, 0]', `arc: { to: [12, 0], through: ${through} }`]);
    if (piece?.kind !== 'arc') throw new Error('not an arc');
    expect(piece.radius).toBeCloseTo(7.5, 10);
    expect(piece.center.x).toBeCloseTo(6, 10);
    expect(piece.center.y).toBeCloseTo(-4.5, 10);
    expect(piece.sweep).toBeLessThan(0);
  });

  test('through a point far round, the arc is the long way, and below the chord it bends left', () => {
    // (6, −12) is the lowest point of the same circle: 2π − 4·atan(1/2) of it lies below the chord.
    const [piece] = edgeOf(['start: [0, 0]', 'arc: { to: [12, 0], through: [6, -12] }']);
    if (piece?.kind !== 'arc') throw new Error('not an arc');
    expect(piece.radius).toBeCloseTo(7.5, 10);
    expect(piece.sweep).toBeCloseTo(2 * Math.PI - 4 * Math.atan(0.5), 10);
  });

  test('through a point on the chord it is a line', () => {
    expect(edgeOf(['start: [0, 0]', 'arc: { to: [12, 0], through: [5, 0] }'])[0]?.kind).toBe('line');
  });

  test('any arc through a point goes through it, on the side where it is', () => {
    const thousandths = fc.integer({ min: -200_000, max: 200_000 });
    fc.assert(
      fc.property(fc.tuple(thousandths, thousandths, thousandths, thousandths), ([x, y, u, v]) => {
        const to = { x: x / 1000, y: y / 1000 };
        const through = { x: u / 1000, y: v / 1000 };
        const reading = readTemplate(
          withEdge([
            'start: [0, 0]',
            `arc: { to: [${to.x}, ${to.y}], through: [${through.x}, ${through.y}] }`,
          ]),
          'f',
        );
        const origin = { x: 0, y: 0 };
        const height = Math.abs(to.x * through.y - to.y * through.x) / distance(origin, to);
        fc.pre(reading.ok && height > 0.01);
        const [piece] = (reading as Good).template.edge.pieces;
        expect(offCircle(piece!, through)).toBeLessThan(
          1e-6 * Math.max(1, (piece as { radius: number }).radius),
        );
        const onTheWay = [...Array(2001).keys()].map((i) => distance(pieceAt(piece!, i / 2000), through));
        expect(Math.min(...onTheWay)).toBeLessThan(pathLength({ pieces: [piece!], closed: false }) / 2000);
      }),
      runs(300, 1),
    );
  });
});

describe('curves and path data', () => {
  /** (0,0)(0,100)(100,100)(100,0) has speed 300(1 − 2t + 2t²), so its length is exactly 200. */
  test('a curve keeps its length', () => {
    const t = template(
      withEdge(['start: [0, 0]', 'curve: { to: [100, 0], handles: [[0, 100], [100, 100]] }']),
    );
    expect(pathLength(t.edge)).toBeCloseTo(200, 3);
    expect(t.breaks).toEqual([]);
  });

  test('path data is drawn with y down, and lies as it was drawn', () => {
    // Clockwise on the page over a chord of 12: an arch, 3 high, of length 13.9094283 (see above).
    const t = template('units: mm\nedge: { svg: "M 0 0 A 7.5 7.5 0 0 1 12 0" }');
    expect(pathLength(t.edge)).toBeCloseTo(13.9094283, 6);
    const [piece] = t.edge.pieces;
    expect(pieceAt(piece!, 0.5).x).toBeCloseTo(6, 9);
    expect(pieceAt(piece!, 0.5).y).toBeCloseTo(3, 9);
    expect(pieceDirection(piece!, 0).y).toBeGreaterThan(0);
  });

  test('its numbers are in the unit of the file, or in its own', () => {
    const inches = template('edge: { svg: "M 0 0 A 7.5 7.5 0 0 1 12 0" }');
    expect(pathLength(inches.edge)).toBeCloseTo(13.9094283 * 25.4, 4);
    const own = template('units: in\nedge: { svg: "M 0 0 A 7.5 7.5 0 0 1 12 0", unit: cm }');
    expect(pathLength(own.edge)).toBeCloseTo(139.094283, 5);
  });

  test('a curve in inches comes as near as one in mm', () => {
    const mm = template('units: mm\nedge: { svg: "M 0 0 C 0 -100 100 -100 100 0" }');
    const inches = template(
      `units: in\nedge: { svg: "M 0 0 C 0 -${100 / 25.4} ${100 / 25.4} -${100 / 25.4} ${100 / 25.4} 0" }`,
    );
    const steps = template(
      withEdge(['start: [0, 0]', 'curve: { to: [100, 0], handles: [[0, 100], [100, 100]] }']),
    );
    for (const t of [mm, inches]) {
      expect(t.edge.pieces).toHaveLength(steps.edge.pieces.length);
      expect(pathLength(t.edge)).toBeCloseTo(pathLength(steps.edge), 6);
      expect(findEdgeFault(t.edge)).toBeUndefined();
    }
  });
});

describe('breaks', () => {
  const breaksOf = (steps: readonly string[]) =>
    template(withEdge(steps)).breaks.map((b) => [b.kind, b.name, Number(b.at.toFixed(6))]);

  test('the foot is on the left: a turn to the left is a notch, to the right a corner', () => {
    expect(
      breaksOf([
        'start: [0, 0]',
        'line: { to: [50, 0] }',
        'line: { to: [50, 50] }',
        'line: { to: [100, 50] }',
      ]),
    ).toEqual([
      ['notch', undefined, 50],
      ['corner', undefined, 100],
    ]);
  });

  test('a name at a corner names the corner, elsewhere it marks the edge', () => {
    expect(
      breaksOf([
        'start: [0, 0]',
        'line: { to: [30, 0] }',
        'break: flat',
        'line: { to: [50, 0] }',
        'break: neck',
        'line: { to: [50, 50] }',
      ]),
    ).toEqual([
      ['mark', 'flat', 30],
      ['notch', 'neck', 50],
    ]);
  });

  test.each([
    [9.9, 0],
    [10.1, 1],
    [-9.9, 0],
    [-10.1, 1],
  ])('a kink of %d degrees makes %d breaks', (degrees, count) => {
    const angle = (degrees * Math.PI) / 180;
    const to = `[${(50 + 50 * Math.cos(angle)).toFixed(9)}, ${(50 * Math.sin(angle)).toFixed(9)}]`;
    expect(breaksOf(['start: [0, 0]', 'line: { to: [50, 0] }', `line: { to: ${to} }`])).toHaveLength(count);
  });

  test('where the edge turns straight back, its bends tell the notch from the corner', () => {
    // Two half circles side by side, lobes towards the foot: the slit between them is a notch.
    expect(
      breaksOf(['start: [0, 0]', 'arc: { to: [40, 0], rise: 20 }', 'arc: { to: [80, 0], rise: 20 }'])[0],
    ).toEqual(['notch', undefined, Number((20 * Math.PI).toFixed(6))]);
    // Two hollows side by side: the point between them sticks out towards the foot.
    expect(
      breaksOf(['start: [0, 0]', 'arc: { to: [40, 0], rise: -20 }', 'arc: { to: [80, 0], rise: -20 }'])[0],
    ).toEqual(['corner', undefined, Number((20 * Math.PI).toFixed(6))]);
  });

  test('a curve has no breaks of its own where its arcs meet', () => {
    const t = template(withEdge(['start: [0, 0]', 'curve: { to: [90, 0], handles: [[30, 60], [60, -60]] }']));
    expect(t.edge.pieces.length).toBeGreaterThan(4);
    expect(t.breaks).toEqual([]);
  });

  test('breaks of any edge are in order, inside it, and on it', () => {
    const number = fc.integer({ min: -90, max: 90 });
    const step = fc.oneof(
      fc.tuple(number, number).map(([x, y]) => `line: { to: [${x}, ${y}] }`),
      fc.tuple(number, number, number).map(([x, y, r]) => `arc: { to: [${x}, ${y}], rise: ${r / 10} }`),
      fc.constant('break: '),
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 8 }), (steps) => {
        const named = steps.map((s, i) => (s === 'break: ' ? `break: n${i}` : s));
        const reading = readTemplate(withEdge(['start: [0, 0]', ...named]), 'f');
        if (!reading.ok) return;
        const { edge, breaks } = reading.template;
        const length = pathLength(edge);
        let before = 0;
        for (const b of breaks) {
          expect(b.at).toBeGreaterThan(before);
          expect(b.at).toBeLessThan(length);
          before = b.at;
        }
        expect(findEdgeFault(edge)).toBeUndefined();
        expect(breaks.filter((b) => b.name)).toHaveLength(named.filter((s) => s.startsWith('break')).length);
      }),
      runs(500, 2),
    );
  });
});

test('a title and names of digits are printed as they are written', () => {
  const reading = readTemplate(
    'title: 1.10\nedge:\n  - start: [0, 0]\n  - line: { to: [2, 0] }\n  - break: 007\n  - line: { to: [5, 1] }\nalignment: [{ name: 1.0, at: 1/4 }]\n',
    'mine.yaml',
  );
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  expect(reading.template.title).toBe('1.10');
  expect(JSON.stringify(reading.template)).toContain('"007"');
  expect(reading.template.alignment.map((line) => line.name)).toEqual(['1.0']);
});
