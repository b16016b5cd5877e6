/**
 * What a run writes, whole or not at all, and nothing over anybody's work.
 *
 * One rule for all commands: a file is written over only when its name was asked for, or when it is as this program
 * left it; and a plan or a template only when it is still as it was when the run began. Files that belong together are
 * written together: each new one goes into a file beside its target and is brought to the disk; then all are held
 * against the rule; then all take their names at once. So whoever looks sees the earlier files or the finished ones,
 * also after a full disk, an interrupt, or two runs at once. Where a target is a link, the file that it leads to is
 * replaced and the link stays.
 */

import { randomBytes } from 'node:crypto';
import { dirname, join, resolve } from 'node:path';
import { errorCode } from './file-problem.ts';
import type { Files, Io } from './io.ts';
import {
  findTarget,
  isSameFile,
  refusal,
  refuseInputs,
  saidOf,
  sayingWhere,
  type Target,
} from './output-target.ts';
import { MOST_BYTES, readLimited } from './read-file.ts';

/** A file that a command wants to write. */
export interface Wanted {
  /** The name that was asked for; `-` is stdout. */
  readonly asked?: string | undefined;
  /** The name that the program chooses where none was. */
  readonly usual?: string;
  /** The option by which it would be asked for. */
  readonly option?: string;
  /** A plan or a template, which people work on. */
  readonly handwork?: boolean;
  /** The text that stood in the file when it was read, where the file itself is to be changed. */
  readonly was?: string;
}

type Bytes = string | Uint8Array;

export interface Output {
  /** As it was asked for. */
  readonly name: string;
  /** By itself; `writeTogether` writes several. */
  write(bytes: Bytes): Promise<void>;
}

/** One of them, looked at. */
interface Opened extends Output {
  readonly wanted: Wanted;
  /** Undefined for stdout. */
  readonly target: Target | undefined;
  /** What the file held when it was looked at, where it must still hold that when it is replaced. */
  readonly before: Content | undefined;
}

/** A file's bytes, or why there are none to compare. */
type Content = Uint8Array | 'none' | 'too-large';

/** The output for one file. `inputs` are the paths of files that were read: none is written over. */
export const openOutput = async (io: Io, wanted: Wanted, inputs: readonly string[]): Promise<Output> =>
  (await openOutputs(io, [wanted], inputs))[0];

/** The outputs for several, in their order. Throws a ProblemError where one cannot be written, or two would be one. */
export const openOutputs = async <const W extends readonly Wanted[]>(
  io: Io,
  wanted: W,
  inputs: readonly string[],
): Promise<{ readonly [K in keyof W]: Output }> => {
  const opened: Opened[] = [];
  for (const one of wanted) {
    const output = await open(io, one, inputs);
    const { target } = output;
    if (target?.replaceable && opened.some((o) => o.target && isSameFile(o.target, target)))
      throw refusal(output.name, {
        code: 'one-file-for-two',
        message: 'two different files would be written under this one name',
        hint: 'give each a name of its own',
      });
    opened.push(output);
  }
  return opened as unknown as { readonly [K in keyof W]: Output };
};

const open = async (io: Io, wanted: Wanted, inputs: readonly string[]): Promise<Opened> => {
  const name = wanted.asked ?? wanted.usual ?? '-';
  const target = name === '-' ? undefined : await findTarget(io, name);
  // Only what is to be changed itself may be written over, and only under the name that it was read by.
  const others = wanted.was === undefined ? inputs : inputs.filter((input) => !isNamed(io, input, name));
  if (target) await refuseInputs(io, name, target, others, wanted.option);
  if (wanted.was !== undefined && !target?.replaceable)
    throw refusal(name, { code: 'not-a-plain-file', message: 'this is not a plain file' });
  const before =
    wanted.was !== undefined
      ? bytesOf(wanted.was)
      : target?.replaceable && wanted.handwork
        ? await contentOf(io, name, target, MOST_BYTES)
        : undefined;
  const output: Opened = {
    name: name === '-' ? 'standard output' : name,
    wanted,
    target,
    before,
    write: (bytes) => writeTogether(io, [[output, bytes]]),
  };
  return output;
};

const isNamed = (io: Io, input: string, name: string): boolean =>
  resolve(io.cwd, input) === resolve(io.cwd, name);

/** All of them or none. Throws a ProblemError that names the file which could not be written. */
export const writeTogether = async (io: Io, parts: readonly (readonly [Output, Bytes])[]): Promise<void> => {
  const all = parts as readonly (readonly [Opened, Bytes])[];
  const staged: Staged[] = [];
  try {
    for (const [output, bytes] of all)
      if (output.target?.replaceable) {
        const whole = await markedAsBefore(io, output, bytes);
        staged.push(await stage(io, output.name, output.target, whole));
      }
    for (const [output, bytes] of all) await refuseHandwork(io, output, bytes);
    // What has left cannot be taken back, so it goes when only names are still to be given.
    for (const [{ name, target }, bytes] of all) {
      if (target === undefined) await io.stdout.write(bytes);
      else if (!target.replaceable) await sayingWhere(name, () => fill(io, target, bytes));
    }
    giveNames(io, staged);
  } finally {
    for (const { temporary, callOff } of staged) {
      await io.files.unlink(temporary).catch(() => {});
      callOff();
    }
  }
  for (const folder of new Set(staged.map((s) => dirname(s.path)))) await syncFolder(io, folder);
};

