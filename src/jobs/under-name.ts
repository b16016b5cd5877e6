/** Lines about one of several parts, under its name. */

import type { Part } from './part.ts';

/** `inner border: baluster: …`, and what follows indented; as they are where the plan is one design. */
export const underName = ({ name }: Pick<Part, 'name'>, lines: readonly string[]): readonly string[] =>
  name === undefined ? lines : lines.map((line, i) => (i === 0 ? `${name}: ${line}` : `  ${line}`));
