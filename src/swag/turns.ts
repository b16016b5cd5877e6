/**
 * Counts and the corner for borders with a swag over each corner.
 *
 * The two halves of a corner swag belong to two sides and must meet on the mitre, so all four corners share
 * one pose, with half span h and depth d, h² + d² = C². Its join mirror lies a = h ∓ d + g/2 from the corner
 * (− from the inner seam, + from the outer), and each side has L = n·(2hᵢ + g) + 2a with its own hᵢ and dᵢ.
 * A swag that goes across the corner on its own chord begins a = √2·h + g/2 from it. In both, a − g/2 is a sum of
 * multiples of h and d (corner.ts). One unknown is left, the corner's h; it is chosen so that all depths, the
 * corner's too, differ least.
 *
 * Where the corner's swag has a chord of its own, C is that one in what is said of the corner: h_c² + d_c² = C_c².
 *
 * Method. Poses are told by their rise (windows.ts). The half spans that the sides may have limit the corner's
 * offset a, and with a = p·C·cos(rise − q) + g/2, the multiples of h and d as one cosine, that limits the corner's
 * rise, in closed form: most counts end here. What is left is sampled, and the best samples are refined by
 * golden-section search.
 */

import { widestAsked } from './asked-rises.ts';
import { besideNeighbour, gapBefore, linesBeside } from './beside.ts';
import { checkCorner, type Lay, layOf, leansOver, overMitre, overNeighbour, toCornerOf } from './corner.ts';
import {
  allows,
  type Counts,
  countsBeside,
  countsBetween,
  fixedCount,
  lopsidedCounts,
  product,
} from './counts.ts';
import type { CorneredField } from './field.ts';
import { ALIKE, type Fit, type SideFit } from './fit.ts';
import { leastIn } from './least.ts';
import { FIT_NOISE, fits, misses, type Result } from './misfit.ts';
import { crownPose } from './pose.ts';
import { highestRise, type Rising, risingOnSides, risingOverCorners } from './rising.ts';
import type { Tried } from './runs.ts';
import { spreadCost } from './score.ts';
import { gapAsked, NEIGHBOUR_ROOM, type SeatRules, seat, straightSeat } from './seat.ts';
import type { Way } from './setting.ts';
import type { Shape } from './shape.ts';
import { cheaper, type Kept, settledCost } from './ties.ts';
import { turnsByTilt } from './turns-tilted.ts';
import { countsAsked, countsPossible, missedByCounts, missedByRises } from './turns-wished.ts';
import { clip, isWithin, riseBelow, type Window } from './windows.ts';
import { wishedScore } from './wished.ts';
import { type Measuring, missCost, WISH_WEIGHT } from './wishes.ts';

/**
 * For one way and each count of the longest side, the counts of the others that cost least; for given counts the
 * corner that makes the depths most alike.
 */
export const fitTurns = (
  way: Way,
  field: CorneredField,
  rules: SeatRules,
  counts: readonly Counts[],
  outward: number,
): Tried => {
  if (way.tilt !== undefined) return turnsByTilt(way, way.tilt, field, rules, counts, outward);
  const sides = risingOnSides(way, field, rules, outward);
  return turnsByCrown(
    sides,
    risingOverCorners(way, field, rules, outward, sides),
    field,
    rules,
    counts,
    outward,
  );
};

/** The valid rises of sides and corners. */
interface TurnWindows {
  readonly sides: readonly Window[];
  readonly corners: readonly Window[];
}

/**
 * The same with a way for the sides and one for the corners. `than` is what a fit with so many swags on the longest side
 * is to cost less than; undefined where there is none.
 */
