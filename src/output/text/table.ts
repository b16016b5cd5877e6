/** Tables of plain text: columns as wide as what they hold, two spaces apart. */

import { wordsOf } from '../../length/index.ts';

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
}

/** The lines of a table without its heads; every row has a cell for each column. */
const alignRows = (rows: readonly (readonly string[])[], columns: readonly Column[]): readonly string[] => {
  const widths = columns.map((_, i) => Math.max(0, ...rows.map((row) => widthOf(row[i] ?? ''))));
  return rows.map((row) =>
    columns
      .map(({ align }, i) => pad(row[i] ?? '', widths[i]!, align ?? 'left'))
      .join('  ')
      .trimEnd(),
  );
};

/** The lines of a table: its heads, a rule, its rows. */
export const tableLines = (
  rows: readonly (readonly string[])[],
  columns: readonly Column[],
): readonly string[] => {
  const [heads, ...rest] = alignRows([columns.map((c) => c.head), ...rows], columns);
  const width = Math.max(...[heads!, ...rest].map(widthOf));
  return [heads!, '-'.repeat(width), ...rest];
};

/** In characters as a terminal counts them; the program's own words hold no wide ones. */
const widthOf = (text: string): number => [...text].length;

const pad = (text: string, width: number, align: 'left' | 'right'): string => {
  const white = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'left' ? text + white : white + text;
};

/** A text broken at spaces into lines of at most `width` characters; later lines begin with `indent`. */
export const wrapPlain = (text: string, width: number, indent = ''): readonly string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of wordsOf(text)) {
    const longer = line === '' ? (lines.length > 0 ? indent : '') + word : `${line} ${word}`;
    if (line !== '' && widthOf(longer) > width) {
      lines.push(line);
      line = indent + word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
};
