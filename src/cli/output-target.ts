/** The place that a result is to go to, looked at before the work begins, so that no one waits for a refusal. */

import { constants } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { type Problem, ProblemError } from '../document/index.ts';
import { errorCode, fileProblem, WRITING } from './file-problem.ts';
import type { FileStatus, Io } from './io.ts';

/** A place in a folder. */
export interface Target {
  /** Behind any links. */
  readonly path: string;
  /** Undefined where there is no file yet. */
  readonly status: FileStatus | undefined;
  /** Devices, pipes and what is open already are written straight, since they cannot be replaced. */
  readonly replaceable: boolean;
}

/** What a run has open: the file behind it may not be replaced, or who opened it would never see what comes. */
const OPEN_ALREADY = /^\/(dev\/(stdout|stderr|fd\/)|proc\/[^/]+\/fd\/)/;

/** The place that a name means. Throws a ProblemError where nothing can be written there. */
export const findTarget = (io: Io, name: string): Promise<Target> =>
  sayingWhere(name, async () => {
    const path = resolve(io.cwd, name);
    const status = await statusOf(() => io.files.stat(path));
    if (status === undefined) return newTarget(io, name, path);
    if (status.isDirectory()) throw isFolder(name);
    if (!status.isFile() || OPEN_ALREADY.test(path)) {
      await io.files.access(path, constants.W_OK);
      return { path, status, replaceable: false };
    }
    const real = await io.files.realpath(path);
    // A file that someone has made read-only is meant to stay, though its folder would let it be replaced.
    await io.files.access(real, constants.W_OK);
    return { path: real, status, replaceable: true };
  });

const newTarget = async (io: Io, name: string, path: string): Promise<Target> => {
  const link = await statusOf(() => io.files.lstat(path));
  if (link?.isSymbolicLink())
    throw refusal(name, { code: 'dead-link', message: 'this is a link that leads nowhere' });
  // Another run has finished the file between the two looks.
  if (link) return findTarget(io, name);
  if (/[\\/]$/.test(name)) throw isFolder(name);
  const folder = dirname(path);
  if (!(await io.files.stat(folder)).isDirectory())
    throw refusal(name, { code: 'file-enotdir', message: 'a part of this path is a file and not a folder' });
  await io.files.access(folder, constants.W_OK);
  return {
    path: join(await io.files.realpath(folder), basename(path)),
    status: undefined,
    replaceable: true,
  };
};

/** Whether a file that was read, or another place, is the very same file, under whatever name. */
export const isSameFile = (a: Pick<Target, 'path' | 'status'>, b: Pick<Target, 'path' | 'status'>): boolean =>
  a.path === b.path ||
  // By a hard link, or on a disk that does not tell capitals apart.
  (a.status !== undefined &&
    b.status !== undefined &&
    a.status.ino !== 0 &&
    a.status.dev === b.status.dev &&
    a.status.ino === b.status.ino);

/** Throws a ProblemError where the place is one of the files that were read. */
export const refuseInputs = (
  io: Io,
  name: string,
  target: Target,
  inputs: readonly string[],
  option = '-o',
): Promise<void> =>
  sayingWhere(name, async () => {
    for (const input of inputs) {
      const path = resolve(io.cwd, input);
      const status = await statusOf(() => io.files.stat(path));
      if (status === undefined) continue;
      const real = await io.files.realpath(path).catch(() => path);
      if (isSameFile(target, { path: real, status }))
        throw refusal(name, {
          code: 'output-is-input',
          message: 'the command reads this file, and would write over it',
          hint: `choose another name with ${option}`,
        });
    }
  });

/** What the system refuses is said of the file that it is about. */
export const sayingWhere = async <T>(name: string, work: () => Promise<T>): Promise<T> => {
  try {
    return await work();
  } catch (error) {
    throw saidOf(name, error);
  }
};

/** The problem behind an error of the file system; any other error as it is. */
export const saidOf = (name: string, error: unknown): unknown => {
  const problem = fileProblem(error, name, WRITING);
  return problem ? new ProblemError([problem]) : error;
};

export const refusal = (file: string, problem: Omit<Problem, 'place'>): ProblemError =>
  new ProblemError([{ ...problem, place: { file } }]);

const isFolder = (name: string): ProblemError =>
  refusal(name, {
    code: 'file-eisdir',
    message: 'this is a folder and not a file',
    hint: 'name a file in it',
  });

const statusOf = async (look: () => Promise<FileStatus>): Promise<FileStatus | undefined> => {
  try {
    return await look();
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  }
};
