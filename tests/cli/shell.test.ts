import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/command-list.ts';
import { readMeasured } from '../../src/cli/measured.ts';
import { readLengthOption, readSides, readWhole, readWord } from '../../src/cli/option-values.ts';
import { WrongUse } from '../../src/cli/wrong-use.ts';
import { describeProblem } from '../../src/document/index.ts';
import { emptyFolder, filesBut, run, systemError } from './run.ts';

describe('help', () => {
  it('comes on stdout, names every command and shows examples', async () => {
    for (const argv of [['--help'], ['-h'], ['help']]) {
      const ran = await run(emptyFolder(), argv);
      expect(ran).toMatchObject({ code: 0, err: '', left: [] });
      for (const { name, summary } of COMMANDS) {
        expect(ran.out).toContain(`  ${name}`);
        expect(ran.out).toContain(summary);
      }
      expect(ran.out).toContain('Examples:');
    }
  });

  // `open` shows the page and makes no file: it has neither an output nor data.
  it.each(COMMANDS.map((c) => c.name).filter((name) => name !== 'open'))(
    'of %s tells its options and shows an example that begins with it',
    async (name) => {
      const asked = await run(emptyFolder(), [name, '--help']);
      expect(asked).toMatchObject({ code: 0, err: '' });
      expect(asked.out).toContain('-o, --output <file>');
      expect(asked.out).toContain('--json');
      expect(asked.out).toMatch(new RegExp(`Examples:\n {2}swagwright ${name} `));
      expect(await run(emptyFolder(), ['help', name])).toEqual(asked);
    },
  );

  it('is plain text in lines of at most 110 letters', async () => {
    for (const argv of [['--help'], ...COMMANDS.map((c) => [c.name, '--help'])]) {
      const { out } = await run(emptyFolder(), argv);
      expect(out).toMatch(/^[\n\x20-\x7e]+$/);
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(110);
    }
  });

  it('goes to stderr with status 2 when nothing was asked', async () => {
    const ran = await run(emptyFolder(), []);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toContain('Usage: swagwright');
  });

  it('and the version is the one of the package', async () => {
    const ran = await run(emptyFolder(), ['--version']);
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(ran.out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

describe('wrong use', () => {
  it.each([
    [['mokup', 'plan.yaml'], `unknown command 'mokup'; did you mean "mockup"?`],
    [['mockup', 'plan.yaml', '--papr', 'a4'], `unknown option '--papr'; did you mean "--paper"?`],
    [['draw', 'plan.yaml', '--fromat', 'png'], `unknown option '--fromat'; did you mean "--format"?`],
    [['zzz'], "unknown command 'zzz'; swagwright --help tells what there is"],
    [['mockup'], "missing required argument 'plan'; swagwright --help tells what there is"],
    [
      ['mockup', 'plan.yaml', '--paper'],
      "option '--paper <name>' argument missing; swagwright --help tells what there is",
    ],
    [
      ['draw', 'plan.yaml', '--format', 'pgn'],
      '--format: not known; found "pgn"; expected one of svg, pdf, png, dxf; did you mean "png"?',
    ],
    [
      ['draw', 'plan.yaml', '-o', 'a.svg', '--format', 'png'],
      "--format: the output's name ends in .svg; found png",
    ],
    [
      ['draw', 'plan.yaml', '-o', 'a.jpg'],
      '--output: its ending does not say which kind of picture it is; found .jpg; expected .svg, .pdf, .png or .dxf, or --format',
    ],
    [
      ['draw', 'plan.yaml', '-o', 'a'],
      '--output: its ending does not say which kind of picture it is; found no ending; expected .svg, .pdf, .png or .dxf, or --format',
    ],
    [['draw', 'plan.yaml', '--dpi', '300'], '--dpi: it is for PNG, and this is SVG'],
    [
      ['draw', 'plan.yaml', '-o', 'a.png', '--dpi', '300', '--width', '9'],
      '--width: it cannot go with --dpi',
    ],
    [
      ['draw', 'plan.yaml', '-o', 'a.png', '--dpi', '1e3'],
      '--dpi: not a number that can be used; found "1e3"; expected a whole number from 1 to 2400',
    ],
    [
      ['draw', 'plan.yaml', '-o', '-', '--json'],
      '--output: the file and --json cannot both go to stdout; give the file a name',
    ],
    [
      ['mockup', 'plan.yaml', '-o', 'sheets.svg'],
      '--output: what is written is PDF; found the ending .svg; expected .pdf',
    ],
    [
      ['draw', 'plan.yaml', '--as', 'clena'],
      '--as: not known; found "clena"; expected one of clean, pounce, stencil, projector; did you mean "clean"?',
    ],
    [
      ['mockup', 'plan.yaml', '--mirrored'],
      '--mirrored: a picture with words cannot be mirrored; add --as clean',
    ],
    [['draw', 'plan.yaml', '--as', 'clean', '--every', '2'], '--every: it goes with --as pounce or stencil'],
    [['draw', 'plan.yaml', '--as', 'pounce', '--slot', '2'], '--slot: it goes with --as stencil'],
    [['draw', 'plan.yaml', '--bridge', '2'], '--bridge: it goes with --as stencil'],
    [['mockup', 'plan.yaml', '-o', ''], '--output: the name of the file is empty'],
    [
      ['mockup', 'plan.yaml', '--without', 'marks,fil'],
      '--without: not known; found "fil"; expected one of fill, way, border, channel, template, stitch, marks, notes; did you mean "fill"?',
    ],
    [
      ['template', 'baluster', '--clearance', '0'],
      '--clearance: a length of nothing; found "0"; expected a length above zero, such as 5 1/2 or 140 mm',
    ],
  ])('%j gives one line and status 2', async (argv, line) => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'plan.yaml'), 'not read before the options are');
    const ran = await run(folder, argv);
    expect(ran.lines).toEqual([line]);
    expect(ran).toMatchObject({ code: 2, out: '', left: ['plan.yaml'] });
  });

  it('is told without control characters', async () => {
    const ran = await run(emptyFolder(), ['\u001b[2Jmockup\nforged line']);
    expect(ran.lines).toEqual([
      "unknown command ' [2Jmockup forged line'; swagwright --help tells what there is",
    ]);
  });
});

describe('wrong input', () => {
  it('gives one line and status 1', async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'sub'));
    for (const command of ['mockup', 'draw', 'template']) {
      const none = await run(folder, [command, 'none.yaml']);
      expect(none).toMatchObject({ code: 1, out: '', err: 'none.yaml: there is no such file\n' });
      const sub = await run(folder, [command, './sub']);
      expect(sub).toMatchObject({
        code: 1,
        out: '',
        err: './sub: this is a folder and not a file; name a file in it\n',
      });
    }
  });
});

