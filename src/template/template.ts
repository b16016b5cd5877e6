/** What a template is, once read: a working edge in mm, the foot on its left, with its breaks and etched lines. */

import type { Path, Point } from '../geometry/index.ts';

export interface Template {
  /** The file's name without its ending, as plans say it. */
  readonly name: string;
  readonly title: string;
  /** mm; undefined where the file does not say. */
  readonly thickness: number | undefined;
  /** The working edge from heel to crown end, an open path, the foot on its left. */
  readonly edge: Path;
  /** In order along the edge; the two ends are not among them. */
  readonly breaks: readonly Break[];
  /** Etched across the template near the heel, square to its long axis (the x axis of the file). */
  readonly alignment: readonly AlignmentLine[];
  /** Etched parallel to the working edge, this far inside it (mm), ascending. */
  readonly channelLines: readonly number[];
  /** Whether the foot may roll on round the crown end's corner. */
  readonly rollsRoundCrown: boolean;
}

export interface Break {
  /** Length along the edge from the heel, mm. */
  readonly at: number;
  readonly point: Point;
  /** A notch is a concave corner seen from the foot, a corner a convex one, a mark a named place on a smooth stretch. */
  readonly kind: 'notch' | 'corner' | 'mark';
  /** Names the section that starts here. */
  readonly name: string | undefined;
}

export interface AlignmentLine {
  readonly name: string;
  /** Its x, mm: a file says it as a distance from the heel (`etched.ts`). */
  readonly at: number;
}

/** The stretch of edge between two breaks, counted from 1 at the heel. */
export interface Section {
  readonly number: number;
  readonly name: string | undefined;
  readonly from: number;
  readonly to: number;
}

export const sectionsOf = (template: Template, edgeLength: number): readonly Section[] => {
  const starts = [{ at: 0, name: undefined as string | undefined }, ...template.breaks];
  return starts.map((s, i) => ({
    number: i + 1,
    name: s.name,
    from: s.at,
    to: starts[i + 1]?.at ?? edgeLength,
  }));
};
