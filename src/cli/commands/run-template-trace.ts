/** What `template trace` does. */

import { dirname, join } from 'node:path';
import { type Problem, ProblemError, quoted } from '../../document/index.ts';
import { inverse, move, type Point, pathLength } from '../../geometry/index.ts';
import { breakWords } from '../../jobs/break-words.ts';
import { sizeWords } from '../../jobs/size-by-print.ts';
import { traceSetRight } from '../../jobs/trace-set-right.ts';
import type { TracedTemplate, TracedTemplateWants } from '../../jobs/traced-template.ts';
import { MM_PER_INCH, type Units } from '../../length/index.ts';
import { UNMEASURED } from '../../pagination/index.ts';
import { sectionsOf, type Template } from '../../template/index.ts';
import {
  isNoResolution,
  type Level,
  type LineSide,
  type Marks,
  type Picture,
  type Traced,
  type TraceResult,
  tracePicture,
  type WorkingEdge,
} from '../../trace/index.ts';
import type { EdgeOptions } from '../add-edge.ts';
import type { SetRightOptions } from '../add-set-right.ts';
import { defaultName } from '../default-name.ts';
import { readEdgeChoice, readFileUnits, titleFrom, UNIT_WORDS } from '../edge-options.ts';
import type { Io } from '../io.ts';
import { readMeasured } from '../measured.ts';
import { printJson, say } from '../messages.ts';
import { readLengthOption, readWord } from '../option-values.ts';
import type { OutputOptions } from '../options.ts';
import { checkTemplateOutput, endingOf } from '../output-option.ts';
import { type EtchedOptions, readEtched } from '../read-etched.ts';
import { readPicture } from '../read-picture.ts';
import { type ReadScale, readScale, type ScaleOptions } from '../read-scale.ts';
import { readOff, readSetRight } from '../read-set-right.ts';
import { overlayOf } from '../trace-overlay.ts';
import { openOutputs, writeTogether } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface TraceCommandOptions
  extends OutputOptions,
    EdgeOptions,
    SetRightOptions,
    EtchedOptions,
    ScaleOptions {
  readonly overlay?: string;
  readonly line?: string;
  readonly tolerance?: string;
  readonly measured?: string;
  readonly thickness?: string;
  readonly camera?: string;
  readonly level?: string;
}

const LEVELS = ['back', 'ends', 'picture'] as const satisfies readonly Level[];
const SIDES = ['middle', 'inner', 'outer'] as const satisfies readonly LineSide[];

/** A third of a pixel of the usual scan: pixels do not tell more, and few arcs do not need more. */
const USUAL_TOLERANCE = '0.03 mm';
const LEAST_TOLERANCE = 0.005;
const MOST_TOLERANCE = 1;

