/**
 * Writes a file whole or not at all.
 *
 * The bytes go into a new file beside the target, are brought to the disk, and take the target's name in one
 * step. So whoever looks sees the earlier file or the finished one, also after a power cut, a full disk, an
 * interrupt, or two runs at once. Where the target is a link, the file that it leads to is replaced and the
 * link stays. Devices and pipes are written straight, since they cannot be replaced.
 */

import { randomBytes } from 'node:crypto';
import { constants } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { type Problem, ProblemError } from '../document/index.ts';
import { errorCode, fileProblem, WRITING } from './file-problem.ts';
import type { FileStatus, Io } from './io.ts';

/** A place for output that has been looked at before the work begins, so that no one waits for a refusal. */
export interface Output {
  /** As the user gave it. */
  readonly name: string;
  write(bytes: string | Uint8Array): Promise<void>;
}

/**
 * The output under a name; `-` is stdout. `inputs` are the paths of files that were read: none of them may be
 * written over. Throws a ProblemError.
 */
export const openOutput = async (io: Io, name: string, inputs: readonly string[]): Promise<Output> => {
  if (name === '-') return { name: 'standard output', write: (bytes) => io.stdout.write(bytes) };
  const asProblem = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      const problem = fileProblem(error, name, WRITING);
      if (problem) throw new ProblemError([problem]);
      throw error;
    }
  };
  const target = await asProblem(() => findTarget(io, name));
  await asProblem(() => refuseInputs(io, name, target, inputs));
  return {
    name,
    write: (bytes) =>
      asProblem(() => (target.replaceable ? replace(io, target, bytes) : fill(io, target, bytes))),
  };
};

interface Target {
  /** Behind any links. */
  readonly path: string;
  /** Undefined where there is no file yet. */
  readonly status: FileStatus | undefined;
  readonly replaceable: boolean;
}

const findTarget = async (io: Io, name: string): Promise<Target> => {
  const path = resolve(io.cwd, name);
  const status = await statusOf(() => io.files.stat(path));
  if (status === undefined) {
    const link = await statusOf(() => io.files.lstat(path));
    if (link) throw refusal(name, { code: 'dead-link', message: 'this is a link that leads nowhere' });
    if (/[\\/]$/.test(name)) throw isFolder(name);
    const folder = dirname(path);
    if (!(await io.files.stat(folder)).isDirectory())
      throw refusal(name, {
        code: 'file-enotdir',
        message: 'a part of this path is a file and not a folder',
      });
    await io.files.access(folder, constants.W_OK);
    return { path, status, replaceable: true };
  }
  if (status.isDirectory()) throw isFolder(name);
  const real = await io.files.realpath(path);
  // A file that someone has made read-only is meant to stay, though its folder would let it be replaced.
  await io.files.access(real, constants.W_OK);
  return { path: real, status, replaceable: status.isFile() };
};

const statusOf = async (look: () => Promise<FileStatus>): Promise<FileStatus | undefined> => {
  try {
    return await look();
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  }
};

const refusal = (file: string, problem: Omit<Problem, 'place'>): ProblemError =>
  new ProblemError([{ ...problem, place: { file } }]);

const isFolder = (name: string): ProblemError =>
  refusal(name, {
    code: 'file-eisdir',
    message: 'this is a folder and not a file',
    hint: 'name a file in it',
  });

const refuseInputs = async (
  io: Io,
  name: string,
  target: Target,
  inputs: readonly string[],
): Promise<void> => {
  for (const input of inputs) {
    const path = resolve(io.cwd, input);
    const status = await statusOf(() => io.files.stat(path));
    const same =
      status !== undefined &&
      target.status !== undefined &&
      // The same file under two names, by a hard link or on a disk that does not tell capitals apart.
      ((status.ino !== 0 && status.dev === target.status.dev && status.ino === target.status.ino) ||
        (await io.files.realpath(path)) === target.path);
    if (same)
      throw refusal(name, {
        code: 'output-is-input',
        message: 'this file is read for this very work and would be lost',
        hint: 'choose another name with -o',
      });
  }
};

const replace = async (io: Io, target: Target, bytes: string | Uint8Array): Promise<void> => {
  const folder = dirname(target.path);
  const temporary = join(folder, `.swagwright-${randomBytes(6).toString('hex')}.tmp`);
  const callOff = io.removeWhenInterrupted(temporary);
  try {
    const file = await io.files.open(temporary, 'wx');
    try {
      await file.writeFile(bytes);
      if (target.status) await file.chmod(target.status.mode & 0o7777);
      await file.sync();
    } finally {
      await file.close();
    }
    await io.files.rename(temporary, target.path);
  } catch (error) {
    await io.files.unlink(temporary).catch(() => {});
    throw error;
  } finally {
    callOff();
  }
  await syncFolder(io, folder);
};

/** Makes the new name last through a power cut. Some systems cannot; the file is whole either way. */
const syncFolder = async (io: Io, folder: string): Promise<void> => {
  try {
    const handle = await io.files.open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // As said above.
  }
};

const fill = async (io: Io, target: Target, bytes: string | Uint8Array): Promise<void> => {
  const file = await io.files.open(target.path, 'w');
  try {
    await file.writeFile(bytes);
  } finally {
    await file.close();
  }
};
