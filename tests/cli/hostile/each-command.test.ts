/**
 * Every command against files and options that mean harm: one line for a fault, a status that is not 0, and no file
 * touched. What each reader refuses in detail is tested beside it (document, plan, template, trace); here it is that
 * every command says so, and the same.
 */

import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../../src/cli/command-list.ts';
import { emptyFolder, run } from '../run.ts';
import {
  border,
  emptyJpeg,
  explodingAnchors,
  farCurves,
  frame,
  laughs,
  longKey,
  pathEdge,
  png,
  scallops,
  strip,
  strokes,
  svg,
  zigzag,
} from './inputs.ts';

/** Whatever a terminal would act on: control characters, and those that turn the direction of text. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not be there
const STEERING = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/;

interface Refused {
  readonly argv: readonly string[];
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly lines: readonly string[];
  readonly code?: number;
}

const refuses = async ({ argv, files, lines, code = 1 }: Refused): Promise<void> => {
  const folder = emptyFolder();
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(join(folder, name, '..'), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  const before = (await run(folder, ['--help'])).left;
  const ran = await run(folder, argv);
  expect(ran.lines).toEqual(lines);
  expect(ran).toMatchObject({ code, out: '', left: before });
  expect(ran.err).not.toMatch(STEERING);
};

const WITH_PLANS: readonly (readonly string[])[] = [
  ['draw', 'plan.yaml'],
  ['mockup', 'plan.yaml', '--show', 'all'],
  ['card', 'plan.yaml'],
  ['fit', 'plan.yaml'],
  ['fit', 'plan.yaml', '--take', '1', '--in-place'],
  ['audition', 'plan.yaml'],
  ['class', 'plan.yaml', 'class.csv'],
  ['open', 'plan.yaml', '--no-browser'],
];

it('every command stands in one of the tables below', () => {
  const here = new Set([...WITH_PLANS.map(([name]) => name), 'template']);
  expect([...here].sort()).toEqual(COMMANDS.map((c) => c.name).sort());
});

const KEYS =
  'title, units, paper, foot, template, layout, swag, corner, rows, channels, fills, stitch, marks and colours';
const TEMPLATE_KEYS = 'known keys: title, units, thickness, edge, alignment, channelLines and crownEnd';
const ABOVE_ZERO = 'expected a length above zero, such as 5 1/2 or 140 mm';
const OWN =
  'plan.yaml:1:11: template: a template of your own is a file that ends in .yaml, .yml or .json; found';

/** What is wrong before anything is searched. */
const PLANS: readonly (readonly [what: string, plan: string | Uint8Array, ...lines: string[]])[] = [
  ['nothing', '', 'plan.yaml: the file is empty'],
  ['bytes', Uint8Array.of(0, 255, 128, 7), 'plan.yaml: this is not a text file'],
  [
    'letters of another time',
    Uint8Array.of(0x74, 0xe9, 0x0a),
    'plan.yaml: this is not text in UTF-8; save it again as UTF-8',
  ],
  ['anchors that explode', explodingAnchors(), 'plan.yaml: too many values'],
  ['a list that holds itself', 'a: &a [*a]\n', 'plan.yaml:1:8: a value that contains itself'],
  ['brackets without end', '['.repeat(100_000), 'plan.yaml:1: nested too deeply'],
  [
    'a key of 100,000 letters',
    longKey(),
    `plan.yaml:1:3: this key is too long; found "${'k'.repeat(40)}…"; expected a word`,
  ],
  [
    'more than a plan',
    `a: ${'x'.repeat(300_000)}`,
    'plan.yaml: the file is too large to be a plan or a template; found 300003 characters; expected at most 200000',
  ],
  [
    'a tag that asks for code',
    strip('36', 'title: !!js/function x\n'),
    'plan.yaml:4:8: a word that begins with ! has no meaning here; put the value in quotes',
  ],
  [
    'the prototype',
    strip('36', '__proto__: { a: 1 }\n'),
    `plan.yaml:4:1: the key "__proto__" is not known here; known keys: ${KEYS}`,
  ],
  [
    'a key that steers the terminal',
    strip('36', '"\\e[31m\\n\\u202ekey": 1\n'),
    `plan.yaml:4:1: the key " [31m  key" is not known here; known keys: ${KEYS}`,
  ],
  [
    '1e308',
    strip('1e308'),
    `plan.yaml:3:20: layout.strip.length: a power of ten; found 1e+308; ${ABOVE_ZERO}`,
  ],
  [
    '1e400',
    strip('1e400'),
    `plan.yaml:3:20: layout.strip.length: this does not fit here; found Infinity; ${ABOVE_ZERO}`,
  ],
  [
    'no number',
    strip('.nan'),
    `plan.yaml:3:20: layout.strip.length: this does not fit here; found NaN; ${ABOVE_ZERO}`,
  ],
  [
    '5,000 digits',
    strip('9'.repeat(5000)),
    `plan.yaml:3:20: layout.strip.length: this does not fit here; found Infinity; ${ABOVE_ZERO}`,
  ],
  [
    'less than nothing',
    strip('-36'),
    `plan.yaml:3:20: layout.strip.length: a negative length; found -36; ${ABOVE_ZERO}`,
  ],
  [
    'a strip of a kilometre',
    strip('1000 m'),
    'plan.yaml:3:20: layout.strip.length: too large; found "1000 m"; expected at most 400 in',
  ],
  [
    'a foot of a nanometre',
    strip('36', 'foot: { clearance: 0.000001 mm }\n'),
    'plan.yaml:4:20: foot.clearance: too small; found "0.000001 mm"; expected at least 1/16 in',
  ],
  [
    'a foot of a metre',
    strip('36', 'foot: { clearance: 1 m }\n'),
    'plan.yaml:4:20: foot.clearance: too large; found "1 m"; expected at most 1 in',
  ],
  [
    'fills a hair apart',
    strip('36', 'fills: { swag: { kind: stipple, spacing: 0.001 mm } }\n'),
    'plan.yaml:4:42: fills.swag.spacing: too small; found "0.001 mm"; expected at least 1/32 in',
  ],
  [
    'a thousand million swags',
    strip('36', 'swag: { repeats: 1000000000 }\n'),
    'plan.yaml:4:18: swag.repeats: too large; found 1000000000; expected at most 400',
  ],
  [
    'a frame of no number',
    frame('around: .nan, count: 8'),
    `plan.yaml:2:28: layout.frame.around: this does not fit here; found NaN; ${ABOVE_ZERO}`,
  ],
  [
    'a frame inside its motif',
    frame('around: 9, within: 8'),
    'plan.yaml:2:39: layout.frame.within: the frame must lie round its motif; found 8 in; expected more than 9 in',
  ],
  ['a file of the system', strip('36', '', '/etc/passwd'), `${OWN} "/etc/passwd"`],
  [
    'a file out of the folder',
    strip('36', '', '../../../../../../etc/shadow'),
    `${OWN} "../../../../../../etc/shadow"`,
  ],
  ['a device that never ends', strip('36', '', '/dev/zero'), `${OWN} "/dev/zero"`],
  [
    'a name that steers the terminal',
    strip('36', '', '"./a\\e]0;x\\a\\nb.yaml"'),
    'plan.yaml:1:11: template: the name of a file has no control characters; found "./a ]0;x  b.yaml"',
  ],
  [
    'a name with an end in its middle',
    strip('36', '', '"./a\\0.yaml"'),
    'plan.yaml:1:11: template: the name of a file has no control characters; found "./a .yaml"',
  ],
  [
    'a template that is not there',
    strip('36', '', './gone.yaml'),
    'gone.yaml: there is no such file; plan.yaml:1 names it under template',
  ],
  [
    'itself as its template',
    strip('36', '', './plan.yaml'),
    `plan.yaml:1:1: the key "template" is not known here; ${TEMPLATE_KEYS}`,
    'plan.yaml:1:1: the key "edge" is missing; expected a list of steps, points: as measured, or svg: with path data',
    `plan.yaml:2:1: the key "layout" is not known here; ${TEMPLATE_KEYS}`,
  ],
  [
    'a folder as its template',
    strip('36', '', './folder.yaml'),
    'folder.yaml: this is a folder and not a file; name a file in it',
  ],
];

