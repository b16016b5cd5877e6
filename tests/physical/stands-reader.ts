/** Where a marking card says that the template stands: on its drawing for one row, and in a table for those that differ. */

import type { CardBlock, CardPlace, CardTable } from '../../src/output/card/index.ts';

/** Where the template stands: the end of it at the start mark and the one at the crown, and measures by what they are of. */
export interface Stands {
  readonly near: string;
  readonly far: string | undefined;
  /** What heights are measured from; undefined where it is a motif's centre. */
  readonly level: string | undefined;
  readonly toldOf: (row: string) => ReadonlyMap<string, string>;
}

/** What a figure has beside a place must be what the sentence says of it. */
const readPlace = ({ text, name, measures }: CardPlace): readonly [name: string, told: readonly string[]] => {
  const [, spoken, said] = text.match(/^(.+?): (.+)\.$/) ?? [];
  if (spoken === undefined || spoken.toLowerCase().replace(/^the /, '') !== name.toLowerCase())
    throw new Error(`Not understood: ${text}`);
  if (measures.join(', ') !== said) throw new Error(`The figure and the words differ: ${text}`);
  return [spoken.charAt(0).toLowerCase() + spoken.slice(1), measures];
};

/** `turns` is whether swags turn the corners on the mitre, `isAcross` whether they stand across them. */
export const readStands = (
  blocks: readonly CardBlock[],
  { isAcross, turns }: { readonly isAcross: boolean; readonly turns: boolean },
): Stands => {
  const [intro, ...rest] = blocks;
  if (intro?.kind !== 'text') throw new Error('Nothing says how the places are told');
  const places = rest.filter((b): b is CardPlace => b.kind === 'place').map(readPlace);
  const table = rest.find((b): b is CardTable => b.kind === 'table');
  const found = intro.text.match(
    /^Where the template's edge lies in the first half, in (?:inches|mm|cm), to [\d./]+(?: mm| cm)?\. “Past” \(into the swag\) and “before” are from the start mark(?:, of (.+?) from the centre line( \(at the corner the mitre: measure square to it\))?)?; (?:“up” and “below” are from (.+?)(, and at a corner from the line across it)?|“out” is from the centre of the motif)\.(?: A lettered line is told by where it crosses the (?:start line|line through the start mark square to (?:its ray|the ray halfway between neighbours))\.)?(?: The drawing is of (.+?); the table is of what differs\.)?$/,
  );
  if (!found || (found[4] !== undefined) !== isAcross) throw new Error(`Not understood: ${intro.text}`);
  const [, far, isSquare, level, , drawn] = found;
  if ((table !== undefined) !== (drawn !== undefined)) throw new Error(`Of which row is it? ${intro.text}`);
  const near = places[0]![0];
  const keyOf = (head: string): string => {
    const [, what, way] = head.match(/^(.+?)(?: (along|up))?$/)!;
    const bare = (name: string | undefined): string | undefined => name?.replace(/^the /, '');
    if (what === bare(near)) return `near end ${way}`;
    if (what === bare(far)) return `far end ${way}`;
    if (what === 'needle') return 'the needle at the crown up';
    return what === 'guide line' ? 'the guide line up' : `${what} along`;
  };
  const drawnAs = new Map<string, string>(
    places.flatMap(([name, told]) =>
      told.map((text) => {
        const way = / (?:up|below|out)$/.test(text) ? 'up' : 'along';
        const key = name === near ? 'near end' : name === far ? 'far end' : name;
        return [`${key} ${way}`, text] as const;
      }),
    ),
  );
  // The drawing has the measures of one row beside their places, and the table those of the others.
  const heads: readonly string[] = table?.columns.slice(1).map(({ head }) => keyOf(head)) ?? [
    ...drawnAs.keys(),
  ];
  if (new Set(heads).size < heads.length)
    throw new Error(`Two columns are of one measure: ${heads.join(', ')}`);
  const rows = [
    {
      names: drawn?.split(/, | and /) ?? ['all'],
      cells: heads.map((head) => drawnAs.get(head) ?? '-'),
    },
    ...(table?.rows ?? []).map(([names = '', ...cells]) => ({ names: names.split(', '), cells })),
  ];
  // The mitre is a slant, but for a line square to it: a distance from it means nothing without the way that it is measured.
  const corner = turns ? (ofRows(rows, 'corner').cells[heads.indexOf('far end along')] ?? '-') : '-';
  if ((turns && corner !== '-') !== (isSquare !== undefined))
    throw new Error(`It is not said how far "${corner}" is measured: ${intro.text}`);
  return {
    near,
    far,
    level,
    toldOf: (row) => {
      const { cells } = ofRows(rows, row);
      return new Map(heads.map((head, i) => [head, cells[i]!]));
    },
  };
};

/** The row of a side or of the corner; a single one is for all. */
const ofRows = <T extends { readonly names: readonly string[] }>(rows: readonly T[], name: string): T => {
  const found = rows.length === 1 ? rows[0] : rows.find(({ names }) => names.includes(name));
  if (!found) throw new Error(`Where the template stands is not told of ${name}`);
  return found;
};
