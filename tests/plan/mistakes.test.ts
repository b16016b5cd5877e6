import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { runs } from '../support/runs.ts';
import { RAFFLE } from './sample.ts';

const lines = (text: string): string[] => {
  const reading = readPlan(text, 'plan.yaml');
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

const LENGTH = 'expected a length above zero, such as 5 1/2 or 140 mm';
const KEYS =
  'known keys: title, units, paper, foot, template, layout, swag, corner, rows, channels, fills, stitch, marks and colours';

/** What is written in the sample, what a person writes in its stead, and what she reads then. */
const MISTAKES: readonly (readonly [string, string, readonly string[]])[] = [
  [
    '    width: 6',
    '    widht: 6',
    ['plan.yaml:8:5: layout.border: the key "widht" is not known here; did you mean "width"?'],
  ],
  [
    'bottom: 60',
    'bottom: 6',
    [
      'plan.yaml:9:46: layout.border.inner.bottom: opposite sides of a quilt are nearly equal, and this one is 54 1/8 in shorter than the top side; found 6 in; expected about 60 1/8 in; measure both again',
    ],
  ],
  ['    width: 6\n', '', [`plan.yaml:7:3: layout.border: the key "width" is missing; ${LENGTH}`]],
  ['width: 6', 'width:', [`plan.yaml:8:11: layout.border.width: no value is written; ${LENGTH}`]],
  [
    'width: 6',
    'width: 5//2',
    [`plan.yaml:8:12: layout.border.width: not a number or a fraction; found "5//2"; ${LENGTH}`],
  ],
  [
    'width: 6',
    'width: 6,5',
    [
      `plan.yaml:8:12: layout.border.width: a comma in a number; write a decimal point: 6.5; found "6,5"; ${LENGTH}`,
    ],
  ],
  [
    'width: 6',
    'width: 1/0',
    [`plan.yaml:8:12: layout.border.width: a fraction with a zero below the line; found "1/0"; ${LENGTH}`],
  ],
  [
    'width: 6',
    'width: 6 oz',
    [`plan.yaml:8:12: layout.border.width: a weight, not a length; found "6 oz"; ${LENGTH}`],
  ],
  ['width: 6', 'width: -6', [`plan.yaml:8:12: layout.border.width: a negative length; found -6; ${LENGTH}`]],
  ['width: 6', 'width: 0', [`plan.yaml:8:12: layout.border.width: a length of nothing; found 0; ${LENGTH}`]],
  [
    'width: 6',
    'width: 1e308',
    [`plan.yaml:8:12: layout.border.width: a power of ten; found 1e+308; ${LENGTH}`],
  ],
  [
    'width: 6',
    'width: .nan',
    [`plan.yaml:8:12: layout.border.width: this does not fit here; found NaN; ${LENGTH}`],
  ],
  [
    'width: 6',
    'width: [6]',
    [`plan.yaml:8:12: layout.border.width: this does not fit here; found a list of 1; ${LENGTH}`],
  ],
  [
    'width: 6',
    'width: 100',
    ['plan.yaml:8:12: layout.border.width: too large; found 100; expected at most 60 in'],
  ],
  [
    'top: 60 1/8',
    'top: 1000 m',
    ['plan.yaml:9:19: layout.border.inner.top: too large; found "1000 m"; expected at most 400 in'],
  ],
  ['top: 60 1/8, ', '', [`plan.yaml:9:5: layout.border.inner: the key "top" is missing; ${LENGTH}`]],
  [
    'inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }',
    'inner: [60, 72, 60, 72]',
    [
      'plan.yaml:9:12: layout.border.inner: this does not fit here; found a list of 4; expected top, right, bottom and left, or one length for all four',
    ],
  ],
  [
    'margin: 1/2',
    'margin: 3',
    [
      'plan.yaml:10:13: layout.border.margin: the margins leave no room for swags in a width of 6 in; found 3 in and 3 in, 6 in together; expected at most 5 3/4 in together',
    ],
  ],
  [
    'margin: 1/2',
    'margin: { iner: 1/2 }',
    ['plan.yaml:10:15: layout.border.margin: the key "iner" is not known here; did you mean "inner"?'],
  ],
  [
    'corners: turn',
    'corners: trun',
    [
      'plan.yaml:12:14: layout.border.corners: this does not fit here; found "trun"; expected turn, across, half, meet, open or auto; did you mean "turn"?',
    ],
  ],
  [
    'corners: turn',
    'corners: across',
    [
      'plan.yaml:12:14: layout.border.corners: a swag stands across a corner only where it leaves the outer seam: from the inner one there is no cloth between its ends; found across, from the inner seam; expected turn, half, meet, open; write from: outer, or corners: turn',
    ],
  ],
  [
    'from: inner',
    'from: seam',
    ['plan.yaml:11:11: layout.border.from: this does not fit here; found "seam"; expected inner or outer'],
  ],
  [
    'clearance: 1/4',
    'clearance: 0.000001 mm',
    ['plan.yaml:4:20: foot.clearance: too small; found "0.000001 mm"; expected at least 1/16 in'],
  ],
  [
    'clearance: 1/4',
    'clearance: 1 nm',
    [`plan.yaml:4:20: foot.clearance: the unit "nm" is not known; found "1 nm"; ${LENGTH}`],
  ],
  [
    'foot: { clearance: 1/4 }',
    'foot: 1/4',
    ['plan.yaml:4:7: foot: this does not fit here; found "1/4"; expected a group such as { clearance: 1/4 }'],
  ],
  [
    'units: in',
    'units: feet',
    ['plan.yaml:2:8: units: this does not fit here; found "feet"; expected in, cm or mm'],
  ],
  [
    'paper: letter',
    'paper: leter',
    [
      'plan.yaml:3:8: paper: this does not fit here; found "leter"; expected letter, a4, legal, tabloid, a3 or letter-a4; did you mean "letter"?',
    ],
  ],
  [
    'template: baluster\n',
    '',
    [
      'plan.yaml:1:1: the key "template" is missing; expected a name such as baluster, a path such as ./mine.yaml, or a list of them',
    ],
  ],
  [
    'template: baluster',
    'template: [newel, finial, newel]',
    ['plan.yaml:5:27: template.3: "newel" is listed twice; expected each template once'],
  ],
  [
    'template: baluster',
    'template: []',
    ['plan.yaml:5:11: template: too few; found an empty list; expected at least 1 entry'],
  ],
  [
    'layout:\n',
    'layout:\n  strip: { length: 60, width: 6 }\n',
    [
      'plan.yaml:7:3: layout: more than one layout; found strip and border; expected one of strip, border or frame',
    ],
  ],
  [
    '  border:',
    '  boarder:',
    ['plan.yaml:7:3: layout: the key "boarder" is not known here; did you mean "border"?'],
  ],
  ['  from: 1', '  from: 0', ['plan.yaml:14:9: swag.from: too small; found 0; expected at least 1']],
  [
    '  from: 1',
    '  from: [1]',
    [
      "plan.yaml:14:9: swag.from: this does not fit here; found a list of 1; expected a section's number or name, heel, crown or auto",
    ],
  ],
  [
    '  from: 1',
    '  from: crown',
    [
      'plan.yaml:14:9: swag.from: nothing of the edge is left after the crown end; found crown; expected a section, or heel; to begin at the crown end write direction: crown-first',
    ],
  ],
  [
    '  to: crown',
    '  to: heel',
    [
      'plan.yaml:15:7: swag.to: nothing of the edge lies before the heel; found heel; expected a section, or crown; to end at the heel write direction: crown-first',
    ],
  ],
  [
    '  from: 1\n  to: crown',
    '  from: 3\n  to: 2',
    [
      'plan.yaml:15:7: swag.to: the swag ends before it starts; found from 3 to 2; expected sections counted from the heel',
    ],
  ],
  [
    'repeats: auto',
    'repeats: 7.5',
    [
      'plan.yaml:19:12: swag.repeats: not a whole number; found 7.5; expected a whole number such as 8, or odd, even, 5 to 7, about 9, at least 5',
    ],
  ],
  ['repeats: auto', 'repeats: 0', ['plan.yaml:19:12: swag.repeats: too small; found 0; expected at least 1']],
  [
    'repeats: auto',
    'repeats: [8, 9]',
    [
      'plan.yaml:19:12: swag.repeats: a list of repeats is for four sides; found a list of 2; expected a whole number such as 8, or odd, even, 5 to 7, about 9, at least 5; or one for each side',
    ],
  ],
  [
    'repeats: auto',
    'repeats: { tpo: 8 }',
    ['plan.yaml:19:14: swag.repeats: the key "tpo" is not known here; did you mean "top"?'],
  ],
  [
    'gap: 0',
    'gap: atuo',
    [
      'plan.yaml:20:8: swag.gap: this does not fit here; found "atuo"; expected a length such as 9, about 9, 8 to 10, at least 8 or at most 10, or auto; did you mean "auto"?',
    ],
  ],
  [
    'gap: 0',
    'gap: wide',
    [
      'plan.yaml:20:8: swag.gap: no number; found "wide"; expected a length such as 9, about 9, 8 to 10, at least 8 or at most 10',
    ],
  ],
  ['gap: 0', 'gap:1/4', ['plan.yaml:20:3: a space is needed after the colon']],
  [
    'inward: [1/4, 1/8]',
    'inward: [1/4, thin]',
    [`plan.yaml:21:43: channels.inward.2: no number; found "thin"; ${LENGTH}`],
  ],
  [
    'channels: { outward: [1/4], inward: [1/4, 1/8] }',
    'channels: [1/4]',
    [
      'plan.yaml:21:11: channels: this does not fit here; found a list of 1; expected a group such as { outward: [1/4], inward: [1/4, 1/8] }',
    ],
  ],
  [
    'swag: feather',
    'swag: { kind: stipple, seed: -1 }',
    ['plan.yaml:22:39: fills.swag.seed: too small; found -1; expected a whole number from 0 to 999999999'],
  ],
  [
    'swag: feather',
    'swag: { spacing: 1/4 }',
    ['plan.yaml:22:10: fills.swag: the key "kind" is missing; expected a name of at most 40 characters'],
  ],
  [
    'round: 1/16',
    'round: 1/10',
    [
      'plan.yaml:24:17: marks.round: no tape is divided like this; found "1/10"; expected 1/8, 1/16, 1/32 or 1/64 in, or 1, 0.5 or 0.1 mm',
    ],
  ],
  [
    'length: 1/10',
    'length: 10',
    ['plan.yaml:23:19: stitch.length: too large; found 10; expected at most 1/2 in'],
  ],
  [
    'swag:\n',
    'width: 6\nswag:\n',
    ['plan.yaml:13:1: the key "width" is not known here; it belongs under layout.border'],
  ],
  ['units: in', 'weather: red', [`plan.yaml:2:1: the key "weather" is not known here; ${KEYS}`]],
  [
    '  from: 1',
    '  from: 1\n  from: 2',
    ['plan.yaml:15:3: swag.from: the key "from" is written twice; the first one is on line 14'],
  ],
];

test('a mistake that two tests of the schema find is told once', () => {
  const text =
    'template: a\nlayout: { strip: { length: 36, width: 6 } }\nswag: { repeats: 999999999999999999999999 }\n';
  expect(lines(text)).toEqual([
    'plan.yaml:3:18: swag.repeats: not a whole number; found 1e+24; expected a whole number such as 8, or odd, even, 5 to 7, about 9, at least 5',
  ]);
});

describe('mistakes in a plan', () => {
  test('the sample has none', () => {
    expect(lines(RAFFLE)).toEqual([]);
  });

  test.each(MISTAKES)('%j written as %j', (right, wrong, expected) => {
    expect(RAFFLE).toContain(right);
    expect(lines(RAFFLE.replace(right, wrong))).toEqual(expected);
  });

  test('the table above ran whole', () => {
    expect(MISTAKES).toHaveLength(53);
  });

  test.each([
    ['', ['plan.yaml: the file is empty']],
    [
      '- a',
      [
        'plan.yaml:1:1: this does not fit here; found a list of 1; expected a plan: the keys template and layout at least',
      ],
    ],
    [
      'layout:\n  border:\n  width: 6\n  inner: 60\ntemplate: x\n',
      [
        'plan.yaml:2:10: layout.border: no value is written; expected a group with width and inner, or width and outer',
        'plan.yaml:3:3: layout: the key "width" is not known here; it belongs under layout.border',
        'plan.yaml:4:3: layout: the key "inner" is not known here; it belongs under layout.border',
      ],
    ],
    [
      'template: x\nlayout: { strip: { length: 60, width: 6 } }\nswag: { repeats: [1, 2, 3, 4] }',
      ['plan.yaml:3:18: swag.repeats: a strip has one side; found repeats for 4 sides; expected one number'],
    ],
    [
      'template: x\nlayout: { frame: { count: 2, around: 9 } }',
      ['plan.yaml:2:27: layout.frame.count: too small; found 2; expected at least 3'],
    ],
    [
      'template: x\nlayout: { frame: { count: 8 } }',
      [
        'plan.yaml:2:18: layout.frame: nothing says what the frame lies round; expected around for a round motif, or block for a square or rectangular one',
      ],
    ],
    [
      'template: x\nlayout: { frame: { around: 9, block: 9 } }',
      [
        'plan.yaml:2:18: layout.frame: a frame lies round one thing; found around and block; expected around for a round motif, or block for a square or rectangular one',
      ],
    ],
    [
      'template: x\nlayout: { frame: { block: 9 } }',
      [
        'plan.yaml:2:18: layout.frame: a frame round a block needs its limit; expected within: the greatest width across of the finished frame',
      ],
    ],
    [
      'template: x\nlayout: { frame: { block: 9, within: 16, count: 8 } }',
      [
        'plan.yaml:2:18: layout.frame: a frame round a block has sides, each with its own count; found count; expected swag.repeats: one number, or one per side',
      ],
    ],
    [
      'template: x\nlayout: { frame: { around: 9, corners: turn } }',
      [
        'plan.yaml:2:18: layout.frame: a round frame has no corners; found corners; expected corners only with block',
      ],
    ],
    [
      'template: x\nlayout: { frame: { block: { width: 9, height: 12 }, clearance: 1/2, within: 13 } }',
      [
        'plan.yaml:2:77: layout.frame.within: the limit leaves no room for swags round the block; found 13 in; expected at least 13 1/2 in',
      ],
    ],
    [
      'template: x\nlayout: { frame: { count: 8, around: 9 } }\nswag: { use: at least 80 % }',
      [
        'plan.yaml:3:14: swag.use: without a limit a round frame takes the room that it needs; expected layout.frame.within, the greatest width across',
      ],
    ],
    [
      'template: x\nlayout: { frame: { count: 8, around: 9, within: 9 } }\nswag: { repeats: 8 }',
      [
        'plan.yaml:2:49: layout.frame.within: the frame must lie round its motif; found 9 in; expected more than 9 in',
        'plan.yaml:3:18: swag.repeats: a round frame has no sides to repeat along; expected layout.frame.count',
      ],
    ],
    [
      'units: mm\ntemplate: x\nlayout: { strip: { length: 60, width: 6 } }\n',
      ['plan.yaml:3:39: layout.strip.width: too small; found 6; expected at least 6.4 mm'],
    ],
    [
      '__proto__: { x: 1 }\ntemplate: x\nlayout: { strip: { length: 60, width: 6 } }\n',
      [`plan.yaml:1:1: the key "__proto__" is not known here; ${KEYS}`],
    ],
  ])('%j', (text, expected) => {
    expect(lines(text)).toEqual(expected);
  });

  test('every mistake in one file has its own line, in the order of the file', () => {
    const wrong = RAFFLE.replace('width: 6', 'width: wide')
      .replace('side: inside', 'side: left')
      .replace('kind', 'x');
    expect(lines(wrong).map((l) => l.split(':')[1])).toEqual(['8', '17']);
  });

  test('a name that would move the cursor stays one plain line', () => {
    const [line, ...rest] = lines(`${RAFFLE}"\\e[2J\\nplan.yaml: all is well": 1\n`);
    expect(rest).toEqual([]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not be there
    expect(line).not.toMatch(/[\u0000-\u001f]/);
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
      fc.property(fc.nat({ max: RAFFLE.length }), fc.nat({ max: 12 }), scraps, (at, cut, scrap) => {
        const text = RAFFLE.slice(0, at) + scrap + RAFFLE.slice(at + cut);
        for (const line of lines(text)) {
          expect(line).toMatch(/^plan\.yaml[^\n]*: /);
          expect(line).not.toMatch(/\[object|undefined|Invalid/);
        }
      }),
      runs(800, 1),
    );
  });
});
