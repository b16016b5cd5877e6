/** Mistakes that no key shows by itself: two keys that cannot both be meant. */

import {
  type KeyPath,
  keyName,
  type Problem,
  placeOf,
  quoted,
  type SourceDocument,
  series,
  valueAt,
} from '../document/index.ts';
import {
  exactLength,
  formatLength,
  INCH_SIXTEENTH,
  type LengthStyle,
  lengthsApart,
  MM_PER_INCH,
} from '../length/index.ts';
import { cornerOfItsOwn } from './corner-of-its-own.ts';
import { kindsInTurn } from './kinds.ts';
import { closesRound, hasCorners, hasEnds, liesRoundBlock } from './layout-kinds.ts';
import { LEAST_ROOM, LIMITS } from './limits.ts';
import { type Found, madeSo } from './made-so.ts';
import { measuredSides } from './measured-sides.ts';
import { type Border, cornersFrom, type Plan, SIDES } from './plan.ts';
import { rowsBeyond } from './rows.ts';

/** Where a key of a design stands in the file. */
type PathOf = (key: KeyPath) => KeyPath;

export const crossCheck = (plan: Plan, document: SourceDocument, pathOf: PathOf): readonly Problem[] => {
  const style: LengthStyle = plan.units === 'in' ? INCH_SIXTEENTH : { unit: plan.units, step: 0.1 };
  const say = (mm: number): string => formatLength(mm, style);
  const found = [
    ...templates(plan.swag.templates, ['template']),
    ...plan.rows.flatMap((row, i) => templates(row.swag.templates, ['rows', i, 'template'])),
    ...(plan.corner && plan.corner.templates !== plan.swag.templates
      ? templates(plan.corner.templates, ['corner', 'template'])
      : []),
    ...(plan.swag.alternate ?? []).flatMap((kind, i) =>
      kind.templates === plan.swag.templates
        ? []
        : templates(kind.templates, ['swag', 'alternate', i, 'template']),
    ),
    ...room(plan, style),
    ...inside(plan, style),
    ...ends(plan, style),
    ...opposite(plan, say),
    ...corners(plan),
    ...frame(plan, style),
    ...swag(plan),
    ...kindsInTurn(plan),
    ...cornerOfItsOwn(plan),
    ...rowsBeyond(plan, style),
  ];
  return found.map(({ path, ...problem }) => ({
    code: 'does-not-agree',
    ...problem,
    place: placeOf(document, pathOf(path)),
    key: keyName(pathOf(path)),
  }));
};

/** Keys that the plan could do without: they change nothing, which is no mistake, but not to go unsaid. */
export const idleKeys = (plan: Plan, document: SourceDocument, pathOf: PathOf): readonly Problem[] => {
  const path = pathOf(['channels', 'points']);
  const { outward, inward } = plan.channels;
  if (outward.length + inward.length > 0 || valueAt(document, path) === undefined) return [];
  return [
    {
      code: 'does-nothing',
      place: placeOf(document, path),
      key: keyName(path),
      message: 'this changes nothing, because the plan has no channels',
    },
  ];
};

/** The template of all parts, where each part has its own: nobody looks for it, so what it is goes unsaid otherwise. */
export const idleTemplate = (parts: readonly Plan[], document: SourceDocument): readonly Problem[] => {
  const path = ['template'];
  if (valueAt(document, path) === undefined) return [];
  if (parts.some(({ part }) => !part || valueAt(document, ['parts', part.name, ...path]) === undefined))
    return [];
  return [
    {
      code: 'does-nothing',
      place: placeOf(document, path),
      key: keyName(path),
      message: 'this changes nothing, because every part names a template of its own',
    },
  ];
};

const templates = (names: readonly string[], path: KeyPath): Found[] =>
  names.flatMap((name, i) =>
    names.indexOf(name) < i
      ? [
          {
            path: [...path, i],
            message: `${quoted(name)} is listed twice`,
            expected: 'each template once',
          },
        ]
      : [],
  );

/** What is said to be enough is enough, though halves and margins are added up in another order, mm. */
const NOISE = 1e-9;

const room = ({ layout }: Plan, style: LengthStyle): Found[] => {
  if (closesRound(layout)) return [];
  const { margin, width, kind } = layout;
  const taken = margin.inner + margin.outer;
  if (taken <= width - LEAST_ROOM + NOISE) return [];
  if (liesRoundBlock(layout)) {
    const block = Math.max(layout.inner.top, layout.inner.left);
    const needed = block + 2 * (margin.inner + LEAST_ROOM);
    const [found, least] = lengthsApart(block + 2 * width, needed, style);
    return [
      {
        path: ['layout', 'frame', 'within'],
        message: 'the limit leaves no room for swags round the block',
        found,
        expected: `at least ${least}`,
      },
    ];
  }
  const say = (mm: number): string => formatLength(mm, style);
  const [together, most] = lengthsApart(taken, Math.max(0, width - LEAST_ROOM), style);
  return [
    {
      path: ['layout', kind, 'margin'],
      message: `the margins leave no room for swags in a width of ${say(width)}`,
      found: `${say(margin.inner)} and ${say(margin.outer)}, ${together} together`,
      expected: `at most ${most} together`,
    },
  ];
};

/**
 * Opposite sides of a quilt differ by a little. Where one is this share shorter, a figure was written wrong, and
 * the corners could not be square.
 */
const MOST_DIFFERENCE = 0.1;
/** By more than this (mm) they are worth a second look; common practice, no source. */
const SOME_DIFFERENCE = MM_PER_INCH;