export const turnsByCrown = (
  onSides: Rising,
  overCorners: Rising,
  field: CorneredField,
  rules: SeatRules,
  counts: readonly Counts[],
  outward: number,
  than: (longest: number) => number | undefined = () => Number.POSITIVE_INFINITY,
): Tried => {
  const { way } = onSides;
  const { shape } = way;
  const over = overCorners.way;
  const { wishes } = rules;
  const lay = layOf(field);
  const windows: TurnWindows = { sides: onSides.windows, corners: overCorners.windows };
  let tried = 0;
  if (windows.sides.length === 0 || windows.corners.length === 0) return { fits: [], tried };
  const lines = linesBeside(field);
  /** With a gap, the windows of what keeps before all lines beside it, and what else is kept of the gap. */
  const keepBefore: Ground['keepBefore'] = (leaves) => {
    const onSide = highestRise(way, onSides.limits, lines, leaves);
    const onCorner = over === way ? onSide : highestRise(over, overCorners.limits, lines, leaves);
    return { sides: clip(windows.sides, 0, onSide), corners: clip(windows.corners, 0, onCorner) };
  };
  const fixed = rules.gap === 'auto' ? 0 : rules.gap;
  const asked = wishes && { wishes, field, outward };
  const widestSpan = widestAsked(shape, windows.sides, wishes);
  // A gap as wide as a swag is none.
  const widestGap = widestSpan && rules.widestGap && Math.min(rules.widestGap, widestSpan);
  const keepsApart = false;
  const anyBulge: Ground = {
    way,
    over,
    field,
    lay,
    lines,
    gap: fixed,
    windows,
    keepBefore,
    keepsApart,
    asked,
    widestSpan,
    widestGap,
  };
  const keeping: TurnWindows = {
    sides: clip(windows.sides, 0, onSides.highest),
    corners: clip(windows.corners, 0, overCorners.highest),
  };
  const noBulge: Ground = { ...anyBulge, windows: keeping };
  // Where no pose bulges past its start there is nothing that a gap could make room for.
  const mayBulge = ({ limits, windows: rises }: Rising): boolean => {
    const upright = Math.min(...lines.map((line) => riseBelow(limits, line)));
    return rises.some((w) => w.to > upright);
  };
  const mayMakeRoom = rules.gap === 'auto' && [onSides, overCorners].some(mayBulge);
  // No pose that is asked for has less of a bulge, and so no less of a gap.
  const gapAt = (rise: number, made: Way): number =>
    mayMakeRoom ? gapAtRise(rise, made.shape, lines) : fixed;
  const leastGap = gapAt(windows.sides[0]!.from, way);
  const widestBulge = Math.max(
    ...[onSides, overCorners].map((r) => gapAt(Math.max(...r.windows.map((w) => w.to)), r.way)),
  );
  const roomy: Ground = { ...anyBulge, gap: leastGap };
  const found: Fit[] = [];
  const laidAt = (corner: Corner, gap: number): Kept | undefined => {
    const laid = layTurn({ way, over, field }, { ...rules, gap, widestSpan, widestGap }, corner);
    const score = laid.ok ? wishedScore(laid.value, field, outward, wishes) : undefined;
    return laid.ok && score ? { fit: laid.value, cost: score.cost } : undefined;
  };
  // Only from the outer seam may what is most alike lean over the same cloth, or run beside its neighbour's so closely
  // that both are one thick line; others may still keep apart.
  const laidApart = (repeats: readonly number[]): Kept | undefined => {
    if (field.from === 'inner') return undefined;
    const corner = bestOf(repeats, { ...noBulge, keepsApart: true });
    return corner && laidAt(corner, fixed);
  };
  const deepest = Math.max(shape.chord, over.shape.chord);
  const groups = promisingCounts(anyBulge, counts, Math.max(widestBulge, widestGap ?? 0), than);
  for (const { most, vectors } of groups) {
    tried += vectors.length;
    let best: Kept | undefined;
    let roomiest: Kept | undefined;
    // Depths that differ by `spread` cost so much in any case: no depth is larger than the chord.
    const mayBeat = ({ spread, missed }: Corner, known: Kept | undefined): boolean =>
      settledCost(spreadCost(deepest - spread, deepest) + missCost([missed])) <=
      Math.min(known?.cost ?? most, most);
    for (const { repeats, missed } of inOrderOfMisses(vectors, fixed, asked)) {
      if (best && missCost([missed]) > best.cost) break;
      const plain = bestOf(repeats, noBulge);
      if (plain && mayBeat(plain, best)) best = cheaper(best, laidAt(plain, fixed) ?? laidApart(repeats));
      const first = mayMakeRoom ? bestOf(repeats, roomy) : undefined;
      // A gap is only worth it where it beats what fits without.
      if (!first || gapWanted(first, roomy) <= 0 || (plain && first.blame >= plain.blame)) continue;
      if (!mayBeat(first, roomiest)) continue;
      const made = withRoom(first, roomy);
      if (made) roomiest = cheaper(roomiest, laidAt(made.corner, made.gap));
    }
    if (best) found.push(best.fit);
    if (roomiest) found.push(roomiest.fit);
  }
  return { fits: found, tried };
};

