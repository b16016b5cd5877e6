/** From a drawing and the options about paper to a plan of sheets. */

import { ProblemError, plural, quoted } from '../document/index.ts';
import type { StyledDrawing } from '../drawing/index.ts';
import type { Units } from '../length/index.ts';
import {
  type LayOutOptions,
  LEAST_MARGIN,
  layOut,
  PAPER_IDS,
  type PaperId,
  type SheetPlan,
} from '../pagination/index.ts';
import { readMeasured } from './measured.ts';
import { type FourSides, readLengthOption, readSides, readWord } from './option-values.ts';
import type { SheetOptions } from './options.ts';
import { WrongUse, wrongValue } from './wrong-use.ts';

const ORIENTATIONS = ['auto', 'portrait', 'landscape'] as const;

/** The options as pagination takes them; a bare length is in `units`. Throws wrong use. */
export const readSheetOptions = (options: SheetOptions, units: Units, usual: PaperId): LayOutOptions => {
  const { paper, orientation, margin, overlap, measured } = options;
  return {
    paper: paper === undefined ? usual : readWord('--paper', paper, PAPER_IDS),
    orientation: orientation === undefined ? undefined : readWord('--orientation', orientation, ORIENTATIONS),
    margins: margin === undefined ? undefined : readMargins(margin, units),
    overlap: overlap === undefined ? undefined : readLengthOption('--overlap', overlap, units),
    measured: measured === undefined ? undefined : readMeasured(measured, units),
    units,
  };
};

const readMargins = (text: string, units: Units): FourSides => {
  const margins = readSides('--margin', text, units);
  // A hair less, because 1/4 in may come out of arithmetic so.
  if (Math.min(...Object.values(margins)) >= LEAST_MARGIN - 1e-9) return margins;
  throw wrongValue('--margin', "nearer to the paper's edge than printers reach", {
    found: quoted(text),
    expected: 'at least 1/4 in (6.35 mm)',
  });
};

/** Which option a problem of the layout is about, where one was given. */
const OPTION_OF: Readonly<Record<string, keyof SheetOptions>> = {
  'overlap-too-small': 'overlap',
  'measured-out-of-range': 'measured',
};

/** The plan of the sheets. A problem that comes from an option is wrong use, and names the option. */
export const layOutSheets = (
  drawing: StyledDrawing,
  layout: LayOutOptions,
  options: SheetOptions,
): SheetPlan => {
  try {
    return layOut(drawing, layout);
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const problems = error.problems.map((problem) => {
      const option = OPTION_OF[problem.code];
      const written = option && options[option];
      return written === undefined ? problem : { ...problem, key: `--${option}`, found: quoted(written) };
    });
    if (problems.every((problem) => problem.key?.startsWith('--'))) throw new WrongUse(problems);
    throw error;
  }
};

/** `6 sheets of Letter, landscape, in 2 rows and 3 columns`. */
export const describeSheets = (plan: SheetPlan): string => {
  const { length } = plan.sheets;
  const sheets = `${plural(length, 'sheet')} of ${plan.paper.name}, ${plan.orientation}`;
  if (length === 1) return sheets;
  const { skipped, rows, columns } = plan;
  const empty = skipped.length === 0 ? '' : `, ${plural(skipped.length, 'empty one')} left out`;
  return `${sheets}, in ${plural(rows, 'row')} and ${plural(columns, 'column')}${empty}`;
};

/** What the printer is going to print: the sheets, and the cover that shows how they lie. */
export const pagesWords = (pages: number): string => `${pages} pages with the cover`;

/** The same for programs. */
export const sheetsAsData = (plan: SheetPlan): object => ({
  paper: plan.paper.id,
  orientation: plan.orientation,
  sheets: plan.sheets.length,
  rows: plan.rows,
  columns: plan.columns,
  labels: plan.sheets.map((sheet) => sheet.label),
  measured: plan.measured,
});
