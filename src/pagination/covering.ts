/**
 * The fewest sheets that show all the ink. Neighbouring sheets show the same band of the drawing, so ink in a
 * band is shown when either is printed, and ink where four sheets meet when any of the four is.
 *
 * A sheet whose own core (what no other sheet shows) holds ink must be printed. What is left over after that is
 * a hitting set over small groups: greedy first; where the greedy answer cannot be shown to be least (a packing
 * of groups without a common sheet is as large), a bounded search over the groups.
 */

/** Beyond this many tries the greedy answer stands; a drawing would have to be made of scattered dots. */
const MOST_TRIES = 5000;

/** A least set of numbers that has one in common with every group. Groups are short lists of numbers. */
export const fewestFor = (groups: readonly (readonly number[])[]): number[] => {
  if (groups.length === 0) return [];
  const greedy = greedyFor(groups);
  if (greedy.length <= packing(groups)) return greedy;
  let best = greedy;
  let tries = 0;
  const search = (rest: readonly (readonly number[])[], chosen: readonly number[]): void => {
    if (tries++ > MOST_TRIES || chosen.length + packing(rest) >= best.length) return;
    const group = rest[0];
    if (!group) {
      best = [...chosen];
      return;
    }
    for (const sheet of group)
      search(
        rest.filter((g) => !g.includes(sheet)),
        [...chosen, sheet],
      );
  };
  search(groups, []);
  return best;
};

/** Takes again and again the number that is in most groups; the lowest among equals. */
const greedyFor = (groups: readonly (readonly number[])[]): number[] => {
  const chosen: number[] = [];
  let rest = groups;
  while (rest.length > 0) {
    const hits = new Map<number, number>();
    for (const group of rest) for (const sheet of group) hits.set(sheet, (hits.get(sheet) ?? 0) + 1);
    let pick = -1;
    let most = 0;
    for (const [sheet, count] of hits) {
      if (count > most || (count === most && sheet < pick)) {
        pick = sheet;
        most = count;
      }
    }
    if (most === 0) throw new Error('Ink lies where no sheet can show it.');
    chosen.push(pick);
    rest = rest.filter((group) => !group.includes(pick));
  }
  return chosen;
};

/** Groups without a common number, taken in turn: no set that hits all of them is smaller than their count. */
const packing = (groups: readonly (readonly number[])[]): number => {
  const used = new Set<number>();
  let count = 0;
  for (const group of groups) {
    if (group.some((sheet) => used.has(sheet))) continue;
    for (const sheet of group) used.add(sheet);
    count++;
  }
  return count;
};
