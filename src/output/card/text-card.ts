/** The card as plain text. */

import { tableLines, wrapPlain } from '../text/index.ts';
import type { CardBlock } from './block.ts';
import type { Card } from './card.ts';

/** `width` in characters; tables may be wider. Ends with a line break. */
export const writeTextCard = (card: Card, width: number): string => {
  const lines = [
    ...wrapPlain(card.title, width),
    '='.repeat(Math.min(width, [...card.title].length)),
    ...card.summary.flatMap((text) => wrapPlain(text, width)),
    ...card.sections.flatMap((section) => [
      '',
      section.heading,
      '-'.repeat(section.heading.length),
      ...section.blocks.flatMap((block) => blockLines(block, width)),
    ]),
  ];
  return `${lines.join('\n')}\n`;
};

const blockLines = (block: CardBlock, width: number): readonly string[] => {
  switch (block.kind) {
    case 'text':
      return wrapPlain(block.text, width);
    case 'point':
    case 'place':
      return wrapPlain(`- ${block.text}`, width, '  ');
    case 'table':
      return [
        '',
        ...(block.title === undefined ? [] : [block.title]),
        ...tableLines(block.rows, block.columns),
        '',
      ];
    default:
      return block satisfies never;
  }
};
