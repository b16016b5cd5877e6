/** What the system says when a file cannot be read or written, in plain words. */

import type { Problem } from '../document/index.ts';

export const READING = 'reading';
export const WRITING = 'writing';
export type Doing = typeof READING | typeof WRITING;

/** The problem behind an error of the file system, or undefined when it is another kind of error. */
export const fileProblem = (error: unknown, file: string, doing: Doing): Problem | undefined => {
  const code = errorCode(error);
  if (code === undefined) return undefined;
  const words = WORDS[code] ?? [`cannot be used (${code})`, `cannot be written (${code})`];
  const [message, hint] = doing === READING ? [words[0], undefined] : [words[1], words[2]];
  return { code: `file-${code.toLowerCase()}`, message, place: { file }, ...(hint ? { hint } : {}) };
};

export const errorCode = (error: unknown): string | undefined => {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  // The system's own codes look like ENOENT; node's (ERR_…) are faults of this program.
  return typeof code === 'string' && /^E[A-Z0-9]+$/.test(code) ? code : undefined;
};

const UNTOUCHED = 'nothing was written';

/** By the system's code: the words for reading, for writing, and what to add when writing. */
const WORDS: Readonly<Record<string, readonly [string, string, string?]>> = {
  ENOENT: ['there is no such file', 'the folder that it should go into does not exist'],
  ENOTDIR: [
    'a part of this path is a file and not a folder',
    'a part of this path is a file and not a folder',
  ],
  EISDIR: ['this is a folder and not a file', 'this is a folder and not a file', 'name a file in it'],
  EACCES: ['there is no permission to read it', 'there is no permission to write it', UNTOUCHED],
  EPERM: ['there is no permission to read it', 'there is no permission to write it', UNTOUCHED],
  EROFS: ['the disk is read-only', 'the disk is read-only', UNTOUCHED],
  ENOSPC: ['the disk is full', 'the disk is full', UNTOUCHED],
  EDQUOT: ['your share of the disk is full', 'your share of the disk is full', UNTOUCHED],
  EFBIG: ['the file is too large', 'the file is too large for this disk', UNTOUCHED],
  ENAMETOOLONG: ['the name is too long', 'the name is too long'],
  ELOOP: ['the links in this path run in a circle', 'the links in this path run in a circle'],
  EBUSY: ['another program is using it', 'another program is using it', UNTOUCHED],
  EMFILE: ['too many files are open', 'too many files are open', UNTOUCHED],
  ENFILE: ['too many files are open', 'too many files are open', UNTOUCHED],
  EIO: ['the disk reports an error', 'the disk reports an error', UNTOUCHED],
};
