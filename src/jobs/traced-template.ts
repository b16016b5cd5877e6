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
  lineArtDoubt,
  type Mend,
  marksDoubt,
  mendOutline,
  type Outline,
  outlineDoubt,
  photoDoubt,
  raisedDoubt,
  type Traced,
  touchedDoubt,
  type WorkingEdge,
} from '../trace/index.ts';
import { etchedIn, type SaidLines } from './etched-lines.ts';
import { breaksAlong, type NamedBreak } from './set-right.ts';

export interface TracedTemplateWants {
  /** The picture's name, as its comment says it. */
  readonly picture: string;
  /** The template file's. */
  readonly fileName: string;
  readonly title: string;
  readonly units: 'mm' | 'in';
  /** What a person said of the edge's ends; its places are in the outline's frame. */
  readonly choice: EdgeChoice;
  readonly said?: Said | undefined;
}

/** What a picture does not show, or not rightly, and a person says. Places are in the outline's frame. */
export interface Said extends SaidLines {
  /** Stretches of the outline that are set right. */
  readonly mends?: readonly Mend[] | undefined;
  /** Names at corners, and breaks on smooth stretches; undefined for the dots in the picture. */
  readonly breaks?: readonly NamedBreak[] | undefined;
  /** mm */
  readonly thickness?: number | undefined;
}

export type TracedTemplate =
  | {
      readonly ok: true;
      /** With what was set right. */
      readonly outline: Outline;
      readonly found: WorkingEdge;
      readonly text: string;
      readonly template: Template;
      /** The etched lines that were said, in mm. */
      readonly across: readonly number[];
      readonly along: readonly number[];
      /** What to look at before the edge is relied on, a sentence each. */
      readonly doubts: readonly string[];
      /** What was found, a line each. */
      readonly words: readonly string[];
    }
  /** The problem is one of the picture; the edge is there where one was found that no template can have. */
  | {
      readonly ok: false;
      readonly outline: Outline;
      readonly found: WorkingEdge | undefined;
      readonly problem: Problem;
    };

