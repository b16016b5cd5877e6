/** The foot that commands about a template alone take from their `--clearance`, within the limits that plans have. */

import { quoted } from '../document/index.ts';
import { USUAL_CLEARANCE } from '../jobs/template-facts.ts';
import { formatLength, INCH_SIXTEENTH, MM_TENTH, type Units } from '../length/index.ts';
import { LIMITS } from '../plan/index.ts';
import { readLengthOption } from './option-values.ts';
import { wrongValue } from './wrong-use.ts';

/** A limit of 1/16 in lets 1.5875 mm pass (mm). */
const NOISE = 1e-9;

/** mm; a bare number is in `units`. */
export const readClearance = (text: string | undefined, units: Units): number => {
  if (text === undefined) return USUAL_CLEARANCE;
  const clearance = readLengthOption('--clearance', text, units, 'positive');
  const { least, most } = LIMITS.clearance;
  if (clearance >= least - NOISE && clearance <= most + NOISE) return clearance;
  const say = (mm: number): string => formatLength(mm, units === 'in' ? INCH_SIXTEENTH : MM_TENTH);
  throw wrongValue('--clearance', 'there is no such foot', {
    found: quoted(text),
    expected: `${say(least)} to ${say(most)}, needle to the outside of the foot`,
  });
};
