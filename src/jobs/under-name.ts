/** Lines about one of several parts, under its name. */

import { describeDesign } from '../output/mockup/index.ts';
import type { Part } from './part.ts';

/** `inner border: baluster: …`, and what follows indented; as they are where the plan is one design. */
export const underName = ({ name }: Pick<Part, 'name'>, lines: readonly string[]): readonly string[] =>
  name === undefined ? lines : lines.map((line, i) => (i === 0 ? `${name}: ${line}` : `  ${line}`));

/** Of more parts than this nobody reads every side: each is told in a line. */
const TOLD_WHOLE = 8;

/** What was designed, a few lines for each part. */
export const designsOf = (parts: readonly Part[]): readonly string[] =>
  parts.flatMap((part) => {
    const lines = describeDesign(part.design, part.plan.marks.style, part.plan.channels);
    return underName(part, parts.length > TOLD_WHOLE ? lines.slice(0, 1) : lines);
  });
