/** The program where the system gives it little: few files to open, no folder to stand in, an output open already. */

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { few } from '../support/runs.ts';
import { type Built, build } from './build.ts';
import { strip, svg } from './hostile/inputs.ts';
import { emptyFolder } from './run.ts';

let built: Built;
beforeAll(() => {
  built = build();
}, 120_000);
afterAll(() => built.remove());

/** The program after a shell's words, such as a limit. */
const after = (shell: string, cwd: string, argv: readonly string[], redirected = '') => {
  const { PATH } = process.env;
  const { status, stdout, stderr } = spawnSync(
    'sh',
    ['-c', `${shell} exec "$0" "$@" ${redirected}`, process.execPath, built.bin, ...argv],
    { cwd, env: { PATH }, encoding: 'utf8' },
  );
  return { code: status, out: stdout, lines: stderr.split('\n').filter((line) => line !== '') };
};

const folderWithPlan = (): string => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), strip('36'));
  writeFileSync(join(folder, 'drawing.svg'), svg());
  return folder;
};

const LIMITS = few([24, 40, 70, 100, 112, 120, 400], (most) => [24, 70, 112, 400].includes(most));
const FEW =
  'swagwright may not open as many files as it needs; nothing was written; close other programs, or allow more (ulimit -n 1024)';

describe.runIf(process.platform !== 'win32')('with few files to open', { timeout: 120_000 }, () => {
  it.each([
    ['fit', 'plan.yaml'],
    ['draw', 'plan.yaml', '-o', 'out.png'],
    ['card', 'plan.yaml'],
    ['mockup', 'plan.yaml', '-o', 'out.pdf'],
    ['template', 'import', 'drawing.svg', '-o', 'out.yaml'],
  ])('each command does its work or says in one line why not: %s %s', (...argv) => {
    let refused = 0;
    for (const most of LIMITS) {
      const folder = folderWithPlan();
      const ran = after(`ulimit -n ${most};`, folder, argv);
      if (ran.code === 0) continue;
      refused++;
      expect(ran).toEqual({ code: 1, out: '', lines: [FEW] });
      expect(readdirSync(folder).sort()).toEqual(['drawing.svg', 'plan.yaml']);
    }
    expect(refused).toBeGreaterThan(0);
    expect(refused).toBeLessThan(LIMITS.length);
  });
});

describe.runIf(process.platform !== 'win32')('in a folder that has been removed', () => {
  const GONE = 'the folder that this command runs in has been removed; go to another folder and run it there';

  const inRemoved = (argv: readonly string[]) => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'gone'));
    return after('cd gone && rmdir ../gone &&', folder, argv);
  };

  it.each([['--help'], ['--version'], ['fit', '--help'], ['template', 'trace', '--help']])(
    'help comes all the same: %s %s',
    (...argv) => {
      const ran = inRemoved(argv);
      expect(ran).toMatchObject({ code: 0, lines: [] });
      expect(ran.out).not.toBe('');
    },
  );

  it.each([
    ['fit', 'plan.yaml'],
    ['draw', 'plan.yaml'],
    ['template', 'baluster'],
    ['template', 'sheet'],
    ['open', 'plan.yaml', '--no-browser'],
  ])('one line says so: %s %s', (...argv) => {
    expect(inRemoved(argv)).toEqual({ code: 1, out: '', lines: [GONE] });
  });
});

describe.runIf(existsSync('/dev/fd/1'))('an output that is open already', () => {
  it.each(['/dev/stdout', '/dev/fd/1'])('is stdout under the name %s', (name) => {
    const folder = folderWithPlan();
    const argv = ['draw', 'plan.yaml', '-o'];
    const { out } = after('', folder, [...argv, '-']);
    expect(out).toContain('<svg');
    expect(after('', folder, [...argv, name])).toMatchObject({ code: 0, out });
    // Sent into a file by the shell, it arrives in that file, behind what stands there.
    writeFileSync(join(folder, 'all.svg'), 'before\n');
    expect(after('', folder, [...argv, name], '>> all.svg').code).toBe(0);
    expect(readFileSync(join(folder, 'all.svg'), 'utf8')).toBe(`before\n${out}`);
    expect(after('', folder, [...argv, name, '--json']).lines).toEqual([
      '--output: the file and --json cannot both go to stdout; give the file a name',
    ]);
  });

  it('may be a pipe or a file that the shell has opened', () => {
    const folder = folderWithPlan();
    const { out } = after('', folder, ['draw', 'plan.yaml', '-o', '-']);
    const argv = ['draw', 'plan.yaml', '--format', 'svg', '-o', '/dev/fd/3'];
    expect(after('', folder, argv, '3>&1 | cat')).toMatchObject({ out });
    writeFileSync(join(folder, 'third.svg'), 'before\n');
    expect(after('', folder, argv, '3>> third.svg').code).toBe(0);
    expect(readFileSync(join(folder, 'third.svg'), 'utf8')).toBe(`before\n${out}`);
  });

  it('is said not to be whole when the disk takes only its beginning', () => {
    const folder = folderWithPlan();
    // Blocks of 512 bytes; node is told of it by an error where the signal is ignored.
    const shell = "trap '' XFSZ; ulimit -f 4;";
    expect(after(shell, folder, ['draw', 'plan.yaml', '-o', '-'], '> part.svg')).toMatchObject({
      code: 1,
      lines: ['standard output: the file is too large for this disk; what has come out there is not whole'],
    });
    expect(readFileSync(join(folder, 'part.svg')).length).toBe(2048);
  });

  it('is left whole when the sheet goes to stdout and the plan cannot be written', () => {
    const folder = folderWithPlan();
    const argv = ['fit', 'plan.yaml', '--take', '1', '--sheet', '/dev/stdout', '-o', 'plan.yaml'];
    expect(after('', folder, argv)).toMatchObject({ code: 1, out: '' });
  });
});
