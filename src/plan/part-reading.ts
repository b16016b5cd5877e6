/** One design of a plan's file, and where in the file it stands. */

import { type KeyPath, type Place, placeOf, type SourceDocument, valueAt } from '../document/index.ts';
import type { Plan } from './plan.ts';

export interface PartReading {
  readonly plan: Plan;
  /** The path in the file of a key such as `['layout', 'border', 'width']` of this design. */
  readonly pathOf: (key: KeyPath) => KeyPath;
  /** Where that key is written, or the nearest thing round it. */
  readonly placeAt: (key: KeyPath) => Place;
}

/** Keys of a design are looked for in its part, and where the part does not have them, in what all parts share. */
export const partIn = (document: SourceDocument, plan: Plan): PartReading => {
  const own = plan.part ? ['parts', plan.part.name] : [];
  const pathOf = (key: KeyPath): KeyPath => {
    const [group] = key;
    if (group === undefined || valueAt(document, [...own, group]) !== undefined) return [...own, ...key];
    return valueAt(document, [group]) === undefined ? [...own, ...key] : key;
  };
  return { plan, pathOf, placeAt: (key) => placeOf(document, pathOf(key)) };
};
