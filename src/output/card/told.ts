/** One measure of several rows of a design: what most of them have, and those that have another. */

/** The rows that have one text, by name. */
interface Same {
  readonly names: readonly string[];
  readonly text: string;
}

export interface Told {
  /** What most rows have; of as many, the first. */
  readonly most: string;
  readonly others: readonly Same[];
}

export const toldOf = (rows: readonly (readonly [name: string, text: string])[]): Told => {
  const groups = new Map<string, string[]>();
  for (const [name, text] of rows) groups.set(text, [...(groups.get(text) ?? []), name]);
  const all = [...groups].map(([text, names]): Same => ({ names, text }));
  const most = all.reduce((a, b) => (b.names.length > a.names.length ? b : a));
  return { most: most.text, others: all.filter((one) => one !== most) };
};

/** `right, left 4 5/16 up; corner 4 3/8 up`; empty where all are alike. */
export const othersWords = ({ others }: Told): string =>
  others.map(({ names, text }) => `${names.join(', ')} ${text}`).join('; ');

/** `4 3/8 up (right, left 4 5/16 up)` */
export const toldWords = (told: Told): string =>
  told.others.length === 0 ? told.most : `${told.most} (${othersWords(told)})`;