/** Counts that are nearest to what is asked of them first. */
const inOrderOfMisses = (
  vectors: readonly (readonly number[])[],
  gap: number,
  asked: Measuring | undefined,
): readonly { readonly repeats: readonly number[]; readonly missed: number }[] => {
  if (!asked) return vectors.map((repeats) => ({ repeats, missed: 0 }));
  return vectors
    .map((repeats) => ({ repeats, missed: missedByCounts(repeats, gap, asked) }))
    .sort((a, b) => a.missed - b.missed);
};

/** Where a corner is looked for: a way on a field, with a gap (mm) between neighbours. */
interface Ground extends Pick<SeatRules, 'widestSpan' | 'widestGap'> {
  readonly way: Way;
  /** What the swag over a corner is made with. */
  readonly over: Way;
  readonly field: CorneredField;
  readonly lay: Lay;
  /** Angles (radians) to a start line of the lines that a half keeps before. */
  readonly lines: readonly number[];
  readonly gap: number;
  readonly windows: TurnWindows;
  readonly asked: Measuring | undefined;
  /** Whether poses are left out that come over their neighbours' cloth, or run doubled beside them. */
  readonly keepsApart: boolean;
  /** The windows of what bulges past none of the lines by more (mm) than is left there, by the sine of its angle. */
  readonly keepBefore: (leaves: (sine: number) => number) => TurnWindows;
}

interface Corner {
  readonly repeats: readonly number[];
  /** The corner's rise, radians. */
  readonly rise: number;
  /** How much the depths differ, mm. */
  readonly spread: number;
  /** How far it is from what is asked, all in all, as a share. */
  readonly missed: number;
  /** What of both is to be least (mm): what is asked comes before like depths. */
  readonly blame: number;
}

/**
 * Counts near one common depth, in groups by the count of the longest side: for each count the depth at which
 * that side comes out even, and for the others the whole numbers on either side of what that depth asks for.
 */
