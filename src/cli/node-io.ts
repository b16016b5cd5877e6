/** The real world, for the program as people run it. */

import { copyFileSync, fstatSync, renameSync, unlinkSync, writeSync } from 'node:fs';
import * as promised from 'node:fs/promises';
import { type Files, FolderGone, type Io, type Sink } from './io.ts';
import { ownFile } from './own-files.ts';

export const nodeFiles: Files = { ...promised, renameSync, copyFileSync, unlinkSync };

export const nodeIo = (): Io => ({
  stdout: sinkOf(() => process.stdout),
  stderr: sinkOf(() => process.stderr),
  /** Asked for late: help needs no folder. */
  get cwd() {
    return currentFolder();
  },
  env: debugging(),
  files: nodeFiles,
  profiles: ownFile('profiles/'),
  removeWhenInterrupted,
});

const currentFolder = (): string => {
  try {
    return process.cwd();
  } catch {
    throw new FolderGone('There is no current folder');
  }
};

const debugging = (): Io['env'] => {
  const { SWAGWRIGHT_DEBUG } = process.env;
  return { SWAGWRIGHT_DEBUG };
};

/**
 * A reader that goes away (`| head`) is no fault of the run's: the rest is dropped without a word. Node sets a
 * stream up when it is first asked for, so it is asked for late.
 */
const sinkOf = (open: () => NodeJS.WriteStream & { fd: number }): Sink => {
  let stream: ReturnType<typeof open> | undefined;
  return {
    write: (chunk) =>
      new Promise((resolve, reject) => {
        // Without a listener the stream would throw what the callback below already reports.
        stream ??= open().on('error', () => {});
        if (isFile(stream.fd)) resolve(writeWhole(stream.fd, Buffer.from(chunk)));
        else
          stream.write(chunk, (error) => {
            if (!error || (error as NodeJS.ErrnoException).code === 'EPIPE') resolve();
            else reject(error);
          });
      }),
  };
};

/** Into a file that the shell has opened node writes once, and does not see that a disk took only the beginning. */
const writeWhole = (fd: number, bytes: Uint8Array): void => {
  for (let written = 0; written < bytes.length; ) written += writeSync(fd, bytes, written);
};

const isFile = (fd: number): boolean => {
  try {
    return fstatSync(fd).isFile();
  } catch {
    return false;
  }
};

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Listens only while there is something to remove; then the program dies of the signal as if it had not. */
const removeWhenInterrupted = (path: string): (() => void) => {
  const stop = (): void => {
    for (const signal of SIGNALS) process.off(signal, clean);
  };
  const clean = (signal: NodeJS.Signals): void => {
    try {
      unlinkSync(path);
    } catch {
      // Already renamed or never made: nothing is left to remove.
    }
    stop();
    process.kill(process.pid, signal);
  };
  for (const signal of SIGNALS) process.on(signal, clean);
  return stop;
};
