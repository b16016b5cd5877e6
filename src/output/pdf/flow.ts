/** Text that flows: headings, paragraphs and numbered points, set in columns of a given width. */

import type { Box } from '../../geometry/index.ts';
import { INK, LEADING, TYPE } from './look.ts';
import type { PageContent } from './page-content.ts';
import { type Typefaces, wrapText } from './typeface.ts';

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
}

const INDENT = 4.6;
const ABOVE = { heading: 4.2, text: 1.2, point: 0.9 } as const;

interface Placed {
  readonly lines: readonly SetLine[];
  readonly left: number;
  readonly top: number;
  /** Whether nothing stands above it in its column. */
  readonly first: boolean;
}

export interface Flow {
  readonly placed: readonly Placed[];
  /** The blocks that the columns did not hold. */
  readonly rest: readonly Block[];
}

/** Sets as many blocks as the columns hold. Blocks are never split; a heading and what it heads stay together. */
export const setBlocks = (faces: Typefaces, blocks: readonly Block[], columns: readonly Box[]): Flow => {
  const placed: Placed[] = [];
  let index = 0;
  for (const column of columns) {
    const width = column.maxX - column.minX;
    let top = column.maxY;
    let first = true;
    while (index < blocks.length) {
      const lines = setBlock(faces, blocks[index]!, width);
      const own = heightOf(lines, first);
      const goesWith = followersOf(blocks, index).map((b) => heightOf(setBlock(faces, b, width), false));
      const section = goesWith.reduce((sum, height) => sum + height, own);
      // A section stays together where a column can hold it; else its heading at least goes with a line of it.
      const needed = section <= column.maxY - column.minY ? section : own + (goesWith[0] ?? 0);
      if (top - needed < column.minY) break;
      placed.push({ lines, left: column.minX, top, first });
      top -= own;
      first = false;
      index++;
    }
  }
  return { placed, rest: blocks.slice(index) };
};

/** What a heading heads: the blocks up to the next heading. */
const followersOf = (blocks: readonly Block[], index: number): readonly Block[] => {
  if (blocks[index]?.kind !== 'heading') return [];
  const end = blocks.findIndex((b, i) => i > index && b.kind === 'heading');
  return blocks.slice(index + 1, end < 0 ? blocks.length : end);
};

/** Columns side by side no longer than they must be to hold all blocks; as long as they are when they cannot. */
export const balancedColumns = (
  faces: Typefaces,
  blocks: readonly Block[],
  columns: readonly Box[],
): readonly Box[] => {
  const [column] = columns;
  if (!column) return columns;
  for (let bottom = column.maxY; bottom > column.minY; bottom -= BALANCE_STEP) {
    const shorter = columns.map((c) => ({ ...c, minY: bottom }));
    if (setBlocks(faces, blocks, shorter).rest.length === 0) return shorter;
  }
  return columns;
};

/** mm: about a line of type. */
const BALANCE_STEP = 4;

export const drawFlow = (content: PageContent, flow: Flow): void => {
  for (const { lines, left, top, first } of flow.placed) drawBlock(content, lines, left, top, first);
};

const heightOf = (lines: readonly SetLine[], first: boolean): number =>
  lines.reduce((sum, line, i) => sum + line.height + (first && i === 0 ? 0 : line.above), 0);

const setBlock = (faces: Typefaces, block: Block, width: number): SetLine[] => {
  const heading = block.kind === 'heading';
  const indent = block.kind === 'point' ? INDENT : 0;
  const size = heading ? TYPE.heading : TYPE.body;
  const face = heading ? faces.bold : faces.regular;
  return wrapText(face, block.text, size, width - indent).map((text, i) => ({
    text,
    mark: i === 0 ? block.mark : undefined,
    heading,
    indent,
    above: i === 0 ? ABOVE[block.kind] : 0,
    height: LEADING * size,
  }));
};

const drawBlock = (
  content: PageContent,
  lines: readonly SetLine[],
  left: number,
  top: number,
  first: boolean,
): void => {
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
};