export const templateFromTrace = (asTraced: Traced, wants: TracedTemplateWants): TracedTemplate => {
  const { choice, units, said = {} } = wants;
  const mended = mendOutline(asTraced.outline, said.mends ?? []);
  if (!mended.ok) return { ...mended, outline: asTraced.outline, found: undefined };
  const { outline } = mended;
  const traced = { ...asTraced, outline };
  const chosen = findWorkingEdge(outline.path, outline.corners, choice);
  if (!chosen.ok) return { ok: false, outline, found: undefined, problem: chosen.problem };
  const { found } = chosen;
  const isSaid = choice.heel !== undefined || choice.crown !== undefined;
  const doubts = [
    photoDoubt(traced.capture),
    marksDoubt(traced),
    lineArtDoubt(traced),
    touchedDoubt(traced),
    raisedDoubt(traced, said.thickness),
    outlineDoubt(outline, traced.toPixels),
    ...endDoubts(outline.path, found, isSaid),
  ].filter((d) => d !== undefined);
  const mends = said.mends?.length ?? 0;
  const fixed = {
    title: wants.title,
    units,
    comments: [
      `Traced by swagwright from ${quoted(wants.picture)}.`,
      `${plural(found.edge.pieces.length, 'line or arc', 'lines and arcs')}, within ${outline.deviation.toFixed(2)} mm of the picture's outline${mends > 0 ? `, but for ${plural(mends, 'stretch', 'stretches')} set right by hand` : ''}.`,
      ...doubts,
      ...(said.thickness === undefined
        ? ['Say the thickness of the acrylic, and name the sections, here.']
        : []),
    ],
    edge: found.edge,
    breaks: [],
    decimals: units === 'in' ? 4 : 3,
  };
  const etched = etchedIn(outline.path, found, said, units);
  if (!etched.ok) return { ok: false, outline, found, problem: etched.problem };
  const { across, along } = etched;
  const text = writeTemplate({
    ...fixed,
    thickness: said.thickness,
    breaks: said.breaks
      ? breaksAlong(movePath(found.edge, inverse(found.motion)), outline.corners, said.breaks)
      : breaksOf(traced, found),
    alignment: across,
    channelLines: along,
  });
  const reading = readTemplate(text, wants.fileName);
  if (reading.ok)
    return {
      ok: true,
      outline,
      found,
      text,
      template: reading.template,
      across: across.map((line) => line.at),
      along,
      doubts,
      words: wordsOf(traced, found, reading.template, wants),
    };
  // Its places would be lines of a file that is never written: what helps is a place in the picture.
  const inPicture = (p: Point): string => {
    const { x, y } = traced.toPixels(p);
    return `${Math.round(x)},${Math.round(y)} in the picture`;
  };
  const first = reading.problems[0];
  if (first && readTemplate(writeTemplate(fixed), wants.fileName).ok) {
    const { place: _, ...problem } = first;
    return { ok: false, outline, found, problem };
  }
  const { hint, ...problem } = notAnEdge(found, reading.problems, inPicture);
  const better = 'a scan in grey at 300 dpi shows corners best';
  return { ok: false, outline, found, problem: { ...problem, hint: `${hint}; ${better}` } };
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
export const both = (mm: number): string =>
  `${formatLength(mm, MM_TENTH)} (${formatLength(mm, INCH_SIXTEENTH)})`;

const wordsOf = (
  traced: Traced,
  found: WorkingEdge,
  template: Template,
  { choice, said }: TracedTemplateWants,
): readonly string[] => {
  const { outline } = traced;
  const box = pathBox(movePath(outline.path, found.motion));
  const edgeLength = pathLength(template.edge);
  const mends = said?.mends?.length ?? 0;
  const sections = sectionsOf(template, edgeLength);
  const what =
    traced.kind === 'solid'
      ? 'a filled shape'
      : `a drawn line ${formatLength(traced.lineWidth ?? 0, MM_TENTH)} wide`;
  const from =
    traced.source === 'scan'
      ? `${traced.byMarks ? 'a picture' : 'a scan'} of ${Math.round(traced.pixelsPerMm * 25.4)} dots per inch${traced.byMarks ? ' by its two marks' : ''}`
      : `a photograph of the capture sheet, its marks ${(traced.capture?.misfit ?? 0).toFixed(2)} mm off at most; expect ${(traced.capture?.expected ?? 0).toFixed(1)} mm`;
  return [
    `found ${what} with ${plural(outline.corners.length, 'corner')} in ${from}`,
    ...leftOutWords(traced),
    ...rimWords(traced),
    ...(traced.lowered > 0
      ? [`taken for the upper edge of the acrylic, and made ${(100 * traced.lowered).toFixed(1)} % smaller`]
      : []),
    `size: ${both(boxWidth(box))} by ${both(boxHeight(box))}`,
    `working edge: ${both(edgeLength)} long, ${plural(sections.length, 'section')}, ${plural(template.edge.pieces.length, 'line or arc', 'lines and arcs')}`,
    `largest deviation from the picture's outline: ${outline.deviation.toFixed(2)} mm`,
    ...(mends > 0 ? [`${plural(mends, 'stretch', 'stretches')} of the outline set right by hand`] : []),
    levelWords(found, choice.level),
    ...(found.turnedOver ? ['turned over, so that the foot runs on the left'] : []),
  ];
};

/** Why the side of a line was taken that nobody asked for. */
const rimWords = ({ kind, side, hasBody, isLight, touched }: Traced): readonly string[] =>
  kind === 'line' && side === 'outer' && !touched && (hasBody || isLight)
    ? [
        `the line looks like the rim of acrylic, for ${isLight ? 'it is light on dark ground' : 'what it encloses is darker than the paper'}: its outer side was taken`,
      ]
    : [];

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
