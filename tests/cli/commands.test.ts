import * as files from 'node:fs/promises';
import { link, mkdir, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { loadImage } from '@napi-rs/canvas';
import { DOMParser } from '@xmldom/xmldom';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import type { OpenFile } from '../../src/cli/io.ts';
import { readPath } from '../output/svg/read-path.ts';
import { emptyFolder, filesBut, run, systemError } from './run.ts';

/** A template that is one circular arc, so that everything follows by hand. */
const ARC = `title: Spindle
units: in
thickness: 1/4
edge:
  - start: [0, 0]
  - arc: { to: [6, 0], rise: 1 1/2 }
`;

const PLAN = `title: Guild sampler
units: in
template: ./spindle.yaml
layout:
  strip: { length: 36, width: 6, margin: 1/4 }
`;

const guildFolder = async (): Promise<string> => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'sampler.yaml'), PLAN);
  await writeFile(join(folder, 'spindle.yaml'), ARC);
  return folder;
};

const INPUTS = ['sampler.yaml', 'spindle.yaml'];

const stitches = (svg: string) => {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml');
  const stitch = Array.from(root.getElementsByTagName('g')).find((g) => g.getAttribute('id') === 'stitch')!;
  return Array.from(stitch.getElementsByTagName('path')).map((p) => ({
    repeat: p.getAttribute('data-repeat'),
    half: p.getAttribute('data-half'),
    segments: readPath(p.getAttribute('d')!).flat(),
  }));
};

describe('draw', () => {
  it('writes an SVG whose stitching follows from the template by hand', async () => {
    const folder = await guildFolder();
    const ran = await run(folder, ['draw', 'sampler.yaml']);
    expect(ran).toMatchObject({ code: 0, out: '', left: ['sampler.svg', ...INPUTS] });
    const halves = stitches(await readFile(join(folder, 'sampler.svg'), 'utf8'));
    expect(halves.length).toBeGreaterThan(1);
    expect(halves[0]).toMatchObject({ repeat: 'strip 1', half: 'first' });
    // r = (c² + 4h²)/(8h) (Machinery's Handbook, 31st ed., p. 83): chord 6 in and rise 1 1/2 in are a radius of
    // 3 3/4 in. The needle runs a clearance of 1/4 in outside it: 4 in, or inside: 3 1/2 in.
    for (const { segments } of halves)
      for (const s of segments) {
        if (s.kind !== 'arc') throw new Error('the stitching of an arc is an arc');
        expect([101.6, 88.9].some((r) => Math.abs(s.radius - r) < 1e-6)).toBe(true);
      }
    // The halves of all repeats follow one another from one end of the strip to the other.
    const ends = halves.flatMap(({ segments }) => [segments[0]!.from[0], segments.at(-1)!.to[0]]);
    expect(Math.min(...ends)).toBeGreaterThanOrEqual(-1e-6);
    expect(Math.max(...ends)).toBeLessThanOrEqual(36 * 25.4 + 1e-6);
    const spans = new Set(halves.map((h) => h.repeat)).size;
    expect(halves.length).toBe(2 * spans);
    expect(ran.lines).toEqual([
      expect.stringMatching(/^Spindle: .*, (heel|crown) first, template (in|out)side the swags$/),
      expect.stringMatching(new RegExp(`^strip: ${spans} swags of .* in, .* in deep`)),
      'sampler.svg: the whole strip, a drawing at true size',
    ]);
  });

  it('writes a PNG of the width asked for, and a PDF of one page', async () => {
    const folder = await guildFolder();
    const png = await run(folder, ['draw', 'sampler.yaml', '-o', 'a.png', '--width', '640']);
    expect(png.code).toBe(0);
    expect((await loadImage(join(folder, 'a.png'))).width).toBe(640);
    expect(png.lines.at(-1)).toMatch(/^a\.png: the whole strip, a picture of 640 by \d+ pixels$/);
    const pdf = await run(folder, ['draw', 'sampler.yaml', '--format', 'pdf']);
    expect(pdf.code).toBe(0);
    const document = await PDFDocument.load(await readFile(join(folder, 'sampler.pdf')));
    expect(document.getPageCount()).toBe(1);
    expect(document.getPage(0).getWidth()).toBeGreaterThan(36 * 72);
  });

  it('sends the picture to stdout when asked, with the messages on stderr', async () => {
    const folder = await guildFolder();
    const ran = await run(folder, ['draw', 'sampler.yaml', '-o', '-']);
    expect(ran).toMatchObject({ code: 0, left: INPUTS });
    expect(ran.out).toMatch(/^<\?xml[\s\S]*<\/svg>\n$/);
    expect(ran.lines.length).toBe(3);
  });

  it('prints data that agrees with the picture', async () => {
    const folder = await guildFolder();
    const ran = await run(folder, ['draw', 'sampler.yaml', '--json']);
    const data = JSON.parse(ran.out);
    expect(data).toMatchObject({ units: 'mm and degrees', file: 'sampler.svg', format: 'svg', corner: null });
    const [side] = data.sides;
    const halves = stitches(await readFile(join(folder, 'sampler.svg'), 'utf8'));
    expect(halves.length).toBe(2 * side.repeats);
    const xs = halves
      .filter((h) => h.repeat === 'strip 1')
      .flatMap((h) => h.segments.flatMap((s) => [s.from[0], s.to[0]]));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(side.span, 6);
    expect(side.repeats * (side.span + side.gap)).toBeCloseTo(914.4, 6);
  });

  it('leaves out layers and shows one repeat when asked', async () => {
    const folder = await guildFolder();
    await run(folder, [
      'draw',
      'sampler.yaml',
      '--without',
      'template,notes',
      '--without',
      'marks',
      '--show',
      'repeat',
    ]);
    const svg = await readFile(join(folder, 'sampler.svg'), 'utf8');
    expect([...svg.matchAll(/<g id="(\w+)"/g)].map((m) => m[1])).toEqual([
      'fill',
      'way',
      'border',
      'channel',
      'stitch',
    ]);
    expect(stitches(svg).map((h) => h.half)).toEqual(['first', 'second']);
  });
});

