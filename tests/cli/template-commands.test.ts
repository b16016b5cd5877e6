/** `template` and what belongs to it, as people run them. */

import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { type Context, picture, rectangle } from './pictures.ts';
import { emptyFolder, run } from './run.ts';

describe('template trace', () => {
  /** Its upper side is an arc of chord 60 mm and rise 10 mm, its lower a straight back. */
  const shape = (c: Context, mm: number): void => {
    c.beginPath();
    c.moveTo(30 * mm, 60 * mm);
    c.lineTo(30 * mm, 40 * mm);
    // r = (c² + 4h²)/(8h) = 50 mm (Machinery's Handbook, 31st ed., p. 83), its middle 50 mm below the crest.
    c.arc(60 * mm, 80 * mm, 50 * mm, Math.atan2(-40, -30), Math.atan2(-40, 30));
    c.lineTo(90 * mm, 60 * mm);
    c.closePath();
    c.fill();
  };

  it('tells a mark outside the picture, another resolution than its own, and a corner that it has not', async () => {
    const folder = emptyFolder();
    await writeFile(join(folder, 'shape.png'), picture(shape, 'image/png'));
    const trace = ['template', 'trace', 'shape.png', '-o', 'shape.yaml'];
    const outside = await run(folder, [...trace, '--marks', '120,340 to 18900,352 is 6 in']);
    expect(outside.code).not.toBe(0);
    expect(outside.lines[0]).toMatch(
      /^--marks: a mark lies outside the picture; found 18900,352; expected places in its \d+ by \d+ pixels$/,
    );
    for (const end of [
      ['--heel', '99'],
      ['--crown', '0'],
    ]) {
      const ran = await run(folder, [...trace, '--dpi', '200', ...end]);
      expect(ran.code).not.toBe(0);
      expect(ran.err).not.toMatch(/mistake of its own/);
    }
    // What the file cannot hold is said of the option that it came from.
    for (const [option, said] of [
      [['--thickness', '10 in'], '--thickness: '],
      [['--across', 'A=5,5'], '--across: an etched line is said by a place that is not on the template'],
      [['--across', 'A=1 in', '--across', 'A=1 in'], '--across: '],
      [['--along', '1/4 in', '--along', '1/4 in'], '--along: '],
    ] as const) {
      const ran = await run(folder, [...trace, '--dpi', '200', ...option]);
      expect(ran.code).not.toBe(0);
      expect(ran.lines.at(-1)).toContain(`shape.png: ${said}`);
    }
    // JFIF 1.02: the density's unit stands at byte 13, 1 for dots per inch, and what it is behind it.
    const stated = Buffer.from(picture(shape, 'image/jpeg'));
    expect(stated.toString('latin1', 6, 10)).toBe('JFIF');
    stated.set([1, 0, 150, 0, 150], 13);
    await writeFile(join(folder, 'stated.jpg'), stated);
    const twice = await run(folder, ['template', 'trace', 'stated.jpg', '--dpi', '200']);
    expect(twice.lines).toContain(
      'unsure: the picture itself says 150 dots per inch, and --dpi says 200: print the outline and lay the template on it',
    );
    const asSaid = await run(folder, ['template', 'trace', 'stated.jpg', '-o', 'again.yaml', '--dpi', '150']);
    expect(asSaid.err).not.toMatch(/unsure: the picture itself/);
  }, 60_000);

  it.each([
    ['png', 'image/png'],
    ['jpg', 'image/jpeg'],
  ] as const)('reads a %s file, finds the arc by its guess, or as it is told', async (ending, mime) => {
    const folder = emptyFolder();
    await writeFile(join(folder, `shape.${ending}`), picture(shape, mime));
    const trace = ['template', 'trace', `shape.${ending}`, '--dpi', '200'];
    const ran = await run(folder, trace);
    expect(ran.lines.slice(0, 1)).toEqual([
      'found a filled shape with 4 corners in a scan of 200 dots per inch',
    ]);
    const text = await readFile(join(folder, 'shape.yaml'), 'utf8');
    const arc = /- arc: \{ to: \[([-\d.]+), ([-\d.]+)\], rise: ([\d.]+) \}/.exec(text)!;
    expect(Math.abs(Number(arc[1]) - 60)).toBeLessThan(0.1);
    expect(Math.abs(Number(arc[2]))).toBeLessThan(0.1);
    expect(Math.abs(Number(arc[3]) - 10)).toBeLessThan(0.05);
    // Corners are numbered clockwise; the two ends of the arc by their places in the picture say the same.
    const [x1, x2, y] = [30, 90, 40].map((mm) => Math.round((mm * 200) / 25.4));
    const told = await run(folder, [
      ...trace,
      '-o',
      'told.yaml',
      '--heel',
      `${x1},${y}`,
      '--crown',
      `${x2},${y}`,
    ]);
    expect(told.code).toBe(0);
    expect(await readFile(join(folder, 'told.yaml'), 'utf8')).toBe(text);
    // Walked the other way with the foot on the right it is turned over, and this arc is its own mirror image.
    const over = await run(folder, [...trace, '-o', 'over.yaml', '--foot', 'right']);
    expect(over.lines).toContain('turned over, so that the foot runs on the left');
  });

  it.each([
    [
      ['--dpi', '50'],
      '--dpi: not a resolution that can be used; found "50"; expected dots per inch, from 100 to 2400',
    ],
    [['--line', 'left'], '--line: not known; found "left"; expected one of middle, inner, outer'],
    [
      ['--heel', 'here'],
      '--heel: not a place; found "here"; expected the number of a corner such as 3, or x,y such as 120,45',
    ],
    [['--overlay', 'a.jpg'], '--overlay: the overlay is a PNG file; found "a.jpg"'],
    [['--tolerance', '9mm'], '--tolerance: out of range; found "9mm"; expected 0.005 mm to 1 mm'],
    [['--title', ' '], '--title: empty; expected a text of at most 120 characters'],
    [
      ['--title', 'o'.repeat(121)],
      '--title: too long; found 121 characters; expected a text of at most 120 characters',
    ],
    [['--level', 'roof'], '--level: not known; found "roof"; expected one of back, ends, picture'],
    [
      ['--camera', '400 mm'],
      '--camera: it does nothing without --thickness; say how thick the acrylic is, such as --thickness "1/4 in"',
    ],
    [
      ['--thickness', '6 mm', '--camera', '2 in'],
      '--camera: nearer than a camera can be that shows the whole sheet; found "2 in"; expected at least 150 mm (6 in)',
    ],
  ])('%j is wrong use', async (args, line) => {
    const ran = await run(emptyFolder(), ['template', 'trace', 'none.png', ...args]);
    expect(ran).toMatchObject({ code: 2, lines: [line] });
  });
});

