/** What of a picture goes onto cloth, and how: for machines and materials that want less than a sheet to look at. */

import { ProblemError } from '../document/index.ts';
import {
  type Grid,
  type LayerId,
  LEAST_HOLES_APART,
  LEAST_LAND,
  leastBridgesApart,
  mirrored,
  PROJECTED_WORDS,
  pounced,
  projected,
  quiltingAlone,
  type StyledDrawing,
  stencilled,
} from '../drawing/index.ts';
import { exactLength, INCH_SIXTYFOURTH, MM_PER_INCH, MM_TENTH, type Units } from '../length/index.ts';
import { viewBox } from '../output/view/index.ts';

/**
 * `clean` is what is stitched and nothing else, its lines joined; `pounce` the same as holes, which powder or ink goes
 * through; `stencil` the stitching and the channels as slots, with bridges between them; `projector` light lines on a dark
 * ground, which shine onto the cloth.
 */
export const TRANSFERS = ['clean', 'pounce', 'stencil', 'projector'] as const;

export interface Transfer {
  readonly kind: (typeof TRANSFERS)[number];
  /** Left for right: for what is turned over before it lies on the cloth. */
  readonly mirrored?: boolean | undefined;
  /** mm from one hole to the next, at most, or from one bridge to the next, about; what is usual where it is left out. */
  readonly every?: number | undefined;
  /** Of a stencil: how wide its slots are, and its bridges at least, mm; what is usual where it is left out. */
  readonly slot?: number | undefined;
  readonly bridge?: number | undefined;
  /** Of a projector: its size comes from what a tape measured on the cloth, and not from a hand on the zoom. */
  readonly isMeasured?: boolean | undefined;
}

/** mm. Common practice, no source. */
const USUAL = {
  in: { holes: MM_PER_INCH / 8, bridges: 2 * MM_PER_INCH, slot: MM_PER_INCH / 16, bridge: MM_PER_INCH / 8 },
  metric: { holes: 3, bridges: 50, slot: 1.5, bridge: 3 },
} as const;

const usualIn = (units: Units) => USUAL[units === 'in' ? 'in' : 'metric'];

/** The picture as it goes onto cloth; as it is where nothing is asked. Throws a ProblemError where it cannot be made so. */
export const transferred = (
  drawing: StyledDrawing,
  transfer: Transfer | undefined,
  units: Units,
): StyledDrawing => {
  if (transfer === undefined) return drawing;
  const made =
    transfer.kind === 'projector'
      ? projected(drawing, viewBox(drawing), gridIn(units, transfer.isMeasured))
      : madeAs(quiltingAlone(drawing), transfer.kind, transfer, units);
  return transfer.mirrored ? mirrored(made) : made;
};

const madeAs = (
  alone: StyledDrawing,
  kind: Exclude<Transfer['kind'], 'projector'>,
  transfer: Transfer,
  units: Units,
): StyledDrawing => {
  switch (kind) {
    case 'clean':
      return alone;
    case 'pounce': {
      const every = holesOf(transfer, units);
      if (every >= LEAST_HOLES_APART) return pounced(alone, every);
      throw new ProblemError([
        {
          code: 'holes-too-near',
          message: 'the paper would tear between the holes',
          found: lengthIn(every, units),
          expected: `at least ${lengthIn(LEAST_HOLES_APART, units)}`,
        },
      ]);
    }
    case 'stencil':
      return stencilOf(alone, stencilMeasures(transfer, units), units);
    default:
      return kind satisfies never;
  }
};

const holesOf = ({ every }: Transfer, units: Units): number => every ?? usualIn(units).holes;

const stencilMeasures = ({ slot, bridge, every }: Transfer, units: Units) => {
  const usual = usualIn(units);
  return { slot: slot ?? usual.slot, bridge: bridge ?? usual.bridge, every: every ?? usual.bridges };
};

