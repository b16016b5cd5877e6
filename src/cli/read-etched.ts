/** The lines that are etched in the acrylic, by options: across it near the heel, and along its edge. */

import { quoted } from '../document/index.ts';
import type { Point } from '../geometry/index.ts';
import type { Said } from '../jobs/traced-template.ts';
import type { Units } from '../length/index.ts';
import { readLengthOption, readPair } from './option-values.ts';
import { wrongValue } from './wrong-use.ts';

export interface EtchedOptions {
  readonly across?: readonly string[];
  readonly along?: readonly string[];
}

/** Each by its distance, or by a place that it runs through. Throws wrong use. */
export const readEtched = (
  { across, along }: EtchedOptions,
  units: Units,
  toMm: (p: Point) => Point,
): Pick<Said, 'across' | 'along'> => {
  const read = (option: string, text: string): number | Point => {
    const point = readPair(text);
    return point ? toMm(point) : readLengthOption(option, text, units, 'positive');
  };
  return {
    across: across?.map((text) => {
      const said = /^\s*([^=]*[^=\s])\s*=(.*)$/.exec(text);
      if (!said)
        throw wrongValue('--across', 'it does not say its name', {
          found: quoted(text),
          expected: 'a name and its distance from the heel, such as "A=1/4 in"',
        });
      return { name: said[1]!, at: read('--across', said[2]!.trim()) };
    }),
    along: along?.map((text) => read('--along', text.trim())),
  };
};