/** Opposite sides of which one is so much (mm) shorter, as they were measured. */
const pairsApart = (layout: Border, least: number) => {
  const sides = measuredSides(layout);
  const pairs = [
    ['top', 'bottom'],
    ['left', 'right'],
  ] as const;
  return pairs.flatMap(([a, b]) => {
    const [short, long] = sides[a] < sides[b] ? [a, b] : [b, a];
    const by = sides[long] - sides[short];
    const path = ['layout', 'border', layout.measured, short];
    return by > least + NOISE ? [{ short, long, by, shorter: sides[short], longer: sides[long], path }] : [];
  });
};

const isMistaken = ({ by, longer }: { readonly by: number; readonly longer: number }): boolean =>
  by > MOST_DIFFERENCE * longer;

const opposite = ({ layout }: Plan, say: (mm: number) => string): Found[] => {
  if (!hasCorners(layout)) return [];
  return pairsApart(layout, 0)
    .filter(isMistaken)
    .map(({ path, by, long, shorter, longer }) => ({
      path,
      message: `opposite sides of a quilt are nearly equal, and this one is ${say(by)} shorter than the ${long} side`,
      found: say(shorter),
      expected: `about ${say(longer)}`,
      hint: 'measure both again',
    }));
};

/** Opposite sides that differ by more than an inch: there are such quilts, and more slips of the tape. */
export const sidesApart = (
  { layout, marks: { style } }: Plan,
  document: SourceDocument,
  pathOf: PathOf,
): readonly Problem[] => {
  if (!hasCorners(layout)) return [];
  const say = (mm: number): string => exactLength(mm, style);
  return pairsApart(layout, SOME_DIFFERENCE).map(({ path, short, long, by, shorter, longer }) => ({
    code: 'sides-differ',
    place: placeOf(document, pathOf(path)),
    key: keyName(pathOf(path)),
    message: `the ${short} side is ${say(by)} shorter than the ${long} side, ${say(shorter)} and ${say(longer)}; opposite sides of a quilt are nearly equal`,
    hint: 'measure both again before you cut or mark',
  }));
};

/** A border that is measured outside must leave a quilt in its middle. */
const inside = ({ layout }: Plan, style: LengthStyle): Found[] => {
  if (!hasCorners(layout) || layout.measured === 'inner') return [];
  const sides = measuredSides(layout);
  const least = 2 * layout.width + LIMITS.side.least;
  const short = SIDES.filter((side) => sides[side] < least - NOISE);
  const [first] = short;
  if (first === undefined) return [];
  const told = short.map((side) => lengthsApart(sides[side], least, style));
  const areAlike = short.length === SIDES.length && new Set(told.map(([is]) => is)).size === 1;
  // It is one mistake, however many sides it makes too short.
  return [
    {
      path: ['layout', 'border', 'outer', ...(short.length === 1 ? [first] : [])],
      message: `the finished outside leaves no quilt inside a border that is ${formatLength(layout.width, style)} wide all round`,
      found:
        short.length === 1 || areAlike
          ? told[0]![0]
          : series(short.map((side, i) => `${side} ${told[i]![0]}`)),
      expected: `at least ${told[0]![1]}`,
      hint: 'the sides of the seam that the border is sewn to stand under inner',
    },
  ];
};

/** What is kept clear at a strip's ends must leave some of it. */
const ends = ({ layout }: Plan, style: LengthStyle): Found[] => {
  if (!hasEnds(layout) || 2 * layout.ends <= layout.length - LEAST_ROOM + NOISE) return [];
  const [found, most] = lengthsApart(layout.ends, Math.max(0, layout.length - LEAST_ROOM) / 2, style);
  return [
    {
      path: ['layout', 'strip', 'ends'],
      message: `both ends together leave no room for swags in a length of ${formatLength(layout.length, style)}`,
      found,
      expected: `at most ${most}`,
    },
  ];
};

const corners = ({ layout }: Plan): Found[] => {
  if (!hasCorners(layout) || layout.corners !== 'across' || layout.from === 'outer') return [];
  return [
    {
      path: ['layout', layout.round === 'block' ? 'frame' : 'border', 'corners'],
      message:
        'a swag stands across a corner only where it leaves the outer seam: from the inner one there is no cloth between its ends',
      found: 'across, from the inner seam',
      expected: cornersFrom(layout.from).join(', '),
      hint: 'write from: outer, or corners: turn',
    },
  ];
};

const frame = ({ layout }: Plan, style: LengthStyle): Found[] => {
  if (!closesRound(layout) || layout.within === undefined) return [];
  const least = layout.around + 2 * layout.clearance;
  if (layout.within > least) return [];
  const [found, most] = lengthsApart(layout.within, least, style);
  return [
    {
      path: ['layout', 'frame', 'within'],
      message: 'the frame must lie round its motif',
      found,
      expected: `more than ${most}`,
    },
  ];
};

const swag = ({ swag: made, layout }: Plan): Found[] => {
  const found = madeSo(made, ['swag']);
  const { repeats, use } = made;
  if (use !== undefined && closesRound(layout) && layout.within === undefined)
    found.push({
      path: ['swag', 'use'],
      message: 'without a limit a round frame takes the room that it needs',
      expected: 'layout.frame.within, the greatest width across',
    });
  if (repeats && closesRound(layout))
    found.push({
      path: ['swag', 'repeats'],
      message: 'a round frame has no sides to repeat along',
      expected: 'layout.frame.count',
    });
  if (repeats && repeats.length > 1 && hasEnds(layout))
    found.push({
      path: ['swag', 'repeats'],
      message: 'a strip has one side',
      found: `repeats for ${repeats.length} sides`,
      expected: 'one number',
    });
  return found;
};
