/**
 * A template file asks to be worked on by hand: its thickness is to be said, its sections are to be named. So it is
 * written over only when its own name was asked for; a name that the program chose by itself is left as it is, unless
 * it would be the same again.
 */

import { ProblemError } from '../document/index.ts';
import type { Io } from './io.ts';
import { readTextFile } from './read-file.ts';
import { type Output, openOutput } from './write-file.ts';

/** The output under the name that was asked for, or under `usual`. Writing throws a ProblemError over somebody's work. */
export const openHandworkOutput = async (
  io: Io,
  asked: string | undefined,
  usual: string,
  inputs: readonly string[],
): Promise<Output> => {
  const output = await openOutput(io, asked ?? usual, inputs);
  if (asked !== undefined) return output;
  return {
    name: usual,
    write: async (text) => {
      const there = await textThere(io, usual);
      if (there !== undefined && there !== text)
        throw new ProblemError([
          {
            code: 'would-be-lost',
            place: { file: usual },
            message: 'there is such a file already, and it holds something else',
            hint: `name another with -o; -o ${usual} writes over it`,
          },
        ]);
      await output.write(text);
    },
  };
};

/** The text of the file, undefined where there is none; what cannot be read as text is no template, but somebody's. */
const textThere = async (io: Io, name: string): Promise<string | undefined> => {
  try {
    return (await readTextFile(io, name, true)).text;
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return error.problems[0]?.code === 'file-enoent' ? undefined : '';
  }
};