describe.each(WITH_PLANS.map((argv) => [argv.join(' '), argv] as const))('%s', (_, argv) => {
  it.each(PLANS.map(([what, plan, ...lines]) => [what, plan, lines] as const))(
    'of a plan with %s',
    async (_what, plan, lines) => {
      await refuses({ argv, files: { 'plan.yaml': plan, 'folder.yaml/kept': '' }, lines });
    },
  );
});

const TOO_MANY = (found: string): string =>
  `plan.yaml:1:11: template: too many sections to try every swag from each to each; found ${found}; expected about 60 at most, or 20 straight ones; say swag.from, swag.to, swag.side, swag.direction`;

/** What is in order, and too much to search, or to draw. */
const TOO_MUCH: readonly (readonly [what: string, plan: string, template: string, line: string])[] = [
  ['100 arcs in a row', strip('36', '', './big.yaml'), scallops(100), TOO_MANY('100 sections')],
  ['499 lines up and down', border(60, 6, '', './big.yaml'), zigzag(499), TOO_MANY('499 sections')],
  [
    '40 straight sections of which each may lie on a line',
    strip('36', '', './big.yaml'),
    zigzag(40, 15),
    TOO_MANY('40 sections'),
  ],
  [
    '30 straight sections round a motif',
    frame('around: 9', './big.yaml'),
    zigzag(30, 15),
    'plan.yaml:1:11: template: too many sections to try every swag from each to each; found 30 sections; expected about 35 at most, or 10 straight ones; say layout.frame.count, swag.from, swag.to, swag.side, swag.direction',
  ],
];