describe('what does nothing, or lies elsewhere, is not passed over', () => {
  /** Two filled shapes with straight backs; the second has a sixth of the first one's area: 300 and 1800 mm². */
  const two = (c: Context, mm: number): void => {
    c.fillRect(20 * mm, 20 * mm, 60 * mm, 30 * mm);
    c.fillRect(20 * mm, 60 * mm, 30 * mm, 10 * mm);
  };
  const traced = async (draw: typeof two, ...args: string[]) => {
    const folder = emptyFolder();
    await writeFile(join(folder, 'a.png'), picture(draw));
    return run(folder, ['template', 'trace', 'a.png', '--dpi', '200', ...args]);
  };
  const ENDS = ['--heel', '1', '--crown', '2'];

  it('says that there were two shapes, and which was taken', async () => {
    // The middle of the second, (35, 65) mm at 200 dots per inch, is at 275.6, 511.8.
    const ran = await traced(two, ...ENDS);
    expect(ran.lines.find((line) => line.includes('shapes'))).toMatch(
      /^there are 2 shapes in the picture: the largest was taken, and what lies at 27[56],51[12] was left out$/,
    );
    const one = await traced(rectangle, ...ENDS);
    expect(one.code).toBe(0);
    expect(one.err).not.toContain('left out');
  });

  it.each([
    [
      ['--measured', '1.98,2'],
      '--measured: it does nothing here; found a scan, whose size its dots per inch say; expected a photograph of the capture sheet',
    ],
    [
      ['--thickness', '6 mm', '--camera', '400 mm'],
      '--camera: it does nothing here; found a scan, whose size its dots per inch say; expected a photograph of the capture sheet',
    ],
    [
      ['--line', 'inner'],
      '--line: it does nothing here; found a filled shape; expected a line drawn round the template',
    ],
  ])('%s that does nothing for a scan of a filled shape is wrong use', async (args, line) => {
    const ran = await traced(rectangle, ...ENDS, ...args);
    expect(ran).toMatchObject({ code: 2, lines: [line], left: ['a.png'] });
  });

  it('names the option by which the picture would be written over', async () => {
    const ran = await traced(rectangle, '--overlay', 'a.png');
    expect(ran).toMatchObject({
      code: 1,
      lines: [
        'a.png: the command reads this file, and would write over it; choose another name with --overlay',
      ],
    });
  });

  it('lays it level as she says, and its file says the thickness that she gives', async () => {
    const ran = await traced(rectangle, ...ENDS, '--level', 'picture', '--thickness', '6.35 mm', '-o', '-');
    expect(ran.lines).toContain('laid as it lies in the picture');
    expect(ran.out).toMatch(/^thickness: 6\.35( mm)?$/m);
  });

  it('refuses ends that lie nowhere near the outline', async () => {
    // The rectangle from (30, 20) to (90, 50) mm: (500, 520) pixels are (63.5, 66.0) mm, 16 below its lower side.
    const ran = await traced(rectangle, '--heel', '500,520', '--crown', '2');
    expect(ran.code).toBe(1);
    expect(ran.lines.at(-1)).toBe(
      'a.png: --heel: this place is not on the outline; found a place 16 mm away from it; expected one on it, or within 10 mm',
    );
    expect(ran.left).not.toContain('a.yaml');
  });
});

