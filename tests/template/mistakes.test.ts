import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { readTemplate } from '../../src/template/index.ts';
import { runs } from '../support/runs.ts';
import { BALUSTER, withEdge } from './sample.ts';

const lines = (text: string): string[] => {
  const reading = readTemplate(text, 't.yaml');
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

const ONE_STEP = 'expected one of start, line, arc, curve or break; each step begins with its own -';
const POINT = 'expected a point such as [3 1/4, 1/8]';

/** What is written in the sample, what a person writes in its stead, and what she reads then. */
const MISTAKES: readonly (readonly [string, string, readonly string[]])[] = [
  [
    'title: Baluster',
    'tittle: Baluster',
    ['t.yaml:1:1: the key "tittle" is not known here; did you mean "title"?'],
  ],
  [
    'units: in',
    'units: feet',
    ['t.yaml:2:8: units: this does not fit here; found "feet"; expected in, cm or mm'],
  ],
  [
    'thickness: 1/4',
    'thickness: 1/64',
    ['t.yaml:3:12: thickness: too small; found "1/64"; expected at least 1/32 in'],
  ],
  [
    'thickness: 1/4',
    'thickness: 3 in',
    ['t.yaml:3:12: thickness: too large; found "3 in"; expected at most 1 in'],
  ],
  [
    '  - start: [0, 0]\n',
    '',
    ['t.yaml:5:5: edge.1: the edge has no start; expected start: [0, 0] as the first step'],
  ],
  [
    '  - break: shoulder\n',
    '  - start: [1, 1]\n',
    ['t.yaml:7:5: edge.3: a second start; expected one start, as the first step'],
  ],
  [
    ', rise: 3/4',
    '',
    [
      't.yaml:6:10: edge.2.arc: an arc needs a rise; found only its end; expected rise, or through with a point on the arc',
    ],
  ],
  [
    'rise: 3/4',
    'rise: 3/4, through: [1, 1]',
    [
      't.yaml:6:10: edge.2.arc: an arc has a rise or a point that it goes through; found both; expected one of them',
    ],
  ],
  [
    'rise: 3/4',
    'through: [4, 5/32]',
    ['t.yaml:6:5: edge.2: no arc goes through this point; expected a point on the arc, between its ends'],
  ],
  [
    'rise: 3/4',
    'rise: 190',
    ['t.yaml:6:5: edge.2: the rise is too high for this chord; expected at most 50 chords'],
  ],
  ['- line: {', '- lien: {', ['t.yaml:8:5: edge.4: the key "lien" is not known here; did you mean "line"?']],
  [
    '- break: shoulder\n  - line',
    '- break: shoulder\n    line',
    [`t.yaml:7:5: edge.3: two steps in one; found line and break; ${ONE_STEP}`],
  ],
  ['- break: shoulder', '- {}', [`t.yaml:7:5: edge.3: an empty step; ${ONE_STEP}`]],
  ['[5, 1/8] }', '[5] }', [`t.yaml:8:17: edge.4.line.to: too few; found a list of 1; ${POINT}`]],
  ['[5, 1/8] }', '5 }', [`t.yaml:8:17: edge.4.line.to: this does not fit here; found 5; ${POINT}`]],
  [
    '[5, 1/8] }',
    '[5, x] }',
    ['t.yaml:8:21: edge.4.line.to.2: no number; found "x"; expected a length such as 5 1/2, -1/4 or 140 mm'],
  ],
  [
    '[5, 1/8] }',
    '[5, 1/8 oz] }',
    [
      't.yaml:8:21: edge.4.line.to.2: a weight, not a length; found "1/8 oz"; expected a length such as 5 1/2, -1/4 or 140 mm',
    ],
  ],
  [
    '[5, 1/8] }',
    '[5, 900 m] }',
    ['t.yaml:8:21: edge.4.line.to.2: too large; found "900 m"; expected at most 200 in'],
  ],
  [
    '[5, 1/8] }',
    '[3 1/4, 1/8] }',
    ['t.yaml:8:5: edge.4: this step ends where it begins; expected steps of at least 0.1 mm'],
  ],
  [
    'handles: [[5 3/4, 1/8], [6 1/2, 1/4]]',
    'handles: [5 3/4, 1/8]',
    [
      `t.yaml:9:38: edge.5.curve.handles.1: this does not fit here; found "5 3/4"; ${POINT}`,
      `t.yaml:9:45: edge.5.curve.handles.2: this does not fit here; found "1/8"; ${POINT}`,
    ],
  ],
  [
    'handles: [[5 3/4, 1/8], [6 1/2, 1/4]]',
    'handle: [[5 3/4, 1/8], [6 1/2, 1/4]]',
    ['t.yaml:9:28: edge.5.curve: the key "handle" is not known here; did you mean "handles"?'],
  ],
  [
    '  - start: [0, 0]\n',
    '  - start: [0, 0]\n  - break: heel\n',
    ['t.yaml:6:5: edge.2: a break at the heel; expected a break between two steps'],
  ],
  [
    'alignment:',
    '  - break: tip\nalignment:',
    ['t.yaml:10:5: edge.6: a break at the crown end; expected a break between two steps'],
  ],
  [
    '- break: shoulder\n',
    '- break: shoulder\n  - break: neck\n',
    ['t.yaml:8:5: edge.4: two breaks at one place; expected one name'],
  ],
  [
    'alignment:\n  - { name: A, at: 1/4 }',
    'alignment:\n  - { name: A, at: 1/4 }\n  - { name: A, at: 1/2 }',
    ['t.yaml:12:13: alignment.2.name: two lines are named "A"; expected a name of its own for each line'],
  ],
  [
    'alignment:\n  - { name: A, at: 1/4 }',
    'alignment: [1/4]',
    [
      't.yaml:10:13: alignment.1: this does not fit here; found "1/4"; expected a line such as { name: A, at: 1/4 }',
    ],
  ],
  [
    '[1/8, 1/4, 3/8]',
    '[1/8, 0.125]',
    ['t.yaml:12:21: channelLines.2: two lines at the same distance; expected each distance once'],
  ],
  [
    '[1/8, 1/4, 3/8]',
    '[0]',
    [
      't.yaml:12:16: channelLines.1: a length of nothing; found 0; expected a length above zero, such as 5 1/2 or 140 mm',
    ],
  ],
];

describe('mistakes in a template', () => {
  test('the sample has none', () => {
    expect(lines(BALUSTER)).toEqual([]);
  });

  test.each(MISTAKES)('%j written as %j', (right, wrong, expected) => {
    expect(BALUSTER).toContain(right);
    expect(lines(BALUSTER.replace(right, wrong))).toEqual(expected);
  });

  test('the table above ran whole', () => {
    expect(MISTAKES).toHaveLength(28);
  });

  test.each([
    [
      'title: x',
      [
        't.yaml:1:1: the key "edge" is missing; expected a list of steps, points: as measured, or svg: with path data',
      ],
    ],
    [
      'edge: 5',
      [
        't.yaml:1:7: edge: this does not fit here; found 5; expected a list of steps, points: as measured, or svg: with path data',
      ],
    ],
    ['edge: []', ['t.yaml:1:7: edge: too few; found an empty list; expected at least 2 entries']],
    [
      'edge:\n  - points: [[0, 0], [1, 1], [2, 0]]',
      [
        't.yaml:2:13: edge.1.points: points is a whole edge, and no step of one; expected edge: { points: [[0, 0], [1, 3/4], [2, 1]] }, with no dash before points and no steps beside it',
      ],
    ],
    [
      'edge: [start: [0, 0], svg: "M 0 0 L 5 5"]',
      [
        't.yaml:1:28: edge.2.svg: svg is a whole edge, and no step of one; expected edge: { svg: "M 0 0 L 100 0" }, with no dash before svg and no steps beside it',
      ],
    ],
    ['edge: { svg: "L 0 0" }', ['t.yaml:1:7: edge: path data must start with a move (M or m)']],
    [
      'edge: { svg: "M 0 0 L 3 0 L 3 3 Z" }',
      ['t.yaml:1:7: edge: the edge is closed; expected path data without Z, from heel to crown end'],
    ],
    [
      'edge: { svg: "M 0 0 L 0.1 0" }',
      ['t.yaml:1:7: edge: the edge is too short; found 1/8 in; expected at least 3/16 in in all'],
    ],
    [
      'edge: { svg: "M 0 0 L 130 0" }',
      ['t.yaml:1:7: edge: the edge is too long; found 130 in; expected at most 120 in in all'],
    ],
    [
      'edge: { svg: "M 900 0 L 905 0" }',
      ['t.yaml:1:7: edge: the edge lies too far from its origin; expected coordinates up to 200 in'],
    ],
    [
      '- a',
      [
        't.yaml:1:1: this does not fit here; found a list of 1; expected a template: the keys title, units, thickness, edge, alignment, channelLines',
      ],
    ],
  ])('%s', (text, expected) => {
    expect(lines(text)).toEqual(expected);
  });

  test('an edge that crosses itself names both steps', () => {
    const steps = [
      'start: [0, 0]',
      'line: { to: [50, 0] }',
      'line: { to: [50, 30] }',
      'line: { to: [20, -30] }',
    ];
    expect(lines(withEdge(steps))).toEqual([
      't.yaml:6:5: edge.4: the edge crosses the step on line 4; found a crossing at [35 mm, 0 mm]',
    ]);
  });

  test('an edge that comes back to its heel is no edge', () => {
    const steps = [
      'start: [0, 0]',
      'line: { to: [50, 0] }',
      'line: { to: [50, 30] }',
      'line: { to: [0, 0] }',
    ];
    const [line, ...rest] = lines(withEdge(steps));
    expect(rest).toEqual([]);
    expect(line).toMatch(
      /^t\.yaml:[26]:\d: edge(\.4)?: the edge (ends where it begins|crosses the step on line 4)/,
    );
  });

  test('every mistake in one file has its own line, in the order of the file', () => {
    const wrong = BALUSTER.replace('1/4\nedge', 'wide\nedge')
      .replace('rise', 'rize')
      .replace('name: A', 'name: [A]');
    expect(lines(wrong).map((l) => l.split(':')[1])).toEqual(['3', '6', '11']);
  });

  test('an edge of pieces that no blade cuts is refused', () => {
    const edge = (n: number): string =>
      `edge: { svg: "M0 0L9 0a${'1e-6 1e-6 0 0 1 1e-6 0 '.repeat(n)}L18 0" }`;
    expect(lines(edge(250))).toEqual([]);
    expect(lines(edge(251))).toEqual([
      't.yaml:1:7: edge: the edge is too finely drawn; found more than 250 lines and arcs within 3/16 in; expected at most 250',
    ]);
  });

  test('path data of absurd size is refused in time', () => {
    const start = performance.now();
    for (const data of [
      'M 0 0 '.repeat(30_000),
      `M 0 0 ${'L 1 1 '.repeat(16_000)}`,
      `M 0 0 ${'l 1 0 0 1 '.repeat(2_900)}`,
    ])
      expect(lines(`units: mm\nedge: { svg: "${data}" }`)).toHaveLength(1);
    expect(performance.now() - start).toBeLessThan(20_000);
  });

  test('a sample with anything struck out or put in never throws, and says one line or more', () => {
    const scraps = fc.constantFrom(
      '',
      ' ',
      '\n',
      '  ',
      '- ',
      ':',
      ',',
      '[',
      '}',
      '"',
      '-',
      '1/0',
      '1e308',
      'null',
      '&a ',
      '*a',
    );
    fc.assert(
      fc.property(fc.nat({ max: BALUSTER.length }), fc.nat({ max: 12 }), scraps, (at, cut, scrap) => {
        const text = BALUSTER.slice(0, at) + scrap + BALUSTER.slice(at + cut);
        for (const line of lines(text)) {
          expect(line).toMatch(/^t\.yaml[^\n]*: /);
          expect(line).not.toMatch(/\[object|undefined|Invalid|NaN/);
        }
      }),
      runs(800, 1),
    );
  });
});
