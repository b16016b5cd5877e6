/** A template from an SVG drawing: one path of it, its working edge, written as a template file and read again. */

import { capital, type Problem, quoted } from '../document/index.ts';
import { CURVE_TOLERANCE, type Point } from '../geometry/index.ts';
import {
  type EdgeChoice,
  findWorkingEdge,
  type MarkedCorner,
  numberedCorners,
  type SvgOutline,
  svgOutline,
  type WorkingEdge,
} from '../trace/index.ts';
import { notAnEdge } from './not-an-edge.ts';
import { readTemplate } from './read.ts';
import type { Template } from './template.ts';
import { writeTemplate } from './write.ts';

/** What a template is called that was made from a file: `my_corbel-2.svg` is “My corbel 2”. */
export const titleOfFile = (name: string): string => {
  const base = name
    .split(/[\\/]/)
    .at(-1)!
    .replace(/\.[a-z0-9]+$/i, '');
  const words = base.replace(/[_-]+/g, ' ').trim();
  return words === '' ? 'Template' : capital(words);
};

/** A file of steps that a person can still read; curves are followed more coarsely until they fit. */
const MOST_STEPS = 480;
/** mm; beyond the last a drawing is too fine to be a template. */
const TOLERANCES = [CURVE_TOLERANCE, 0.01, 0.03];

export interface SvgImport {
  /** The drawing's file, as it is called in what is said about it. */
  readonly name: string;
  /** The template's file. */
  readonly fileName: string;
  readonly title: string;
  readonly units: 'mm' | 'in';
  /** The path to take; the longest where none is named. */
  readonly id?: string | undefined;
  /** mm to a unit of the drawing, where it does not say so itself. */
  readonly unitMm?: number | undefined;
  readonly choice: EdgeChoice;
}

interface FromSvg {
  /** The template file. */
  readonly text: string;
  readonly template: Template;
  readonly outline: SvgOutline;
  readonly corners: readonly MarkedCorner[];
  readonly found: WorkingEdge;
  /** mm that the arcs may lie from the drawing's curves. */
  readonly within: number;
  /** `a path`, `the path "edge"`. */
  readonly what: string;
}

export type FromSvgResult =
  | ({ readonly ok: true } & FromSvg)
  /** `corners` are known where only the choice of the edge among them failed. */
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly corners: readonly MarkedCorner[] };

const inDrawing = ({ x, y }: Point): string =>
  `${x.toFixed(1)},${(-y).toFixed(1)}, in mm from the drawing's upper left`;

export const templateFromSvg = (svg: string, options: SvgImport): FromSvgResult => {
  const { name, title, units, id, unitMm, choice } = options;
  const refuse = (problem: Problem, corners: readonly MarkedCorner[] = []): FromSvgResult => ({
    ok: false,
    problems: [{ ...problem, place: problem.place ?? { file: name } }],
    corners,
  });
  for (const within of TOLERANCES) {
    const read = svgOutline(svg, { id, unitMm, tolerance: within, file: name });
    if (!read.ok) return refuse(read.problem);
    const { outline } = read;
    const corners = numberedCorners(outline.path);
    const chosen = findWorkingEdge(outline.path, corners, choice);
    if (!chosen.ok) return refuse(outline.placed(chosen.problem), corners);
    const { found } = chosen;
    if (found.edge.pieces.length > MOST_STEPS) {
      if (within !== TOLERANCES.at(-1)) continue;
      return refuse(
        outline.placed({
          code: 'svg-too-fine',
          message: 'the path is too finely drawn for a template',
          found: `${found.edge.pieces.length} lines and arcs`,
          expected: `at most ${MOST_STEPS}`,
          hint: 'simplify the path in the program that drew it',
        }),
      );
    }
    const what =
      outline.id === undefined ? `a ${outline.element}` : `the ${outline.element} ${quoted(outline.id)}`;
    const text = writeTemplate({
      title,
      units,
      comments: [
        `Imported by swagwright from ${what} of ${quoted(name)}; curves within ${within} mm.`,
        'Say the thickness of the acrylic, and name the sections, here.',
      ],
      edge: found.edge,
      breaks: [],
      decimals: units === 'in' ? 6 : 5,
    });
    const reading = readTemplate(text, options.fileName);
    // The file that its lines would name is never written.
    if (!reading.ok) return refuse(outline.placed(notAnEdge(found, reading.problems, inDrawing)), corners);
    return { ok: true, text, template: reading.template, outline, corners, found, within, what };
  }
  throw new Error('The last tolerance decides.');
};