/** The page searches while it is open; a class sews strips alone, see cli/class.test.ts. */
const SEARCHES = WITH_PLANS.filter(([name]) => name !== 'open' && name !== 'class');

describe.each(SEARCHES.map((argv) => [argv.join(' '), argv] as const))('%s', (_, argv) => {
  it.each(TOO_MUCH)('of %s', async (_what, plan, template, line) => {
    await refuses({ argv, files: { 'plan.yaml': plan, 'big.yaml': template }, lines: [line] });
  });
});

/** By themselves, and named by a plan. */
const TEMPLATES: readonly (readonly [what: string, template: string, line: string])[] = [
  [
    'curves that run off to a kilometre',
    pathEdge(farCurves(3000)),
    't.yaml:1:7: edge: path data comes to more than 20000 lines and arcs; it reaches too far, or is too fine',
  ],
  [
    'an arc as large as the solar system',
    pathEdge('M0 0 A 1e6 1e-6 30 1 1 100 0'),
    't.yaml:1:7: edge: the edge is too long; found more than a kilometre; expected at most 120 in in all',
  ],
  [
    'path data of 1e308',
    pathEdge('M0 0 L 1e308 5'),
    't.yaml:1:7: edge: path data has a number that is not finite or is beyond 1000000',
  ],
  [
    'an edge of a kilometre',
    'edge:\n  - start: [0, 0]\n  - line: { to: [1000 m, 0] }\n',
    't.yaml:3:18: edge.2.line.to.1: too large; found "1000 m"; expected at most 200 in',
  ],
  [
    '10,002 strokes',
    pathEdge(strokes(10_002)),
    't.yaml:1:7: edge: path data has 10003 commands; at most 10000 are read',
  ],
  ['anchors that explode', explodingAnchors(), 't.yaml: too many values'],
];

describe.each([
  [['template', 't.yaml']],
  [['template', 'gallery', 't.yaml']],
  [['fit', 'plan.yaml']],
  [['draw', 'plan.yaml']],
] as const)('%j', (argv) => {
  it.each(TEMPLATES)('of a template with %s', async (_what, template, line) => {
    await refuses({
      argv,
      files: { 'plan.yaml': strip('36', '', './t.yaml'), 't.yaml': template },
      lines: [line],
    });
  });
});

