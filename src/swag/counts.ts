/** How many swags a side may have, and which counts on four sides look alike. */

/** The counts that a plan allows for a side: one, or all up to a most. */
export type Counts = { readonly exactly: number } | { readonly upTo: number };

/** The counts from `least` to `most` (any real numbers) that a plan allows. */
export const countsBetween = (counts: Counts, least: number, most: number): readonly number[] => {
  if ('exactly' in counts) return [counts.exactly];
  const list: number[] = [];
  for (let n = Math.max(1, Math.ceil(least)); n <= Math.min(most, counts.upTo); n++) list.push(n);
  return list;
};

/** Opposite sides that differ by less than this share of a swag are as long to an eye. */
const AS_LONG = 1 / 2;

/** One of two opposite sides: how many swags, on how many mm. */
export interface Counted {
  readonly repeats: number;
  readonly length: number;
}

/**
 * Whether opposite sides that are as long to an eye have different counts: their swags would then differ across
 * the quilt by more than the sides do.
 */
export const differAcross = (a: Counted, b: Counted): boolean =>
  a.repeats !== b.repeats &&
  Math.abs(a.length - b.length) < AS_LONG * Math.min(a.length / a.repeats, b.length / b.repeats);

/**
 * The same for the sides of a border, top, right, bottom, left; anything but four sides has no opposites. Counts
 * that a plan gives are as it wants them.
 */
export const isLopsided = (
  repeats: readonly number[],
  lengths: readonly number[],
  counts: readonly Counts[],
): boolean => {
  if (repeats.length !== 4 || counts.every((c) => 'exactly' in c)) return false;
  const side = (i: number): Counted => ({ repeats: repeats[i]!, length: lengths[i]! });
  return differAcross(side(0), side(2)) || differAcross(side(1), side(3));
};

/** A count that is possible on one side, with the depth (mm) that it gives. */
export interface Choice {
  readonly repeats: number;
  readonly depth: number;
}

/**
 * One choice for each side so that the depths differ least: for every choice of the first side the best, and
 * so also the best of all. `isAllowed` says of counts, in the order of the sides, whether they may be chosen.
 *
 * Method. Whatever is chosen, one of the choices is the shallowest. For each that can be, going down from the
 * first side's own depth, each other side takes its least depth from there up: nothing else brings the
 * deepest closer. Going down ends where the floor alone is farther off than the best so far.
 */
export const alikeChoices = <C extends Choice>(
  sides: readonly (readonly C[])[],
  isAllowed: (repeats: readonly number[]) => boolean,
): readonly (readonly C[])[] => {
  const [firsts = [], ...others] = sides.map((choices) => [...choices].sort((a, b) => a.depth - b.depth));
  const depths = others.flatMap((choices) => choices.map((c) => c.depth)).sort((a, b) => b - a);
  const found: (readonly C[])[] = [];
  for (const first of firsts) {
    let best: readonly C[] | undefined;
    let spread = Number.POSITIVE_INFINITY;
    const tryFloor = (floor: number): void => {
      const chosen = [first];
      let most = first.depth;
      for (const choices of others) {
        const next = choices[firstFrom(choices, floor)];
        if (!next) return;
        chosen.push(next);
        if (next.depth > most) most = next.depth;
      }
      if (!(most - floor < spread && isAllowed(chosen.map((c) => c.repeats)))) return;
      best = chosen;
      spread = most - floor;
    };
    tryFloor(first.depth);
    for (const floor of depths) {
      if (floor >= first.depth) continue;
      if (first.depth - floor >= spread) break;
      tryFloor(floor);
    }
    if (best) found.push(best);
  }
  return found;
};

/** The index of the first choice at least as deep, in a list sorted by depth. */
const firstFrom = (choices: readonly Choice[], depth: number): number => {
  let from = 0;
  let to = choices.length;
  while (from < to) {
    const mid = (from + to) >> 1;
    if (choices[mid]!.depth < depth) from = mid + 1;
    else to = mid;
  }
  return from;
};
