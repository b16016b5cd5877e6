/** The places of a part that is said to lie in the corners of another: the middles of the squares that one leaves free. */

import {
  type Checked,
  keyName,
  nearestOf,
  type Problem,
  placeOf,
  plural,
  quoted,
  type SourceDocument,
} from '../document/index.ts';
import type { Point } from '../geometry/index.ts';
import { freeCorners } from './ground.ts';
import { hasCorners } from './layout-kinds.ts';
import { MOST_PLACES } from './limits.ts';
import type { WrittenPlaces } from './place-schema.ts';
import type { Part, Plan } from './plan.ts';

/** A part that may be said to lie in the corners of another. */
export interface Unplaced extends Omit<Plan, 'part'> {
  readonly part: Omit<Part, 'places'> & { readonly places: WrittenPlaces };
}

type Wrong = Pick<Problem, 'message' | 'found' | 'expected' | 'hint'>;

/** All parts with their places in figures, or a line for each that has none. */
export const placed = (parts: readonly Unplaced[], document: SourceDocument): Checked<readonly Plan[]> => {
  const byName = new Map(parts.map((plan) => [plan.part.name, plan]));
  const known = new Map<string, readonly Point[]>();
  const problems: Problem[] = [];

  /** `waiting` are the parts whose places wait for this one's. */
  const placesOf = ({ part: { name, places } }: Unplaced, waiting: readonly string[]): readonly Point[] => {
    const found = known.get(name) ?? ('of' in places ? inCorners(name, places.of, waiting) : places);
    known.set(name, found);
    return found;
  };

  const inCorners = (name: string, of: string, waiting: readonly string[]): readonly Point[] => {
    const other = byName.get(of);
    const wrong = other ? noCorners(other, [...waiting, name]) : unknown(of, name);
    const found =
      other && !wrong ? placesOf(other, [...waiting, name]).flatMap((at) => cornersAt(other, at)) : [];
    const all = wrong ?? tooMany(found.length);
    if (!all) return found;
    const path = ['parts', name, 'at'];
    problems.push({ code: 'no-corners', place: placeOf(document, path), key: keyName(path), ...all });
    return [];
  };

  const unknown = (of: string, name: string): Wrong => {
    const near = nearestOf(
      of,
      [...byName.keys()].filter((other) => other !== name),
    );
    return {
      message: `no part is called ${quoted(of)}`,
      ...(near !== undefined && { hint: `did you mean corners of ${near}?` }),
    };
  };

  const value = parts.map((plan) => ({ ...plan, part: { ...plan.part, places: placesOf(plan, []) } }));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value };
};

const cornersAt = ({ layout, part }: Unplaced, at: Point): readonly Point[] =>
  hasCorners(layout) ? freeCorners(layout, at, part.turn) : [];

const MIDDLE: Point = { x: 0, y: 0 };

const noCorners = (of: Unplaced, waiting: readonly string[]): Wrong | undefined => {
  const name = quoted(of.part.name);
  if (waiting.includes(of.part.name)) return { message: `where ${name} lies depends on where this one does` };
  if (!hasCorners(of.layout)) return { message: `the part ${name} has no corners` };
  if (cornersAt(of, MIDDLE).length > 0) return undefined;
  return {
    message: `the part ${name} leaves no corner square free`,
    hint: 'say corners: half or corners: open in its layout',
  };
};

const tooMany = (count: number): Wrong | undefined =>
  count > MOST_PLACES
    ? { message: 'too many places', found: plural(count, 'corner'), expected: `at most ${MOST_PLACES}` }
    : undefined;