describe('a fault of the program', () => {
  const broken = filesBut({
    stat: async () => {
      throw new TypeError('cannot read properties of\nundefined');
    },
  });
  const told =
    'swagwright has made a mistake of its own (TypeError: cannot read properties of undefined); please report it, with the plan and the template';

  it('is one line that asks for a report, and no stack', async () => {
    const ran = await run(emptyFolder(), ['mockup', 'plan.yaml'], { files: broken });
    expect(ran).toMatchObject({ code: 1, out: '' });
    expect(ran.lines).toEqual([told]);
  });

  it('shows the stack to those who ask', async () => {
    const ran = await run(emptyFolder(), ['mockup', 'plan.yaml'], {
      files: broken,
      env: { SWAGWRIGHT_DEBUG: '1' },
    });
    expect(ran.lines[0]).toBe(told);
    expect(ran.err).toMatch(/\n\s+at .*run\.ts|shell\.test\.ts/);
  });

  it('is never thrown at the caller, even when nothing can be said', async () => {
    const closed = {
      write: async () => {
        throw systemError('ENOSPC');
      },
    };
    expect((await run(emptyFolder(), ['--help'], { stdout: closed })).err).toBe(
      'standard output: the disk is full; what has come out there is not whole\n',
    );
    expect((await run(emptyFolder(), ['zzz'], { stderr: closed })).code).toBe(1);
  });
});

/** The line that a wrong value comes to. */
const wrong = (read: () => unknown): string => {
  try {
    read();
  } catch (error) {
    if (error instanceof WrongUse) return error.problems.map(describeProblem).join('\n');
    throw error;
  }
  throw new Error('nothing was refused');
};