/** A new file, whole, beside the one whose name it will take. */
interface Staged {
  readonly name: string;
  readonly path: string;
  readonly temporary: string;
  readonly callOff: () => void;
}

const stage = (io: Io, name: string, { path, status }: Target, bytes: Bytes): Promise<Staged> =>
  sayingWhere(name, async () => {
    const temporary = join(dirname(path), temporaryName());
    const callOff = io.removeWhenInterrupted(temporary);
    try {
      const file = await io.files.open(temporary, 'wx');
      try {
        await file.writeFile(bytes);
        if (status) await file.chmod(status.mode & 0o7777);
        await file.sync();
      } finally {
        await file.close();
      }
      return { name, path, temporary, callOff };
    } catch (error) {
      await io.files.unlink(temporary).catch(() => {});
      callOff();
      throw error;
    }
  });

const temporaryName = (): string => `.swagwright-${randomBytes(6).toString('hex')}.tmp`;

/** In one go: nothing else of this process, and no signal, comes between the first name and the last. */
const giveNames = ({ files }: Io, staged: readonly Staged[]): void => {
  const earlier = new Map<string, string>();
  const named: string[] = [];
  try {
    // One name is given or not; of several the first must be taken back when a later one cannot be given.
    if (staged.length > 1)
      for (const { name, path } of staged) {
        const copy = join(dirname(path), temporaryName());
        if (naming(name, () => copyIfThere(files, path, copy))) earlier.set(path, copy);
      }
    for (const { name, path, temporary } of staged) {
      naming(name, () => files.renameSync(temporary, path));
      named.push(path);
    }
  } catch (error) {
    for (const path of named) {
      const copy = earlier.get(path);
      if (copy === undefined) files.unlinkSync(path);
      else files.renameSync(copy, path);
      earlier.delete(path);
    }
    throw error;
  } finally {
    for (const copy of earlier.values()) quietly(() => files.unlinkSync(copy));
  }
};

const quietly = (work: () => void): void => {
  try {
    work();
  } catch {
    // What cannot be removed is left lying beside the whole files.
  }
};

const naming = <T>(name: string, work: () => T): T => {
  try {
    return work();
  } catch (error) {
    throw saidOf(name, error);
  }
};

const copyIfThere = (files: Files, from: string, to: string): boolean => {
  try {
    files.copyFileSync(from, to);
    return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
};

/** Throws a ProblemError where somebody's work would be lost. */
const refuseHandwork = async (
  io: Io,
  { name, wanted, target, before }: Opened,
  bytes: Bytes,
): Promise<void> => {
  if (!target?.replaceable) return;
  const { asked, option = '-o' } = wanted;
  if (asked === undefined) {
    const now = await contentOf(io, name, target, MOST_OF_OURS);
    if (now === 'none' || isSame(now, bytesOf(bytes))) return;
    if (now !== 'too-large' && (await import('./made-here.ts')).isMadeHere(now)) return;
    throw refusal(name, {
      code: 'would-be-lost',
      message: 'there is such a file already, and it holds something else',
      hint: `name another with ${option}; ${option} ${name} writes over it`,
    });
  }
  if (before === undefined || isSame(await contentOf(io, name, target, MOST_BYTES), before)) return;
  throw refusal(name, {
    code: 'changed-meanwhile',
    message: 'someone changed this file since the command began; nothing was written',
    hint: 'run it again',
  });
};

/** Sheets of the largest designs come to some MB. */
const MOST_OF_OURS = 64 * 1024 * 1024;

const contentOf = async (io: Io, name: string, { path }: Target, most: number): Promise<Content> => {
  try {
    const bytes = await readLimited(io, path, most);
    // A text that was read comes without its byte order mark.
    return bytes ? bytes.subarray(MARK.every((byte, i) => bytes[i] === byte) ? MARK.length : 0) : 'too-large';
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return 'none';
    throw saidOf(name, error);
  }
};

const MARK = [0xef, 0xbb, 0xbf];

/** A text that is changed in its own file keeps the byte order mark that it had there. */
const markedAsBefore = async (io: Io, { wanted, target }: Opened, bytes: Bytes): Promise<Bytes> => {
  if (wanted.was === undefined || !target) return bytes;
  const now = await readLimited(io, target.path, MOST_BYTES);
  return now && MARK.every((byte, i) => now[i] === byte) ? Buffer.from([...MARK, ...bytesOf(bytes)]) : bytes;
};

const isSame = (a: Content, b: Content): boolean =>
  a instanceof Uint8Array && b instanceof Uint8Array ? Buffer.compare(a, b) === 0 : a === b;

const bytesOf = (bytes: Bytes): Uint8Array =>
  typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes;

/** Makes the new names last through a power cut. Some systems cannot; the files are whole either way. */
const syncFolder = async (io: Io, folder: string): Promise<void> => {
  try {
    const handle = await io.files.open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // As said above.
  }
};

/** Adds to what is open already, as its owner does. */
const fill = async (io: Io, { path }: Target, bytes: Bytes): Promise<void> => {
  const file = await io.files.open(path, 'a');
  try {
    await file.writeFile(bytes);
  } finally {
    await file.close();
  }
};
