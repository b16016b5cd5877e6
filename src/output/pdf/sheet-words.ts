/** The words in the check square: which sheet this is, how it must be printed, and how to see that it was. */

import type { Sheet, SheetPlan } from '../../pagination/index.ts';
import { INK, LEADING, TYPE } from './look.ts';
import type { PageContent } from './page-content.ts';
import { fitText, wrapText } from './typeface.ts';

const PADDING = 3;
const LABEL_SIZE = 12;
/** Letters' height over the base line, as a share of the size. */
const CAP = 0.73;
/** A thin white rim keeps the words readable where a full sheet leaves the square no clear place. */
const HALO = 0.35;

export const drawWords = (content: PageContent, plan: SheetPlan, sheet: Sheet, title: string): void => {
  const left = sheet.check.x + PADDING;
  const right = sheet.check.x + plan.check.side - PADDING;
  const top = sheet.check.y + plan.check.side - PADDING;
  const facts = [
    plan.paper.name,
    plan.orientation,
    plan.sheets.length === 1 ? 'the only sheet' : `one of ${plan.sheets.length}`,
  ];
  const aside = Math.max(...facts.map((text) => content.width(text, TYPE.fine)));
  // A label such as AB12 is set smaller rather than run into what stands beside it.
  const size = Math.min(LABEL_SIZE, (right - left - aside - 2) / content.width(sheet.label, 1, true));
  const label = { x: left, y: top - CAP * LABEL_SIZE };
  content.text({ text: sheet.label, at: label, size, color: INK.text, bold: true, halo: HALO });
  for (const [i, text] of facts.entries())
    content.text({
      text,
      at: { x: right, y: label.y + (facts.length - 1 - i) * LEADING * TYPE.fine },
      size: TYPE.fine,
      color: INK.quiet,
      align: 'end',
      halo: HALO,
    });

  let y = label.y - 4.6;
  for (const [i, text] of titleLines(content, title, right - left).entries()) {
    if (i > 0) y -= 1.25 * TYPE.small;
    content.text({ text, at: { x: left, y }, size: TYPE.small, color: INK.text, bold: true, halo: HALO });
  }
  for (const text of wordsFor(plan, sheet)) {
    y -= 0.9;
    for (const line of wrapText(content.faces.regular, text, TYPE.fine, right - left)) {
      y -= LEADING * TYPE.fine;
      content.text({ text: line, at: { x: left, y }, size: TYPE.fine, color: INK.text, halo: HALO });
    }
  }
};

/** At most two lines; the rest of a longer title is on the cover. */
const titleLines = (content: PageContent, title: string, width: number): string[] => {
  const face = content.faces.bold;
  const [first, ...rest] = wrapText(face, title, TYPE.small, width);
  if (first === undefined) return [];
  return rest.length === 0 ? [first] : [first, fitText(face, rest.join(' '), TYPE.small, width)];
};

/** Each a short paragraph. */
const wordsFor = (plan: SheetPlan, sheet: Sheet): string[] => {
  const words = [
    'Print at 100 % / actual size, not fit to page; borderless off; one-sided.',
    'Lay a ruler here and along the frame. Where 100 mm reads 94, 96 or 97, the viewer shrank it.',
  ];
  const cut = ['top', 'left'].filter((side) => sheet.edges.some((e) => e.cut && e.side === side));
  if (cut.length > 0) words.push(`Cut along the dashes (${cut.join(', ')}), lay on top, cross on cross.`);
  const { x, y } = plan.factors;
  words.push(
    x === 1 && y === 1
      ? `Not corrected for a printer: × ${x.toFixed(4)} both ways.`
      : `Corrected for your printer: × ${x.toFixed(4)} across, × ${y.toFixed(4)} up.`,
  );
  return words;
};
