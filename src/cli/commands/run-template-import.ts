/** What `template import` does. */

import { ProblemError, plural } from '../../document/index.ts';
import { type Point, pathLength } from '../../geometry/index.ts';
import { formatLength, INCH_SIXTEENTH, MM_TENTH } from '../../length/index.ts';
import { sectionsOf, templateFromSvg } from '../../template/index.ts';
import { levelWords, type MarkedCorner, type SvgOutline } from '../../trace/index.ts';
import type { EdgeOptions } from '../add-edge.ts';
import { defaultName } from '../default-name.ts';
import { readEdgeChoice, readFileUnits, titleFrom, UNIT_WORDS } from '../edge-options.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import { readLengthOption } from '../option-values.ts';
import type { OutputOptions } from '../options.ts';
import { checkTemplateOutput } from '../output-option.ts';
import { readTextFile } from '../read-file.ts';
import { openOutput } from '../write-set.ts';

export interface ImportOptions extends OutputOptions, EdgeOptions {
  readonly id?: string;
  readonly scale?: string;
}

export const runImport = async (io: Io, name: string, options: ImportOptions): Promise<void> => {
  checkTemplateOutput(options);
  const units = readFileUnits(options);
  const title = titleFrom(options, name);
  // As the drawing has it: y points down from its upper left corner.
  const choice = readEdgeChoice(options, (p: Point) => ({ x: p.x, y: -p.y }));
  const unitMm =
    options.scale === undefined ? undefined : readLengthOption('--scale', options.scale, 'mm', 'positive');
  const file = await readTextFile(io, name);
  const output = await openOutput(
    io,
    { asked: options.output, usual: defaultName(name, undefined, 'yaml'), handwork: true },
    [file.path],
  );
  const made = templateFromSvg(file.text, {
    name,
    fileName: output.name,
    title,
    units,
    id: options.id,
    unitMm,
    choice,
  });
  if (!made.ok) {
    await sayCorners(io, made.corners);
    throw new ProblemError(made.problems);
  }
  const { text, template, outline, corners, found, within, what } = made;
  await output.write(text);
  const length = pathLength(template.edge);
  const sections = sectionsOf(template, length).length;
  await say(
    io,
    `took ${what}, ${outline.path.closed ? 'closed' : 'open'}, of ${plural(outline.choices, 'path')}`,
  );
  if (outline.joined > 0)
    await say(io, `its ends, ${outline.joined.toFixed(2)} mm apart, were joined: it was taken as closed`);
  await say(io, SIZES[outline.size]);
  await sayCorners(io, corners);
  await say(
    io,
    `working edge: ${formatLength(length, MM_TENTH)} (${formatLength(length, INCH_SIXTEENTH)}) long, ` +
      `${plural(sections, 'section')}, ${plural(template.edge.pieces.length, 'line or arc', 'lines and arcs')}` +
      `${found.turnedOver ? ', turned over so that the foot runs on the left' : ''}`,
  );
  await say(io, levelWords(found));
  await say(io, `${output.name}: the template, in ${UNIT_WORDS[units]}`);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      id: outline.id ?? null,
      closed: outline.path.closed,
      joined: outline.joined,
      size: outline.size,
      tolerance: within,
      length,
      sections,
      pieces: template.edge.pieces.length,
      turnedOver: found.turnedOver,
      level: found.level,
      skew: (found.skew * 180) / Math.PI,
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
