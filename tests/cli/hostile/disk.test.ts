/**
 * Whole commands on disks that fail, and in hands that interrupt: the earlier file survives whole, nothing is left
 * lying about, and one line says what happened. How each step of a write fails is tested in ../files.test.ts; here it
 * is the program as people run it.
 */

import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Built, build } from '../build.ts';
import { emptyFolder } from '../run.ts';
import { strip, svg } from './inputs.ts';
import { finished, startWatched, type Watched, watched } from './watched.ts';

const EARLIER = 'what was here before, and must stay';
const TIME = { timeout: 120_000 };

/** What each command writes, under the name that it is told. */
const WRITERS: readonly (readonly string[])[] = [
  ['draw', 'plan.yaml', '-o', 'out.svg'],
  ['draw', 'plan.yaml', '-o', 'out.png'],
  ['draw', 'plan.yaml', '-o', 'out.pdf'],
  ['mockup', 'plan.yaml', '-o', 'out.pdf'],
  ['card', 'plan.yaml', '-o', 'out.pdf'],
  ['fit', 'plan.yaml', '--take', '1', '-o', 'out.yaml'],
  ['audition', 'plan.yaml', '--fills', 'echo', '-o', 'out.pdf'],
  ['template', 'baluster', '-o', 'out.pdf'],
  ['template', 'gallery', 'baluster', '-o', 'out.pdf'],
  ['template', 'sheet', '-o', 'out.pdf'],
  ['template', 'import', 'drawing.svg', '-o', 'out.yaml'],
];

const folderFor = (output: string): string => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), strip('36'));
  writeFileSync(join(folder, 'drawing.svg'), svg());
  writeFileSync(join(folder, output), EARLIER);
  return folder;
};

const survives = (folder: string, output: string): void => {
  expect(readFileSync(join(folder, output), 'utf8')).toBe(EARLIER);
  expect(readdirSync(folder).sort()).toEqual(['drawing.svg', output, 'plan.yaml'].sort());
};

/** Stops where the whole new file lies beside the earlier one and has not taken its name, and says so. */
const STOP_WHEN_WRITTEN = `import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
const open = fs.promises.open;
fs.promises.open = async (path, flags) => {
  const file = await open(path, flags);
  if (flags === 'wx')
    file.sync = () => {
      process.stdout.write('written');
      return new Promise(() => setInterval(() => {}, 1000));
    };
  return file;
};
syncBuiltinESMExports();
`;

/** The same for the first bytes of it. */
const FULL = `import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
const open = fs.promises.open;
fs.promises.open = async (path, flags) => {
  const file = await open(path, flags);
  if (flags === 'wx')
    file.writeFile = async (data) => {
      await file.write(data.slice(0, 10));
      throw Object.assign(new Error('told by a test'), { code: 'ENOSPC' });
    };
  return file;
};
syncBuiltinESMExports();
`;