describe('a scan in line art', () => {
  /** Ink and paper only, at 300 dots per inch: a wave over a straight side, 85 mm long. */
  const lineArt = (high: number, waves: number): Buffer => {
    const canvas = createCanvas(1200, 700);
    const context = canvas.getContext('2d');
    context.fillStyle = '#fff';
    context.fillRect(0, 0, 1200, 700);
    context.fillStyle = '#000';
    for (let x = 100; x < 1100; x++) {
      const top = Math.round(300 + high * Math.sin(((x - 100) / 1000) * Math.PI * waves));
      context.fillRect(x, top, 1, 600 - top);
    }
    return canvas.toBuffer('image/png');
  };

  it('as coarse as can be gives an edge, in which the steps of its pixels are no corners', async () => {
    const folder = emptyFolder();
    await writeFile(join(folder, 'wave.png'), lineArt(40, 2));
    const ran = await run(folder, ['template', 'trace', 'wave.png', '--dpi', '100', '--json']);
    expect(ran).toMatchObject({ code: 0 });
    expect(JSON.parse(ran.out)).toMatchObject({ sections: 1, corners: { length: 4 } });
    expect(ran.lines).toContainEqual(expect.stringMatching(/^unsure: line art of 100 dots per inch/));
  });

  it('is told of in words and a picture where no edge is found in it', async () => {
    const folder = emptyFolder();
    await writeFile(join(folder, 'waves.png'), lineArt(200, 10));
    const ran = await run(folder, ['template', 'trace', 'waves.png', '--dpi', '100', '-o', 'found.yaml']);
    expect(ran.code).toBe(1);
    expect(ran.lines.at(-1)).toMatch(/^waves\.png: no long straight side .*--heel and --crown/);
    expect(ran.left).toEqual(['found-outline.png', 'waves.png']);
  });
});

describe('template import', () => {
  it.each([
    ['', '--title: empty; expected a text of at most 120 characters'],
    ['o'.repeat(121), '--title: too long; found 121 characters; expected a text of at most 120 characters'],
  ])('refuses a title that is none: "%s"', async (title, line) => {
    const ran = await run(emptyFolder(), ['template', 'import', 'none.svg', '--title', title]);
    expect(ran).toMatchObject({ code: 2, lines: [line] });
  });

  it('does not write over a template that somebody has worked on, unless its name is asked for', async () => {
    const folder = emptyFolder();
    await writeFile(
      join(folder, 'a.svg'),
      '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50"><path d="M 0 40 Q 50 0 100 40"/></svg>',
    );
    const argv = ['template', 'import', 'a.svg'];
    expect((await run(folder, argv)).code).toBe(0);
    // The same again is nobody's loss.
    expect((await run(folder, argv)).code).toBe(0);
    const made = await readFile(join(folder, 'a.yaml'), 'utf8');
    await writeFile(join(folder, 'a.yaml'), `${made}thickness: 3 mm\n`);
    const again = await run(folder, argv);
    expect(again.code).toBe(1);
    expect(again.lines).toEqual([
      'a.yaml: there is such a file already, and it holds something else; name another with -o; -o a.yaml writes over it',
    ]);
    expect(await readFile(join(folder, 'a.yaml'), 'utf8')).toBe(`${made}thickness: 3 mm\n`);
    expect((await run(folder, [...argv, '-o', 'a.yaml'])).code).toBe(0);
    expect(await readFile(join(folder, 'a.yaml'), 'utf8')).toBe(made);
  });

  it('writes the arcs of a drawing as they are', async () => {
    const folder = emptyFolder();
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60">' +
      '<path id="edge" d="M10 40 A50 50 0 0 1 70 40 L90 40"/></svg>';
    await writeFile(join(folder, 'a.svg'), svg);
    const ran = await run(folder, ['template', 'import', 'a.svg', '--id', 'edge']);
    expect(ran.code).toBe(0);
    const text = await readFile(join(folder, 'a.yaml'), 'utf8');
    // The rise over a chord of 60 of a circle of 50: 50 − √(50² − 30²) = 10.
    expect(text).toContain('  - arc: { to: [60, 0], rise: 10 }\n  - line: { to: [80, 0] }\n');
    expect(await run(folder, ['template', 'a.yaml'])).toMatchObject({ code: 0 });
  });
});