const stencilOf = (
  alone: StyledDrawing,
  measures: ReturnType<typeof stencilMeasures>,
  units: Units,
): StyledDrawing => {
  const least = leastBridgesApart(measures);
  if (measures.every < least)
    throw new ProblemError([
      {
        code: 'bridges-too-near',
        message: 'bridges so near one another leave no slots between them',
        found: lengthIn(measures.every, units),
        expected: `at least ${lengthIn(least, units)}, three times as much as a bridge and a slot are wide`,
      },
    ]);
  const made = stencilled(alone, measures);
  if (made.ok) return made.drawing;
  // Rounded down, so that what is said to do does.
  const step = units === 'in' ? MM_PER_INCH / 64 : 0.1;
  const widest = Math.floor((made.widest ?? 0) / step + 1e-6) * step;
  const slots = { code: 'slot-too-wide', found: lengthIn(measures.slot, units) };
  throw new ProblemError([
    made.widest === undefined
      ? {
          ...slots,
          message: 'a slot would go round what lies in it, and that would fall out',
          hint: 'take narrower slots',
        }
      : {
          ...slots,
          message: 'the slots are wider than the space between the lines allows',
          expected:
            widest > 0
              ? `at most ${lengthIn(widest, units)}, which leaves ${lengthIn(LEAST_LAND, units)} between slots`
              : 'lines that lie farther apart',
        },
  ]);
};

/** What a transfer leaves out, whatever else is asked for. A pen cannot follow fills through slots. */
export const leftOutBy = (transfer: Transfer | undefined): readonly LayerId[] =>
  transfer?.kind === 'stencil' ? ['fill'] : [];

const lengthIn = (mm: number, units: Units): string =>
  exactLength(mm, units === 'in' ? INCH_SIXTYFOURTH : MM_TENTH);

/** How large labels are laid for it, mm; undefined for what is usual. */
export const labelSizeFor = (transfer: Transfer | undefined): number | undefined =>
  transfer?.kind === 'projector' ? PROJECTED_WORDS : undefined;

/**
 * What the writer leaves out: a grid behind the lines, or cloth, is none of their layers, and what was left out is gone
 * before.
 */
export const leftByWriter = (
  without: readonly LayerId[],
  { transfer, inColours }: { readonly transfer: Transfer | undefined; readonly inColours: boolean },
): readonly LayerId[] => (inColours || transfer?.kind === 'projector' ? [] : without);

/** Of what is asked, a few words each: `what is stitched and nothing else`, `mirrored, left for right`. */
export const transferWords = (transfer: Transfer | undefined, units: Units): readonly string[] => {
  if (transfer === undefined) return [];
  const what = {
    clean: 'what is stitched and nothing else',
    pounce: `as holes ${lengthIn(holesOf(transfer, units), units)} apart`,
    stencil: stencilWords(stencilMeasures(transfer, units), units),
    projector: `for a projector, on a grid of ${lengthIn(gridIn(units).pitch, units)}`,
  };
  return [what[transfer.kind], ...(transfer.mirrored ? ['mirrored, left for right'] : [])];
};

/** Its measures are those that rulers and cutting mats have. */
const gridIn = (units: Units, isMeasured = false): Grid => {
  const [pitch, square] = units === 'in' ? [MM_PER_INCH, 4 * MM_PER_INCH] : [20, 100];
  return {
    pitch,
    square,
    words: [
      `The square is ${lengthIn(square, units)} each way, the grid ${lengthIn(pitch, units)}.`,
      ...(isMeasured
        ? ['Lay a tape on it, both ways, then measure', 'the whole grid.']
        : ['Zoom until a ruler agrees, then measure', 'the whole grid, both ways.']),
      'Focus on the middle of the square. Where',
      'cells are not square, point it straight',
      'at the cloth.',
    ],
  };
};

const stencilWords = (measures: ReturnType<typeof stencilMeasures>, units: Units): string =>
  `a stencil of the stitching and the channels, slots of ${lengthIn(measures.slot, units)} and bridges of ${lengthIn(measures.bridge, units)}`;

/** Whether a transfer is stitched through, so that its sheets hold nothing else. */
export const isStitchedThrough = (transfer: Transfer | undefined): boolean => transfer?.kind === 'clean';