const promisingCounts = (
  { way, over, field, lay, gap, windows: { sides: windows, corners }, asked }: Ground,
  counts: readonly Counts[],
  widestGap: number,
  than: (longest: number) => number | undefined,
): readonly { readonly most: number; readonly vectors: readonly (readonly number[])[] }[] => {
  const { chord } = way.shape;
  const hasOwn = over !== way;
  const wishes = asked?.wishes;
  const lengths = field.runs.map((r) => r.length);
  const anchor = lengths.indexOf(Math.max(...lengths));
  /** Where (mm) a corner starts that is as deep as sides which rise so. */
  const startBeside = (rise: number): number => {
    const corner = hasOwn ? riseAsDeep(chord * Math.sin(rise), over.shape.chord, corners) : rise;
    return toStart(lay, over.shape.chord, corner);
  };
  // The count that a common rise asks of a side of length L.
  const asks = (length: number, rise: number): number =>
    (length - 2 * startBeside(rise) - gap) / (2 * chord * Math.cos(rise) + gap);
  const flattest = windows[0]!.from;
  const steepest = windows.at(-1)!.to;
  const ends = [asks(lengths[anchor]!, flattest), asks(lengths[anchor]!, steepest)];
  // One more on either side: a corner of another depth than the sides' may make room for it.
  const chords = { sides: chord, corner: over.shape.chord };
  const possible = lengths.map((length) =>
    countsPossible(length, windows, corners, [gap, widestGap], chords, lay),
  );
  if (wishes || hasOwn) ends.push(...possible[anchor]!);
  const list = countsBetween(counts[anchor]!, Math.min(...ends) - 1, Math.max(...ends) + 1);
  const isLopsided = lopsidedCounts(lengths, counts);
  /** The gap (mm) that so many swags which rise so leave on the longest side, as far as it may be had. */
  const gapBeside = (n: number, rise: number): number => {
    const taken = 2 * startBeside(rise) + n * 2 * chord * Math.cos(rise);
    return Math.max(gap, Math.min(widestGap, (lengths[anchor]! - taken) / (n + 1)));
  };
  return list.flatMap((n) => {
    const most = than(n);
    if (most === undefined) return [];
    const even = hasOwn
      ? riseThatDoes((at) => asks(lengths[anchor]!, at) >= n, flattest, steepest)
      : riseThatAsks(n, lengths[anchor]!, chord, gap, lay);
    const rise = Math.min(steepest, Math.max(flattest, even));
    const choices = lengths.map((length, i): readonly number[] => {
      const c = counts[i]!;
      const fixed = fixedCount(c);
      if (fixed !== undefined) return [fixed];
      const isAlike = length === lengths[anchor] && allows(c, n);
      const wanted = asks(length, rise);
      const alike = isAlike ? [n] : countsBeside(c, wanted);
      if (!wishes) return alike;
      // As wide as on the longest side, whatever the corners are, and no more than there is a side for.
      const asWide = (at: number, between: number): number =>
        n + (length - lengths[anchor]!) / (2 * chord * Math.cos(at) + between);
      const wide = [asWide(flattest, widestGap), asWide(steepest, gap)].sort((a, b) => a - b);
      const [fewest, most] = possible[i]!;
      const counted = countsBetween(
        c,
        Math.max(Math.floor(wide[0]!), fewest),
        Math.min(Math.ceil(wide[1]!), most),
      );
      const asked = countsAsked(wishes, c, i, wanted, { i: anchor, repeats: n });
      const likely = Math.min(most, Math.max(fewest, asWide(rise, gapBeside(n, rise))));
      const some = counted.length <= MOST_COUNTS_TRIED ? counted : countsBeside(c, likely);
      return [...new Set([...alike, ...some, ...asked])];
    });
    return [{ most, vectors: product(choices).filter((repeats) => !isLopsided(repeats)) }];
  });
};

/** At which rise a corner with a chord of its own (mm) is most nearly so deep (mm). */
const riseAsDeep = (depth: number, chord: number, corners: readonly Window[]): number => {
  const rise = Math.asin(Math.min(1, depth / chord));
  return Math.min(corners.at(-1)!.to, Math.max(corners[0]!.from, rise));
};

/** The least rise (radians) that does, of which all higher ones do; the steepest, where none does. */
const riseThatDoes = (does: (rise: number) => boolean, flattest: number, steepest: number): number => {
  let [low, high] = [flattest, steepest];
  for (let i = 0; i < HALVINGS; i++) {
    const mid = (low + high) / 2;
    if (does(mid)) high = mid;
    else low = mid;
  }
  return high;
};

/** Counts are wanted, and a rise to a thousandth tells them. */
const HALVINGS = 12;

/** Of one side beside one count of the longest; where the spans are left open nearly any might do. */
const MOST_COUNTS_TRIED = 4;

/**
 * The rise at which n swags and the halves of two corners just fill a side of length L, all as deep: from
 * L − g·(n + 1) = 2C·((n + p)·cos r + q·sin r), the two terms as one cosine.
 */
const riseThatAsks = (n: number, length: number, chord: number, gap: number, lay: Lay): number => {
  const { ofSpan, ofDepth } = lay;
  const share = (length - gap * (n + 1)) / (2 * chord * Math.hypot(n + ofSpan, ofDepth));
  return Math.atan2(ofDepth, n + ofSpan) + Math.acos(Math.min(1, Math.max(-1, share)));
};

/** mm from the start line's corner to the start mark of a corner's half that rises so (radians). */
export const toStart = ({ ofSpan, ofDepth }: Lay, chord: number, rise: number): number =>
  chord * (ofSpan * Math.cos(rise) + ofDepth * Math.sin(rise));