describe('template import', () => {
  it.each([
    [
      'entities that explode',
      laughs(),
      'd.svg: the drawing declares entities, which are not read; save it as plain SVG',
    ],
    [
      'an entity that reads a file',
      svg('<text>&x;</text>', '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>'),
      'd.svg: the drawing declares entities, which are not read; save it as plain SVG',
    ],
    [
      '100,000 groups in one another',
      svg('<g>'.repeat(100_000)),
      'd.svg: the drawing holds too much; expected at most 100000 elements, 5000 shapes, 100 deep; save the template alone',
    ],
    [
      '6,000 shapes',
      svg('<path d="M0 0L9 9L9 0Z"/>'.repeat(6000)),
      'd.svg: the drawing holds too much; expected at most 100000 elements, 5000 shapes, 100 deep; save the template alone',
    ],
    [
      'an end in its middle',
      svg().slice(0, 100),
      'd.svg: this is no well-formed SVG file; found line 1, unclosed tag: svg',
    ],
    [
      'a scale of 1e308',
      svg('<g transform="scale(1e308)"><path d="M0 0L9 9L9 0Z"/></g>'),
      'd.svg:1:120: a transform squeezes the path flat',
    ],
    [
      'copies of itself',
      svg('<g id="a"><use href="#a"/><use href="#a"/></g>'),
      'd.svg:1:102: a copy (use) holds itself, which is not followed; save the template as a path of its own',
    ],
    [
      'a path of a kilometre',
      svg('<path d="M0 0L9e5 0L9e5 9Z"/>'),
      'd.svg: the path is not of a size that a template has; found more than a kilometre of line; expected at most 10 m; say what one unit of the drawing measures, such as --scale 1mm',
    ],
  ])('of a drawing with %s', async (_, drawing, line) => {
    await refuses({ argv: ['template', 'import', 'd.svg'], files: { 'd.svg': drawing }, lines: [line] });
  });

  it('runs no script and fetches nothing', async () => {
    const folder = emptyFolder();
    const trap = join(folder, 'trap');
    const script = `<script>require("fs").writeFileSync(${JSON.stringify(trap)}, "")</script>`;
    writeFileSync(
      join(folder, 'd.svg'),
      svg(
        `${script.replaceAll('"', '&quot;')}<image href="http://127.0.0.1:9/x.png"/><path d="M10 10L150 10L150 40Z"/>`,
      ),
    );
    const ran = await run(folder, ['template', 'import', 'd.svg']);
    expect(ran).toMatchObject({ code: 0, left: ['d.svg', 'd.yaml'] });
    expect(existsSync(trap)).toBe(false);
  });
});

const NO_PICTURE =
  'p.png: this is no picture that can be read; expected a PNG or JPEG file; save it as JPEG or PNG; on a telephone set the camera to JPEG (“most compatible”), or send the picture to yourself, which often makes it one';
const DAMAGED = 'p.png: the picture is damaged, or not all of it is there; scan or save it again';

describe('template trace', () => {
  const whole = png({ width: 200, height: 100 });
  it.each([
    ['nothing in it', new Uint8Array(0), NO_PICTURE],
    ['half of it gone', whole.subarray(0, whole.length / 2), DAMAGED],
    ['a checksum that is wrong', whole.map((b, i) => (i === 60 ? b ^ 1 : b)), DAMAGED],
    ['3 bits to the pixel, which ends some decoders', png({ width: 200, height: 100, bits: 3 }), DAMAGED],
    ['a frame without a scan, which ends some decoders', emptyJpeg(), DAMAGED],
    [
      '100 million pixels',
      png({ width: 10_000, height: 10_000, rows: new Uint8Array(9) }),
      'p.png: the picture is too large; found 10000 by 10000 pixels; expected at most 60 million pixels, and 20000 on a side; scan at 300 dots per inch, or cut the picture to the template',
    ],
    [
      '60,000 by 1 pixels',
      png({ width: 60_000, height: 1 }),
      'p.png: the picture is too small to show a template; found 60000 by 1 pixels; expected at least 64 pixels on a side',
    ],
    [
      'no pixels at all',
      png({ width: 0, height: 0 }),
      'p.png: the picture is too small to show a template; found 0 by 0 pixels; expected at least 64 pixels on a side',
    ],
    [
      'nothing but black',
      whole,
      'p.png: the picture is blank, or nothing in it stands out from its ground; expected a dark shape or line on light ground, or the other way round',
    ],
    ['another kind', svg(), NO_PICTURE],
  ])('of a picture with %s', async (_, picture, line) => {
    await refuses({ argv: ['template', 'trace', 'p.png'], files: { 'p.png': picture }, lines: [line] });
  });
});

