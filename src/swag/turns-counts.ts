/** How many swags come into question on the sides of a border whose corners have swags over them. */

import type { Lay } from './corner.ts';
import {
  allows,
  type Counts,
  countsBeside,
  countsBetween,
  fixedCount,
  lopsidedCounts,
  product,
} from './counts.ts';
import { type Ground, toStart } from './turns-ground.ts';
import { countsAsked, countsPossible } from './turns-wished.ts';
import type { Window } from './windows.ts';

/** Counts in question: those of the longest side, and for each of them those of all sides. */
interface Promising {
  readonly longest: readonly number[];
  readonly with: (longest: number) => readonly (readonly number[])[];
}

/**
 * Counts near one common depth, by the count of the longest side: for each count the depth at which
 * that side comes out even, and for the others the whole numbers on either side of what that depth asks for.
 */
export const promisingCounts = (
  { way, over, field, lay, gap, windows: { sides: windows, corners }, asked }: Ground,
  counts: readonly Counts[],
  widestGap: number,
): Promising => {
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
  const withCount: Promising['with'] = (n) => {
    const even = hasOwn
      ? riseThatDoes((at) => asks(lengths[anchor]!, at) >= n, flattest, steepest)
      : riseThatAsks(n, lengths[anchor]!, chord, gap, lay);
    const rise = Math.min(steepest, Math.max(flattest, even));
    const choices = lengths.map((length, i): readonly number[] => {
      if (i === anchor) return [n];
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
    return product(choices).filter((repeats) => !isLopsided(repeats));
  };
  return { longest: list, with: withCount };
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
