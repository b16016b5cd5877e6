/** How much is stitched, and about how much thread it takes. */

import { plural, series } from '../../document/index.ts';
import { formatLength, type LengthStyle, MM_PER_INCH, type Units } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import { LOCKSTITCH_RATIO, modelRatio, type StitchedLength, threadFor, twoDigits } from '../../swag/index.ts';
import type { CardBlock } from './block.ts';

const MM_PER_YARD = 36 * MM_PER_INCH;
const MM_PER_METRE = 1000;

/** The thickness of quilt for which the card says how much more thread the model asks for, mm. */
const THICK_QUILT = MM_PER_INCH / 8;

export const threadBlocks = (length: StitchedLength, plan: Plan): readonly CardBlock[] => {
  const { units, stitch, marks } = plan;
  const total = length.swags + length.channels + length.fills;
  const thread = threadFor(total);
  const long = longLength(units);
  const each = lengthsByName(length.repeats, marks.style);
  const kinds = [
    { name: 'swags', all: length.swags },
    { name: 'channels', all: length.channels },
    { name: 'fills', all: length.fills },
  ].filter((k) => k.all > 0);
  const shares = addingUp(
    kinds.map((k) => k.all),
    units,
  );
  const parts =
    kinds.length > 1 ? ` (${kinds.map((k, i) => `${k.name} ${long(shares[i]!)}`).join(', ')})` : '';
  const stitches = Math.round(total / stitch.length);
  return [
    {
      kind: 'text',
      text:
        `Stitched length: ${long(total)} in all${parts}. One swag: ${each}. ` +
        `About ${grouped(twoDigits(stitches))} stitches of ${stitchText(stitch.length, units)}.`,
    },
    {
      kind: 'text',
      text:
        `Thread, an estimate: ${threadText(thread.needle, units)} on top (${reelsWords(thread.needle, SPOOL, units)}) and ` +
        `${threadText(thread.bobbin, units)} in the bobbin (${reelsWords(thread.bobbin, BOBBIN, units)}). ` +
        `A quilt ${formatLength(THICK_QUILT, marks.style)} thick takes ${(modelRatio(THICK_QUILT, stitch.length) / LOCKSTITCH_RATIO).toFixed(1)} times as much: unpick a measured length to be sure.`,
    },
  ];
};

/** What is wound on a spool and on a small bobbin: round figures from memory, no source. */
const SPOOL = { name: 'spool', yd: 500, m: 450 } as const;
const BOBBIN = { name: 'bobbin', yd: 60, m: 55 } as const;

/** `6 bobbins of 60 yd` */
const reelsWords = (mm: number, reel: typeof SPOOL | typeof BOBBIN, units: Units): string => {
  const unit = units === 'in' ? 'yd' : 'm';
  return `${plural(Math.ceil(mm / longUnit(units) / reel[unit]), reel.name)} of ${reel[unit]} ${unit}`;
};

/** `14 7/8 in` where all are alike, else `top and bottom 14 7/8 in, left 15 in`. */
const lengthsByName = (repeats: StitchedLength['repeats'], style: LengthStyle): string => {
  const names = new Map<string, string[]>();
  for (const { name, length } of repeats) {
    const text = formatLength(length, style);
    names.set(text, [...(names.get(text) ?? []), name]);
  }
  if (names.size === 1) return [...names.keys()].join('');
  return [...names].map(([text, all]) => `${together(all)} ${text}`).join(', ');
};

/** `kind 1 top`, `kind 1 left` and `corner` are `kind 1 (top and left) and corner`. */
const together = (names: readonly string[]): string => {
  const groups = new Map<string, string[]>();
  for (const name of names) {
    const [, whole = '', side = name] = name.match(/^((?:row|kind) .*\d) (.+)$/) ?? [];
    groups.set(whole, [...(groups.get(whole) ?? []), side]);
  }
  return series(
    [...groups].flatMap(([whole, sides]) => {
      if (whole === '') return sides;
      return sides.length === 1 ? [`${whole} ${sides.join('')}`] : [`${whole} (${series(sides)})`];
    }),
  );
};

const longUnit = (units: Units): number => (units === 'in' ? MM_PER_YARD : MM_PER_METRE);

/** Exact lengths of stitching: `18.3 yd`, `16.7 m`. */
export const longLength =
  (units: Units) =>
  (mm: number): string =>
    `${(mm / longUnit(units)).toFixed(1)} ${units === 'in' ? 'yd' : 'm'}`;

/**
 * Lengths (mm) moved to tenths that add up to the tenths of their sum: all are rounded down, and those that lost most
 * get a tenth back until it does (the method of largest remainders).
 */
export const addingUp = (lengths: readonly number[], units: Units): readonly number[] => {
  const tenth = longUnit(units) / 10;
  const sum = lengths.reduce((a, b) => a + b, 0);
  // What is printed of the sum, so that ties are settled as they are there.
  const all = Math.round(10 * Number((sum / longUnit(units)).toFixed(1)));
  const whole = lengths.map((mm) => Math.floor(mm / tenth));
  const missing = all - whole.reduce((a, b) => a + b, 0);
  const byLoss = lengths
    .map((mm, i) => ({ i, lost: mm / tenth - whole[i]! }))
    .sort((a, b) => b.lost - a.lost);
  const more = new Set(byLoss.slice(0, Math.max(0, missing)).map(({ i }) => i));
  return whole.map((tenths, i) => (tenths + (more.has(i) ? 1 : 0)) * tenth);
};

/** About, in two digits: `23 yd`, `21 m`. */
export const threadText = (mm: number, units: Units): string =>
  units === 'in' ? `${twoDigits(mm / MM_PER_YARD)} yd` : `${twoDigits(mm / MM_PER_METRE)} m`;

/** People say how many stitches go to the inch, or how many millimetres a stitch is long. */
const stitchText = (mm: number, units: Units): string =>
  units === 'in' ? `1/${twoDigits(MM_PER_INCH / mm)} in` : `${twoDigits(mm)} mm`;

/** `12,000`: five figures in a row are not read at arm's length. */
const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');
