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
import { besideNeighbour, linesBeside } from './beside.ts';
import { checkCorner, layOf, overNeighbour, toCornerOf } from './corner.ts';
import { type Counts, swagsOf } from './counts.ts';
import type { CorneredField } from './field.ts';
import { ALIKE, type Fit, type SideFit } from './fit.ts';
import { FIT_NOISE, fits, misses, type Result } from './misfit.ts';
import { crownPose } from './pose.ts';
import { highestRise, type Rising, risingOnSides, risingOverCorners } from './rising.ts';
import type { Tried } from './runs.ts';
import { brokenCost, spreadWithin } from './score.ts';
import { gapAsked, type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';
import { cheaper, type Kept } from './ties.ts';
import { bestOf, type Within } from './turns-corner.ts';
import { promisingCounts } from './turns-counts.ts';
import type { Corner, Ground, TurnWindows } from './turns-ground.ts';
import { gapAtRise, gapWanted, withRoom } from './turns-room.ts';
import { turnsByTilt } from './turns-tilted.ts';
import { missedByCounts, missedByGaps } from './turns-wished.ts';
import { clip, riseBelow } from './windows.ts';
import { wishedScore } from './wished.ts';
import { missWithin } from './wishes.ts';

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
  const corners = risingOverCorners(way, field, rules, outward, sides);
  const turns = turnsByCrown(sides, corners, field, rules, counts, outward);
  const made = turns?.longest.map((repeats) => turns.with(repeats, Number.POSITIVE_INFINITY)) ?? [];
  return {
    fits: made.flatMap(({ fits }) => fits),
    tried: made.reduce((sum, { tried }) => sum + tried, 0),
  };
};

/** Borders of a way for the sides and one for the corners. */
export interface Turns {
  /** The counts of the longest side that come into question. */
  readonly longest: readonly number[];
  /**
   * With so many swags there, the least that fits beside them, and with room for what bulges; as far as they cost no more
   * than `most`, `rest` of it for what their depths and wishes have no part in. `leastWith` tells what counts cost at least.
   */
  readonly with: (
    longest: number,
    most: number,
    rest?: number,
    leastWith?: (repeats: readonly number[]) => number,
  ) => Tried;
}

/** The same with a way for the sides and one for the corners; undefined where these never fit. */
export const turnsByCrown = (
  onSides: Rising,
  overCorners: Rising,
  field: CorneredField,
  rules: SeatRules,
  counts: readonly Counts[],
  outward: number,
): Turns | undefined => {
  const { way } = onSides;
  const { shape } = way;
  const over = overCorners.way;
  const { wishes } = rules;
  const lay = layOf(field);
  const windows: TurnWindows = { sides: onSides.windows, corners: overCorners.windows };
  if (windows.sides.length === 0 || windows.corners.length === 0) return undefined;
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
  // Wider ones may be more as they are asked for.
  const given = mayMakeRoom || widestGap !== undefined ? undefined : fixed;
  // What makes the depths most alike with swags no wider than asked leaves gaps, and may cost more than what fits
  // without; so both are looked for.
  const mayTouch = widestGap !== undefined && asked !== undefined && missedByGaps([fixed], asked) === 0;
  const touching = mayTouch ? [{ ...noBulge, widestSpan: undefined, widestGap: undefined }] : [];
  const grounds: readonly Ground[] = [...touching, noBulge];
  const laidAt = (corner: Corner, gap: number, ground: Ground): Kept | undefined => {
    const { widestSpan, widestGap } = ground;
    const laid = layTurn({ way, over, field }, { ...rules, gap, widestSpan, widestGap }, corner);
    const score = laid.ok ? wishedScore(laid.value, field, outward, wishes) : undefined;
    return laid.ok && score ? { fit: laid.value, cost: score.cost } : undefined;
  };
  // Only from the outer seam may what is most alike lean over the same cloth, or run beside its neighbour's so closely
  // that both are one thick line; others may still keep apart.
  const laidApart = (repeats: readonly number[], ground: Ground): Kept | undefined => {
    if (field.from === 'inner') return undefined;
    const corner = bestOf(repeats, { ...ground, keepsApart: true });
    return corner && laidAt(corner, fixed, ground);
  };
  const deepest = Math.max(shape.chord, over.shape.chord);
  const promising = promisingCounts(anyBulge, counts, Math.max(widestBulge, widestGap ?? 0));
  const withCount: Turns['with'] = (longest, most, rest = 0, leastWith = () => 0) => {
    const vectors = promising.with(longest);
    let best: Kept | undefined;
    let roomiest: Kept | undefined;
    const beaten = (known: Kept | undefined): number => Math.min(known?.cost ?? most, most) + ROUNDING;
    const mayBeat = ({ spread, missed }: Corner, within: Within): boolean =>
      spread <= within.spread && missed <= within.missed;
    const told = vectors.map((repeats) => ({
      repeats,
      missed: asked ? missedByCounts(repeats, given, asked) : 0,
      least: leastWith(repeats),
    }));
    for (const { repeats, missed, least } of told.sort((a, b) => a.missed - b.missed || a.least - b.least)) {
      if (missed > missWithin(beaten(best))) break;
      const broken = least + brokenCost(swagsOf(repeats));
      for (const ground of grounds) {
        let plain: Corner | undefined;
        if ((ground === grounds[0] ? least : broken) <= beaten(best)) {
          // Depths that differ cost so much in any case: none is larger than the chord.
          const left = beaten(best) - rest;
          const within = { spread: spreadWithin(left, deepest) + FIT_NOISE, missed: missWithin(left) };
          plain = bestOf(repeats, ground, within);
          if (plain && mayBeat(plain, within))
            best = cheaper(best, laidAt(plain, fixed, ground) ?? laidApart(repeats, ground));
        }
        if (!mayMakeRoom || broken > beaten(roomiest)) continue;
        const roomy: Ground = { ...ground, windows, gap: leastGap };
        const first = bestOf(repeats, roomy);
        const spread = spreadWithin(beaten(roomiest), deepest) + FIT_NOISE;
        if (!first || first.spread > spread || gapWanted(first, roomy) <= 0) continue;
        // A gap is only worth it where it beats what fits without.
        const without = plain ?? bestOf(repeats, ground);
        if (without && first.blame >= without.blame) continue;
        const made = withRoom(first, roomy);
        if (made) roomiest = cheaper(roomiest, laidAt(made.corner, made.gap, ground));
        // What is asked about may lead from corner to corner as the gap grows, far past what serves without it.
        if (!asked || !made || made.gap <= FAR_PAST * gapWanted(first, roomy)) continue;
        const free: Ground = { ...roomy, asked: undefined };
        const alike = bestOf(repeats, free);
        const freely = alike && withRoom(alike, free);
        if (freely) roomiest = cheaper(roomiest, laidAt(freely.corner, freely.gap, ground));
      }
    }
    return { fits: [best, roomiest].flatMap((kept) => kept?.fit ?? []), tried: vectors.length };
  };
  return { longest: promising.longest, with: withCount };
};

/** Times the gap that the first corner wants; what settles on it ends near to it. */
const FAR_PAST = 2;

/** Costs that differ by less differ by rounding. */
const ROUNDING = 1e-8;

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
