/** Reads the text files that people write, and says in one line why one cannot be read. */

import { resolve } from 'node:path';
import { type Problem, ProblemError, textOf } from '../document/index.ts';
import { fileProblem, READING } from './file-problem.ts';
import type { Io } from './io.ts';

/** A plan is a page of text; a traced outline may be long. More than this is the wrong file. */
export const MOST_BYTES = 4 * 1024 * 1024;

export interface TextFile {
  /** As the user gave it. */
  readonly name: string;
  readonly path: string;
  readonly text: string;
}

/**
 * The file's text. A pipe or a device may be read when the user named it herself; a file that is only named
 * in another file must be a plain one (`plainOnly`), lest a plan from elsewhere make the program wait on a
 * device. Throws a ProblemError.
 */
export const readTextFile = async (io: Io, name: string, plainOnly = false): Promise<TextFile> => {
  const path = resolve(io.cwd, name);
  const refuse = (problem: Omit<Problem, 'place'>): never => {
    throw new ProblemError([{ ...problem, place: { file: name } }]);
  };
  try {
    const status = await io.files.stat(path);
    if (status.isDirectory())
      refuse({ code: 'file-eisdir', message: 'this is a folder and not a file', hint: 'name a file in it' });
    if (plainOnly && !status.isFile())
      refuse({ code: 'not-a-plain-file', message: 'this is not a plain file' });
    const bytes = await readLimited(io, path, MOST_BYTES);
    if (bytes === undefined)
      refuse({ code: 'file-too-large', message: 'this file is too large', expected: 'at most 4 MB of text' });
    const text = textOf(bytes!);
    return { name, path, text: typeof text === 'string' ? text : refuse(text) };
  } catch (error) {
    const problem = fileProblem(error, name, READING);
    if (problem) throw new ProblemError([problem]);
    throw error;
  }
};

/** The bytes, or undefined when there are more than the limit, however long the file says it is. */
export const readLimited = async (io: Io, path: string, most: number): Promise<Uint8Array | undefined> => {
  const file = await io.files.open(path, 'r');
  try {
    const chunks: Uint8Array[] = [];
    let total = 0;
    // Each round reads at least one byte, so the limit bounds the loop.
    while (total <= most) {
      const chunk = new Uint8Array(CHUNK);
      const { bytesRead } = await file.read(chunk, 0, CHUNK, null);
      if (bytesRead === 0) return join(chunks, total);
      chunks.push(chunk.subarray(0, bytesRead));
      total += bytesRead;
    }
    return undefined;
  } finally {
    await file.close();
  }
};

const CHUNK = 64 * 1024;

const join = (chunks: readonly Uint8Array[], total: number): Uint8Array => {
  const all = new Uint8Array(total);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
};
