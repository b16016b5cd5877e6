/** What a person sets right in an edge, as she says it: places by their names, by lengths along it, or by points. */

import { nearestOf, type Problem, quoted, series } from '../document/index.ts';
import { distance, nearnessOf, type Path, type Point, pathLength, pointAlong } from '../geometry/index.ts';
import { formatLength, MM_TENTH } from '../length/index.ts';
import { alongNearest, type Mend } from '../trace/index.ts';

/** `said` is how she wrote it. */
export type SaidPlace = { readonly said: string } & (
  | { readonly kind: 'corner'; readonly number: number }
  /** In the outline's frame, mm. */
  | { readonly kind: 'point'; readonly point: Point }
  /** From the heel, along the edge as it was before anything was set right, mm. */
  | { readonly kind: 'along'; readonly length: number }
  /** `heel`, `crown`, or a break's name. */
  | { readonly kind: 'name' }
);

export interface NamedBreak {
  readonly at: Point;
  readonly name: string;
}

export interface SetRight {
  /** A name that there is moves; at a corner it names the corner. */
  readonly breaks: readonly { readonly name: string; readonly at: SaidPlace }[];
  readonly renames: readonly { readonly from: string; readonly to: string }[];
  readonly takenOut: readonly string[];
  /** Made straight, or taken through points in the outline's frame. */
  readonly stretches: readonly {
    readonly from: SaidPlace;
    readonly to: SaidPlace;
    readonly through: readonly Point[];
  }[];
}

/** What places are said on, in one frame. */
export interface EdgeAsItIs {
  /** The whole of what was traced, or the edge itself. */
  readonly outline: Path;
  /** From heel to crown end; undefined where none was found. */
  readonly edge: Path | undefined;
  /** By their numbers, from 1; none where nobody is shown numbers. */
  readonly corners: readonly Point[];
  readonly breaks: readonly NamedBreak[];
}

