/** What `draw` does. */

import type { StyledDrawing } from '../../drawing/index.ts';
import { correctionLines } from '../../jobs/correction.ts';
import { shownDrawing, type ViewOptions } from '../../output/view/index.ts';
import type { PerEdge } from '../../pagination/index.ts';
import { defaultName } from '../default-name.ts';
import { drawnPlan } from '../drawn-plan.ts';
import type { Io } from '../io.ts';
import { readWithout } from '../layers.ts';
import { readMeasured } from '../measured.ts';
import { printJson, say } from '../messages.ts';
import { readWhole, readWord } from '../option-values.ts';
import { checkOutputOption, endingOf } from '../output-option.ts';
import type { PdfWords } from '../render-pdf.ts';
import { describeDesign, designAsData, outwardReach } from '../report-design.ts';

import { readShow } from '../show.ts';
import { planned } from '../steps.ts';
import { sayUnprintable } from '../unprintable.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';
import type { DrawOptions } from './draw.ts';

const FORMATS = ['svg', 'pdf', 'png'] as const;
type Format = (typeof FORMATS)[number];

export const runDraw = async (io: Io, file: string, options: DrawOptions): Promise<void> => {
  const format = readFormat(options);
  checkOutputOption(options, format);
  const pixels = readPixels(options, format);
  if (options.measured !== undefined && format !== 'pdf')
    throw wrongValue('--measured', `it is for PDF, and this is ${format.toUpperCase()}`);
  const view: ViewOptions = { without: readWithout(options) };
  const { plan, templates, design: whole, inputs, placed } = await planned(io, file, options.part);
  const measured = options.measured === undefined ? undefined : readMeasured(options.measured, plan.units);
  const { design, scope } = readShow(whole, options.show ?? 'all');
  const output = await openOutput(
    io,
    { asked: options.output, usual: defaultName(file, undefined, format) },
    inputs,
  );
  const summary = describeDesign(design, plan.marks.style, plan.channels);
  const drawing = await drawnPlan(io, design, plan, scope, view.without ?? [], placed);
  const picture = await render(
    format,
    drawing,
    view,
    pixels,
    {
      title: plan.title,
      summary,
      units: plan.units,
    },
    measured,
  );
  await output.write(picture.bytes);
  // Who shows an SVG brings its own fonts.
  if (format !== 'svg') await sayUnprintable(io, plan.title, templates);
  for (const line of summary) await say(io, line);
  await say(io, `${output.name}: ${scope.label}, ${picture.size}`);
  if (measured) for (const line of correctionLines(measured)) await say(io, line);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      format,
      shows: scope.label,
      ...designAsData(design, outwardReach(plan.channels)),
    });
};

/** By --format, or by the output's ending; the two may not contradict each other. */
const readFormat = ({ format, output }: DrawOptions): Format => {
  const asked = format === undefined ? undefined : readWord('--format', format, FORMATS);
  const ending = output === undefined ? undefined : endingOf(output);
  const guessed = FORMATS.find((f) => f === ending);
  if (asked !== undefined && guessed !== undefined && asked !== guessed)
    throw wrongValue('--format', `the output's name ends in .${guessed}`, { found: asked });
  const chosen = asked ?? guessed;
  if (chosen !== undefined) return chosen;
  if (output === undefined || output === '-') return 'svg';
  throw wrongValue('--output', 'its ending does not say which kind of picture it is', {
    found: ending === undefined ? 'no ending' : `.${ending}`,
    expected: '.svg, .pdf or .png, or --format',
  });
};

type Pixels = { readonly dotsPerInch: number } | { readonly widthInPixels: number } | undefined;

const readPixels = ({ dpi, width }: DrawOptions, format: Format): Pixels => {
  const given = dpi === undefined ? (width === undefined ? undefined : '--width') : '--dpi';
  if (given === undefined) return undefined;
  if (format !== 'png') throw wrongValue(given, `it is for PNG, and this is ${format.toUpperCase()}`);
  if (dpi !== undefined && width !== undefined) throw wrongValue('--width', 'it cannot go with --dpi');
  return dpi === undefined
    ? { widthInPixels: readWhole('--width', width ?? '', 1, MOST_WIDTH) }
    : { dotsPerInch: readWhole('--dpi', dpi, 1, MOST_DOTS) };
};

/** Finer than any printer or screen; how large the whole picture may be is checked later. */
const MOST_DOTS = 2400;
const MOST_WIDTH = 32_767;

interface Rendered {
  readonly bytes: string | Uint8Array;
  readonly size: string;
}

const render = async (
  format: Format,
  drawing: StyledDrawing,
  view: ViewOptions,
  pixels: Pixels,
  words: PdfWords,
  measured: PerEdge | undefined,
): Promise<Rendered> => {
  switch (format) {
    case 'svg': {
      const { writeSvg } = await import('../../output/svg/index.ts');
      return {
        bytes: writeSvg(drawing, { ...view, description: `${words.summary.join('; ')}.` }),
        size: 'a drawing at true size',
      };
    }
    case 'png': {
      const { renderPng } = await import('../render-png.ts');
      const { bytes, width, height } = await renderPng(drawing, { ...view, ...pixels });
      return { bytes, size: `a picture of ${width} by ${height} pixels` };
    }
    case 'pdf': {
      const { onePagePdf } = await import('../render-pdf.ts');
      return {
        bytes: await onePagePdf(shownDrawing(drawing, view), words, measured),
        size: 'one page at true size',
      };
    }
    default:
      return format satisfies never;
  }
};
