/** A picture of a template becomes one, as the command makes it: the outline for the screen, and what is made of it. */

import { fileWord, type Problem } from '../../document/index.ts';
import { insideEdge } from '../../drawing/index.ts';
import {
  distance,
  flatten,
  inverse,
  move,
  movePath,
  type Path,
  type Point,
  pathBox,
  pathLength,
} from '../../geometry/index.ts';
import { type Said, type TracedTemplate, templateFromTrace } from '../../jobs/traced-template.ts';
import { acrossAt, titleOfFile } from '../../template/index.ts';
import { type EdgeChoice, type Picture, type Traced, tracePicture } from '../../trace/index.ts';
import { madeWords } from '../words/words.ts';
import { breaksShown, SCREEN } from './edge-shown.ts';
import type { DecodedPicture, TraceAnswer, TracedOutline, TraceInput } from './messages.ts';
import { troubleOf } from './trouble.ts';

/** mm: as the command takes it where nobody says. */
const TOLERANCE = 0.03;

/** The last picture, and the last outline found in it: while ends are dragged neither is worked out again. */
let held: { readonly key: number; readonly decoded: DecodedPicture } | undefined;
let found: { readonly key: string; readonly result: ReturnType<typeof tracePicture> } | undefined;

/** Throws a ProblemError where the file is no picture that can be read. */
export const trace = async (
  input: TraceInput,
  decode: (file: Blob) => Promise<DecodedPicture>,
): Promise<TraceAnswer> => {
  const isNew = held?.key !== input.key;
  if (isNew) held = { key: input.key, decoded: input.read ?? (await decode(input.file)) };
  const { picture, shown, kept } = held!.decoded;
  const ofFile = input.ofFile ?? held!.decoded.pixelsPerMm;
  const pixelsPerMm = input.pixelsPerMm ?? ofFile;
  const result = tracedIn(picture, { ...input, pixelsPerMm });
  const { width, height } = picture;
  const base = { width, height, ...(isNew ? { shown, kept } : NOTHING_NEW), pixelsPerMm: ofFile };
  if (!result.ok)
    return {
      ...base,
      outline: undefined,
      template: undefined,
      words: [],
      doubts: [],
      problems: [told(result.problem)],
    };
  const { traced } = result;
  // By what she calls it: a scanner's own names are all alike.
  const name = `${fileWord(input.title) || input.fileName.replace(/\.[a-z0-9]{1,5}$/i, '')}.yaml`;
  const made = templateFromTrace(traced, {
    picture: input.fileName,
    fileName: name,
    title: input.title.trim() || titleOfFile(input.fileName),
    units: input.units === 'in' ? 'in' : 'mm',
    choice: choiceIn(input, traced),
    said: saidIn(input, traced),
  });
  const outline = outlineOf(traced, made);
  if (!made.ok)
    return { ...base, outline, template: undefined, words: [], doubts: [], problems: [told(made.problem)] };
  return {
    ...base,
    outline,
    template: { name, text: made.text },
    words: made.words,
    doubts: made.doubts.map(inPageWords),
    problems: [],
  };
};

const NOTHING_NEW = { shown: undefined, kept: undefined };

const tracedIn = (
  picture: Picture,
  { key: picked, pixelsPerMm, marks, line: side, correction, thickness, height }: TraceInput,
): ReturnType<typeof tracePicture> => {
  const raised = thickness !== undefined && height !== undefined ? { thickness, height } : undefined;
  const key = JSON.stringify([picked, pixelsPerMm, marks, side, correction, raised]);
  if (found?.key !== key) {
    const options = {
      tolerance: TOLERANCE,
      side,
      pixelsPerMm: pixelsPerMm && pixelsPerMm / correction,
      marks,
      sheetScale: { x: correction, y: correction },
      raised,
    };
    found = { key, result: tracePicture(picture, options) };
  }
  return found.result;
};

const choiceIn = ({ heel, crown, foot, level }: TraceInput, { toMm }: Traced): EdgeChoice => {
  const placed = (p: Point | undefined) => p && ({ kind: 'point', point: toMm(p) } as const);
  return { heel: placed(heel), crown: placed(crown), foot, level };
};

const saidIn = ({ mends, breaks, thickness, across, along }: TraceInput, { toMm }: Traced): Said => {
  const etched = (at: number | Point) => (typeof at === 'number' ? at : toMm(at));
  return {
    mends: mends.map(({ from, to, through }) => ({
      from: toMm(from),
      to: toMm(to),
      through: through.map(toMm),
    })),
    breaks: breaks?.map(({ at, name }) => ({ at: toMm(at), name })),
    thickness,
    across: across.map(({ name, at }) => ({ name, at: etched(at) })),
    along: along.map(etched),
  };
};

const outlineOf = (traced: Traced, made: TracedTemplate): TracedOutline => {
  const onScreen = (path: Path): readonly Point[] => flatten(path, SCREEN).map(traced.toPixels);
  const { outline, found: edge } = made;
  const back = edge && inverse(edge.motion);
  const inPicture = (p: Point): Point => traced.toPixels(back ? move(back, p) : p);
  return {
    kind: traced.kind,
    side: traced.side,
    source: traced.source,
    pixelsPerMm: traced.pixelsPerMm,
    points: onScreen(outline.path),
    corners: outline.corners.map((c) => traced.toPixels(c.point)),
    edge: edge && back && onScreen(movePath(edge.edge, back)),
    foot: edge && (edge.turnedOver ? 'right' : 'left'),
    dots: traced.dots.map((d) => traced.toPixels(d.middle)),
    breaks: made.ok ? breaksShown(made.template, inPicture) : [],
    across: made.ok ? made.across.map((at) => ({ at, points: lineAcross(made, at).map(inPicture) })) : [],
    along: made.ok ? made.along.map((at) => ({ at, points: insideBy(made, at).map(inPicture) })) : [],
    edgeLength: edge ? pathLength(edge.edge) : 0,
    chord: edge ? distance(edge.heel, edge.crown) : 0,
  };
};

type Made = Extract<TracedTemplate, { ok: true }>;

/** A line across the template, so far from the heel. */
const lineAcross = ({ outline, found }: Made, at: number): readonly Point[] => {
  const { minY, maxY } = pathBox(movePath(outline.path, found.motion));
  const x = acrossAt(found.edge, at);
  return [
    { x, y: minY },
    { x, y: maxY },
  ];
};

/** A line inside the edge, as a screen shows it. */
const insideBy = ({ found }: Made, at: number): readonly Point[] => {
  const path = insideEdge(found.edge, at);
  return path ? flatten(path, SCREEN) : [];
};

/** What helps at a terminal is an option; here it is a hand. */
const inPageWords = (text: string): string =>
  text
    .replace(/if the edge ends elsewhere, say where with --heel and --crown/, madeWords.dragEnd)
    .replace(
      /say where (?:it runs|its two ends are) with --heel and --crown(?:: the number of a corner, or a place as x,y)?/,
      madeWords.dragEnds,
    );

const told = ({ hint, ...problem }: Problem) => {
  const words = hint === undefined ? undefined : /--dpi/.test(hint) ? madeWords.sayScale : inPageWords(hint);
  return troubleOf({ ...problem, ...(words !== undefined && { hint: words }) });
};