/** For given counts the corner that makes the depths most alike, and before that is nearest to what is asked. */
const bestOf = (repeats: readonly number[], ground: Ground): Corner | undefined => {
  const missedAt = missesOf(repeats, ground);
  const weight = missWeight(ground);
  const valid = cornerRises(repeats, ground);
  if (valid.length === 0) return undefined;
  const steps = missedAt ? 2 * GOLDEN_STEPS : GOLDEN_STEPS;
  const best = leastIn(valid, blamesOf(repeats, ground, missedAt), steps);
  if (!best) return undefined;
  const { at: rise, value: blame } = best;
  const missed = missedAt?.(rise) ?? 0;
  const always = ground.asked ? missedByCounts(repeats, ground.gap, ground.asked) : 0;
  return {
    repeats,
    rise,
    spread: blame - weight * missed,
    missed: missed + always,
    blame: blame + weight * always,
  };
};

/**
 * Brings two samples' distance, a few degrees at most, below 1e-6 radians: depths change by less than 1e-3 mm. What is
 * asked weighs so much more that twice as many are taken for it.
 */
const GOLDEN_STEPS = 23;

/** What missing a wish by all of it is blamed with (mm), beside depths that differ by so much. */
const missWeight = ({ way }: Ground): number => WISH_WEIGHT * way.shape.chord;

/**
 * The least gap that serves where swags bulge past their starts. The gap that the poses need depends on the
 * poses, and these on the gap: from none upward until it serves.
 */
const withRoom = (first: Corner, without: Ground): { corner: Corner; gap: number } | undefined => {
  let corner: Corner | undefined = first;
  let { gap } = without;
  let before: { gap: number; wanted: number } | undefined;
  for (let round = 0; round < ROOM_ROUNDS; round++) {
    const wanted = gapWanted(corner, { ...without, gap });
    if (wanted <= gap + FIT_NOISE && gap - wanted <= GAP_PLAY) return { corner, gap };
    const next = secant(before, { gap, wanted });
    before = { gap, wanted };
    gap = next;
    const ground: Ground = { ...without, gap };
    corner = bestOf(first.repeats, ground);
    if (corner) continue;
    // The most alike is not to be had: poses that the gap leaves room for may still be.
    const windows = without.keepBefore((sine) => (gap * sine - NEIGHBOUR_ROOM) / 2);
    corner = bestOf(first.repeats, { ...ground, windows });
    if (!corner) return undefined;
  }
  return undefined;
};

/** A gap within this (mm) of the least that serves is the least that serves: no one sews finer. */
const GAP_PLAY = 1e-3;
/** The secants close in within a few rounds; after this many nothing is to be found. */
const ROOM_ROUNDS = 30;

/** The next gap to try, where the gap that is wanted would be the gap that is, a hair above it. */
const secant = (
  before: { readonly gap: number; readonly wanted: number } | undefined,
  now: { readonly gap: number; readonly wanted: number },
): number => {
  const slope = before ? (now.wanted - before.wanted) / (now.gap - before.gap) : 0;
  const next = now.gap + (now.wanted - now.gap) / (1 - slope);
  return (slope < 0.9 && next > 0 ? next : now.wanted) + GAP_PLAY / 10;
};

/** The least gap (mm) that leaves room for a corner and its sides: the steepest pose bulges most. */
const gapWanted = ({ repeats, rise }: Corner, ground: Ground): number => {
  const { way, over, field, lay, lines } = ground;
  const offset = toStart(lay, over.shape.chord, rise);
  const sides = repeats.map((n, i) => riseOnSide(field.runs[i]!.length - 2 * offset, n, ground));
  if (over === way) return gapAtRise(Math.max(rise, ...sides), way.shape, lines);
  return Math.max(gapAtRise(Math.max(...sides), way.shape, lines), gapAtRise(rise, over.shape, lines));
};

const gapAtRise = (rise: number, shape: Shape, lines: readonly number[]): number =>
  Math.max(...lines.map((line) => gapBefore(line, shape, rise)));

