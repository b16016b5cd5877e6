/** Lines etched across the acrylic: a file says how far from the heel, all else asks where along the long axis. */

import { type Problem, quoted } from '../document/index.ts';
import { type Path, pathBox, pathEnd, pathStart } from '../geometry/index.ts';
import { INCH_SIXTEENTH, type LengthStyle, lengthsApart, MM_TENTH, type Units } from '../length/index.ts';
import type { AlignmentLine } from './template.ts';

/** The x of a line that is etched across, so far (mm) from the heel towards the crown end. */
export const acrossAt = (edge: Path, distance: number): number => heelX(edge) + wayOf(edge) * distance;

/** How far (mm) from the heel a line across at this x is; below zero where it lies before the heel. */
export const fromHeel = (edge: Path, x: number): number => wayOf(edge) * (x - heelX(edge));

/** How far from the heel the edge reaches (mm): a line across that lies farther off meets none of it. */
const reachOf = (edge: Path): number => {
  const { minX, maxX } = pathBox(edge);
  return fromHeel(edge, wayOf(edge) > 0 ? maxX : minX);
};

/** In what lengths of a file's units are told. */
export const styleIn = (units: Units): LengthStyle => (units === 'in' ? INCH_SIXTEENTH : MM_TENTH);

/** Figures in files are rounded, mm. */
const ROUNDED = 0.05;

const isFarther = (edge: Path, distance: number): boolean => distance > reachOf(edge) + ROUNDED;

/** Whether a line across lies beyond the edge. The acrylic may be longer than that: a file does not say. */
export const isBeyond = (edge: Path, { at }: AlignmentLine): boolean => isFarther(edge, fromHeel(edge, at));

/** What is wrong with the first line across, told by its distance from the heel (mm), that lies beyond the edge. */
export const lineBeyond = (
  edge: Path,
  lines: readonly { readonly name: string; readonly at: number }[],
  units: Units,
): Problem | undefined => {
  const line = lines.find(({ at }) => isFarther(edge, at));
  if (!line) return undefined;
  const [found, most] = lengthsApart(line.at, reachOf(edge), styleIn(units));
  return {
    code: 'beyond-the-edge',
    key: 'alignment',
    message: `line ${quoted(line.name)} lies beyond the end of the edge`,
    found,
    expected: `at most ${most} from the heel`,
  };
};

const heelX = (edge: Path): number => pathStart(edge)?.x ?? 0;

/** An edge may run either way, as points read off a mat do. */
const wayOf = (edge: Path): 1 | -1 => ((pathEnd(edge)?.x ?? 0) < heelX(edge) ? -1 : 1);