export const runTrace = async (io: Io, name: string, options: TraceCommandOptions): Promise<void> => {
  checkOutputs(options);
  const units = readFileUnits(options);
  const side = options.line === undefined ? undefined : readWord('--line', options.line, SIDES);
  const tolerance = readTolerance(options.tolerance ?? USUAL_TOLERANCE);
  const given = readScale(options, units);
  const measured = options.measured === undefined ? UNMEASURED : readMeasured(options.measured, 'in');
  readEdgeChoice(options, (p) => p);
  const level = options.level === undefined ? undefined : readWord('--level', options.level, LEVELS);
  const thickness =
    options.thickness === undefined
      ? undefined
      : readLengthOption('--thickness', options.thickness, units, 'positive');
  const raised = options.camera === undefined ? undefined : readCamera(options.camera, units, thickness);
  const places = { units, numbered: true };
  readSetRight(options, { ...places, toMm: (p) => p });
  readEtched(options, units, (p) => p);
  const off = readOff(options.off, units);
  const title = titleFrom(options, name);

  const file = await readPicture(io, name);
  const [output, overlay] = await openOutputs(
    io,
    [
      { asked: options.output, usual: defaultName(name, undefined, 'yaml'), handwork: true },
      { asked: options.overlay, usual: overlayBeside(name, options.output), option: '--overlay' },
    ],
    [file.path],
  );
  refuseOutside(file.picture, given?.marks);
  const pixelsPerMm = given?.pixelsPerMm ?? file.pixelsPerMm;
  const trace = (correction: number): TraceResult =>
    tracePicture(file.picture, {
      tolerance,
      side,
      pixelsPerMm: pixelsPerMm && pixelsPerMm / correction,
      marks: given?.marks,
      // The capture sheet is always upright.
      sheetScale: { x: measured.short * correction, y: measured.long * correction },
      raised,
    });
  const first = trace(1);
  if (!first.ok) throw new ProblemError([{ ...first.problem, place: { file: name } }]);
  refuseIdle(options, first.traced);
  const wantsFor = ({ toMm }: Traced): TracedTemplateWants => ({
    picture: name,
    fileName: output.name,
    title,
    units,
    choice: { ...readEdgeChoice(options, toMm), level },
    said: { thickness, ...readEtched(options, units, toMm) },
  });
  const right = readSetRight(options, { ...places, toMm: first.traced.toMm });
  const { traced, made, correction } = inFile(name, () =>
    traceSetRight(trace, first.traced, wantsFor, { right, off }),
  );
  if (!made.ok) {
    const problem = { ...inOptions(made.problem), place: { file: name } };
    // The edge is there, and what is wrong is an option beside it.
    if (made.found && problem.key !== undefined) throw new ProblemError([problem]);
    // A picture of the numbered corners is what helps when the edge is not found.
    await overlay.write(overlayOf(file, traced, { ...made, breaks: breaksShown(traced, made) }));
    const red = made.found ? ', and in red the working edge' : '';
    await say(io, `${overlay.name}: the outline, with a number at each corner${red}`);
    throw new ProblemError([problem]);
  }
  const { found, text, template } = made;
  const picture = overlayOf(file, traced, { ...made, breaks: breaksShown(traced, made) });
  const doubts = [...made.doubts, ...otherwiseSaid(file.pixelsPerMm, given)];
  await writeTogether(io, [
    [output, text],
    [overlay, picture],
  ]);
  for (const line of made.words) await say(io, line);
  if (correction !== 1) await say(io, `set right by hand: ${sizeWords(correction)} than the picture says`);
  for (const line of breakWords(template, right)) await say(io, line);
  for (const doubt of doubts) await say(io, doubt);
  await say(io, `${output.name}: the template, in ${UNIT_WORDS[units]}`);
  await say(
    io,
    `${overlay.name}: the outline over the picture; look whether the red line is the working edge`,
  );
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      overlay: overlay.name,
      doubts,
      correction,
      ...asData(traced, found, template),
    });
};

/** A mark that does not lie in the picture was read off another one. */
const refuseOutside = ({ width, height }: Picture, marks: Marks | undefined): void => {
  const outside = marks?.find(({ x, y }) => !(x >= 0 && y >= 0 && x <= width && y <= height));
  if (!outside) return;
  throw wrongValue('--marks', 'a mark lies outside the picture', {
    found: `${outside.x},${outside.y}`,
    expected: `places in its ${width} by ${height} pixels`,
  });
};

/** What a template's file cannot hold came from an option: its keys are not hers. */
const inOptions = (problem: Problem): Problem => {
  const { key = '', found, ...rest } = problem;
  if (key === 'thickness') return { ...problem, key: '--thickness' };
  if (key.startsWith('channelLines')) return { ...problem, key: '--along' };
  if (!key.startsWith('alignment')) return problem;
  return found?.startsWith('-')
    ? { ...rest, key: '--across', message: 'this line lies before the heel' }
    : { ...problem, key: '--across' };
};

/** Resolutions that differ by less than this share are the same. */
const SAME_RESOLUTION = 0.02;
/** What cameras write, and no scanner is set to, dots per inch. */
const NO_SCAN = 100;

/** A resolution that she gives goes before the file's own; which of them is right a ruler on the print tells. */
const otherwiseSaid = (ofFile: number | undefined, given: ReadScale | undefined): readonly string[] => {
  if (ofFile === undefined || !given || given.marks) return [];
  const [own, said] = [ofFile, given.pixelsPerMm].map((perMm) => Math.round(perMm * MM_PER_INCH)) as [
    number,
    number,
  ];
  return own < NO_SCAN || isNoResolution(ofFile) || Math.abs(own / said - 1) <= SAME_RESOLUTION
    ? []
    : [
        `unsure: the picture itself says ${own} dots per inch, and --dpi says ${said}: print the outline and lay the template on it`,
      ];
};

