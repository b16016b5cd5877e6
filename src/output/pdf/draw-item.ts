/** A drawing's items on a page, at true size or small. */

import type { StyledArea, StyledItem, StyledPath, StyledText } from '../../drawing/index.ts';
import type { PageContent } from './page-content.ts';

export const drawItem = (content: PageContent, item: StyledItem): void => {
  switch (item.kind) {
    case 'path':
      content.path(item.path, item.stroke);
      break;
    case 'area':
      content.area(item.loops, item.color);
      break;
    case 'text':
      drawText(content, item);
      break;
    default:
      unknownItem(item);
  }
};

const drawText = (content: PageContent, item: StyledText): void =>
  content.text({
    text: item.text,
    at: item.at,
    size: item.size,
    align: item.align,
    angle: item.angle,
    color: item.color,
    bold: item.bold,
  });

/** The thinnest line (mm) that a small picture shows; thinner ones print broken. */
const THINNEST = 0.1;

/** An item in a picture that is `scale` of true size: lines thinner but never lost, dashes drawn through, no text. */
export const drawSmall = (
  content: PageContent,
  item: StyledPath | StyledArea | StyledText,
  scale: number,
): void => {
  if (item.kind === 'area') content.area(item.loops, item.color);
  if (item.kind === 'path') {
    const width = Math.max(THINNEST, item.stroke.width * Math.sqrt(scale) * 0.6);
    content.path(item.path, { width, color: item.stroke.color });
  }
};

const unknownItem = (item: never): never => {
  throw new Error(`A drawing holds an item of a kind that nothing draws: ${JSON.stringify(item)}`);
};