/** How steeply (radians) so many swags rise on what two corners leave of a side (mm), with a gap before each and after the last. */
const riseOnSide = (rest: number, repeats: number, ground: Ground): number =>
  Math.acos(Math.min(1, halfSpanOnSide(rest, repeats, ground) / ground.way.shape.chord));

const halfSpanOnSide = (rest: number, repeats: number, ground: Ground): number => {
  const gap = gapAsked(rest, repeats, repeats + 1, ground.gap, ground);
  return (rest - gap * (repeats + 1)) / (2 * repeats);
};

/** For given counts, what a corner that rises by so much (radians) is blamed with (mm). */
const blamesOf = (
  repeats: readonly number[],
  ground: Ground,
  missedAt: ((rise: number) => number) | undefined,
): ((rise: number) => number) => {
  const spreadAt = spreadsOf(repeats, ground);
  const weight = missWeight(ground);
  const blamed = missedAt ? (rise: number) => spreadAt(rise) + weight * missedAt(rise) : spreadAt;
  return ground.keepsApart
    ? (rise) => (keepsApartAt(rise, repeats, ground) ? blamed(rise) : Number.POSITIVE_INFINITY)
    : blamed;
};

/** Whether all keep to their own cloth at the corners when a corner rises by so much (radians), and across them none runs doubled. */
const keepsApartAt = (rise: number, repeats: readonly number[], ground: Ground): boolean => {
  if (overAt(rise, repeats, ground) > FIT_NOISE) return false;
  const { way, over, field, lay } = ground;
  if (lay.kind !== 'across') return true;
  const standsBeside = (made: Way, halfSpan: number, gap: number): boolean => {
    const pose = crownPose(made.shape, halfSpan);
    return pose !== undefined && !besideNeighbour(straightSeat(made, made.shape, pose, gap), field);
  };
  const { chord } = over.shape;
  const offset = toStart(lay, chord, rise);
  return (
    standsBeside(over, chord * Math.cos(rise), ground.gap) &&
    repeats.every((n, i) => {
      const rest = field.runs[i]!.length - 2 * offset;
      const gap = gapAsked(rest, n, n + 1, ground.gap, ground);
      return standsBeside(way, halfSpanOnSide(rest, n, ground), gap);
    })
  );
};

/** How far (mm) two sides that meet at a corner lean over the same cloth when it rises by so much (radians). */
const overAt = (rise: number, repeats: readonly number[], ground: Ground): number => {
  const { way, over, field, lay, gap } = ground;
  const { chordAngle, support } = way.shape;
  const offset = toStart(lay, over.shape.chord, rise);
  const rises = repeats.map((n, i) => riseOnSide(field.runs[i]!.length - 2 * offset, n, ground));
  if (lay.kind === 'across')
    return Math.max(...rises.map((side) => overMitre(way.shape, side, offset + gap, field)));
  const tops = rises.map((side) => support(Math.sin(side - chordAngle), Math.cos(side - chordAngle)));
  return leansOver(tops, offset, field);
};

/** For given counts, how far all is from what is asked when the corner rises by so much (radians); undefined where nothing is. */
const missesOf = (repeats: readonly number[], ground: Ground): ((rise: number) => number) | undefined => {
  const { way, over, field, lay, asked } = ground;
  if (!asked) return undefined;
  const missed = missedByRises(way.shape, over.shape, asked);
  if (!missed) return undefined;
  return (rise) => {
    const offset = toStart(lay, over.shape.chord, rise);
    const sides = repeats.map((n, i) => riseOnSide(field.runs[i]!.length - 2 * offset, n, ground));
    return missed(rise, sides);
  };
};

