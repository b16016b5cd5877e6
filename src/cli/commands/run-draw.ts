/** What `draw` does. */

import { NOT_TO_SHOW } from '../../jobs/coloured.ts';
import type { Made } from '../../jobs/made.ts';
import { type Picture, picture } from '../../jobs/picture.ts';
import { quiltPicture } from '../../jobs/quilt-picture.ts';
import { WRITERS, type Writer } from '../../output/writers/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Design } from '../../swag/index.ts';
import { asAsked } from '../asked.ts';
import { defaultName } from '../default-name.ts';
import { eitherOf } from '../either-of.ts';
import type { Io } from '../io.ts';
import { readWithout } from '../layers.ts';
import { MEANS } from '../means.ts';
import { readMeasured } from '../measured.ts';
import { printJson } from '../messages.ts';
import { readWhole, readWord } from '../option-values.ts';
import type { LayerOptions, OutputOptions, PartOptions, ShowOptions, TransferOptions } from '../options.ts';
import { checkOutputOption, endingOf } from '../output-option.ts';
import { designAsData, outwardReach } from '../report-design.ts';
import { sayMade } from '../say-made.ts';
import { plannedQuilt } from '../steps.ts';
import { readTransfer } from '../transfer.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface DrawOptions extends OutputOptions, LayerOptions, PartOptions, ShowOptions, TransferOptions {
  readonly format?: string;
  readonly dpi?: string;
  readonly width?: string;
  readonly measured?: string;
  readonly colours?: boolean;
}

export const runDraw = async (io: Io, file: string, options: DrawOptions): Promise<void> => {
  const writer = readFormat(options);
  const { ending } = writer;
  checkOutputOption(options, ending);
  const pixels = readPixels(options, writer);
  if (options.measured !== undefined) refuseUnlessFor('--measured', 'measured', writer);
  const without = readWithout(options.colours ? { without: NOT_TO_SHOW, ...options } : options);
  const transferIn = readTransfer(options);
  if (options.as === 'projector') {
    if (ending === 'dxf')
      throw wrongValue('--as', 'lines for a cutting machine cannot be shone', {
        hint: 'write a PDF, PNG or SVG',
      });
    if (options.measured !== undefined)
      throw wrongValue('--measured', 'a projector is set by the square and the grid that it shows');
  }
  const inColours = options.colours ?? false;
  if (inColours && ending === 'dxf')
    throw wrongValue('--colours', 'lines for a cutting machine have none', {
      hint: 'write a PDF, PNG or SVG',
    });
  if (inColours && options.as !== undefined)
    throw wrongValue('--colours', 'it is for a picture to show, and --as for one that goes onto cloth');
  if (inColours && options.measured !== undefined)
    throw wrongValue('--measured', 'a picture to show is not printed to measure');
  const { title, parts, inputs } = await plannedQuilt(io, file, options.part);
  const { plan, name } = parts[0]!;
  const transfer = transferIn(plan.units);
  const measured = options.measured === undefined ? undefined : readMeasured(options.measured, plan.units);
  const alone = parts.length === 1;
  if (!alone && options.show !== undefined)
    throw wrongValue('--show', 'it is for one part at a time, and the plan has several', {
      hint: 'name one with --part',
    });
  const usual = defaultName(file, inColours ? 'colours' : transfer?.kind, ending, alone ? name : undefined);
  const output = await openOutput(io, { asked: options.output, usual }, inputs);
  const wanted = { writer, show: options.show, without, transfer, inColours, measured, pixels };
  const made = await asAsked<Picture | Made<string | Uint8Array>>(options, () =>
    alone ? picture(parts[0]!, wanted, MEANS) : quiltPicture(title, parts, wanted, MEANS),
  );
  await output.write(made.bytes);
  await sayMade(io, output, made);
  if (!options.json) return;
  const head = { units: 'mm and degrees', file: output.name, format: ending };
  const dataOf = (design: Design, { channels }: Plan): object => designAsData(design, outwardReach(channels));
  await printJson(
    io,
    'shown' in made
      ? { ...head, shows: made.shown.scope.label, ...dataOf(made.shown.design, plan) }
      : { ...head, parts: parts.map((part) => ({ part: part.name, ...dataOf(part.design, part.plan) })) },
  );
};

const ENDINGS = WRITERS.map(({ ending }) => ending);

/** By --format, or by the output's ending; the two may not contradict each other. */
const readFormat = ({ format, output }: DrawOptions): Writer => {
  const written = (wanted: string | undefined): Writer | undefined =>
    WRITERS.find(({ ending }) => ending === wanted);
  const asked = format === undefined ? undefined : readWord('--format', format, ENDINGS);
  const ending = output === undefined ? undefined : endingOf(output);
  const guessed = written(ending);
  if (asked !== undefined && guessed !== undefined && asked !== guessed.ending)
    throw wrongValue('--format', `the output's name ends in .${ending}`, { found: asked });
  const chosen = written(asked) ?? guessed;
  if (chosen !== undefined) return chosen;
  if (output === undefined || output === '-') return WRITERS[0];
  throw wrongValue('--output', 'its ending does not say which kind of picture it is', {
    found: ending === undefined ? 'no ending' : `.${ending}`,
    expected: `${eitherOf(ENDINGS.map((e) => `.${e}`))}, or --format`,
  });
};

const refuseUnlessFor = (option: string, what: Writer['takes'][number], writer: Writer): void => {
  if (writer.takes.includes(what)) return;
  const takers = WRITERS.filter(({ takes }) => takes.includes(what)).map(({ name }) => name);
  throw wrongValue(option, `it is for ${eitherOf(takers)}, and this is ${writer.name}`);
};

type Pixels = { readonly dotsPerInch: number } | { readonly widthInPixels: number } | undefined;

const readPixels = ({ dpi, width }: DrawOptions, writer: Writer): Pixels => {
  const given = dpi === undefined ? (width === undefined ? undefined : '--width') : '--dpi';
  if (given === undefined) return undefined;
  refuseUnlessFor(given, 'pixels', writer);
  if (dpi !== undefined && width !== undefined) throw wrongValue('--width', 'it cannot go with --dpi');
  return dpi === undefined
    ? { widthInPixels: readWhole('--width', width ?? '', 1, MOST_WIDTH) }
    : { dotsPerInch: readWhole('--dpi', dpi, 1, MOST_DOTS) };
};

/** Finer than any printer or screen; how large the whole picture may be is checked later. */
const MOST_DOTS = 2400;
const MOST_WIDTH = 32_767;
