/**
 * A template's file from points measured off a mat, with what a person says of the acrylic. It holds the points as they
 * were measured; only where a section has a name, lines and arcs in their place, because points have no names.
 */

import type { Problem } from '../document/index.ts';
import type { Path } from '../geometry/index.ts';
import type { Units } from '../length/index.ts';
import { etchedText, lineBeyond, readTemplate, type Template, writeTemplate } from '../template/index.ts';
import { cornersOf } from '../trace/index.ts';
import { measuredLines } from './etched-lines.ts';
import { breaksAlong } from './set-right.ts';
import type { Said } from './traced-template.ts';

export interface PointsWants {
  readonly fileName: string;
  readonly units: Units;
  /** A template's file with the points, and no more than its title and units. */
  readonly text: string;
  /** Places are in the template's frame. */
  readonly said: Pick<Said, 'breaks' | 'thickness' | 'across' | 'along'>;
}

export type PointsTemplate =
  | {
      readonly ok: true;
      readonly text: string;
      readonly template: Template;
      /** The etched lines that were said, in mm. */
      readonly across: readonly number[];
      readonly along: readonly number[];
    }
  /** The edge is there where it is no fault of the points; the places of all others are those of `text`. */
  | { readonly ok: false; readonly edge: Path | undefined; readonly problems: readonly Problem[] };

const DECIMALS: Readonly<Record<Units, number>> = { in: 4, cm: 4, mm: 3 };

export const templateFromPoints = ({ fileName, units, text, said }: PointsWants): PointsTemplate => {
  const points = readTemplate(text, fileName);
  if (!points.ok) return { ...points, edge: undefined };
  const { edge, title } = points.template;
  const lines = measuredLines(edge, (p) => p, said, units);
  const beyond = lineBeyond(edge, lines.across, units);
  if (beyond) return { ok: false, edge, problems: [beyond] };
  const { across: alignment, along: channelLines } = lines;
  const etched = { units, decimals: DECIMALS[units], thickness: said.thickness, alignment, channelLines };
  const breaks = breaksAlong(edge, cornersOf(edge), said.breaks ?? []);
  const made =
    breaks.length === 0
      ? `${text}${etchedText(etched)}`
      : writeTemplate({ ...etched, title, comments: ['Measured point by point.'], edge, breaks });
  const reading = readTemplate(made, fileName);
  // Its places would be lines of a file that nobody has seen.
  if (!reading.ok)
    return { ok: false, edge, problems: reading.problems.map(({ place: _, ...rest }) => rest) };
  return {
    ok: true,
    text: made,
    template: reading.template,
    across: alignment.map((line) => line.at),
    along: channelLines,
  };
};
