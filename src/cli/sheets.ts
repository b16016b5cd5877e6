/** From the options about paper to what sheets are laid out by. */

import { quoted } from '../document/index.ts';
import { isStitchedThrough, type Transfer } from '../jobs/transfer.ts';
import type { Units } from '../length/index.ts';
import {
  type LayOutOptions,
  LEAST_MARGIN,
  PAPER_IDS,
  type PaperId,
  type SheetPlan,
} from '../pagination/index.ts';
import { readMeasured } from './measured.ts';
import { type FourSides, readLengthOption, readSides, readWord } from './option-values.ts';
import type { PaperOptions, RollOptions, SheetOptions } from './options.ts';
import { wrongValue } from './wrong-use.ts';

const ORIENTATIONS = ['auto', 'portrait', 'landscape'] as const;

interface SheetsAsked extends LayOutOptions {
  readonly paper: PaperId;
}

/** The options as pagination takes them; a bare length is in `units`. Throws wrong use. */
export const readSheetOptions = (options: SheetOptions, units: Units, usual: PaperId): SheetsAsked => {
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

/** The same where a roll may be asked for in place of sheets. Throws wrong use. */
export const readSheetsOrRoll = (
  options: SheetOptions & RollOptions,
  transfer: Transfer | undefined,
  units: Units,
  usual: PaperId,
): LayOutOptions => {
  const { roll, paper, orientation } = options;
  const sheets = readSheetOptions(options, units, usual);
  if (roll === undefined) return sheets;
  if (paper !== undefined || orientation !== undefined)
    throw wrongValue('--roll', `it cannot go with ${paper === undefined ? '--orientation' : '--paper'}`);
  if (isStitchedThrough(transfer))
    throw wrongValue('--roll', 'what is stitched through holds nothing that tells its scale', {
      hint: 'write one page with rules round it: swagwright draw PLAN -o clean.pdf --as clean',
    });
  return { ...sheets, paper: { roll: readLengthOption('--roll', roll, units, 'positive') } };
};

/** Throws a WrongUse where something is asked of paper and nothing goes on any. */
export const refusePaper = (
  { paper, orientation, margin }: PaperOptions,
  message: string,
  hint: string,
): void => {
  const asked = { '--paper': paper, '--orientation': orientation, '--margin': margin };
  for (const [option, value] of Object.entries(asked))
    if (value !== undefined) throw wrongValue(option, message, { hint });
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

/** The sheets for programs. */
export const sheetsAsData = (plan: SheetPlan): object => ({
  paper: plan.paper.id,
  orientation: plan.orientation,
  sheets: plan.sheets.length,
  rows: plan.rows,
  columns: plan.columns,
  labels: plan.sheets.map((sheet) => sheet.label),
  measured: plan.measured,
});