describe('mockup', () => {
  it('writes sheets, and says how many', async () => {
    const folder = await guildFolder();
    const ran = await run(folder, ['mockup', 'sampler.yaml', '--paper', 'a4', '--json']);
    expect(ran).toMatchObject({ code: 0, left: ['sampler-mockup.pdf', ...INPUTS] });
    const data = JSON.parse(ran.out);
    expect(data).toMatchObject({ file: 'sampler-mockup.pdf', paper: 'a4', measured: { short: 1, long: 1 } });
    const document = await PDFDocument.load(await readFile(join(folder, 'sampler-mockup.pdf')));
    // The cover, and the sheets.
    expect(document.getPageCount()).toBe(data.sheets + 1);
    expect(ran.lines.at(-1)).toContain(`sampler-mockup.pdf: the whole strip, ${data.sheets} sheets of A4`);
    expect(ran.lines.at(-1)).toMatch(new RegExp(`; ${data.sheets + 1} pages with the cover$`));
  });

  it('has room on its cover for all that it says, cautions too, whatever is printed', async () => {
    const folder = await guildFolder();
    for (const name of ['raffle-border', 'wreath-frame', 'medallion-frame', 'guild-strip']) {
      const file = join(import.meta.dirname, `../../samples/${name}.yaml`);
      const ran = await run(folder, ['mockup', file, '-o', `${name}.pdf`, '--json', '--paper', 'letter']);
      expect(ran.code).toBe(0);
      const document = await PDFDocument.load(await readFile(join(folder, `${name}.pdf`)));
      expect(document.getPageCount(), name).toBe(JSON.parse(ran.out).sheets + 1);
    }
  });

  it.each(['letter', 'a4'])(
    'prints the same sheets of %s again, corrected, and says by how much',
    async (paper) => {
      const folder = await guildFolder();
      const printing = async (...more: string[]) => {
        const ran = await run(folder, ['mockup', 'sampler.yaml', '--paper', paper, '--json', ...more]);
        const { orientation, labels, measured } = JSON.parse(ran.out);
        return { orientation, labels, measured, last: ran.lines.at(-1) };
      };
      const { measured: none, last, ...sheets } = await printing();
      expect(none).toEqual({ short: 1, long: 1 });
      expect(last).toMatch(/pages with the cover$/);
      expect(await printing('--measured', '1.98,2')).toEqual({
        ...sheets,
        measured: { short: expect.closeTo(0.99, 12), long: 1 },
        last: 'corrected for your printer: short edge × 1.0101, long edge × 1.0000',
      });
      expect(await printing('--measured', '2,1.98')).toMatchObject(sheets);
    },
  );

  it('says that a viewer fitted the page where both edges are off alike, and not where a printer did it', async () => {
    const folder = await guildFolder();
    const last = async (measured: string) =>
      (await run(folder, ['mockup', 'sampler.yaml', '--measured', measured])).lines.at(-1);
    // 3 in 100 and more, both edges: 1.88 and 1.94 of the 2 in square; a viewer may also enlarge.
    for (const [measured, size] of [
      ['1.88,1.88', 94],
      ['1.94,1.94', 97],
      ['1.91,1.88', 95],
      ['2.08,2.07', 104],
    ] as const)
      expect(await last(measured)).toBe(
        `both edges came out at about ${size} %: most likely the viewer fitted the page to the paper. Print at 100 % / actual size, and measure that print`,
      );
    for (const measured of ['1.88,1.99', '1.96,1.96', '1.9,2.1', '2,2.08'])
      expect(await last(measured)).toMatch(/^corrected for your printer: /);
  });

  it('makes the same bytes again', async () => {
    const folder = await guildFolder();
    for (const name of ['a.pdf', 'b.pdf']) await run(folder, ['mockup', 'sampler.yaml', '-o', name]);
    expect(Buffer.compare(await readFile(join(folder, 'a.pdf')), await readFile(join(folder, 'b.pdf')))).toBe(
      0,
    );
  });

  it.each([
    [
      ['--paper', 'a5'],
      '--paper: not known; found "a5"; expected one of letter, a4, legal, tabloid, a3, letter-a4',
    ],
    [
      ['--orientation', 'sideways'],
      '--orientation: not known; found "sideways"; expected one of auto, portrait, landscape',
    ],
    [
      ['--margin', '1/8'],
      '--margin: nearer to the paper\'s edge than printers reach; found "1/8"; expected at least 1/4 in (6.35 mm)',
    ],
    [
      ['--overlap', '0'],
      '--overlap: the overlap is too narrow to tape; found "0"; expected at least 1/4 in (6.35 mm)',
    ],
    [['--show', 'strip 99'], /^--show: not in this design; found "strip 99"; expected one of all, /],
    [['--measured', '3,2'], /^--measured: too far off to be a printer's error; found "3"/],
  ])('%j is wrong use', async (options, line) => {
    const folder = await guildFolder();
    const ran = await run(folder, ['mockup', 'sampler.yaml', ...options]);
    expect(ran).toMatchObject({ code: 2, out: '', left: INPUTS });
    expect(ran.lines).toEqual([typeof line === 'string' ? line : expect.stringMatching(line)]);
  });

  it('reads bare lengths in the units of the plan', async () => {
    const folder = await guildFolder();
    await writeFile(
      join(folder, 'sampler.yaml'),
      PLAN.replace('units: in', 'units: mm').replace(
        '36, width: 6, margin: 1/4',
        '914, width: 152, margin: 6',
      ),
    );
    expect((await run(folder, ['mockup', 'sampler.yaml', '--margin', '10'])).code).toBe(0);
    const ran = await run(folder, ['mockup', 'sampler.yaml', '--margin', '1/2']);
    expect(ran.code).toBe(2);
  });
});

describe('template', () => {
  it("checks a template of the user's own and prints its outline", async () => {
    const folder = await guildFolder();
    const ran = await run(folder, ['template', 'spindle.yaml', '--json']);
    expect(ran).toMatchObject({ code: 0, left: ['sampler.yaml', 'spindle-outline.pdf', 'spindle.yaml'] });
    const data = JSON.parse(ran.out);
    expect(data.heelToCrownEnd).toBeCloseTo(152.4, 9);
    expect(data.tightestRadius).toBeCloseTo(95.25, 9);
    // Length r·4·atan(2h/c) of the edge (the same page), and the stitching's in the share of the radii.
    const turn = 4 * Math.atan(3 / 6);
    expect(data.edgeLength).toBeCloseTo(95.25 * turn, 9);
    expect(data.stitchedLength).toBeCloseTo(101.6 * turn, 9);
    expect(ran.lines[0]).toBe('Spindle: 6 in (152.4 mm) from heel to crown end, 1 section');
  });

  it('says where a slight kink begins a section that has no name', async () => {
    const folder = emptyFolder();
    const edge = (name: string): string =>
      `title: Kink\nunits: in\nedge:\n  - start: [0, 0]\n  - line: { to: [4, 0] }\n${name}  - line: { to: [8, 3/4] }\n`;
    await writeFile(join(folder, 'kink.yaml'), edge(''));
    const ran = await run(folder, ['template', 'kink.yaml']);
    // The turn is atan(3/16), 10.6°.
    expect(ran.lines).toContain(
      'a kink of 11° at 4 in (101.6 mm) across is taken as a corner: section 2 begins there',
    );
    await writeFile(join(folder, 'named.yaml'), edge('  - break: second\n'));
    expect((await run(folder, ['template', 'named.yaml'])).lines.join('\n')).not.toContain('kink of');
  });

  it('knows the templates that come along by name', async () => {
    const folder = emptyFolder();
    const ran = await run(folder, ['template', 'baluster']);
    expect(ran).toMatchObject({ code: 0, out: '', left: ['baluster-outline.pdf'] });
    const wrong = await run(folder, ['template', 'balluster']);
    expect(wrong.code).toBe(1);
    expect(wrong.lines).toEqual([
      expect.stringMatching(
        /^there is no template named "balluster"; expected one of .*baluster.*, or a path; did you mean "baluster"\?$/,
      ),
    ]);
  });
});

describe('a plan that names its template', () => {
  it.each([
    [
      'balluster',
      /^sampler\.yaml:3:11: template: there is no template named "balluster"; .*did you mean "baluster"\?$/,
    ],
    ['./none.yaml', /^none\.yaml: there is no such file; sampler\.yaml:3 names it under template$/],
    ['spindle', /write \.\/spindle\.yaml for the file in this folder$/],
    [
      '../../../../../dev/zero',
      /^sampler\.yaml:3:11: template: a template of your own is a file that ends in \.yaml, \.yml or \.json; found /,
    ],
    [
      '/dev/zero',
      /^sampler\.yaml:3:11: template: a template of your own is a file that ends in \.yaml, \.yml or \.json; found /,
    ],
    ['.', /no template named/],
  ])('%s gives one line', async (name, line) => {
    const folder = await guildFolder();
    await writeFile(join(folder, 'sampler.yaml'), PLAN.replace('./spindle.yaml', name));
    const ran = await run(folder, ['mockup', 'sampler.yaml']);
    expect(ran).toMatchObject({ code: 1, out: '', left: INPUTS });
    expect(ran.lines).toEqual([expect.stringMatching(line)]);
  });

  it('is told where a row names one that is not there', async () => {
    const folder = await guildFolder();
    const rows = 'rows: [{ at: 1, template: balluster }]\n';
    await writeFile(join(folder, 'sampler.yaml'), `${PLAN}${rows}`);
    const ran = await run(folder, ['mockup', 'sampler.yaml']);
    const line = PLAN.split('\n').length;
    expect(ran.lines).toEqual([
      expect.stringMatching(
        new RegExp(`^sampler\\.yaml:${line}:27: rows\\.1\\.template: there is no template named "balluster"`),
      ),
    ]);
  });

  it('finds it beside the plan, wherever the command runs', async () => {
    const folder = await guildFolder();
    await mkdir(join(folder, 'elsewhere'));
    const ran = await run(join(folder, 'elsewhere'), ['draw', '../sampler.yaml']);
    expect(ran).toMatchObject({ code: 0, left: ['sampler.svg'] });
  });

  it('tells the mistakes of all its templates, each with its place', async () => {
    const folder = await guildFolder();
    await writeFile(
      join(folder, 'sampler.yaml'),
      PLAN.replace('./spindle.yaml', '[./spindle.yaml, ./b.yaml]'),
    );
    await writeFile(join(folder, 'spindle.yaml'), ARC.replace('thickness', 'thicknes'));
    await writeFile(join(folder, 'b.yaml'), ARC.replace('1 1/2', 'high'));
    const ran = await run(folder, ['mockup', 'sampler.yaml']);
    expect(ran.code).toBe(1);
    expect(ran.lines.length).toBe(2);
    expect(ran.lines[0]).toMatch(/^spindle\.yaml:3:1: .*did you mean "thickness"\?$/);
    expect(ran.lines[1]).toMatch(/^b\.yaml:6:\d+: /);
  });
});

describe('a fill that does not exist', () => {
  it.each(['fit', 'card', 'draw', 'mockup', 'audition'])(
    'is refused by %s, with its place in the plan',
    async (command) => {
      const folder = await guildFolder();
      await writeFile(join(folder, 'sampler.yaml'), `${PLAN}fills: { swag: featther }\n`);
      const ran = await run(folder, [command, 'sampler.yaml']);
      expect(ran.code).toBe(1);
      expect(ran.lines).toHaveLength(1);
      expect(ran.lines[0]).toMatch(
        /^sampler\.yaml:6:16: fills\.swag: no fill named "featther"; .*did you mean .feather.\?$/,
      );
      expect((await readdir(folder)).sort()).toEqual(INPUTS);
    },
  );
});

describe('a key that changes nothing', () => {
  const COMMANDS = ['fit', 'card', 'draw', 'mockup', 'audition'] as const;

  it.each(COMMANDS)('is refused in a fill by %s', async (command) => {
    const folder = await guildFolder();
    const fills = '{ swag: { kind: feather, seed: 3 }, background: { kind: stipple, angle: 45 } }';
    await writeFile(join(folder, 'sampler.yaml'), `${PLAN}fills: ${fills}\n`);
    const ran = await run(folder, [command, 'sampler.yaml']);
    expect(ran).toMatchObject({
      code: 1,
      lines: [
        'sampler.yaml:6:39: fills.swag.seed: feather has no seed; leave it out; seed is for stipple, loops, leaves, pebbles and swirls',
        'sampler.yaml:6:80: fills.background.angle: stipple has no angle; leave it out; angle is for crosshatch and lines',
      ],
    });
  });

  it.each(COMMANDS)('is told of by %s where there are no channels to turn at points', async (command) => {
    const folder = await guildFolder();
    await writeFile(join(folder, 'sampler.yaml'), `${PLAN}channels: { points: pivot }\n`);
    const ran = await run(folder, [command, 'sampler.yaml']);
    expect(ran.code).toBe(0);
    expect(ran.lines[0]).toBe(
      'sampler.yaml:6:21: channels.points: this changes nothing, because the plan has no channels',
    );
  });
});

describe('a name in letters that the font lacks', () => {
  const TITLE = 'title: "猫 🧵 Łódź ½″"\n';
  const SAID = 'the font has no “猫” and “🧵”: another sign is printed in their place';

  it.each([
    [true, ['mockup', 'sampler.yaml']],
    [true, ['card', 'sampler.yaml', '-o', 'card.pdf']],
    [true, ['draw', 'sampler.yaml', '-o', 'a.png']],
    [true, ['draw', 'sampler.yaml', '-o', 'a.pdf']],
    [true, ['fit', 'sampler.yaml', '--sheet', 'a.pdf']],
    [true, ['audition', 'sampler.yaml', '--fills', 'echo']],
    [true, ['template', 'spindle.yaml']],
    [true, ['template', 'gallery', 'spindle.yaml', '--spans', '6']],
    [false, ['draw', 'sampler.yaml', '-o', 'a.svg']],
    [false, ['card', 'sampler.yaml']],
  ])('is told of where it is printed (%s): %j', async (told, argv) => {
    const folder = await guildFolder();
    await writeFile(join(folder, 'sampler.yaml'), `${TITLE}${PLAN.replace(/^title:.*\n/m, '')}`);
    await writeFile(join(folder, 'spindle.yaml'), `${TITLE}${ARC.replace(/^title:.*\n/m, '')}`);
    const ran = await run(folder, argv);
    expect(ran.code).toBe(0);
    expect(ran.lines.filter((line) => line === SAID)).toHaveLength(told ? 1 : 0);
  });

  it('is none in letters that it has', async () => {
    const folder = await guildFolder();
    await writeFile(
      join(folder, 'sampler.yaml'),
      `title: "Łódź ½″ Привет Ω ☂"\n${PLAN.replace(/^title:.*\n/m, '')}`,
    );
    const ran = await run(folder, ['mockup', 'sampler.yaml']);
    expect(ran.code).toBe(0);
    expect(ran.err).not.toContain('font');
  });
});

describe('what was there before', () => {
  const half = filesBut({
    open: async (path, flags) => {
      const file = await files.open(path, flags);
      if (flags !== 'wx') return file;
      const failing: OpenFile = {
        read: file.read.bind(file),
        chmod: (mode) => file.chmod(mode),
        sync: () => file.sync(),
        close: () => file.close(),
        writeFile: async (data) => {
          await file.writeFile((data as Uint8Array).slice(0, 100));
          throw systemError('ENOSPC');
        },
      };
      return failing;
    },
  });

  it.each([
    ['mockup', 'a.pdf'],
    ['draw', 'a.svg'],
    ['draw', 'a.png'],
    ['draw', 'a.pdf'],
  ])('stays whole when the disk is full (%s -o %s)', async (command, name) => {
    const folder = await guildFolder();
    await writeFile(join(folder, name), 'earlier');
    const ran = await run(folder, [command, 'sampler.yaml', '-o', name], { files: half });
    expect(ran).toMatchObject({ code: 1, out: '', left: [name, ...INPUTS].sort() });
    expect(ran.lines).toEqual([`${name}: the disk is full; nothing was written`]);
    expect(await readFile(join(folder, name), 'utf8')).toBe('earlier');
  });

  it('stays when the output would be one of the inputs', async () => {
    const folder = await guildFolder();
    await link(join(folder, 'spindle.yaml'), join(folder, 'hard.svg'));
    await symlink('sampler.yaml', join(folder, 'soft.svg'));
    for (const name of ['hard.svg', 'soft.svg']) {
      const ran = await run(folder, ['draw', 'sampler.yaml', '-o', name]);
      expect(ran.code).toBe(1);
      expect(ran.lines).toEqual([
        `${name}: the command reads this file, and would write over it; choose another name with -o`,
      ]);
    }
    expect(await readFile(join(folder, 'sampler.yaml'), 'utf8')).toBe(PLAN);
    expect(await readFile(join(folder, 'spindle.yaml'), 'utf8')).toBe(ARC);
  });

  it('is left alone by a plan that cannot be made', async () => {
    const folder = await guildFolder();
    await writeFile(join(folder, 'sampler-mockup.pdf'), 'earlier');
    await writeFile(join(folder, 'sampler.yaml'), PLAN.replace('width: 6', 'width: 3/4'));
    const before = await stat(join(folder, 'sampler-mockup.pdf'));
    const ran = await run(folder, ['mockup', 'sampler.yaml']);
    expect(ran).toMatchObject({ code: 1, out: '' });
    expect(ran.lines.length).toBe(1);
    expect((await stat(join(folder, 'sampler-mockup.pdf'))).ino).toBe(before.ino);
    expect((await readdir(folder)).length).toBe(3);
  });
});