describe('template import of one shape, drawn open and closed', () => {
  /** The points of a body: an edge of two straight sides from (10, 60) over (70, 30) to (150, 30), then its back. */
  const EDGE = 'M10 60 L70 30 L150 30';
  const BODY = `${EDGE} L160 80 L20 90`;

  const imported = async (d: string, ...more: string[]) => {
    const folder = emptyFolder();
    const path = `<path d="${d}"/>`;
    await writeFile(
      join(folder, 'a.svg'),
      `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">\n${path}</svg>`,
    );
    const ran = await run(folder, ['template', 'import', 'a.svg', ...more]);
    const text = ran.code === 0 ? await readFile(join(folder, 'a.yaml'), 'utf8') : '';
    return {
      ran,
      steps: text.slice(text.indexOf('edge:')),
      level: ran.lines.find((l) => l.includes('laid level')),
    };
  };

  it('says both times by what it was laid level, and how far that was turned', async () => {
    // From (10, 60) to (150, 30): atan(30 / 140) is 12.09°.
    const open = await imported(EDGE);
    const closed = await imported(`${EDGE} Z`);
    expect(open.level).toBe(
      'no long straight side: laid level by the line from heel to crown end, which was turned by 12.1°',
    );
    expect(closed.level).toBe('laid level by the long straight side, which was turned by 12.1°');
    expect(open.steps).toBe(closed.steps);
    expect(open.steps).toContain('- start: [0, 0]');
  });

  it('comes out the same where its ends are said: by the back, with the same numbers for its corners', async () => {
    const closed = await imported(`${BODY} Z`);
    // The back from (160, 80) to (20, 90): atan(10 / 140) is 4.09°.
    expect(closed.level).toBe('laid level by the long straight side, which was turned by 4.1°');
    const open = await imported(BODY, '--heel', '1', '--crown', '3');
    expect(open.level).toBe(closed.level);
    expect(open.steps).toBe(closed.steps);
    expect((await imported(BODY, '--heel', '10,60', '--crown', '150,30')).steps).toBe(closed.steps);
  });

  it('is closed where its ends were meant to meet, and says so', async () => {
    const closed = await imported(`${BODY} Z`);
    const nearly = await imported(`${BODY} L10.3 60.4`);
    // √(0.3² + 0.4²) is 0.5.
    expect(nearly.ran.lines).toContain('its ends, 0.50 mm apart, were joined: it was taken as closed');
    expect(nearly.steps).toBe(closed.steps);
  });

  it('tells of an edge that no template can have in the drawing, and of no file that was not written', async () => {
    // The line from (10, 60) to (150, 30) is crossed by the one from (150, 80) to (60, 10) at (99.6, 40.8), by hand.
    const { ran } = await imported('M10 60 L150 30 L150 80 L60 10');
    expect(ran.code).toBe(1);
    expect(ran.left).toEqual(['a.svg']);
    expect(ran.lines.at(-1)).toBe(
      "a.svg:2:1: what was found cannot be the edge of a template; found an edge that crosses itself at 99.6,40.8, in mm from the drawing's upper left; say where its two ends are with --heel and --crown",
    );
  });
});

