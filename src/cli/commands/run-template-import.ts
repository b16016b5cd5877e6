/** What `template import` does. */

import { type Problem, ProblemError, quoted } from '../../document/index.ts';
import { CURVE_TOLERANCE, type Point, pathLength } from '../../geometry/index.ts';
import { formatLength, INCH_SIXTEENTH, MM_TENTH } from '../../length/index.ts';
import { readTemplate, sectionsOf, writeTemplate } from '../../template/index.ts';
import {
  cornersOf,
  findWorkingEdge,
  type MarkedCorner,
  type SvgOutline,
  svgOutline,
  type WorkingEdge,
} from '../../trace/index.ts';
import { defaultName } from '../default-name.ts';
import { readEdgeChoice, readFileUnits, titleFrom } from '../edge-options.ts';
import type { Io } from '../io.ts';
import { plural, printJson, say } from '../messages.ts';
import { readLengthOption } from '../option-values.ts';
import { endingOf } from '../output-option.ts';
import { readTextFile } from '../read-file.ts';
import { openOutput } from '../write-file.ts';
import { wrongValue } from '../wrong-use.ts';
import type { ImportOptions } from './template-import.ts';

/** A file of steps that a person can still read; curves are followed more coarsely until they fit. */
const MOST_STEPS = 480;
/** mm; beyond the last a drawing is too fine to be a template. */
const TOLERANCES = [CURVE_TOLERANCE, 0.01, 0.03];

export const runImport = async (io: Io, name: string, options: ImportOptions): Promise<void> => {
  if (options.output === '-' && options.json)
    throw wrongValue('--output', 'the file and --json cannot both go to stdout', {
      hint: 'give the file a name',
    });
  const ending = options.output === undefined ? undefined : endingOf(options.output);
  if (ending !== undefined && !['yaml', 'yml'].includes(ending))
    throw wrongValue('--output', 'a template file is YAML', { found: `the ending .${ending}` });
  const units = readFileUnits(options);
  // As the drawing has it: y points down from its upper left corner.
  const choice = readEdgeChoice(options, (p: Point) => ({ x: p.x, y: -p.y }));
  const unitMm =
    options.scale === undefined ? undefined : readLengthOption('--scale', options.scale, 'mm', 'positive');
  const file = await readTextFile(io, name);
  const output = await openOutput(io, options.output ?? defaultName(name, '.yaml'), [file.path]);
  const refuse = (problem: Problem): never => {
    throw new ProblemError([{ ...problem, place: { file: name } }]);
  };
  let made: { outline: SvgOutline; corners: readonly MarkedCorner[]; found: WorkingEdge } | undefined;
  let within = CURVE_TOLERANCE;
  for (const tolerance of TOLERANCES) {
    const read = svgOutline(file.text, { id: options.id, unitMm, tolerance });
    if (!read.ok) return refuse(read.problem);
    const corners = cornersOf(read.outline.path);
    const chosen = findWorkingEdge(read.outline.path, corners, choice);
    if (!chosen.ok) {
      await sayCorners(io, corners);
      return refuse(chosen.problem);
    }
    within = tolerance;
    made = { outline: read.outline, corners, found: chosen.found };
    if (chosen.found.edge.pieces.length <= MOST_STEPS) break;
  }
  const { outline, corners, found } = made!;
  if (found.edge.pieces.length > MOST_STEPS)
    return refuse({
      code: 'svg-too-fine',
      message: 'the path is too finely drawn for a template',
      found: `${found.edge.pieces.length} lines and arcs`,
      expected: `at most ${MOST_STEPS}`,
      hint: 'simplify the path in the program that drew it',
    });
  const what =
    outline.id === undefined ? `a ${outline.element}` : `the ${outline.element} ${quoted(outline.id)}`;
  const text = writeTemplate({
    title: titleFrom(options, name),
    units,
    comments: [
      `Imported by swagwright from ${what} of ${quoted(name)}; curves within ${within} mm.`,
      'Say the thickness of the acrylic, and name the sections, here.',
    ],
    edge: found.edge,
    breaks: [],
    decimals: units === 'in' ? 6 : 5,
  });
  const reading = readTemplate(text, output.name);
  if (!reading.ok) throw new ProblemError(reading.problems);
  await output.write(text);
  const { template } = reading;
  const length = pathLength(template.edge);
  const sections = sectionsOf(template, length).length;
  await say(
    io,
    `took ${what}, ${outline.path.closed ? 'closed' : 'open'}, of ${plural(outline.choices, 'path')}`,
  );
  await say(io, SIZES[outline.size]);
  if (outline.path.closed) await sayCorners(io, corners);
  await say(
    io,
    `working edge: ${formatLength(length, MM_TENTH)} (${formatLength(length, INCH_SIXTEENTH)}) long, ` +
      `${plural(sections, 'section')}, ${plural(template.edge.pieces.length, 'line or arc', 'lines and arcs')}` +
      `${found.turnedOver ? ', turned over so that the foot runs on the left' : ''}`,
  );
  await say(io, `${output.name}: the template, in ${units}`);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      id: outline.id ?? null,
      closed: outline.path.closed,
      size: outline.size,
      tolerance: within,
      length,
      sections,
      pieces: template.edge.pieces.length,
      turnedOver: found.turnedOver,
      corners: corners.map((c) => ({ x: c.point.x, y: -c.point.y })),
    });
};

const SIZES: Readonly<Record<SvgOutline['size'], string>> = {
  stated: 'the drawing states its size',
  pixels: 'the drawing counts in px; 1 px was taken as 1/96 in (say --scale if it was drawn otherwise)',
  given: 'the size was taken from --scale',
};

/** Corners that are listed; a person does not read more. */
const MOST_LISTED = 20;

const sayCorners = async (io: Io, corners: readonly MarkedCorner[]): Promise<void> => {
  if (corners.length === 0) return;
  const listed = corners
    .slice(0, MOST_LISTED)
    .map(({ point }, i) => `${i + 1} at ${point.x.toFixed(1)},${(-point.y).toFixed(1)}`);
  const more = corners.length > MOST_LISTED ? `, and ${corners.length - MOST_LISTED} more` : '';
  await say(io, `corners, in mm from the drawing's upper left: ${listed.join('; ')}${more}`);
};
