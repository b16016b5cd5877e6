/** The program as people run it: compiled once into a folder of its own, and started as a process. */

import { execFileSync, spawn } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

export interface Built {
  readonly bin: string;
  readonly remove: () => void;
}

/** By the script that builds the package, so that what is tested is what is shipped. */
export const build = (): Built => {
  const folder = mkdtempSync(join(tmpdir(), 'swagwright-build-'));
  execFileSync(process.execPath, [
    join(root, 'scripts/build-program.mjs'),
    join(folder, 'dist'),
    'cli/node-io',
  ]);
  copyFileSync(join(root, 'package.json'), join(folder, 'package.json'));
  for (const name of ['node_modules', 'profiles']) symlinkSync(join(root, name), join(folder, name));
  return {
    bin: join(folder, 'dist/cli/bin.js'),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
};

export interface Exited {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

/** Starts the program with nothing in its environment but the path. */
export const start = (bin: string, cwd: string, argv: readonly string[]) => {
  const { PATH } = process.env;
  return spawn(process.execPath, [bin, ...argv], { cwd, env: { PATH }, stdio: ['ignore', 'pipe', 'pipe'] });
};

export const exited = (child: ReturnType<typeof start>): Promise<Exited> =>
  new Promise((resolve, reject) => {
    let out = '';
    let err = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
    });
    child.on('error', reject);
    child.on('close', (code, signal) => resolve({ code, signal, out, err }));
  });

export const spawned = (bin: string, cwd: string, argv: readonly string[]): Promise<Exited> =>
  exited(start(bin, cwd, argv));
