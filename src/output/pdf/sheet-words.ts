/** The words in the check square: which sheet this is, how it must be printed, and how to see that it was. */

import {
  correctionWords,
  isCorrected,
  type PerEdge,
  type Sheet,
  type SheetPlan,
} from '../../pagination/index.ts';
import type { Pdf } from './document.ts';
import { INK, LEADING, TYPE } from './look.ts';
import type { Correction, Form, PageContent } from './page-content.ts';
import { fitText, wrapText } from './typeface.ts';

const PADDING = 3;
const LABEL_SIZE = 12;
/** Letters' height over the base line, as a share of the size. */
const CAP = 0.73;
/** A thin white rim keeps the words readable where a full sheet leaves the square no clear place. */
export const HALO = 0.35;

/** Which sheet this is, large, in the check square. */
export const drawLabel = (content: PageContent, plan: SheetPlan, sheet: Sheet): void => {
  const { x, y } = sheet.check;
  const room = plan.check.side - 2 * PADDING - widthOfFacts(content, plan) - 2;
  // A label such as AB12 is set smaller rather than run into what stands beside it.
  const size = Math.min(LABEL_SIZE, room / content.width(sheet.label, 1, true));
  const at = { x: x + PADDING, y: y + labelBase(plan) };
  content.text({ text: sheet.label, at, size, color: INK.text, bold: true, halo: HALO });
};

/**
 * All other words, as a form to be put at the square's lower left corner: the same on every sheet that is cut on the
 * same sides, and so only written once.
 */
export const makeWords = (
  pdf: Pdf,
  plan: SheetPlan,
  title: string,
  correction: Correction,
): ((sheet: Sheet) => Form) => {
  const known = new Map<string, Form>();
  const { side } = plan.check;
  return (sheet) => {
    const cut = cutSides(sheet);
    const key = cut.join(' ');
    const form =
      known.get(key) ??
      pdf.form(
        { minX: 0, minY: 0, maxX: side, maxY: side },
        (content) => drawWords(content, plan, title, cut),
        correction,
      );
    known.set(key, form);
    return form;
  };
};

const factsOf = (plan: SheetPlan): readonly string[] => [
  plan.paper.name,
  plan.orientation,
  plan.sheets.length === 1 ? 'the only sheet' : `one of ${plan.sheets.length}`,
];

const widthOfFacts = (content: PageContent, plan: SheetPlan): number =>
  Math.max(...factsOf(plan).map((text) => content.width(text, TYPE.fine)));

const labelBase = (plan: SheetPlan): number => plan.check.side - PADDING - CAP * LABEL_SIZE;

const drawWords = (content: PageContent, plan: SheetPlan, title: string, cut: readonly string[]): void => {
  const left = PADDING;
  const right = plan.check.side - PADDING;
  const base = labelBase(plan);
  const facts = factsOf(plan);
  for (const [i, text] of facts.entries())
    content.text({
      text,
      at: { x: right, y: base + (facts.length - 1 - i) * LEADING * TYPE.fine },
      size: TYPE.fine,
      color: INK.quiet,
      align: 'end',
      halo: HALO,
    });

  let y = base - 4.6;
  for (const [i, text] of titleLines(content, title, right - left).entries()) {
    if (i > 0) y -= 1.25 * TYPE.small;
    content.text({ text, at: { x: left, y }, size: TYPE.small, color: INK.text, bold: true, halo: HALO });
  }
  for (const text of wordsFor(plan, cut)) {
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

const cutSides = (sheet: Sheet): readonly string[] =>
  ['top', 'left'].filter((side) => sheet.edges.some((e) => e.cut && e.side === side));

/** Each a short paragraph. */
const wordsFor = (plan: SheetPlan, cut: readonly string[]): string[] => {
  const words = [
    'Print at 100 % / actual size, not fit to page; borderless off; one-sided.',
    'Lay a ruler here and along the frame. Where 100 mm reads 94, 96 or 97, the viewer shrank it.',
  ];
  if (cut.length > 0) words.push(`Cut along the dashes (${cut.join(', ')}), lay on top, cross on cross.`);
  if (isCorrected(plan.measured)) words.push(correctedFor(plan.measured));
  return words;
};

/** Said by the edges of the paper and not by across and up, because on a landscape sheet these change places. */
export const correctedFor = (measured: PerEdge): string =>
  `Corrected for your printer: ${correctionWords(measured).replaceAll('× ', '×\u00a0')}.`;
