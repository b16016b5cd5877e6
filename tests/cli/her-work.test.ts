/** Nobody's work is written over, and files that belong together are written together or not at all. */

import {
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nodeFiles } from '../../src/cli/node-io.ts';
import { strip, svg } from './hostile/inputs.ts';
import { picture } from './pictures.ts';
import { emptyFolder, filesBut, run, systemError } from './run.ts';

const HERS = 'what somebody made here, and means to keep';

/** A scan at 200 dots per inch of a shape of 60 by 30 mm. */
const scan = (): Uint8Array => picture((c, mm) => c.fillRect(30 * mm, 20 * mm, 60 * mm, 30 * mm));

const folderWith = (plan = strip('36')): string => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), plan);
  writeFileSync(join(folder, 'drawing.svg'), svg());
  writeFileSync(join(folder, 'scan.png'), scan());
  return folder;
};

const contents = (folder: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(folder)
      .sort()
      .map((name) => [name, readFileSync(join(folder, name)).toString('latin1')]),
  );

const put = (folder: string, name: string, text: string): void => writeFileSync(join(folder, name), text);

/** Commands that choose the names of what they write. */
const CHOOSERS: readonly (readonly string[])[] = [
  ['draw', 'plan.yaml'],
  ['draw', 'plan.yaml', '--format', 'png', '--dpi', '30'],
  ['draw', 'plan.yaml', '--format', 'pdf'],
  ['mockup', 'plan.yaml'],
  ['fit', 'plan.yaml', '--take', '1'],
  ['audition', 'plan.yaml', '--fills', 'echo'],
  ['audition', 'plan.yaml', '--empty', '1'],
  ['template', 'baluster'],
  ['template', 'baluster', '--solid'],
  ['template', 'gallery', 'baluster', '--spans', '6'],
  ['template', 'sheet'],
  ['template', 'import', 'drawing.svg'],
  ['template', 'trace', 'scan.png', '--dpi', '200'],
];

describe('a file of a name that nobody asked for', () => {
  it.each(CHOOSERS.map((argv) => ({ argv })))(
    'stays if it is somebody’s, and nothing else is written: $argv',
    { timeout: 60_000 },
    async ({ argv }) => {
      const folder = folderWith();
      const before = new Set(readdirSync(folder));
      expect((await run(folder, argv)).code).toBe(0);
      const made = readdirSync(folder).filter((name) => !before.has(name));
      expect(made.length).toBeGreaterThan(0);
      const whole = contents(folder);
      // What is there already, just so, is no hindrance.
      expect((await run(folder, argv)).code).toBe(0);
      expect(contents(folder)).toEqual(whole);
      for (const name of made) {
        for (const other of made) rmSync(join(folder, other), { force: true });
        // Hers, or what was made here with something of hers in it.
        for (const text of [HERS, Buffer.from(`${whole.get(name)}\n%%EOF\n`, 'latin1').toString('latin1')]) {
          writeFileSync(join(folder, name), text, 'latin1');
          if (text !== HERS && name.endsWith('.png')) continue;
          const held = contents(folder);
          const ran = await run(folder, argv);
          expect(ran.lines.at(-1)).toContain(`${name}: there is such a file already`);
          expect(ran).toMatchObject({ code: 1, out: '' });
          expect(contents(folder)).toEqual(held);
        }
      }
    },
  );

  it('is made anew where it is a sheet or a picture as the program left it', {
    timeout: 60_000,
  }, async () => {
    const folder = folderWith();
    const argvs = [
      ['mockup', 'plan.yaml'],
      ['draw', 'plan.yaml', '--format', 'png', '--dpi', '30'],
    ];
    for (const argv of argvs) expect((await run(folder, argv)).code).toBe(0);
    const before = contents(folder);
    put(folder, 'plan.yaml', strip('60'));
    for (const argv of argvs) expect((await run(folder, argv)).code).toBe(0);
    for (const name of ['plan-mockup.pdf', 'plan.png'])
      expect(contents(folder).get(name)).not.toBe(before.get(name));
  });
});

