/** A template from an outline that was traced in a picture: its file's text, and what is said of it. */

import { type Problem, plural, quoted, series } from '../document/index.ts';
import {
  boxHeight,
  boxWidth,
  inverse,
  movePath,
  type Point,
  pathBox,
  pathLength,
} from '../geometry/index.ts';
import { formatLength, INCH_SIXTEENTH, MM_TENTH } from '../length/index.ts';
import { notAnEdge, readTemplate, sectionsOf, type Template, writeTemplate } from '../template/index.ts';
import {
  alongNearest,
  type EdgeChoice,
  endDoubts,
  findWorkingEdge,
  levelWords,
  outlineDoubt,
  photoDoubt,
  type Traced,
  type WorkingEdge,
} from '../trace/index.ts';

export interface TracedTemplateWants {
  /** The picture's name, as its comment says it. */
  readonly picture: string;
  /** The template file's. */
  readonly fileName: string;
  readonly title: string;
  readonly units: 'mm' | 'in';
  /** What a person said of the edge's ends; its places are in the outline's frame. */
  readonly choice: EdgeChoice;
}

export type TracedTemplate =
  | {
      readonly ok: true;
      readonly found: WorkingEdge;
      readonly text: string;
      readonly template: Template;
      /** What to look at before the edge is relied on, a sentence each. */
      readonly doubts: readonly string[];
      /** What was found, a line each. */
      readonly words: readonly string[];
    }
  /** The problem is one of the picture; the edge is there where one was found that no template can have. */
  | { readonly ok: false; readonly found: WorkingEdge | undefined; readonly problem: Problem };

export const templateFromTrace = (traced: Traced, wants: TracedTemplateWants): TracedTemplate => {
  const { outline } = traced;
  const { choice, units } = wants;
  const chosen = findWorkingEdge(outline.path, outline.corners, choice);
  if (!chosen.ok) return { ok: false, found: undefined, problem: chosen.problem };
  const { found } = chosen;
  const isSaid = choice.heel !== undefined || choice.crown !== undefined;
  const doubts = [
    photoDoubt(traced.capture),
    outlineDoubt(outline, traced.toPixels),
    ...endDoubts(outline.path, found, isSaid),
  ].filter((d) => d !== undefined);
  const text = writeTemplate({
    title: wants.title,
    units,
    comments: [
      `Traced by swagwright from ${quoted(wants.picture)}.`,
      `${plural(found.edge.pieces.length, 'line or arc', 'lines and arcs')}, within ${outline.deviation.toFixed(2)} mm of the picture's outline.`,
      ...doubts,
      'Say the thickness of the acrylic, and name the sections, here.',
    ],
    edge: found.edge,
    breaks: breaksOf(traced, found),
    decimals: units === 'in' ? 4 : 3,
  });
  const reading = readTemplate(text, wants.fileName);
  if (reading.ok)
    return {
      ok: true,
      found,
      text,
      template: reading.template,
      doubts,
      words: wordsOf(traced, found, reading.template),
    };
  // Its places would be lines of a file that is never written: what helps is a place in the picture.
  const inPicture = (p: Point): string => {
    const { x, y } = traced.toPixels(p);
    return `${Math.round(x)},${Math.round(y)} in the picture`;
  };
  const { hint, ...problem } = notAnEdge(found, reading.problems, inPicture);
  const better = 'a scan in grey at 300 dpi shows corners best';
  return { ok: false, found, problem: { ...problem, hint: `${hint}; ${better}` } };
};

/** Breaks by dots, as lengths along the working edge. */
const breaksOf = (traced: Traced, found: WorkingEdge): readonly { at: number; name: string }[] => {
  const back = movePath(found.edge, inverse(found.motion));
  return traced.dots
    .map((d) => ({ at: alongNearest(back, d.middle), middle: d.middle }))
    .filter((d) => d.at > 1 && d.at < pathLength(back) - 1)
    .sort((a, b) => a.at - b.at)
    .map(({ at }, i) => ({ at, name: `dot ${i + 1}` }));
};

/** Both systems, because a template's file may be in either and a ruler shows what it shows. */
const both = (mm: number): string => `${formatLength(mm, MM_TENTH)} (${formatLength(mm, INCH_SIXTEENTH)})`;

const wordsOf = (traced: Traced, found: WorkingEdge, template: Template): readonly string[] => {
  const { outline } = traced;
  const box = pathBox(movePath(outline.path, found.motion));
  const edgeLength = pathLength(template.edge);
  const sections = sectionsOf(template, edgeLength);
  const what =
    traced.kind === 'solid'
      ? 'a filled shape'
      : `a drawn line ${formatLength(traced.lineWidth ?? 0, MM_TENTH)} wide`;
  const from =
    traced.source === 'scan'
      ? `a scan of ${Math.round(traced.pixelsPerMm * 25.4)} dots per inch`
      : `a photograph of the capture sheet, its marks ${(traced.capture?.misfit ?? 0).toFixed(2)} mm off at most; expect ${(traced.capture?.expected ?? 0).toFixed(1)} mm`;
  return [
    `found ${what} with ${plural(outline.corners.length, 'corner')} in ${from}`,
    ...leftOutWords(traced),
    `size: ${both(boxWidth(box))} by ${both(boxHeight(box))}`,
    `working edge: ${both(edgeLength)} long, ${plural(sections.length, 'section')}, ${plural(template.edge.pieces.length, 'line or arc', 'lines and arcs')}`,
    `largest deviation from the picture's outline: ${outline.deviation.toFixed(2)} mm`,
    levelWords(found),
    ...(found.turnedOver ? ['turned over, so that the foot runs on the left'] : []),
  ];
};

const leftOutWords = ({ leftOut }: Traced): readonly string[] => {
  if (leftOut.length === 0) return [];
  const places = leftOut.slice(0, MOST_LEFT_OUT).map(({ x, y }) => `${Math.round(x)},${Math.round(y)}`);
  const more = leftOut.length - places.length;
  return [
    `there are ${leftOut.length + 1} shapes in the picture: the largest was taken, and what lies at ${series(places)}${more > 0 ? ` and ${more} more` : ''} was left out`,
  ];
};

/** Places that are listed. */
const MOST_LEFT_OUT = 5;
