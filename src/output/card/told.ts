/** The measures of several rows of a design side by side: which rows are alike in all, and which one most are like. */

/** Rows that read the same in every measure, by name. */
export interface Alike {
  readonly names: readonly string[];
  readonly cells: readonly string[];
}

export const alikeRows = (
  rows: readonly (readonly [name: string, cells: readonly string[]])[],
): readonly Alike[] => {
  const groups = new Map<string, { names: string[]; cells: readonly string[] }>();
  for (const [name, cells] of rows) {
    const key = cells.join('|');
    const known = groups.get(key);
    if (known) known.names.push(name);
    else groups.set(key, { names: [name], cells });
  }
  return [...groups.values()];
};

/** The largest group; of as many rows the first. */
const mostAlike = (groups: readonly Alike[]): Alike =>
  groups.reduce((a, b) => (b.names.length > a.names.length ? b : a));

/** `4 5/8 in (right, left 4 9/16 in; corner 4 3/8 in)` */
export const toldWords = (rows: readonly (readonly [name: string, text: string])[]): string => {
  const groups = alikeRows(rows.map(([name, text]) => [name, [text]] as const));
  const most = mostAlike(groups);
  const others = groups.filter((one) => one !== most);
  const text = most.cells.join('');
  return others.length === 0
    ? text
    : `${text} (${others.map(({ names, cells }) => `${names.join(', ')} ${cells.join('')}`).join('; ')})`;
};