describe('a plan that was taken', () => {
  it('is not written over when she has edited it and takes again', async () => {
    const folder = folderWith();
    await run(folder, ['fit', 'plan.yaml', '--take', '1']);
    const taken = readFileSync(join(folder, 'plan-fit-1.yaml'), 'utf8');
    put(folder, 'plan-fit-1.yaml', `${taken}\n# for the guild's raffle\n`);
    const ran = await run(folder, ['fit', 'plan.yaml', '--take', '1']);
    expect(ran).toMatchObject({
      code: 1,
      lines: [
        'plan-fit-1.yaml: there is such a file already, and it holds something else; name another with -o; -o plan-fit-1.yaml writes over it',
      ],
    });
    expect(readFileSync(join(folder, 'plan-fit-1.yaml'), 'utf8')).toContain('raffle');
    expect((await run(folder, ['fit', 'plan.yaml', '--take', '1', '-o', 'plan-fit-1.yaml'])).code).toBe(0);
    expect(readFileSync(join(folder, 'plan-fit-1.yaml'), 'utf8')).toBe(taken);
  });

  /** Somebody saves into the file while the new one is being written beside it. */
  const savedMeanwhile = (path: string, text: string) =>
    filesBut({
      open: (name, flags) => {
        if (flags === 'wx') writeFileSync(path, text);
        return nodeFiles.open(name, flags);
      },
    });

  it.each([
    ['the plan itself', ['--in-place'], 'plan.yaml', true],
    ['a plan that was there', ['-o', 'chosen.yaml'], 'chosen.yaml', true],
    ['a plan that was not there', ['-o', 'chosen.yaml'], 'chosen.yaml', false],
  ])('does not wipe what was saved meanwhile: %s', async (_, options, name, wasThere) => {
    const folder = folderWith();
    if (wasThere && name !== 'plan.yaml') put(folder, name, strip('40'));
    const saved = strip('48', '# saved meanwhile\n');
    const ran = await run(folder, ['fit', 'plan.yaml', '--take', '1', ...options], {
      files: savedMeanwhile(join(folder, name), saved),
    });
    expect(ran).toMatchObject({
      code: 1,
      lines: [
        `${name}: someone changed this file since the command began; nothing was written; run it again`,
      ],
    });
    expect(readFileSync(join(folder, name), 'utf8')).toBe(saved);
    expect(ran.left.filter((left) => left.endsWith('.tmp'))).toEqual([]);
  });

  it('changes the plan itself when asked, with a byte order mark too', async () => {
    const folder = folderWith(`\ufeff${strip('36')}`);
    expect((await run(folder, ['fit', 'plan.yaml', '--take', '1', '--in-place'])).code).toBe(0);
    const text = readFileSync(join(folder, 'plan.yaml'), 'utf8');
    expect(text).toContain('repeats');
    // The mark is hers, and stays; one that was not there does not come.
    expect(text.lastIndexOf('\ufeff')).toBe(0);
    const plain = folderWith(strip('36'));
    await run(plain, ['fit', 'plan.yaml', '--take', '1', '--in-place']);
    expect(readFileSync(join(plain, 'plan.yaml'), 'utf8')).not.toContain('\ufeff');
  });
});

