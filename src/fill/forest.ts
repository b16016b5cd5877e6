/** Which things hang together, as they are joined one by one. */

export interface Forest {
  /** The same number for all that hang together. */
  readonly find: (i: number) => number;
  readonly join: (a: number, b: number) => void;
}

/** So many things, each by itself. Method: disjoint sets with path halving (Tarjan and van Leeuwen, Journal of the ACM 31, 1984). */
export const forest = (count: number): Forest => {
  const root = Array.from({ length: count }, (_, i) => i);
  const find = (i: number): number => {
    let at = i;
    while (root[at] !== at) {
      root[at] = root[root[at]!]!;
      at = root[at]!;
    }
    return at;
  };
  return {
    find,
    join: (a, b) => {
      root[find(a)] = find(b);
    },
  };
};
