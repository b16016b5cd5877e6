/** What the page sets right in a traced outline, said at a terminal: on shapes whose true outline is known by hand. */

import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { readTemplate } from '../../src/template/index.ts';
import { emptyFolder, type Ran, run } from './run.ts';

/** 4 pixels to half a millimetre: 203.2 dots per inch. */
const MM = 8;
const DPI = String(MM * 25.4);

/** A filled bar from (20, 20) to (100, 50) mm on 120 by 80 mm, on its upper side a smudge 4 mm wide and 2 mm high. */
const bar = (smudged: boolean): Buffer => {
  const canvas = createCanvas(120 * MM, 80 * MM);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.fillStyle = '#222';
  context.fillRect(20 * MM, 20 * MM, 80 * MM, 30 * MM);
  if (smudged) context.fillRect(48 * MM, 18 * MM, 4 * MM, 4 * MM);
  return canvas.toBuffer('image/png');
};

const at = (x: number, y: number): string => `${x * MM},${y * MM}`;

/** The upper side is the edge, from left to right. */
const ENDS = ['--heel', at(20, 20), '--crown', at(100, 20), '--foot', 'left'];

interface Found {
  readonly correction: number;
  readonly pieces: number;
  readonly sections: number;
  readonly breaks: readonly { name: string | null; at: number; kind: string }[];
}

const traced = async (
  args: readonly string[],
  { smudged = false, ends = ENDS as readonly string[], scale = ['--dpi', DPI] as readonly string[] } = {},
): Promise<Ran & { found: Found; text: string }> => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'bar.png'), bar(smudged));
  const argv = ['template', 'trace', 'bar.png', ...scale, ...ends, '--json', ...args];
  const ran = await run(folder, argv);
  if (ran.code !== 0) return { ...ran, found: {} as Found, text: '' };
  return { ...ran, found: JSON.parse(ran.out), text: await readFile(join(folder, 'bar.yaml'), 'utf8') };
};

/** Where the last step of the edge ends, mm. */
const endOf = (text: string): readonly number[] =>
  [...text.matchAll(/to: \[([-\d.]+), ([-\d.]+)\]/g)].at(-1)!.slice(1).map(Number);