describe('a sheet and the plan that is taken with it', () => {
  it.each([
    ['x.out', 'x.out'],
    ['x.out', './x.out'],
    ['x.out', 'here/../x.out'],
    ['x.out', 'hard'],
  ])('are never one file: %s and %s', async (sheet, plan) => {
    const folder = folderWith();
    mkdirSync(join(folder, 'here'));
    if (plan === 'hard') {
      put(folder, 'x.out', HERS);
      linkSync(join(folder, 'x.out'), join(folder, 'hard'));
    }
    const ran = await run(folder, ['fit', 'plan.yaml', '--take', '1', '--sheet', sheet, '-o', plan]);
    expect(ran).toMatchObject({
      code: 1,
      lines: [
        `${plan}: two different files would be written under this one name; give each a name of its own`,
      ],
    });
    expect(existsSync(join(folder, 'x.out'))).toBe(plan === 'hard');
  });

  it('are not written when the plan cannot be', async () => {
    const folder = folderWith();
    for (const [options, line] of [
      [['-o', 'none/plan.yaml'], 'none/plan.yaml: the folder that it should go into does not exist'],
      [['-o', 'plan.yaml'], 'plan.yaml: the command reads this file'],
    ] as const) {
      const held = contents(folder);
      const ran = await run(folder, ['fit', 'plan.yaml', '--take', '1', '--sheet', 'sheet.pdf', ...options]);
      expect(ran.code).toBe(1);
      expect(ran.lines).toHaveLength(1);
      expect(ran.lines[0]).toContain(line);
      expect(contents(folder)).toEqual(held);
    }
  });

  /** The steps at which the disk may refuse, each in its turn. */
  const failingAt = (n: number) => {
    let step = 0;
    const failing =
      <A extends unknown[], R>(call: (...args: A) => R) =>
      (...args: A): R => {
        step += 1;
        if (step === n) throw systemError('EIO');
        return call(...args);
      };
    const files = filesBut({
      open: failing((path, flags) => nodeFiles.open(path, flags)),
      copyFileSync: failing(nodeFiles.copyFileSync),
      renameSync: failing(renameSync),
    });
    return { files, reached: () => step >= n };
  };

  it.each([true, false])(
    'are both there or neither, whichever step fails (earlier ones there: %s)',
    async (earlier) => {
      const argv = ['fit', 'plan.yaml', '--take', '1', '--sheet', 'sheet.pdf', '-o', 'chosen.yaml'];
      for (let n = 1; ; n++) {
        const folder = folderWith();
        if (earlier) for (const name of ['sheet.pdf', 'chosen.yaml']) put(folder, name, HERS);
        const before = contents(folder);
        const { files, reached } = failingAt(n);
        const ran = await run(folder, argv, { files });
        if (!reached()) {
          expect(ran.code).toBe(0);
          expect(n).toBeGreaterThan(earlier ? 8 : 6);
          break;
        }
        const now = contents(folder);
        expect([...now.keys()].filter((name) => name.endsWith('.tmp'))).toEqual([]);
        if (ran.code === 0) expect(now.get('sheet.pdf')?.slice(0, 5)).toBe('%PDF-');
        else {
          expect(ran.lines).toHaveLength(1);
          expect(now).toEqual(before);
        }
      }
    },
  );
});

describe('a template that is traced, and the picture of what was found', () => {
  it('stay both when the template is somebody’s', { timeout: 60_000 }, async () => {
    const folder = folderWith();
    // A picture as the program makes them, and so one that may be made anew.
    await run(folder, ['draw', 'plan.yaml', '--format', 'png', '--dpi', '30', '-o', 'scan-outline.png']);
    put(folder, 'scan.yaml', HERS);
    const held = contents(folder);
    const ran = await run(folder, ['template', 'trace', 'scan.png', '--dpi', '200']);
    expect(ran.code).toBe(1);
    expect(ran.lines.at(-1)).toContain('scan.yaml: there is such a file already');
    expect(contents(folder)).toEqual(held);
  });

  it('is found again, and its picture made anew, when she says where its ends are', {
    timeout: 60_000,
  }, async () => {
    const folder = folderWith();
    const argv = ['template', 'trace', 'scan.png', '--dpi', '200'];
    expect((await run(folder, argv)).code).toBe(0);
    const first = contents(folder);
    rmSync(join(folder, 'scan.yaml'));
    const ran = await run(folder, [...argv, '--heel', '1', '--crown', '2', '--foot', 'left']);
    expect(ran).toMatchObject({ code: 0 });
    expect(contents(folder).get('scan-outline.png')).not.toBe(first.get('scan-outline.png'));
  });
});
