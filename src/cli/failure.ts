/** What a run that failed says, and its exit status. */

import { CommanderError } from 'commander';
import { type Problem, ProblemError, quoted } from '../document/index.ts';
import { errorCode, fileProblem, WRITING } from './file-problem.ts';
import { type ExitCode, FolderGone, type Io } from './io.ts';
import { isOutOfFiles, OUT_OF_FILES } from './last-words.ts';
import { say, sayProblems } from './messages.ts';
import { WrongUse } from './wrong-use.ts';

export const sayFailure = async (error: unknown, io: Io): Promise<ExitCode> => {
  if (error instanceof CommanderError) {
    await sayProblems(io, [commandLineProblem(error)]);
    return 2;
  }
  if (error instanceof WrongUse) {
    await sayProblems(io, error.problems);
    return 2;
  }
  if (error instanceof ProblemError) {
    await sayProblems(io, error.problems);
    return 1;
  }
  if (error instanceof FolderGone) {
    await sayProblems(io, [FOLDER_GONE]);
    return 1;
  }
  if (isOutOfFiles(error)) {
    await say(io, OUT_OF_FILES);
    return 1;
  }
  const problem = errorCode(error) && fileProblem(error, 'standard output', WRITING);
  if (problem) {
    await sayProblems(io, [{ ...problem, hint: 'what has come out there is not whole' }]);
    return 1;
  }
  await sayFault(error, io);
  return 1;
};

const FOLDER_GONE: Problem = {
  code: 'folder-gone',
  message: 'the folder that this command runs in has been removed',
  hint: 'go to another folder and run it there',
};

/** `error: unknown option '--papr'\n(Did you mean --paper?)` becomes one line in this program's manner. */
const commandLineProblem = (error: CommanderError): Problem => {
  const guess = /\n\(Did you mean (.*)\?\)$/.exec(error.message);
  const message = guess ? error.message.slice(0, guess.index) : error.message;
  return {
    code: error.code,
    message: message.replace(/^error: /, '').replace(/\.$/, ''),
    hint: guess ? `did you mean ${quoted(guess[1] ?? '')}?` : 'swagwright --help tells what there is',
  };
};

/** A fault of the program: one line that asks for a report; the stack only for those who ask for it. */
const sayFault = async (error: unknown, io: Io): Promise<void> => {
  const told = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  await say(
    io,
    `swagwright has made a mistake of its own (${told}); please report it, with the plan and the template`,
  );
  const asked = io.env.SWAGWRIGHT_DEBUG === '1';
  if (asked && error instanceof Error) await io.stderr.write(`${error.stack}\n`);
};
