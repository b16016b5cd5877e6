import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { describeProblem } from '../../src/document/index.ts';
import { type PlanReading, planJsonSchema, readPlan } from '../../src/plan/index.ts';

const SAMPLER = `title: Guild sampler
template: [baluster, finial]
parts:
  inner border:
    layout: { border: { width: 4, inner: { top: 40, right: 48, bottom: 40, left: 48 }, margin: 1/4 } }
  outer border:
    layout: { border: { width: 7, inner: { top: 48, right: 56, bottom: 48, left: 56 }, margin: 1/2 } }
    channels: { outward: 1/4 }
  corner blocks:
    at: [[-14, 18], [14, 18], [14, -18], [-14, -18]]
    turn: 90
    layout: { frame: { block: 5, clearance: 1/4, within: 11, corners: meet } }
  wreath:
    template: newel
    layout: { frame: { around: 9, clearance: 1/2, within: 18, count: 8 } }
`;

const good = (text: string): Extract<PlanReading, { ok: true }> => {
  const reading = readPlan(text, 'quilt.yaml');
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  return reading;
};
const notes = (text: string): string[] => good(text).notes.map(describeProblem);
const mistakes = (text: string): string[] => {
  const reading = readPlan(text, 'quilt.yaml');
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

test('each part is a plan of its own, with what all share', () => {
  const { title, parts, notes } = good(SAMPLER);
  expect(title).toBe('Guild sampler');
  expect(notes).toEqual([]);
  expect(parts.map(({ plan }) => [plan.title, plan.templates, plan.layout.kind])).toEqual([
    ['Guild sampler: inner border', ['baluster', 'finial'], 'border'],
    ['Guild sampler: outer border', ['baluster', 'finial'], 'border'],
    ['Guild sampler: corner blocks', ['baluster', 'finial'], 'border'],
    ['Guild sampler: wreath', ['newel'], 'frame'],
  ]);
  expect(parts.map(({ plan }) => plan.channels.outward)).toEqual([[], [6.35], [], []]);
  expect(parts[2]?.plan.part).toMatchObject({
    name: 'corner blocks',
    quilt: 'Guild sampler',
    places: [
      [-14, 18],
      [14, 18],
      [14, -18],
      [-14, -18],
    ].map(([x, y]) => ({ x: expect.closeTo(25.4 * x!, 9), y: expect.closeTo(25.4 * y!, 9) })),
    turn: Math.PI / 2,
  });
});

test('a key is looked for in its part, then in what all share', () => {
  const { placeAt } = good(SAMPLER).parts[3]!;
  expect(placeAt(['layout', 'frame', 'within'])).toMatchObject({ line: 15, column: 59 });
  expect(placeAt(['template'])).toMatchObject({ line: 14 });
  expect(good(SAMPLER).parts[0].placeAt(['template'])).toMatchObject({ line: 2 });
  expect(good(SAMPLER).parts[0].placeAt(['swag', 'from'])).toMatchObject({ line: 4 });
});

test('a template for all parts that none of them takes is told', () => {
  const named = SAMPLER.replace(/(border|blocks):\n/g, '$1:\n    template: newel\n');
  const unknown = named.replace('[baluster, finial]', 'nosuch');
  expect(notes(unknown)).toEqual([
    'quilt.yaml:2:11: template: this changes nothing, because every part names a template of its own',
  ]);
  expect(notes(named.replace('    template: newel\n', ''))).toEqual([]);
  expect(notes(named.replace('template: [baluster, finial]\n', ''))).toEqual([]);
});

test('one place alone, the middle, and turned strips', () => {
  const strips = `template: finial
parts:
  sash: { at: [10, 0], turn: 90, layout: { strip: { length: 40, width: 4 } } }
  spine: { at: middle, turn: 90, layout: { strip: { length: 40, width: 4 } } }
`;
  expect(good(strips).parts.map(({ plan }) => plan.part?.places)).toEqual([
    [{ x: 254, y: 0 }],
    [{ x: 0, y: 0 }],
  ]);
});

test('a seam that was measured twice, and differs, is said', () => {
  const off = SAMPLER.replace('inner: { top: 48,', 'inner: { top: 48 1/8,').replace(
    'left: 56 }',
    'left: 55 1/2 }',
  );
  expect(notes(off)).toEqual([
    'quilt.yaml:7:42: parts.outer border.layout.border.inner: the outer seam of the part "inner border" (line 5) is ' +
      'the inner seam of the part "outer border", and they do not measure the same: top 48 in and 48 1/8 in, left ' +
      '56 in and 55 1/2 in; up to 1/8 in to the foot can be eased in when the border is sewn on; measure that seam again all the same',
  ]);
  const [first, second, blocks] = good(off).parts.map(({ plan }) => plan.doubts);
  expect(first).toEqual([
    'The outer seam of the part "inner border" is the inner seam of the part "outer border", and they do not measure ' +
      'the same: top 48 in and 48 1/8 in, left 56 in and 55 1/2 in; up to 1/8 in to the foot can be eased in when ' +
      'the border is sewn on; measure that seam again all the same.',
  ]);
  expect(second).toEqual(first);
  expect(blocks).toEqual([]);
});

// 1/8 in to the foot of 48 in is 1/2 in. From an inch on it is a mistake, however long the side, and no other seam.
test.each([
  ['48 1/2', 48, 'up to'],
  ['48 9/16', 48, 'more than'],
  ['121', 120, 'more than'],
  ['121 1/4', 120, 'more than'],
])('a seam of %s in where the border in it measures %i is eased in or a mistake', (measured, seam, words) => {
  const inside = seam - 8;
  const borders = `template: finial
parts:
  inner border: { layout: { border: { width: 4, inner: ${inside} } } }
  outer border: { layout: { border: { width: 7, inner: { top: ${measured}, right: ${seam}, bottom: ${seam}, left: ${seam} } } } }
`;
  const told = notes(borders).filter((note) => note.includes('do not measure the same'));
  expect(told).toHaveLength(1);
  expect(told[0]).toContain(`; ${words} 1/8 in to the foot can`);
});

test.each([
  // Counterclockwise: what was the right side lies at the top.
  [90, 'top'],
  [180, 'left'],
  [-90, 'bottom'],
  [0, 'right'],
])('an inner border that is turned by %i degrees is compared as it lies', (turn, side) => {
  const square = `template: finial
parts:
  inner border: { turn: ${turn}, layout: { border: { width: 4, inner: { top: 40, right: 40 1/4, bottom: 40, left: 40 } } } }
  outer border: { layout: { border: { width: 7, inner: 48 } } }
`;
  expect(notes(square).join()).toContain(`the same: ${side} 48 1/4 in and 48 in;`);
});

test('borders with cloth between them share no seam', () => {
  expect(
    notes(
      SAMPLER.replace(
        '{ top: 40, right: 48, bottom: 40, left: 48 }',
        '{ top: 30, right: 38, bottom: 30, left: 38 }',
      ).replace(/ {2}corner blocks:[\s\S]*/, ''),
    ),
  ).toEqual([]);
});

test.each<[string, string, string[]]>([
  [
    'a border that lies in another',
    SAMPLER.replace(
      'inner: { top: 48, right: 56, bottom: 48, left: 56 }',
      'inner: { top: 44, right: 52, bottom: 44, left: 52 }',
    ),
    [
      'quilt.yaml:7:13: parts.outer border.layout: the part "outer border" lies on the part "inner border" (line 5); ' +
        'found 2 in of overlap; expected parts beside or inside one another; compare the outer sides of the inner ' +
        'border with the inner sides of the outer one',
    ],
  ],
  [
    'a block on a border',
    SAMPLER.replace('[-14, 18]', '[-14, 19]'),
    [
      'quilt.yaml:12:13: parts.corner blocks.layout: the part "corner blocks" lies on the part "inner border" (line 5); ' +
        'found 1/2 in of overlap; expected parts beside or inside one another; say where each part lies with at: ' +
        'right and up from the middle of the quilt',
    ],
  ],
  [
    'copies on one another',
    SAMPLER.replace('[14, 18]', '[-10, 18]'),
    [
      'quilt.yaml:12:13: parts.corner blocks.layout: two copies of the part "corner blocks" lie on one another; found ' +
        '7 in of overlap; expected parts beside or inside one another; say where each part lies with at: right and ' +
        'up from the middle of the quilt',
    ],
  ],
  [
    'a round frame on a block',
    SAMPLER.replace('within: 18', 'within: 33'),
    [
      'quilt.yaml:15:13: parts.wreath.layout: the part "wreath" lies on the part "corner blocks" (line 12); found ' +
        // From the frame's edge to the block's corner, by Pythagoras: 16 1/2 − √(8 1/2² + 12 1/2²) = 1.384 in.
        '1 3/8 in of overlap; expected parts beside or inside one another; say where each part lies with at: right ' +
        'and up from the middle of the quilt; a frame takes all the room that within gives it',
    ],
  ],
  [
    'two parts whose files would have one name',
    SAMPLER.replace('wreath:', 'Inner-Border:'),
    [
      'quilt.yaml:14:5: parts.Inner-Border: files of this part would be called as those of the part "inner border"; ' +
        'found "Inner-Border"; expected names that differ in letters or digits',
    ],
  ],
  [
    'a name without a letter',
    SAMPLER.replace('wreath:', '"..":'),
    [
      'quilt.yaml:14:5: parts...: this is no name for a part; expected a name of at most 40 characters, with a letter ' +
        'or a digit and without commas',
    ],
  ],
  [
    'a name that no list of keys shows',
    SAMPLER.replace('wreath:', '__proto__:'),
    ['quilt.yaml:13:3: parts: this is no name for a part; found "__proto__"'],
  ],
  [
    'no part',
    'template: finial\nparts: {}\n',
    ['quilt.yaml:2:8: parts: no part is listed; expected at least one, each under its name'],
  ],
  [
    'a part without a layout',
    'template: finial\nparts: { wreath: {} }\n',
    ['quilt.yaml:2:10: parts.wreath: the key "layout" is missing; expected one of strip, border or frame'],
  ],
  [
    'a part without a template',
    'parts: { wreath: { layout: { strip: { length: 40, width: 4 } } } }\n',
    [
      'quilt.yaml:1:18: parts.wreath: nothing says which template this part is sewn with; expected the key template, here or for the whole quilt',
    ],
  ],
  [
    'what belongs to a part, beside the parts',
    `${SAMPLER}swag: { from: 1 }\n`,
    ['quilt.yaml:16:1: the key "swag" is not known here; it belongs under parts, in one of them'],
  ],
  [
    'two parts with one name',
    SAMPLER.replace('wreath:', 'inner border:'),
    [
      'quilt.yaml:13:3: parts.inner border: the key "inner border" is written twice; the first one is on line 4',
    ],
  ],
  [
    'a place with three lengths',
    SAMPLER.replace('[-14, 18]', '[-14, 18, 2]'),
    [
      'quilt.yaml:10:10: parts.corner blocks.at.1: a place has two lengths: how far right, and how far up; found 3 lengths; ' +
        'expected two lengths, such as [12, -8]; a comma parts one length from the next: decimals stand behind a ' +
        'point, as in 143.5',
    ],
  ],
  [
    'places too far out, one of them no length, and one no place',
    SAMPLER.replace('[14, 18]', '[14, 500]')
      .replace('[-14, -18]', 'here')
      .replace('[14, -18]', '[wide, -18]'),
    [
      'quilt.yaml:10:26: parts.corner blocks.at.2.2: too large; found 500; expected at most 400 in',
      'quilt.yaml:10:33: parts.corner blocks.at.3.1: no number; found "wide"; expected a length such as 5 1/2, -1/4 or 140 mm',
      'quilt.yaml:10:45: parts.corner blocks.at.4: this is no place; found "here"; expected two lengths, such as [12, -8]',
    ],
  ],
  [
    'a place alone that is too far out',
    SAMPLER.replace('template: newel', 'at: [0, -500]'),
    ['quilt.yaml:14:13: parts.wreath.at.2: too small; found -500; expected at least -400 in'],
  ],
  [
    'no places',
    SAMPLER.replace('template: newel', 'at: []'),
    [
      'quilt.yaml:14:9: parts.wreath.at: no place is listed; expected middle, a place such as [12, -8], a list of places, or corners of a part',
    ],
  ],
  [
    'turned too far',
    SAMPLER.replace('turn: 90', 'turn: 400'),
    [
      'quilt.yaml:11:11: parts.corner blocks.turn: too large; found 400; expected a number of degrees from -360 to 360, such as 90',
    ],
  ],
  [
    'turned by a word',
    SAMPLER.replace('turn: 90', 'turn: 90 deg'),
    [
      'quilt.yaml:11:11: parts.corner blocks.turn: this does not fit here; found "90 deg"; expected a number of degrees from -360 to 360, such as 90',
    ],
  ],
  [
    'what counts for all parts, in one of them',
    SAMPLER.replace('template: newel', 'units: cm'),
    [
      'quilt.yaml:14:5: parts.wreath: the key "units" is not known here; it belongs at the top of the file, where it counts for all parts',
    ],
  ],
  [
    'a mistake in one part',
    SAMPLER.replace('width: 7', 'width: 1/2'),
    [
      'quilt.yaml:7:98: parts.outer border.layout.border.margin: the margins leave no room for swags in a width of 1/2 in; ' +
        'found 1/2 in and 1/2 in, 1 in together; expected at most 1/4 in together',
    ],
  ],
])('%s', (_, text, expected) => {
  expect(mistakes(text)).toEqual(expected);
});

test('frames turned on their point go by their corners', () => {
  // Two squares of 10 in side by side, one on its point, which reaches 5 √2 in = 7.071 in from its middle.
  const at = (x: string): string => `template: finial
parts:
  one: { layout: { frame: { block: 5, within: 10 } } }
  other: { at: [${x}, 0], turn: 45, layout: { frame: { block: 5, within: 10 } } }
`;
  expect(mistakes(at('12.08'))).toEqual([]);
  expect(mistakes(at('12.06'))).toHaveLength(1);
});

test('parts keep the names that are written, in the order of the file', () => {
  const strip = (at: number): string => `{ at: [0, ${at}], layout: { strip: { length: 40, width: 4 } } }`;
  const text = `template: finial\nparts:\n  10: ${strip(0)}\n  007: ${strip(10)}\n  2: ${strip(20)}\n  1.10: ${strip(30)}\n`;
  const { parts } = good(text);
  expect(parts.map(({ plan }) => plan.part?.name)).toEqual(['10', '007', '2', '1.10']);
  expect(parts.map(({ plan }) => plan.part?.places[0]?.y)).toEqual([0, 10, 20, 30].map((y) => y * 25.4));
  expect(parts[1]?.placeAt(['layout', 'strip', 'width'])).toMatchObject({ line: 4 });
  expect(mistakes(text.replace('[0, 20]', '[0, 11]'))).toEqual([
    expect.stringContaining('the part "2" lies on the part "007" (line 4)'),
  ]);
});

test('at most 40 parts', () => {
  const strips = (count: number): string =>
    `template: finial\nparts:\n${Array.from({ length: count }, (_, i) => `  strip ${i}: { at: [0, ${5 * i}], layout: { strip: { length: 40, width: 4 } } }\n`).join('')}`;
  expect(good(strips(40)).parts).toHaveLength(40);
  expect(mistakes(strips(41))).toEqual([
    'quilt.yaml:3:3: parts: too many parts; found 41; expected at most 40',
  ]);
});

test('the schema for editors knows both ways to write a plan', () => {
  const check = z.fromJSONSchema(planJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);
  const layout = { strip: { length: 40, width: 4 } };
  expect(check.safeParse({ template: 'finial', layout }).success).toBe(true);
  expect(check.safeParse({ template: 'finial', parts: { sash: { layout, at: [1, '2 in'] } } }).success).toBe(
    true,
  );
  expect(check.safeParse({ template: 'finial', parts: { sash: { layot: layout } } }).success).toBe(false);
  expect(check.safeParse({ template: 'finial' }).success).toBe(false);
});

describe('a wreath in each corner square of a border', () => {
  // Beside sides of 48 in the squares are 8 in wide, and the margins leave 7 in about a middle 24 + 4 in off.
  const quilt = (border: string, wreath = 'within: 7', at = 28, more = ''): string => `template: baluster
parts:
  border:
    layout: { border: { width: 8, inner: 48, margin: 1/2${border} } }
${more}  wreaths:
    at: [[${at}, 28], [28, -28], [-28, -28], [-28, 28]]
    layout: { frame: { around: 3, ${wreath} } }
`;
  const overlap = (inches: string, line = 7): string =>
    `quilt.yaml:${line}:13: parts.wreaths.layout: the part "wreaths" lies on the part "border" (line 4); found ${inches} in of overlap; ` +
    'expected parts beside or inside one another; say where each part lies with at: right and up from the middle of the quilt; a frame takes all the room that within gives it';

  test.each([', corners: half', ', corners: open', ', from: outer, corners: open'])(
    'lies there where the squares are free%s',
    (border) => {
      expect(mistakes(quilt(border))).toEqual([]);
    },
  );

  test('keeps within the margins', () => {
    expect(mistakes(quilt(', corners: half', 'within: 7 1/4'))).toEqual([overlap('1/8')]);
    expect(mistakes(quilt(', corners: half', 'within: 6', 29))).toEqual([overlap('1/2')]);
  });

  test('lies on the border where a swag goes over the corner, sides meet, or it is not said', () => {
    for (const border of [', corners: turn', ', corners: meet', ''])
      expect(mistakes(quilt(border))).toEqual([overlap('7 1/2')]);
  });

  test('lies on what fills the square', () => {
    const filled = quilt(', corners: half', 'within: 7', 28, '    fills: { corner: crosshatch }\n');
    expect(mistakes(filled)).toEqual([overlap('7 1/2', 8)]);
    const beside = quilt(', corners: half', 'within: 7', 28, '    fills: { background: crosshatch }\n');
    expect(mistakes(beside)).toEqual([]);
  });
});

describe('corners of a part, by its name', () => {
  const quilt = (wreaths: string, border = 'corners: half', at = ''): string => `template: baluster
parts:
  wreaths:
    at: ${wreaths}
    layout: { frame: { around: 3, within: 7 } }
  border:
    ${at}layout: { border: { width: 8, inner: { top: 48, right: 60, bottom: 47, left: 59 }, margin: { inner: 1/4, outer: 3/4 }, ${border} } }
`;
  const placesIn = (text: string) =>
    good(text).parts.flatMap(({ plan }) =>
      plan.part?.name === 'wreaths' ? [plan.part.places.map(({ x, y }) => [x / 25.4, y / 25.4])] : [],
    );
  const said = (text: string): string[] =>
    mistakes(text).map((line) => line.replace('quilt.yaml:4:9: parts.wreaths.at: ', ''));

  test('are the middles of the squares that it leaves free', () => {
    // Beside the longer sides, 48 and 60 in: half of each, and from there 1/4 in of margin and half of 7 in.
    const [places] = placesIn(quilt('corners of border'));
    expect(places).toHaveLength(4);
    for (const [x, y] of places!) {
      expect(Math.abs(x!)).toBeCloseTo(24 + 1 / 4 + 7 / 2, 9);
      expect(Math.abs(y!)).toBeCloseTo(30 + 1 / 4 + 7 / 2, 9);
    }
    expect(new Set(places!.map(([x, y]) => `${Math.sign(x!)} ${Math.sign(y!)}`)).size).toBe(4);
    expect(mistakes(quilt('corners of border', 'corners: open'))).toEqual([]);
  });

  test('go where it goes, and turn with it', () => {
    const [places] = placesIn(quilt('corners of border', 'corners: half', 'at: [3, -2]\n    turn: 90\n    '));
    const middle = (axis: 0 | 1): number => places!.reduce((sum, place) => sum + place[axis]! / 4, 0);
    expect(middle(0)).toBeCloseTo(3, 9);
    expect(middle(1)).toBeCloseTo(-2, 9);
    expect(Math.max(...places!.map(([x]) => x!))).toBeCloseTo(3 + 33.75, 9);
  });

  test('of a border in corners itself, and of one in many places', () => {
    const text = `${quilt('corners of blocks')}  blocks:
    at: corners of border
    layout: { border: { width: 1, inner: 5, corners: half } }
`
      .replace('within: 7', 'within: 1')
      .replace('around: 3', 'around: 1/2');
    expect(placesIn(text)[0]).toHaveLength(16);
    const places = Array.from({ length: 26 }, (_, i) => `[${90 * (i % 8) - 360}, ${90 * Math.floor(i / 8)}]`);
    const many = quilt('corners of border', 'corners: half', `at: [${places}]\n    `);
    expect(said(many)).toEqual(['too many places; found 104 corners; expected at most 100']);
  });

  test.each([
    ['corners of bordr', 'corners: half', 'no part is called "bordr"; did you mean corners of border?'],
    ['corners of sky', 'corners: half', 'no part is called "sky"'],
    ['corners of wreaths', 'corners: half', 'where "wreaths" lies depends on where this one does'],
    [
      'corners of border',
      'corners: turn',
      'the part "border" leaves no corner square free; say corners: half or corners: open in its layout',
    ],
    [
      'corners',
      'corners: half',
      'this is no place; found "corners"; expected middle, a place such as [12, -8], a list of places, or corners of a part',
    ],
  ])('%s, %s: is told in one line', (at, border, words) => {
    expect(said(quilt(at, border))).toEqual([words]);
  });

  test('of one another, and of what has none', () => {
    expect(mistakes(quilt('corners of border', 'corners: half', 'at: corners of wreaths\n    '))).toEqual([
      'quilt.yaml:7:9: parts.border.at: where "wreaths" lies depends on where this one does',
    ]);
    expect(mistakes(quilt('middle', 'corners: half', 'at: corners of wreaths\n    '))).toEqual([
      'quilt.yaml:7:9: parts.border.at: the part "wreaths" has no corners',
    ]);
  });
});
