/** What became of the breaks that were said, a line each, as they are now. */

import { quoted } from '../document/index.ts';
import type { Template } from '../template/index.ts';
import { BREAK_KINDS } from './break-kinds.ts';
import type { SetRight } from './set-right.ts';
import { both } from './traced-template.ts';

export const breakWords = (
  { breaks: made }: Template,
  { breaks, renames, takenOut }: SetRight,
): readonly string[] => {
  const said = new Set([...renames.map(({ to }) => to), ...breaks.map(({ name }) => name)]);
  return [
    ...takenOut.map((name) => `${quoted(name)} is taken out`),
    ...made.flatMap(({ name, kind, at }) =>
      name !== undefined && said.has(name)
        ? [`break ${quoted(name)}: ${BREAK_KINDS[kind]}, ${both(at)} from the heel`]
        : [],
    ),
  ];
};