/** For given counts, how much (mm) the depths of the corner and the sides differ when the corner rises by so much (radians). */
const spreadsOf = (repeats: readonly number[], ground: Ground): ((rise: number) => number) => {
  const { way, over, field, lay, windows } = ground;
  const { chord } = way.shape;
  const ofCorner = over.shape.chord;
  const { runs } = field;
  const { ofSpan, ofDepth } = lay;
  // Several windows for the sides are rare; then what lies between them is ruled out sample by sample.
  const manyWindows = windows.sides.length > 1;
  return (rise) => {
    const depth = ofCorner * Math.sin(rise);
    const offset = ofSpan * ofCorner * Math.cos(rise) + ofDepth * depth;
    let low = depth;
    let high = depth;
    for (let i = 0; i < repeats.length; i++) {
      const h = halfSpanOnSide(runs[i]!.length - 2 * offset, repeats[i]!, ground);
      if (manyWindows && !isWithin(windows.sides, Math.acos(Math.min(1, h / chord))))
        return Number.POSITIVE_INFINITY;
      const d = Math.sqrt(Math.max(0, chord * chord - h * h));
      if (d < low) low = d;
      if (d > high) high = d;
    }
    return high - low;
  };
};

/** The corner's rises at which the corner and all sides are valid. */
const cornerRises = (
  repeats: readonly number[],
  { way, over, field, lay, gap, windows, widestSpan, widestGap }: Ground,
): readonly Window[] => {
  if (windows.sides.length === 0 || windows.corners.length === 0) return [];
  const { chord } = way.shape;
  const widest = chord * Math.cos(windows.sides[0]!.from);
  const narrowest = chord * Math.cos(windows.sides.at(-1)!.to);
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (let i = 0; i < repeats.length; i++) {
    const { length } = field.runs[i]!;
    const most = widestSpan === undefined ? gap : Math.max(gap, widestGap ?? gap);
    low = Math.max(low, (length + gap - repeats[i]! * 2 * widest - (repeats[i]! + 1) * most) / 2);
    high = Math.min(high, (length - repeats[i]! * (2 * narrowest + gap)) / 2);
  }
  if (!(low <= high)) return [];
  // a − g/2 as one cosine, on both sides of the rise at which it is greatest.
  const most = Math.hypot(lay.ofSpan, lay.ofDepth) * over.shape.chord;
  const middle = Math.atan2(lay.ofDepth, lay.ofSpan);
  const angleOf = (offset: number): number => Math.acos(Math.min(1, Math.max(-1, (offset - gap / 2) / most)));
  const near = angleOf(high);
  const far = angleOf(low);
  return [
    ...clip(windows.corners, middle - far, middle - near),
    ...clip(windows.corners, middle + near, middle + far),
  ];
};

const layTurn = (
  { way, over, field }: Pick<Ground, 'way' | 'over' | 'field'>,
  rules: SeatRules & { gap: number },
  corner: Corner,
): Result<Fit> => {
  const h = over.shape.chord * Math.cos(corner.rise);
  const pose = crownPose(over.shape, h);
  if (!pose) return misses({ kind: 'too-short', by: h - over.shape.chord });
  const seated = checkCorner(over, pose, rules.gap, field, rules);
  if (!seated.ok) return seated;
  const toCorner = toCornerOf(field, pose);
  const sides: SideFit[] = [];
  for (let i = 0; i < corner.repeats.length; i++) {
    const run = field.runs[i]!;
    const repeats = corner.repeats[i]!;
    const rest = run.length - 2 * toCorner;
    const gap = gapAsked(rest, repeats, repeats + 1, rules.gap, rules);
    const tried = seat(way, (rest - gap) / repeats, { ...rules, gap, widestSpan: undefined });
    if (!tried.ok) return tried;
    sides.push({ run, repeats, seat: tried.value });
  }
  const leaning = overNeighbour(sides, toCorner, field);
  if (leaning > FIT_NOISE) return misses({ kind: 'beyond-corner', by: leaning });
  const kept = [seated.value, ...sides.map((s) => s.seat)];
  for (const one of field.corners === 'across' ? kept : []) {
    const beside = besideNeighbour(one, field);
    if (beside) return misses(beside);
  }
  // The corner's own half gap differs from side to side where their gaps do; its offset is told for the first.
  const offset = toCorner + sides[0]!.seat.gap / 2;
  return fits({
    way,
    sides,
    corner: {
      kind: layOf(field).kind,
      seat: seated.value,
      ...(over !== way && { own: over }),
      toCorner,
      offset,
    },
    pattern: ALIKE,
  });
};