/** What is wrong with what is said of a file is said with its name. */
const inFile = <T>(file: string, work: () => T): T => {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    throw new ProblemError(error.problems.map((problem) => ({ ...problem, place: { file } })));
  }
};

/** Those that the template has, or the dots that mean some where it has none yet. */
const breaksShown = ({ dots }: Traced, made: TracedTemplate): readonly Point[] => {
  if (!made.ok) return dots.map((d) => d.middle);
  const back = inverse(made.found.motion);
  return made.template.breaks.filter((b) => b.kind === 'mark').map((b) => move(back, b.point));
};

/** The picture of what was found lies beside the template that was asked for, and is called after it. */
const overlayBeside = (scan: string, output: string | undefined): string =>
  output === undefined || output === '-'
    ? defaultName(scan, 'outline', 'png')
    : join(dirname(output), defaultName(output, 'outline', 'png'));

const checkOutputs = (options: TraceCommandOptions): void => {
  const { overlay } = options;
  checkTemplateOutput(options);
  if (overlay !== undefined && endingOf(overlay) !== 'png')
    throw wrongValue('--overlay', 'the overlay is a PNG file', { found: quoted(overlay) });
};

/** What does nothing for this picture was meant to do something. Throws wrong use. */
const refuseIdle = (options: TraceCommandOptions, { source, kind }: Traced): void => {
  const { line } = options;
  const idle = 'it does nothing here';
  for (const option of ['measured', 'camera'] as const)
    if (options[option] !== undefined && source === 'scan')
      throw wrongValue(`--${option}`, idle, {
        found: 'a scan, whose size its dots per inch say',
        expected: 'a photograph of the capture sheet',
      });
  for (const option of ['dpi', 'marks'] as const)
    if (options[option] !== undefined && source === 'capture-sheet')
      throw wrongValue(`--${option}`, idle, {
        found: 'a photograph of the capture sheet, whose marks say the size',
        expected: 'a scan',
      });
  if (line !== undefined && kind === 'solid')
    throw wrongValue('--line', idle, {
      found: 'a filled shape',
      expected: 'a line drawn round the template',
    });
};

/** From nearer than this (mm) no camera shows the whole capture sheet. */
const LEAST_HEIGHT = 150;

const readCamera = (
  text: string,
  units: Units,
  thickness: number | undefined,
): { readonly thickness: number; readonly height: number } => {
  const height = readLengthOption('--camera', text, units, 'positive');
  if (!(height >= LEAST_HEIGHT))
    throw wrongValue('--camera', 'nearer than a camera can be that shows the whole sheet', {
      found: quoted(text),
      expected: `at least ${LEAST_HEIGHT} mm (6 in)`,
    });
  if (thickness === undefined)
    throw wrongValue('--camera', 'it does nothing without --thickness', {
      hint: 'say how thick the acrylic is, such as --thickness "1/4 in"',
    });
  return { thickness, height };
};

const readTolerance = (text: string): number => {
  const mm = readLengthOption('--tolerance', text, 'mm', 'positive');
  if (mm >= LEAST_TOLERANCE && mm <= MOST_TOLERANCE) return mm;
  throw wrongValue('--tolerance', 'out of range', {
    found: quoted(text),
    expected: `${LEAST_TOLERANCE} mm to ${MOST_TOLERANCE} mm`,
  });
};

const asData = (traced: Traced, found: WorkingEdge, template: Template): object => ({
  found: traced.kind,
  source: traced.source,
  leftOut: traced.leftOut,
  lineWidth: traced.lineWidth ?? null,
  marksMisfit: traced.capture?.misfit ?? null,
  expectedError: traced.capture?.expected ?? null,
  pixelsPerMm: traced.pixelsPerMm,
  corners: traced.outline.corners.map((c) => ({ picture: traced.toPixels(c.point) })),
  deviation: traced.outline.deviation,
  level: found.level,
  skew: (found.skew * 180) / Math.PI,
  turnedOver: found.turnedOver,
  sections: sectionsOf(template, pathLength(template.edge)).length,
  breaks: template.breaks.map(({ name, at, kind }) => ({ name: name ?? null, at, kind })),
  pieces: template.edge.pieces.length,
});
