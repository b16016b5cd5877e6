/** A picture of a template becomes one, as the command makes it: the outline for the screen, and what is made of it. */

import type { Problem } from '../../document/index.ts';
import { flatten, inverse, movePath, type Path, type Point } from '../../geometry/index.ts';
import { type TracedTemplate, templateFromTrace } from '../../jobs/traced-template.ts';
import { titleOfFile } from '../../template/index.ts';
import {
  type EdgeChoice,
  type LineSide,
  type Picture,
  type Traced,
  tracePicture,
} from '../../trace/index.ts';
import type { TraceAnswer, TracedOutline, TraceInput } from './messages.ts';
import { troubleOf } from './trouble.ts';

export interface DecodedPicture {
  readonly picture: Picture;
  /** The same for a screen. */
  readonly shown: Blob;
  readonly pixelsPerMm: number | undefined;
}

/** mm: as the command takes it where nobody says. */
const TOLERANCE = 0.03;
/** mm that what is drawn on the screen may leave the outline. */
const SCREEN = 0.05;

/** The last picture, and the last outline found in it: while ends are dragged neither is worked out again. */
let held: { readonly key: number; readonly decoded: DecodedPicture } | undefined;
let found: { readonly key: string; readonly result: ReturnType<typeof tracePicture> } | undefined;

/** Throws a ProblemError where the file is no picture that can be read. */
export const trace = async (
  input: TraceInput,
  decode: (file: Blob) => Promise<DecodedPicture>,
): Promise<TraceAnswer> => {
  const isNew = held?.key !== input.key;
  if (isNew) held = { key: input.key, decoded: await decode(input.file) };
  const { picture, shown, pixelsPerMm: ofFile } = held!.decoded;
  const pixelsPerMm = input.pixelsPerMm ?? ofFile;
  const result = tracedIn(picture, input.key, pixelsPerMm, input.line);
  const { width, height } = picture;
  const base = { width, height, shown: isNew ? shown : undefined, pixelsPerMm: ofFile };
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
  const name = `${input.fileName.replace(/\.[a-z0-9]{1,5}$/i, '')}.yaml`;
  const made = templateFromTrace(traced, {
    picture: input.fileName,
    fileName: name,
    title: input.title.trim() || titleOfFile(input.fileName),
    units: input.units === 'in' ? 'in' : 'mm',
    choice: choiceIn(input, traced),
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

const tracedIn = (
  picture: Picture,
  picked: number,
  pixelsPerMm: number | undefined,
  side: LineSide,
): ReturnType<typeof tracePicture> => {
  const key = `${picked} ${pixelsPerMm} ${side}`;
  if (found?.key !== key) {
    const options = { tolerance: TOLERANCE, side, pixelsPerMm, sheetScale: { x: 1, y: 1 } };
    found = { key, result: tracePicture(picture, options) };
  }
  return found.result;
};

const choiceIn = ({ heel, crown, foot }: TraceInput, { toMm }: Traced): EdgeChoice => {
  const placed = (p: Point | undefined) => p && ({ kind: 'point', point: toMm(p) } as const);
  return { heel: placed(heel), crown: placed(crown), foot };
};

const outlineOf = (traced: Traced, made: TracedTemplate): TracedOutline => {
  const onScreen = (path: Path): readonly Point[] => flatten(path, SCREEN).map(traced.toPixels);
  return {
    kind: traced.kind,
    source: traced.source,
    pixelsPerMm: traced.pixelsPerMm,
    points: onScreen(traced.outline.path),
    corners: traced.outline.corners.map((c) => traced.toPixels(c.point)),
    edge: made.found && onScreen(movePath(made.found.edge, inverse(made.found.motion))),
    foot: made.found && (made.found.turnedOver ? 'right' : 'left'),
    dots: traced.dots.map((d) => traced.toPixels(d.middle)),
  };
};

const DRAG = 'drag the two ends of the edge to where the foot starts and stops';

/** What helps at a terminal is an option; here it is a hand. */
const inPageWords = (text: string): string =>
  text
    .replace(
      /if the edge ends elsewhere, say where with --heel and --crown/,
      'if the edge ends elsewhere, drag its end there',
    )
    .replace(
      /say where (?:it runs|its two ends are) with --heel and --crown(?:: the number of a corner, or a place as x,y)?/,
      DRAG,
    );

const told = ({ hint, ...problem }: Problem) => {
  const words =
    hint === undefined
      ? undefined
      : /--dpi/.test(hint)
        ? 'say what the scanner was set to, or tap two marks of a ruler that lies in the picture; a photograph without a ruler needs the sheet for photographs'
        : inPageWords(hint);
  return troubleOf({ ...problem, ...(words !== undefined && { hint: words }) });
};
