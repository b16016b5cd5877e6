/** Text that flows: headings, paragraphs and numbered points, set in columns of a given width. */

import type { Box } from '../../geometry/index.ts';
import { INK, LEADING, TYPE } from './look.ts';
import type { PageContent } from './page-content.ts';
import { wrapText } from './typeface.ts';

export interface Block {
  readonly kind: 'heading' | 'text' | 'point';
  readonly text: string;
  /** Before a point: its number or a dash. */
  readonly mark?: string | undefined;
}

interface SetLine {
  readonly text: string;
  readonly mark?: string | undefined;
  readonly heading: boolean;
  readonly indent: number;
  /** Space above, unless the line is a column's first; then its own height. mm. */
  readonly above: number;
  readonly height: number;
  /** Whether the column may not end after this line. */
  readonly keep: boolean;
}

const INDENT = 4.6;
const ABOVE = { heading: 4.2, text: 1.2, point: 0.9 } as const;

/** Draws as many blocks as the columns hold, and returns those that are left over. Blocks are never split. */
export const flowBlocks = (
  content: PageContent,
  blocks: readonly Block[],
  columns: readonly Box[],
): Block[] => {
  let index = 0;
  for (const column of columns) {
    let y = column.maxY;
    let first = true;
    while (index < blocks.length) {
      const lines = setBlock(content, blocks[index]!, column.maxX - column.minX);
      const next = blocks[index + 1];
      // A heading goes with what it heads.
      const follower =
        blocks[index]!.kind === 'heading' && next ? setBlock(content, next, column.maxX - column.minX) : [];
      const needed = heightOf(lines, first) + heightOf(follower, false);
      if (y - needed < column.minY && !(first && column === columns.at(-1) && y === column.maxY)) break;
      y = drawBlock(content, lines, column.minX, y, first);
      first = false;
      index++;
    }
  }
  return blocks.slice(index);
};

const heightOf = (lines: readonly SetLine[], first: boolean): number =>
  lines.reduce((sum, line, i) => sum + line.height + (first && i === 0 ? 0 : line.above), 0);

const setBlock = (content: PageContent, block: Block, width: number): SetLine[] => {
  const heading = block.kind === 'heading';
  const indent = block.kind === 'point' ? INDENT : 0;
  const size = heading ? TYPE.heading : TYPE.body;
  const face = heading ? content.faces.bold : content.faces.regular;
  return wrapText(face, block.text, size, width - indent).map((text, i) => ({
    text,
    mark: i === 0 ? block.mark : undefined,
    heading,
    indent,
    above: i === 0 ? ABOVE[block.kind] : 0,
    height: LEADING * size,
    keep: heading,
  }));
};

const drawBlock = (
  content: PageContent,
  lines: readonly SetLine[],
  left: number,
  top: number,
  first: boolean,
): number => {
  let y = top;
  for (const [i, line] of lines.entries()) {
    y -= (first && i === 0 ? 0 : line.above) + line.height;
    const size = line.heading ? TYPE.heading : TYPE.body;
    const color = line.heading ? INK.strong : INK.text;
    const base = y + (line.height - size) / 2 + 0.12 * size;
    if (line.mark !== undefined)
      content.text({ text: line.mark, at: { x: left, y: base }, size, color: INK.quiet });
    content.text({
      text: line.text,
      at: { x: left + line.indent, y: base },
      size,
      color,
      bold: line.heading,
    });
  }
  return y;
};
