/** Runs the command line in this process, in an empty folder of its own, and tells all that it did. */

import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Files, Io } from '../../src/cli/io.ts';
import { main } from '../../src/cli/main.ts';
import { nodeFiles } from '../../src/cli/node-io.ts';

/** For one test: it is gone when the test has finished. */
export const emptyFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'swagwright-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** The lines of stderr. */
  readonly lines: readonly string[];
  /** What the folder holds afterwards. */
  readonly left: readonly string[];
}

/** An io on real files whose stdout and stderr are kept. */
export const testIo = (cwd: string, more: Partial<Io> = {}) => {
  const kept = { out: '', err: '', pending: new Set<string>() };
  const io: Io = {
    stdout: {
      write: async (chunk) => {
        kept.out += typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('latin1');
      },
    },
    stderr: {
      write: async (chunk) => {
        kept.err += chunk;
      },
    },
    cwd,
    env: {},
    files: nodeFiles,
    profiles: join(import.meta.dirname, '../../profiles'),
    removeWhenInterrupted: (path) => {
      kept.pending.add(path);
      return () => kept.pending.delete(path);
    },
    ...more,
  };
  return { io, kept };
};

export const run = async (cwd: string, argv: readonly string[], more: Partial<Io> = {}): Promise<Ran> => {
  const { io, kept } = testIo(cwd, more);
  const code = await main(argv, io);
  return {
    code,
    out: kept.out,
    err: kept.err,
    lines: kept.err.split('\n').filter((line) => line !== ''),
    left: readdirSync(cwd).sort(),
  };
};

/** The real files, with some calls replaced. */
export const filesBut = (changed: Partial<Files>): Files => ({ ...nodeFiles, ...changed });

/** What the system throws. */
export const systemError = (code: string): Error =>
  Object.assign(new Error(`${code}: told by a test`), { code });