describe('template trace sets right', () => {
  it('a stretch that is made straight', async () => {
    const before = await traced([], { smudged: true });
    expect(before.found.sections).toBeGreaterThan(2);
    const { found, text, lines } = await traced(['--stretch', `${at(46, 20)} to ${at(55, 20)} straight`], {
      smudged: true,
    });
    expect(found).toMatchObject({ sections: 1, breaks: [] });
    expect(Math.abs(endOf(text)[0]! - 80)).toBeLessThan(0.1);
    for (const [, y, rise = '0'] of text.matchAll(/to: \[[-\d.]+, ([-\d.]+)\](?:, rise: ([-\d.]+))?/g))
      expect(Math.max(Math.abs(Number(y)), Math.abs(Number(rise)))).toBeLessThan(0.1);
    expect(lines).toContain('1 stretch of the outline set right by hand');
  });

  it('a stretch that is taken again through places', async () => {
    const { text } = await traced(['--stretch', `heel to crown through ${at(60, 5)}`]);
    // The arc through the ends of a chord of 80 mm and a place 15 mm over its middle.
    const arc = /arc: \{ to: \[([\d.]+), [-\d.]+\], rise: ([\d.]+) \}/.exec(text)!;
    expect(Math.abs(Number(arc[1]) - 80)).toBeLessThan(0.1);
    expect(Math.abs(Number(arc[2]) - 15)).toBeLessThan(0.1);
  });

  it('corners and their numbers, which stay those of the outline as it was traced', async () => {
    // 8 corners, 4 of them the smudge's.
    const all = await traced([], { smudged: true });
    const corners = (JSON.parse(all.out).corners as { picture: { x: number; y: number } }[]).map(
      (c) => c.picture,
    );
    expect(corners).toHaveLength(8);
    const numberAt = (x: number, y: number): string =>
      String(1 + corners.findIndex((c) => Math.hypot(c.x - x * MM, c.y - y * MM) < MM));
    const [heel, left, right, crown] = [
      numberAt(20, 20),
      numberAt(48, 20),
      numberAt(52, 20),
      numberAt(100, 20),
    ];
    const { found, text } = await traced(['--stretch', `${left} to ${right} straight`], {
      smudged: true,
      ends: ['--heel', heel, '--crown', crown, '--foot', 'left'],
    });
    expect(found.sections).toBe(1);
    expect(Math.abs(endOf(text)[0]! - 80)).toBeLessThan(0.1);
  });

  it('breaks: added by length and by place, moved, named, taken out', async () => {
    const { found, lines } = await traced([
      ...['--break', 'shoulder=20 mm', '--break', `neck=${at(80, 20.5)}`, '--break', 'shoulder=1 in'],
    ]);
    expect(found.breaks.map(({ name, kind }) => [name, kind])).toEqual([
      ['shoulder', 'mark'],
      ['neck', 'mark'],
    ]);
    expect(found.breaks[0]!.at).toBeCloseTo(25.4, 1);
    expect(found.breaks[1]!.at).toBeCloseTo(60, 1);
    expect(lines).toContain('break "shoulder": on a smooth stretch, 25.4 mm (1 in) from the heel');
  });

  it('the name of a corner', async () => {
    const { found } = await traced(['--break', `step=${at(48, 20)}`], { smudged: true });
    expect(found.breaks).toHaveLength(4);
    expect(found.breaks[0]).toMatchObject({ name: 'step', kind: 'notch' });
  });

  it.each([
    ['1.6 mm longer', 81.6],
    ['1/16 in shorter', 80 - 25.4 / 16],
  ])('its size, which the print showed to be off: %s', async (off, length) => {
    const { found, text, lines } = await traced(['--off', off, '--break', 'shoulder=20 mm']);
    expect(Math.abs(endOf(text)[0]! - length)).toBeLessThan(0.1);
    expect(found.correction).toBeCloseTo(length / 80, 3);
    expect(found.breaks[0]!.at).toBeCloseTo((20 * length) / 80, 1);
    expect(lines.join('\n')).toMatch(
      /^set right by hand: \d\.\d\d % (larger|smaller) than the picture says$/m,
    );
  });

  it('its size by two marks of a ruler in the picture', async () => {
    const marks = `${at(10, 70)} to ${at(10 + 50.8, 70)} is 2 in`;
    const { text } = await traced([], { scale: ['--marks', marks] });
    expect(Math.abs(endOf(text)[0]! - 80)).toBeLessThan(0.1);
  });

  it('etched lines, by figure or by a place on them', async () => {
    const args = ['--across', 'A=1/4 in', '--across', `B=${at(35, 40)}`, '--along', `${at(60, 29)}`];
    const { text } = await traced([...args, '--along', '6 mm']);
    expect(text).toMatch(/- \{ name: A, at: 6\.35 \}/);
    expect(Number(/name: B, at: ([\d.]+)/.exec(text)![1])).toBeCloseTo(15, 1);
    const along = /channelLines: \[([\d.]+), 6\]/.exec(text)!;
    expect(Number(along[1])).toBeCloseTo(9, 1);
  });

  it.runIf(process.platform !== 'win32')(
    'and writes no names that steer a terminal or break a line',
    async () => {
      const folder = emptyFolder();
      const name = 'two\n\u001b[31mlines.png';
      await writeFile(join(folder, name), bar(false));
      const ran = await run(folder, [
        ...['template', 'trace', name, '--dpi', DPI, ...ENDS, '-o', 'a.yaml'],
        ...['--across', 'A\nB=3 mm'],
      ]);
      expect(ran.code).toBe(0);
      const text = await readFile(join(folder, 'a.yaml'), 'utf8');
      expect(text.split('\n')[0]).toBe('# Traced by swagwright from "two  [31mlines.png".');
      expect(text).toContain('{ name: A B, at: 3 }');
      expect(text).toContain('title: "Two [31mlines"');
      expect(
        (
          await run(folder, [
            ...['template', 'trace', name, '--dpi', DPI, ...ENDS],
            '-o',
            'b.yaml',
            '--title',
            'x\ny',
          ])
        ).code,
      ).toBe(0);
      expect(await readFile(join(folder, 'b.yaml'), 'utf8')).toContain('title: x y\n');
    },
  );

  it('no line that is etched before the heel', async () => {
    const ends = ['--heel', at(40, 20), '--crown', at(100, 20), '--foot', 'left'];
    const ran = await traced(['--across', `A=${at(35, 40)}`], { ends });
    expect(ran).toMatchObject({ code: 1, out: '', left: ['bar.png'] });
    expect(ran.lines).toEqual([expect.stringMatching(/^bar\.png: --across: this line lies before the heel/)]);
  });

  const PLACE =
    "expected the number of a corner such as 3, x,y such as 120,45, a length from the heel such as 3 1/4 in, or a break's name";
  it.each([
    [
      ['--break', 'shoulder'],
      2,
      /^--break: not two things with = between them; found "shoulder"; expected a name and/,
    ],
    [['--break', 'crown=3 mm'], 2, /^--break: the name of an end; found "crown"; expected a name of its own/],
    [['--break', `${'o'.repeat(41)}=3 mm`], 2, /^--break: too long; found "o+…"; expected .* 40 characters$/],
    [
      ['--break', 'a=3 inn'],
      2,
      new RegExp(`^--break: no place: the unit "inn" is not known; found "3 inn"; ${PLACE}$`),
    ],
    [
      ['--break', 'a=99'],
      1,
      /^bar\.png: --break: the outline has no corner of this number; found 99; expected 1 to 4,/,
    ],
    [
      ['--break', 'a=90 mm'],
      1,
      /^bar\.png: --break: this place lies beyond the crown end; found "90 mm"; expected at most 80/,
    ],
    [
      ['--break', `a=${at(60, 50)}`],
      1,
      /^bar\.png: --break: this place is not on the edge; found a place 30 mm away from it;/,
    ],
    [
      ['--break', 'a=20 mm', '--break', 'b=20.2 mm'],
      1,
      /^bar\.png: --break: there is no room for a break here; found "20\.2 mm"/,
    ],
    [
      ['--break', 'a=20 mm', '--rename', 'b=c'],
      1,
      /^bar\.png: --rename: no break is called so; found "b"; expected a break;/,
    ],
    [['--take-out', 'b'], 1, /^bar\.png: --take-out: no break is called so; found "b"; expected a break;/],
    [
      ['--stretch', '1 to 2'],
      2,
      /^--stretch: not a stretch that is set right; found "1 to 2"; expected "PLACE to PLACE straight", or/,
    ],
    [
      ['--stretch', '1 to 2 through 5'],
      2,
      /^--stretch: not a place to go through; found "5"; expected x,y such as 120,45/,
    ],
    [
      ['--stretch', '1 to 1 straight'],
      1,
      /^bar\.png: --stretch: the two ends of the stretch that is set right are the same place/,
    ],
    [['--stretch', 'neck to crown straight'], 1, /^bar\.png: --stretch: no break is called so; found "neck"/],
    [
      ['--stretch', '0,0 to crown straight'],
      1,
      /^bar\.png: --stretch: this place is not on the outline; found a place 28 mm away/,
    ],
    [
      ['--off', '1/16 in'],
      2,
      /^--off: it does not say which way; found "1\/16 in"; expected what the acrylic is, such as/,
    ],
    [['--off', 'much longer'], 2, /^--off: no number; found "much"/],
    [
      ['--off', '9 mm longer'],
      1,
      /^bar\.png: --off: that is more than a tenth of the whole, and no slip of a scanner; look whether/,
    ],
    [
      ['--across', '1/4'],
      2,
      /^--across: it does not say its name; found "1\/4"; expected a name and its distance/,
    ],
    [['--along', 'wide'], 2, /^--along: no number; found "wide"/],
    // The bar is 80 mm long and 30 mm wide; its edge runs from (20, 20) to (100, 20), and the bar below it.
    [
      ['--across', 'A=9 cm'],
      1,
      /^bar\.png: --across: line "A" lies beyond the end of the edge; found 90 mm; expected at most (80|80\.1|79\.9) mm from the heel$/,
    ],
    [
      ['--across', `A=${at(108, 30)}`],
      1,
      /^bar\.png: --across: an etched line is said by a place that is not on the template; found a place 8 mm outside its outline; expected a place inside the outline, on the line$/,
    ],
    [
      ['--along', `${at(50, 14)}`],
      1,
      /^bar\.png: --along: an etched line is said by a place that is not on the template; found a place 6 mm outside its outline; expected/,
    ],
    // 3 1/8 in are 79.4 mm.
    [
      ['--across', 'A=4', '--units', 'in'],
      1,
      /^bar\.png: --across: line "A" lies beyond the end of the edge; found 4 in; expected at most 3 1\/8 in from the heel$/,
    ],
    [
      ['--along', '6 mm', '--along', '32 mm'],
      1,
      /^bar\.png: --along: this line lies farther inside the edge than the template reaches; found 32 mm; expected at most (30|30\.1|29\.9) mm, where the template ends$/,
    ],
    [
      ['--stretch', `heel to crown through ${at(60, 5)} ${at(60, 70)}`],
      1,
      /^bar\.png: --stretch: with this stretch set right there is no edge that a template can have; found an edge that crosses itself at \d+,\d+ in the picture; look at the places of the stretch$/,
    ],
    [['--marks', '1,1 to 9,9 is 2 in'], 2, /^--marks: it cannot go with --dpi; expected one of them$/],
  ] as const)('%j is refused in one line, and nothing is written', async (args, code, line) => {
    const ran = await traced(args);
    expect(ran).toMatchObject({ code, out: '', left: ['bar.png'] });
    expect(ran.lines).toEqual([expect.stringMatching(line)]);
  });

  it.each(['1,1 and 9,9', '1,1 to 1,1 is 2 in', '1,1 to 9,9 is far'])(
    'marks that are none are refused: %s',
    async (marks) => {
      const ran = await traced([], { scale: ['--marks', marks] });
      expect(ran).toMatchObject({ code: 2, left: ['bar.png'] });
      expect(ran.lines).toEqual([expect.stringMatching(/^--marks: no/)]);
    },
  );
});