export type Placed =
  | { readonly ok: true; readonly breaks: readonly NamedBreak[]; readonly mends: readonly Mend[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A place so near to a corner (mm) is meant to be the corner. */
const AT_CORNER = 2;
/** What is farther from the edge (mm) is a break of another part of the outline. */
const FROM_EDGE = 6;
/** What is farther from the outline (mm) was never meant to be on it. */
const FARTHEST = 10;

/** Every place as a point, and the breaks as they are then. */
export const placeAll = (wants: SetRight, asItIs: EdgeAsItIs): Placed => {
  const problems: Problem[] = [];
  const names = new Map(asItIs.breaks.map(({ name, at }) => [name, at]));
  const known = (name: string, option: string): boolean => {
    if (names.has(name)) return true;
    problems.push(noSuchBreak(name, option, [...names.keys()]));
    return false;
  };
  const before = new Map(names);
  const point = (place: SaidPlace, option: '--break' | '--stretch'): Point => {
    // A stretch may be said by the names that there were, and by those that there are then.
    const found = pointOf(place, option, asItIs, new Map([...before, ...names]));
    if ('x' in found) return found;
    problems.push(found);
    return { x: 0, y: 0 };
  };
  for (const name of wants.takenOut) if (known(name, '--take-out')) names.delete(name);
  for (const { from, to } of wants.renames) {
    if (!known(from, '--rename')) continue;
    const at = names.get(from)!;
    if (from !== to && names.has(to)) problems.push(nameTaken(to));
    names.delete(from);
    names.set(to, at);
  }
  for (const { name, at } of wants.breaks) {
    const place = point(at, '--break');
    names.set(name, place);
  }
  const mends = wants.stretches.map(({ from, to, through }) => ({
    from: point(from, '--stretch'),
    to: point(to, '--stretch'),
    through,
  }));
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, breaks: [...names].map(([name, at]) => ({ name, at })), mends };
};

const pointOf = (
  place: SaidPlace,
  option: '--break' | '--stretch',
  { outline, edge, corners }: EdgeAsItIs,
  names: ReadonlyMap<string, Point>,
): Point | Problem => {
  switch (place.kind) {
    case 'corner': {
      const corner = corners[place.number - 1];
      return corner ?? noSuchCorner(place, option, corners.length);
    }
    case 'point': {
      const line = option === '--break' && edge ? edge : outline;
      const most = option === '--break' ? FROM_EDGE : FARTHEST;
      const away = nearnessOf(line.pieces).distance(place.point);
      return away <= most ? place.point : offTheLine(away, most, option);
    }
    case 'along': {
      if (!edge) return noEdge(place, option);
      const at = place.length <= pathLength(edge) + ROUNDED ? pointAlong(edge, place.length) : undefined;
      return at ?? beyond(place, option, pathLength(edge));
    }
    case 'name': {
      const end = { heel: edge?.pieces[0]?.from, crown: edge?.pieces.at(-1)?.to }[place.said];
      return end ?? names.get(place.said) ?? noSuchBreak(place.said, option, [...names.keys()]);
    }
    default:
      return place satisfies never;
  }
};

/** What a length that was read off the program's own words may be too long by, mm. */
const ROUNDED = 0.05;

/** Breaks as lengths along an edge, which lies in their frame; those of other parts of the outline are left out. */
export const breaksAlong = (
  edge: Path,
  corners: readonly { readonly point: Point }[],
  breaks: readonly NamedBreak[],
): readonly { readonly at: number; readonly name: string }[] => {
  const near = nearnessOf(edge.pieces);
  return breaks
    .filter((b) => near.distance(b.at) <= FROM_EDGE)
    .map(({ at, name }) => {
      const corner = corners.find((c) => distance(c.point, at) <= AT_CORNER);
      return { at: alongNearest(edge, corner?.point ?? at), name };
    })
    .sort((a, b) => a.at - b.at);
};

/** Of breaks that were asked for, those that the file does not hold: they lie on others, or on an end. */
export const lostBreaks = (
  asked: SetRight['breaks'],
  made: readonly { readonly name: string | undefined }[],
): readonly Problem[] =>
  asked
    .filter(({ name }) => made.every((b) => b.name !== name))
    .map(({ at }) => ({
      code: 'no-room-for-break',
      key: '--break',
      message: 'there is no room for a break here',
      found: quoted(at.said),
      expected: 'a place of the edge half a millimetre or more from its ends and from other breaks',
    }));

/** What is said where an edge was sound before its stretches were set right; `problem` is what is wrong with it now. */
export const spoiltByStretch = ({ code, message, found }: Problem): Problem => ({
  code: 'spoilt-by-stretch',
  key: '--stretch',
  message: 'with this stretch set right there is no edge that a template can have',
  found: code === 'no-working-edge' && found !== undefined ? found : message,
  hint: 'look at the places of the stretch',
});

const noSuchBreak = (name: string, key: string, names: readonly string[]): Problem => {
  const near = nearestOf(name, names);
  return {
    code: 'no-such-break',
    key,
    message: 'no break is called so',
    found: quoted(name),
    expected:
      names.length > 0 ? `one of ${series(names.map(quoted), 'or')}` : 'a break; there is none with a name',
    ...(near === undefined ? {} : { hint: `did you mean ${quoted(near)}?` }),
  };
};

const nameTaken = (name: string): Problem => ({
  code: 'name-taken',
  key: '--rename',
  message: 'another break is called so',
  found: quoted(name),
  expected: 'a name of its own',
});

const noSuchCorner = ({ said }: SaidPlace, key: string, many: number): Problem => ({
  code: 'no-such-corner',
  key,
  message: 'the outline has no corner of this number',
  found: said,
  expected: many > 0 ? `1 to ${many}, or a place as x,y` : 'a place as x,y',
});

const offTheLine = (away: number, most: number, key: string): Problem => ({
  code: 'off-the-outline',
  key,
  message: `this place is not on the ${key === '--break' ? 'edge' : 'outline'}`,
  found: `a place ${Math.round(away)} mm away from it`,
  expected: `one on it, or within ${most} mm`,
});

const noEdge = ({ said }: SaidPlace, key: string): Problem => ({
  code: 'no-edge-yet',
  key,
  message: 'a length is counted from the heel, and no working edge was found',
  found: quoted(said),
  expected: 'a place as x,y; or say the ends with --heel and --crown',
});

const beyond = ({ said }: SaidPlace, key: string, length: number): Problem => ({
  code: 'beyond-the-edge',
  key,
  message: 'this place lies beyond the crown end',
  found: quoted(said),
  expected: `at most ${formatLength(length, MM_TENTH)} from the heel`,
});
