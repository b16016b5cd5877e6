/**
 * What is wrong with something a person wrote or asked for: one problem is one line on her terminal.
 *
 * A problem is a user's, never the program's: a broken invariant throws an ordinary Error instead, and asks
 * for a report.
 */

export interface Place {
  /** The file's name as the user gave it. */
  readonly file: string;
  /** Counted from 1; absent where only the file is known. */
  readonly line?: number;
  readonly column?: number;
}

export interface Problem {
  /** A stable word for programs and tests, such as `unknown-key`. */
  readonly code: string;
  /** What is wrong, in one sentence without a full stop. */
  readonly message: string;
  readonly place?: Place;
  /** The key in the file, as a path: `layout.border.inner.top`. */
  readonly key?: string;
  readonly found?: string;
  readonly expected?: string;
  /** What to do about it, such as the nearest right key. */
  readonly hint?: string;
}

/** Thrown where a step cannot go on; carries every problem found so far, not only the first. */
export class ProblemError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(describeProblem).join('\n'));
    this.name = 'ProblemError';
    this.problems = problems;
  }
}

/** One line: `plan.yaml:7:3: template: no template named "balluster"; found …, expected …; did you mean …`. */
export const describeProblem = (p: Problem): string => {
  const where = p.place
    ? [p.place.file, p.place.line, p.place.column].filter((x) => x !== undefined).join(':')
    : undefined;
  const head = [where, p.key].filter((x) => x !== undefined);
  const tail = [
    p.found === undefined ? undefined : `found ${p.found}`,
    p.expected === undefined ? undefined : `expected ${p.expected}`,
    p.hint,
  ].filter((x) => x !== undefined);
  return oneLine([...head, [p.message, ...tail].join('; ')].join(': '));
};

/** Names in files may hold anything: control characters must not move a terminal's cursor or forge a line. */
export const oneLine = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is replaced here
  text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]+/g, ' ');