describe('template edit', () => {
  /** A line of 40 mm, and on it an arc of chord 60 mm and rise 10 mm that meets it in a corner. */
  const OWN = `# Measured in the guild's room.
title: Corbel
units: mm
thickness: 6   # as the calliper says
edge:
  - start: [0, 0]
  - line: { to: [15, 0] }
  - break: collar
  - line: { to: [40, 0] }
  - arc: { to: [100, 0], rise: 10 }
alignment:
  - { name: A, at: 6 }
channelLines: [3]
crownEnd: corner
`;

  const edited = async (args: readonly string[], text = OWN) => {
    const folder = emptyFolder();
    await writeFile(join(folder, 'own.yaml'), text);
    const ran = await run(folder, ['template', 'edit', 'own.yaml', ...args]);
    const read = async (name: string) => readFile(join(folder, name), 'utf8');
    return { ...ran, read };
  };

  it('enlarges the edge by what its print was off, and leaves etched lines where they are', async () => {
    const ran = await edited(['--off', '1 mm longer', '--json']);
    expect(ran).toMatchObject({ code: 0, left: ['own-edited.yaml', 'own.yaml'] });
    expect(ran.lines).toContain('set right by hand: 1.00 % larger than it was');
    expect(ran.lines).toContain('comments within the file are not kept, only those on top');
    const made = JSON.parse(ran.out);
    expect(made.size).toBeCloseTo(1.01, 9);
    // Machinery's Handbook: an arc of chord c and rise h has radius (c² + 4h²)/(8h), here 50, and sweeps 2 asin(c/2r).
    expect(made.length).toBeCloseTo(1.01 * (40 + 50 * 2 * Math.asin(0.6)), 2);
    expect(await ran.read('own-edited.yaml')).toBe(`# Measured in the guild's room.
# Edited by swagwright: made 1.00 % larger by its print.
title: Corbel
units: mm
thickness: 6
edge:
  - start: [0, 0]
  - line: { to: [15.15, 0] }
  - break: collar
  - line: { to: [40.4, 0] }
  - arc: { to: [101, 0], rise: 10.1 }
alignment:
  - { name: A, at: 6 }
channelLines: [3]
crownEnd: corner
`);
    expect(await ran.read('own.yaml')).toBe(OWN);
  });

  it('adds, names, moves and takes out breaks, in the file itself where that is asked for', async () => {
    const args = ['--in-place', '--rename', 'collar=neck', '--break', 'shoulder=4 cm', '--break', 'lip=90,8'];
    const ran = await edited(args);
    expect(ran).toMatchObject({ code: 0, left: ['own.yaml'] });
    const text = await ran.read('own.yaml');
    expect([...text.matchAll(/break: (\w+)/g)].map(([, name]) => name)).toEqual(['neck', 'shoulder', 'lip']);
    expect(text).toContain('- line: { to: [40, 0] }\n  - break: shoulder\n  - arc: ');
    const out = await edited(['--take-out', 'collar', '-o', '-']);
    expect(out.out).not.toContain('- break');
    expect(out.out).toContain('- line: { to: [40, 0] }');
  });

  it('makes a stretch straight, or takes it through places, by the names that there were or are', async () => {
    const straight = await edited([
      '--stretch',
      'lip to crown straight',
      '--rename',
      'collar=lip',
      '-o',
      '-',
    ]);
    expect(straight.out).toContain('- break: lip\n  - line: { to: [100, 0] }\nalignment');
    const before = await edited([
      '--stretch',
      'collar to crown straight',
      '--rename',
      'collar=lip',
      '-o',
      '-',
    ]);
    expect(before.out).toBe(straight.out);
    const through = await edited(['--stretch', '4 cm to crown through 70,20', '-o', '-']);
    expect(through.out).toContain('- arc: { to: [100, 0], rise: 20 }');
    const whole = await edited(['--stretch', 'heel to crown straight', '--take-out', 'collar', '-o', '-']);
    expect(whole.out).toContain('- start: [0, 0]\n  - line: { to: [100, 0] }\nalignment');
  });

  it('moves breaks with the edge that is enlarged', async () => {
    const args = ['--break', 'lip=30', '--off', '5 mm longer', '--json'];
    const made = JSON.parse((await edited(args)).out);
    expect(made.breaks.find((b: { name: string }) => b.name === 'lip').at).toBeCloseTo(31.5, 3);
  });

  it('refuses an edge that ends before a line that is etched across it', async () => {
    const emptied = emptyFolder();
    const ran = await edited(['--off', '5 mm shorter'], OWN.replace('at: 6', 'at: 98'));
    expect(ran).toMatchObject({ code: 1, left: ['own.yaml'] });
    // A line that lay there before keeps nobody from setting the rest right, and is told with the template's facts.
    const before = await edited(['--off', '5 mm shorter', '-o', '-'], OWN.replace('at: 6', 'at: 127'));
    expect(before.code).toBe(0);
    await writeFile(join(emptied, 'before.yaml'), before.out);
    expect((await run(emptied, ['template', 'before.yaml'])).lines).toContain(
      'line A is etched 5 in (127 mm) from the heel, beyond the end of the edge: look whether that is right',
    );
    expect(ran.lines).toEqual([
      'own.yaml: alignment: line "A" lies beyond the end of the edge; found 98 mm; expected at most 95 mm from the heel',
    ]);
  });

  it('counts etched lines from the heel, wherever on a mat it lies and whichever way the edge runs', async () => {
    const onMat =
      'units: mm\nedge: { points: [[160, 40], [130, 30], [100, 24, corner], [70, 10]] }\nalignment: [{ name: A, at: 6 }]\n';
    const { out } = await edited(['--break', 'b=40', '-o', '-'], onMat);
    expect(out).toContain('- start: [160, 40]\n');
    expect(out).toContain('alignment:\n  - { name: A, at: 6 }\n');
    const reading = readTemplate(out, 'own.yaml');
    expect(reading.ok && reading.template.alignment).toEqual([{ name: 'A', at: 154 }]);
  });

  it('keeps a file in centimetres one', async () => {
    const cm = 'units: cm\nedge: [{ start: [0, 0] }, { arc: { to: [15, 0], rise: 4 } }]\n';
    const { out } = await edited(['--off', '0.15 longer', '-o', '-'], cm);
    expect(out).toContain('units: cm\n');
    expect(out).toContain('- arc: { to: [15.15, 0], rise: 4.04 }');
  });

  it.each([
    [[], 2, /^template edit: nothing is to be set right; expected one of --break, --rename/],
    [
      ['--break', 'a=300'],
      1,
      /^own\.yaml: --break: this place lies beyond the crown end; found "300"; expected at most 104/,
    ],
    [
      ['--break', 'a=50,90'],
      1,
      /^own\.yaml: --break: this place is not on the edge; found a place 8\d mm away from it;/,
    ],
    [
      ['--rename', 'coller=neck'],
      1,
      /^own\.yaml: --rename: no break is called so; found "coller"; .* did you mean "collar"\?$/,
    ],
    [
      ['--break', 'b=80', '--rename', 'collar=collar2', '--take-out', 'colar'],
      1,
      /^own\.yaml: --take-out: no break/,
    ],
    [
      ['--stretch', 'heel to heel straight'],
      1,
      /^own\.yaml: --stretch: the two ends of the stretch that is set right/,
    ],
    [
      ['--stretch', 'heel to 60 through 99999,99999'],
      1,
      /^own\.yaml: --stretch: with this stretch set right there is no edge that a template can have; found too large; look at the places of the stretch$/,
    ],
    [['--off', '11 mm shorter'], 1, /^own\.yaml: --off: that is more than a tenth of the whole/],
    [
      ['--off', '1 mm longer', '-o', 'a.png'],
      2,
      /^--output: a template file is YAML; found the ending \.png$/,
    ],
    [
      ['--off', '1 mm longer', '-o', 'own.yaml'],
      1,
      /^own\.yaml: the command reads this file, and would write over it;/,
    ],
    [['--off', '1 mm longer', '-o', 'a.yaml', '--in-place'], 2, /^--in-place: it cannot go with --output$/],
  ] as const)('%j is refused in one line, and nothing is written', async (args, code, line) => {
    const ran = await edited(args);
    expect(ran).toMatchObject({ code, left: ['own.yaml'] });
    expect(ran.lines).toEqual([expect.stringMatching(line)]);
    expect(await ran.read('own.yaml')).toBe(OWN);
  });

  it('refuses a name that another break has', async () => {
    const { out } = await edited(['--break', 'b=80', '-o', '-']);
    const ran = await edited(['--rename', 'collar=b'], out);
    expect(ran.lines).toEqual([
      'own.yaml: --rename: another break is called so; found "b"; expected a name of its own',
    ]);
  });

  it('leaves the templates that come along as they are', async () => {
    const ran = await run(emptyFolder(), ['template', 'edit', 'newel', '--off', '1 mm longer', '--in-place']);
    expect(ran).toMatchObject({
      code: 2,
      lines: ['--in-place: this template comes with swagwright, and stays as it is; leave --in-place out'],
    });
  });
});
