/** What is said to the person at the terminal: one line each, on stderr, so that stdout carries only results. */

import { describeProblem, oneLine, type Problem } from '../document/index.ts';
import type { Io } from './io.ts';

/** Names of files are part of most messages, so every one is made safe for a terminal. */
export const say = (io: Io, message: string): Promise<void> => io.stderr.write(`${oneLine(message)}\n`);

export const sayProblems = async (io: Io, problems: readonly Problem[]): Promise<void> => {
  for (const problem of problems.slice(0, MOST_PROBLEMS)) await say(io, describeProblem(problem));
  const more = problems.length - MOST_PROBLEMS;
  if (more > 0) await say(io, `and ${more} more`);
};

/** A file of the wrong kind altogether would fill the screen, and the first lines say as much. */
const MOST_PROBLEMS = 50;

/** The data that `--json` asks for, as the only thing on stdout. */
export const printJson = (io: Io, data: unknown): Promise<void> =>
  io.stdout.write(`${JSON.stringify(data, withoutNoise, 2)}\n`);

/** Less than a millionth of a micrometre or degree is what arithmetic leaves of nothing, and no length to write. */
const NOISE = 1e-9;

const withoutNoise = (_: string, value: unknown): unknown =>
  typeof value === 'number' && Math.abs(value) < NOISE ? 0 : value;