describe('template FILE and gallery', () => {
  it('tells flats, the tightest curve and what the foot does not reach', async () => {
    const folder = emptyFolder();
    const ran = await run(folder, ['template', 'newel', '--json']);
    expect(ran.lines).toContain('flat 1, the flat of section 1: 1 1/2 in (38.1 mm)');
    const told = JSON.parse(ran.out);
    expect(told.flats).toEqual(
      [{ number: 1, from: 0, to: 38.1 }].map((f) => expect.objectContaining({ number: f.number })),
    );
    expect(told.unreached).toEqual([]);
    const baluster = await run(folder, ['template', 'baluster']);
    expect(baluster.lines.filter((l) => l.startsWith('the foot does not reach')).length).toBe(2);
  });

  it.each([
    // A quarter circle between two sides at a right angle, of so many mm: its rise is r (1 − 1/√2) over r√2.
    [0.08, 'tightest curve: a corner, rounded by less than 0.1 mm'],
    [0.5, 'tightest curve: a corner, rounded by less than 1/32 in (0.8 mm)'],
    [1.5, 'tightest curve: radius 1/16 in (1.5 mm)'],
  ])('calls a curve of %s mm what it is', async (r, line) => {
    const folder = emptyFolder();
    const rise = r * (1 - Math.SQRT1_2);
    const text = `units: mm\nedge:\n  - start: [0, 0]\n  - line: { to: [60, 0] }\n  - arc: { to: [${60 + r}, ${-r}], rise: ${rise.toFixed(6)} }\n  - line: { to: [${60 + r}, -20] }\n`;
    await writeFile(join(folder, 'a.yaml'), text);
    expect((await run(folder, ['template', 'a.yaml'])).lines).toContain(line);
  });

  it('shows swags whose span and depth make up their chord, at the spans that are asked for', async () => {
    const folder = emptyFolder();
    const ran = await run(folder, ['template', 'gallery', 'baluster', '--spans', '7,9', '--json']);
    const { swags } = JSON.parse(ran.out);
    expect(swags.length).toBeGreaterThan(4);
    const chords = new Map<string, number>();
    for (const s of swags) {
      expect([7, 9].some((inches) => Math.abs(s.span - inches * 25.4) < 0.05)).toBe(true);
      // A rigid template: half span and depth are the sides of a right angle over one chord.
      const chord = Math.hypot(s.span / 2, s.depth);
      const part = `${s.from} ${s.to}`;
      expect(Math.abs(chord - (chords.get(part) ?? chord))).toBeLessThan(1e-6);
      chords.set(part, chord);
    }
    const pdf = await PDFDocument.load(await readFile(join(folder, 'baluster-gallery.pdf')));
    expect(pdf.getPageCount()).toBeGreaterThan(0);
  });

  it('says of spans that it makes no swag at them, and nothing of the template', async () => {
    const ran = await run(emptyFolder(), ['template', 'gallery', 'baluster', '--spans', '9999']);
    expect(ran).toMatchObject({
      code: 2,
      lines: [
        '--spans: this template makes no swag at these spans; found "9999"; leave --spans out to see which it makes',
      ],
      left: [],
    });
  });

  it('takes options for the command that they follow', async () => {
    const folder = emptyFolder();
    const ran = await run(folder, ['template', 'sheet', '--paper', 'a4']);
    expect(ran.lines).toEqual(['capture-sheet.pdf: one sheet of A4; print it at 100 % / actual size']);
    const pdf = await PDFDocument.load(await readFile(join(folder, 'capture-sheet.pdf')));
    // ISO 216: 210 by 297 mm.
    expect(pdf.getPage(0).getWidth()).toBeCloseTo((210 * 72) / 25.4, 2);
  });
});

describe('bare lengths after a template whose file is in centimetres', () => {
  const CM = 'units: cm\nedge: [{ start: [0, 0] }, { arc: { to: [15, 0], rise: 4 } }]\n';
  const json = async (...argv: string[]) => {
    const cwd = emptyFolder();
    await writeFile(join(cwd, 'own.yaml'), CM);
    const ran = await run(cwd, ['template', ...argv, '--json']);
    return ran.code === 0 ? JSON.parse(ran.out) : ran.err;
  };

  it('are in centimetres too: the foot', async () => {
    expect((await json('own.yaml', '--clearance', '0.64')).clearance).toBeCloseTo(6.4, 9);
    expect((await json('own.yaml', '--clearance', '1/4 in')).clearance).toBeCloseTo(6.35, 9);
    expect(await json('own.yaml', '--clearance', '6.4')).toMatch(
      /^--clearance: there is no such foot; found "6\.4"; expected 1\.6 mm to 25\.4 mm/,
    );
  });

  it('and the spans of the gallery', async () => {
    const { swags } = await json('gallery', 'own.yaml', '--spans', '15,16');
    expect(new Set(swags.map(({ span }: { span: number }) => Math.round(span)))).toEqual(new Set([150, 160]));
  });
});