describe('a file that is being replaced', () => {
  let built: Built;
  beforeAll(() => {
    built = build();
  }, 120_000);
  afterAll(() => built.remove());

  it.each(WRITERS.map((argv) => ({ argv, output: argv.at(-1)! })))(
    'survives a full disk: $argv',
    TIME,
    async ({ argv, output }) => {
      const folder = folderFor(output);
      const ran = await watched(built.bin, folder, argv, { before: FULL });
      expect(ran).toMatchObject({
        code: 1,
        out: '',
        lines: [`${output}: the disk is full; nothing was written`],
      });
      survives(folder, output);
    },
  );

  it.runIf(process.platform !== 'win32')(
    'survives a limit that the system sets on the size of files',
    TIME,
    async () => {
      const folder = folderFor('out.svg');
      // Blocks of 512 bytes; node is told of it by an error where the signal is ignored.
      const shell = "trap '' XFSZ; ulimit -f 4;";
      const ran = await watched(built.bin, folder, ['draw', 'plan.yaml', '-o', 'out.svg'], { shell });
      expect(ran.lines).toEqual(['out.svg: the file is too large for this disk; nothing was written']);
      expect(ran.code).toBe(1);
      survives(folder, 'out.svg');
    },
  );

  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'survives %s in the middle of the write',
    TIME,
    async (signal) => {
      const folder = folderFor('out.svg');
      const child = startWatched(built.bin, folder, ['draw', 'plan.yaml', '-o', 'out.svg'], {
        before: STOP_WHEN_WRITTEN,
      });
      let between: readonly string[] = [];
      child.stdout!.once('data', () => {
        between = readdirSync(folder);
        child.kill(signal);
      });
      const ran: Watched = await finished(child);
      // The new file was there, and was taken away.
      expect(between.filter((name) => /^\.swagwright-[0-9a-f]{12}\.tmp$/.test(name))).toHaveLength(1);
      expect(ran).toMatchObject({ code: null, signal, err: '' });
      survives(folder, 'out.svg');
    },
  );

  it('is one of two, whole, when two different runs write it at once', TIME, async () => {
    const folder = folderFor('out.svg');
    writeFileSync(join(folder, 'other.yaml'), strip('60'));
    const plans = ['plan.yaml', 'other.yaml', 'plan.yaml', 'other.yaml'];
    const ran = await Promise.all(
      plans.map((plan) => watched(built.bin, folder, ['draw', plan, '-o', 'out.svg'])),
    );
    expect(ran.map((r) => r.code)).toEqual([0, 0, 0, 0]);
    const found = readFileSync(join(folder, 'out.svg'), 'utf8');
    const alone = [];
    for (const plan of plans.slice(0, 2)) {
      await watched(built.bin, folder, ['draw', plan, '-o', 'alone.svg']);
      alone.push(readFileSync(join(folder, 'alone.svg'), 'utf8'));
    }
    expect(alone[0]).not.toBe(alone[1]);
    expect(alone).toContain(found);
    expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  it.runIf(process.getuid !== undefined && process.getuid() !== 0)(
    'stays in a folder that may not be written',
    TIME,
    async () => {
      const folder = folderFor('out.svg');
      chmodSync(folder, 0o555);
      const ran = await watched(built.bin, folder, ['draw', 'plan.yaml', '-o', 'new.svg']);
      chmodSync(folder, 0o755);
      expect(ran.lines).toEqual(['new.svg: there is no permission to write it; nothing was written']);
      survives(folder, 'out.svg');
    },
  );

  it.each([
    [
      'the plan itself',
      'plan.yaml',
      'plan.yaml: the command reads this file, and would write over it; choose another name with -o',
    ],
    [
      'a link to the plan',
      'link.svg',
      'link.svg: the command reads this file, and would write over it; choose another name with -o',
    ],
    ['a folder', 'folder.svg', 'folder.svg: this is a folder and not a file; name a file in it'],
    ['a link that leads nowhere', 'dead.svg', 'dead.svg: this is a link that leads nowhere'],
    [
      'a folder that is not there',
      'none/out.svg',
      'none/out.svg: the folder that it should go into does not exist',
    ],
  ])('is never %s', TIME, async (_, output, line) => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'plan.yaml'), strip('36'));
    symlinkSync('plan.yaml', join(folder, 'link.svg'));
    symlinkSync('nowhere', join(folder, 'dead.svg'));
    mkdirSync(join(folder, 'folder.svg'));
    const before = readdirSync(folder);
    const command = output.endsWith('.yaml') ? ['fit', 'plan.yaml', '--take', '1'] : ['draw', 'plan.yaml'];
    const ran = await watched(built.bin, folder, [...command, '-o', output]);
    expect(ran).toMatchObject({ code: 1, out: '', lines: [line] });
    expect(readFileSync(join(folder, 'plan.yaml'), 'utf8')).toBe(strip('36'));
    expect(readdirSync(folder)).toEqual(before);
    expect(existsSync(join(folder, 'nowhere'))).toBe(false);
  });
});