const NO_FOOT = (found: string): string =>
  `--clearance: there is no such foot; found "${found}"; expected 1/16 in to 1 in, needle to the outside of the foot`;
const NO_ROOM = 'not even one picture fits the page; take a larger paper, or narrower margins';

describe('options out of all range', () => {
  const rows: readonly (readonly [argv: readonly string[], line: string, code?: number])[] = [
    [['template', 'baluster', '--clearance', '0.000001 mm'], NO_FOOT('0.000001 mm')],
    [['template', 'baluster', '--clearance', '999999999 m'], NO_FOOT('999999999 m')],
    [['template', 'gallery', 'baluster', '--clearance', '1 m'], NO_FOOT('1 m')],
    [
      ['template', 'gallery', 'baluster', '--spans', Array(13).fill('5').join()],
      '--spans: too many; found 13; expected at most 12',
    ],
    [['template', 'gallery', 'baluster', '--margin', '5'], NO_ROOM, 1],
    [['fit', 'plan.yaml', '--take', '1', '--sheet', 's.pdf', '--margin', '4'], NO_ROOM, 1],
    [['audition', 'plan.yaml', '--fills', 'echo', '--margin', '5'], NO_ROOM, 1],
    [
      ['audition', 'plan.yaml', '--spacing', '1e-9'],
      `--spacing: a power of ten; found "1e-9"; ${ABOVE_ZERO}`,
    ],
    [
      ['audition', 'plan.yaml', '--empty', '1000'],
      '--empty: not a number that can be used; found "1000"; expected a whole number from 1 to 18',
    ],
    [
      ['draw', 'plan.yaml', '-o', 'a.png', '--width', '99999999'],
      '--width: not a number that can be used; found "99999999"; expected a whole number from 1 to 32767',
    ],
    [
      ['fit', 'plan.yaml', '--take', '99999'],
      '--take: there are not so many; found 99999; expected a number from 1 to',
      2,
    ],
    [
      ['template', 'import', 'd.svg', '--scale', '1e308'],
      '--scale: a power of ten; found "1e308"; expected a length above zero, such as 140 or 5 1/2 in',
    ],
    [
      ['template', 'trace', 'p.png', '--dpi', '1e308'],
      '--dpi: not a resolution that can be used; found "1e308"; expected dots per inch, from 100 to 2400',
    ],
  ];
  it.each(rows.map(([argv, line, code = 2]) => ({ argv, line, code })))(
    '$argv',
    async ({ argv, line, code }) => {
      const folder = emptyFolder();
      writeFileSync(join(folder, 'plan.yaml'), strip('36'));
      const ran = await run(folder, argv);
      expect(ran.lines).toHaveLength(1);
      expect(ran.lines[0]).toContain(line);
      expect(ran).toMatchObject({ code, out: '', left: ['plan.yaml'] });
    },
  );
});

describe.runIf(process.platform !== 'win32')('a file whose name steers the terminal', () => {
  it.each(['\u001b[31mred\u0007.yaml', 'two\nlines.yaml', 'back\u202ewards.yaml'])('%j', async (name) => {
    const folder = emptyFolder();
    writeFileSync(join(folder, name), strip('36'));
    const card = await run(folder, ['card', name]);
    expect(card).toMatchObject({ code: 0, err: '', left: [name] });
    expect(card.out).not.toMatch(STEERING);
    const drawn = await run(folder, ['draw', name, '-o', 'a.svg']);
    expect(drawn.code).toBe(0);
    expect(drawn.err).not.toMatch(STEERING);
    const none = await run(folder, ['draw', `no${name}`]);
    expect(none.lines).toHaveLength(1);
    expect(none.err).not.toMatch(STEERING);
  });
});
