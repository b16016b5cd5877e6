/** What `template trace` does. */

import { dirname, join } from 'node:path';
import { ProblemError, quoted } from '../../document/index.ts';
import { inverse, movePath, type Point, pathLength } from '../../geometry/index.ts';
import { templateFromTrace } from '../../jobs/traced-template.ts';
import type { Units } from '../../length/index.ts';
import { paintOverlay } from '../../output/overlay/index.ts';
import { withMaker } from '../../output/png/index.ts';
import { UNMEASURED } from '../../pagination/index.ts';
import { sectionsOf, type Template } from '../../template/index.ts';
import { type Level, type LineSide, type Traced, tracePicture, type WorkingEdge } from '../../trace/index.ts';
import type { EdgeOptions } from '../add-edge.ts';
import { defaultName } from '../default-name.ts';
import { readEdgeChoice, readFileUnits, titleFrom } from '../edge-options.ts';
import type { Io } from '../io.ts';
import { registerFonts } from '../load-canvas.ts';
import { readMeasured } from '../measured.ts';
import { printJson, say } from '../messages.ts';
import { readLengthOption, readWord } from '../option-values.ts';
import type { OutputOptions } from '../options.ts';
import { endingOf } from '../output-option.ts';
import { type PictureFile, readPicture } from '../read-picture.ts';
import { openOutputs, writeTogether } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface TraceCommandOptions extends OutputOptions, EdgeOptions {
  readonly overlay?: string;
  readonly dpi?: string;
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
  const side = options.line === undefined ? 'middle' : readWord('--line', options.line, SIDES);
  const tolerance = readTolerance(options.tolerance ?? USUAL_TOLERANCE);
  const dpi = options.dpi === undefined ? undefined : readDpi(options.dpi);
  const measured = options.measured === undefined ? UNMEASURED : readMeasured(options.measured, 'in');
  readEdgeChoice(options, (p) => p);
  const level = options.level === undefined ? undefined : readWord('--level', options.level, LEVELS);
  const thickness =
    options.thickness === undefined
      ? undefined
      : readLengthOption('--thickness', options.thickness, units, 'positive');
  const raised = options.camera === undefined ? undefined : readCamera(options.camera, units, thickness);
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
  const traced = tracePicture(file.picture, {
    tolerance,
    side,
    pixelsPerMm: dpi ?? file.pixelsPerMm,
    // The capture sheet is always upright.
    sheetScale: { x: measured.short, y: measured.long },
    raised,
  });
  if (!traced.ok) throw new ProblemError([{ ...traced.problem, place: { file: name } }]);
  refuseIdle(options, traced.traced);
  const made = templateFromTrace(traced.traced, {
    picture: name,
    fileName: output.name,
    title,
    units,
    choice: { ...readEdgeChoice(options, traced.traced.toMm), level },
    said: { thickness },
  });
  const picture = overlayOf(file, traced.traced, made.found);
  if (!made.ok) {
    // A picture of the numbered corners is what helps when the edge is not found.
    await overlay.write(picture);
    const red = made.found ? ', and in red the working edge' : '';
    await say(io, `${overlay.name}: the outline, with a number at each corner${red}`);
    throw new ProblemError([{ ...made.problem, place: { file: name } }]);
  }
  const { found, text, template, doubts } = made;
  await writeTogether(io, [
    [output, text],
    [overlay, picture],
  ]);
  for (const line of made.words) await say(io, line);
  for (const doubt of doubts) await say(io, doubt);
  await say(io, `${output.name}: the template, in ${units}`);
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
      ...asData(traced.traced, found, template),
    });
};

/** The picture of what was found lies beside the template that was asked for, and is called after it. */
const overlayBeside = (scan: string, output: string | undefined): string =>
  output === undefined || output === '-'
    ? defaultName(scan, 'outline', 'png')
    : join(dirname(output), defaultName(output, 'outline', 'png'));

const checkOutputs = ({ output, overlay, json }: TraceCommandOptions): void => {
  if (output === '-' && json)
    throw wrongValue('--output', 'the file and --json cannot both go to stdout', {
      hint: 'give the file a name',
    });
  const ending = output === undefined ? undefined : endingOf(output);
  if (ending !== undefined && !['yaml', 'yml'].includes(ending))
    throw wrongValue('--output', 'a template file is YAML', { found: `the ending .${ending}` });
  if (overlay !== undefined && endingOf(overlay) !== 'png')
    throw wrongValue('--overlay', 'the overlay is a PNG file', { found: quoted(overlay) });
};

/** What does nothing for this picture was meant to do something. Throws wrong use. */
const refuseIdle = (options: TraceCommandOptions, { source, kind }: Traced): void => {
  const { line, dpi } = options;
  const idle = 'it does nothing here';
  for (const option of ['measured', 'camera'] as const)
    if (options[option] !== undefined && source === 'scan')
      throw wrongValue(`--${option}`, idle, {
        found: 'a scan, whose size its dots per inch say',
        expected: 'a photograph of the capture sheet',
      });
  if (dpi !== undefined && source === 'capture-sheet')
    throw wrongValue('--dpi', idle, {
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

/** 2400 is the finest that desktop scanners see. */
const readDpi = (text: string): number => {
  const value = /^\d{1,4}(\.\d+)?$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= 100 && value <= 2400) return value / 25.4;
  throw wrongValue('--dpi', 'not a resolution that can be used', {
    found: quoted(text),
    expected: 'dots per inch, from 100 to 2400',
  });
};

/** The overlay's longer side, pixels: sharp on any screen, small to send. */
const OVERLAY_SIDE = 2400;

const overlayOf = (file: PictureFile, traced: Traced, found: WorkingEdge | undefined): Uint8Array => {
  const { width, height } = file.picture;
  const scale = Math.min(1, OVERLAY_SIDE / Math.max(width, height));
  registerFonts(file.canvas);
  const canvas = file.canvas.createCanvas(Math.round(width * scale), Math.round(height * scale));
  const context = canvas.getContext('2d');
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  // Paler, so that the lines stand out on it.
  context.globalAlpha = 0.6;
  context.drawImage(file.image, 0, 0, canvas.width, canvas.height);
  context.globalAlpha = 1;
  const toPixels = (p: Point): Point => {
    const q = traced.toPixels(p);
    return { x: q.x * scale, y: q.y * scale };
  };
  const back = found && inverse(found.motion);
  paintOverlay(context, {
    outline: traced.outline.path,
    edge: found && back && movePath(found.edge, back),
    corners: traced.outline.corners,
    breaks: traced.dots.map((d) => d.middle),
    toPixels,
    pixelsPerMm: traced.pixelsPerMm * scale,
    width: canvas.width,
    height: canvas.height,
  });
  return withMaker(canvas.toBuffer('image/png'));
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
  pieces: template.edge.pieces.length,
});