describe('values of options', () => {
  it('reads words in any case', () => {
    expect(readWord('--paper', 'A4', ['letter', 'a4'])).toBe('a4');
  });

  it('reads lengths as people write them, bare ones in the units of the plan', () => {
    expect(readLengthOption('--overlap', '1/2', 'in')).toBe(12.7);
    expect(readLengthOption('--overlap', '10', 'mm')).toBe(10);
    expect(readLengthOption('--overlap', '1 cm', 'in')).toBe(10);
  });

  it('reads one margin for all sides, or four from the top round', () => {
    expect(readSides('--margin', '1/2', 'in')).toEqual({ top: 12.7, right: 12.7, bottom: 12.7, left: 12.7 });
    expect(readSides('--margin', '1/2, 10mm,1in ,0.25', 'in')).toEqual({
      top: 12.7,
      right: 10,
      bottom: 25.4,
      left: 6.35,
    });
    expect(wrong(() => readSides('--margin', '1,2', 'in'))).toMatch(
      /^--margin: not one length, and not four; found "1,2"/,
    );
    expect(wrong(() => readSides('--margin', '1,2,3,wide', 'in'))).toMatch(
      /^--margin: no number; found "wide"/,
    );
  });

  it('reads whole numbers within limits', () => {
    expect(readWhole('--dpi', '300', 1, 2400)).toBe(300);
    for (const text of ['', '0', '-3', '2.5', '1e3', '2401', '9'.repeat(30), 'NaN'])
      expect(wrong(() => readWhole('--dpi', text, 1, 2400))).toContain('a whole number from 1 to 2400');
  });
});

describe('--measured', () => {
  it.each([
    // The square is 2 in; 1 31/32 in over 2 in is 63/64.
    ['1.98,2', 'in', 0.99, 1],
    ['1 31/32, 2', 'in', 63 / 64, 1],
    ['1 31/32 x 2', 'in', 63 / 64, 1],
    ['2" by 2 1/32"', 'mm', 1, 65 / 64],
    ['1.98in,2in', 'mm', 0.99, 1],
    // What the sheet says = what the ruler says.
    ['6in=5.97in,9in=9in', 'in', 0.995, 1],
    ['6=5.97,9=9', 'in', 0.995, 1],
    ['50mm=49.6mm,50mm=50mm', 'in', 0.992, 1],
    ['50=49.6,180=180.9', 'mm', 0.992, 1.005],
  ] as const)(
    '%s (bare numbers in %s) is %d along the short edge and %d along the long',
    (text, units, short, long) => {
      const found = readMeasured(text, units);
      expect(found.short).toBeCloseTo(short, 12);
      expect(found.long).toBeCloseTo(long, 12);
    },
  );

  it.each([
    // 50 mm or the whole side of 50.8? The program does not guess.
    [
      '50mm,50mm',
      'in',
      'it does not say which length was measured; found "50mm"; expected what the sheet says = what your ruler says, such as 50mm=50mm',
    ],
    [
      '50,50',
      'mm',
      'it does not say which length was measured; found "50"; expected what the sheet says = what your ruler says, such as 50mm=50',
    ],
    [
      '1.98',
      'in',
      'not two lengths; found "1.98"; expected the 2 in square along the paper\'s short edge, then along its long edge, such as 1.98,2; or 50mm=49.8mm,50mm=50mm',
    ],
    [
      '1.7,2',
      'in',
      'too far off to be a printer\'s error; found "1.7" for the side of the 2 in square; expected within a tenth of it; print again at 100 % / actual size, and measure that print',
    ],
    [
      '6in=4in,6in=6in',
      'in',
      'too far off to be a printer\'s error; found "4in" for "6in"; expected within a tenth of it; print again at 100 % / actual size, and measure that print',
    ],
    ['2,two', 'in', 'no number; found "two"; expected a length above zero, such as 5 1/2 or 140 mm'],
    ['2,0', 'in', 'a length of nothing; found "0"; expected a length above zero, such as 5 1/2 or 140 mm'],
    [
      '6in=,2',
      'in',
      'not a length; found "6in="; expected the 2 in square along the paper\'s short edge, then along its long edge, such as 1.98,2; or 50mm=49.8mm,50mm=50mm',
    ],
    [
      '2,2,2',
      'in',
      'not two lengths; found "2,2,2"; expected the 2 in square along the paper\'s short edge, then along its long edge, such as 1.98,2; or 50mm=49.8mm,50mm=50mm',
    ],
  ] as const)('refuses %s (bare numbers in %s)', (text, units, line) => {
    expect(wrong(() => readMeasured(text, units))).toBe(`--measured: ${line}`);
  });
});
