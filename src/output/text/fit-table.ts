/** The best fits as a table for a terminal: two lines each, what to do and what comes of it. */

import type { LengthStyle } from '../../length/index.ts';
import { cornerSwag, depthsOf, frameSize, isRound, isUnmet, type Ranked, spansOf } from '../../swag/index.ts';
import {
  bareLength as bare,
  depthWords,
  directionWords,
  gapWords,
  highestOf,
  partWords,
  printedSpread,
  rangeWords,
  repeatsWords,
  settingWords,
  spanWords,
  standsHigher,
  unitWords,
} from './choice-words.ts';
import { HOW_RANKED, HOW_RINGS_ARE_RANKED } from './how-ranked.ts';
import { beyondWords } from './row-words.ts';
import { alignRows, wrapPlain } from './table.ts';
import { answerWords } from './wish-words.ts';

export interface FitTable {
  /** How many of the results are shown. */
  readonly most: number;
  readonly style: LengthStyle;
  /** Characters of a line. */
  readonly width: number;
}

/** No line is longer than the width, but for a width below what the bare figures need. */
export const fitTableLines = (
  results: readonly Ranked[],
  { most, style, width }: FitTable,
): readonly string[] => {
  const shown = results.slice(0, most);
  const numbers = alignRows(
    [['no'], ...shown.map((_, i) => [String(i + 1)])],
    [{ head: '', align: 'right' }],
  );
  const indent = ' '.repeat(numbers[0]!.length);
  const room = width - indent.length - 2;
  const top = firstThatFits(room, [
    () =>
      tableOf(
        CHOICE_HEADS,
        shown.map((r) => choiceRow(r, true, MOST_TITLE)),
      ),
    () =>
      tableOf(
        CHOICE_HEADS,
        shown.map((r) => choiceRow(r, false, MOST_TITLE)),
      ),
    () =>
      tableOf(
        CHOICE_HEADS,
        shown.map((r) => choiceRow(r, false, SHORT_TITLE)),
      ),
  ]);
  const below = firstThatFits(room, [
    () =>
      tableOf(
        headsOf(shown, style),
        shown.map((r) => figureRow(r, shown, style, false)),
      ),
    () =>
      tableOf(
        headsOf(shown, style),
        shown.map((r) => figureRow(r, shown, style, true)),
      ),
  ]);
  const lines = numbers.map((number, i) => [
    `${number}  ${top[i]}`,
    `${indent}  ${below[i]}`,
    ...rowLines(shown[i - 1], style, room).map((line) => `${indent}  ${line}`),
    ...answerLines(shown[i - 1], style, room).map((line) => `${indent}  ${line}`),
  ]);
  const rule = '-'.repeat(Math.max(...lines.flat().map((line) => line.length)));
  return [...lines[0]!, rule, ...lines.slice(1).flat(), rule, ...notes(results, shown, style, width)];
};

/** How far a fit is from what was asked, where anything was. */
const answerLines = (ranked: Ranked | undefined, style: LengthStyle, room: number): readonly string[] =>
  ranked ? wrapPlain(answerWords(ranked, style).join('; '), room, '  ') : [];

const rowLines = (ranked: Ranked | undefined, style: LengthStyle, room: number): readonly string[] =>
  (ranked ? beyondWords(ranked, style) : []).flatMap((text) => wrapPlain(text, room));

const tableOf = (heads: readonly string[], rows: readonly (readonly string[])[]): readonly string[] =>
  alignRows(
    [heads, ...rows],
    heads.map((head) => ({ head })),
  );

/** The first way to set a table in which every line fits, else the last. */
const firstThatFits = (room: number, ways: readonly (() => readonly string[])[]): readonly string[] => {
  let lines: readonly string[] = [];
  for (const way of ways) {
    lines = way();
    if (Math.max(...lines.map((line) => line.length)) <= room) break;
  }
  return lines;
};

/** Characters of a template's title. */
const MOST_TITLE = 20;
const SHORT_TITLE = 10;

const cut = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;

const CHOICE_HEADS = ['template', 'from - to', 'set', 'corners', 'lies', 'starts'];

const choiceRow = ({ fit, field }: Ranked, withNames: boolean, title: number): readonly string[] => {
  const { shape } = fit.way;
  return [
    cut(shape.stitching.template.title, title),
    partWords(shape, withNames ? 'label' : 'brief'),
    settingWords(fit, field),
    field.corners === 'none' ? '' : field.corners,
    shape.side,
    directionWords(shape),
  ];
};

const FIGURE_HEADS = ['repeats', 'span', 'depth', 'differ', 'gap', 'uses'];
const RING_HEADS = ['swags', 'span', 'depth', 'across', 'gap', 'uses'];

/** Lobes that stand higher than the crown get a column of their own, where there are any. */
const haveHigher = (results: readonly Ranked[], style: LengthStyle): boolean =>
  results.some((r) => standsHigher(r.fit, style));

const headsOf = (results: readonly Ranked[], style: LengthStyle): readonly string[] => {
  if (results[0] && isRound(results[0].fit)) return RING_HEADS;
  return haveHigher(results, style)
    ? FIGURE_HEADS.flatMap((head) => (head === 'depth' ? [head, 'highest'] : [head]))
    : FIGURE_HEADS;
};

const figureRow = (
  { field, fit, score }: Ranked,
  shown: readonly Ranked[],
  style: LengthStyle,
  short: boolean,
): readonly string[] => {
  const seats = fit.sides.map((s) => s.seat);
  const size = frameSize({ field, fit });
  const each = (values: readonly number[], words: string): string =>
    short ? rangeWords(values, style) : words;
  return [
    repeatsWords(fit),
    each(spansOf(fit), spanWords(fit, style)),
    each(depthsOf(fit), depthWords(fit, style)),
    ...(haveHigher(shown, style)
      ? [rangeWords(standsHigher(fit, style) ? highestOf(fit) : depthsOf(fit), style)]
      : []),
    bare(size && isRound(fit) ? size.width : printedSpread(depthsOf(fit), style), style),
    each(
      seats.map((s) => s.gap),
      gapWords(fit, style),
    ),
    `${Math.round(100 * score.use)} %`,
  ];
};

const notes = (
  results: readonly Ranked[],
  shown: readonly Ranked[],
  style: LengthStyle,
  width: number,
): readonly string[] => {
  if (results[0] && isRound(results[0].fit)) return ringNotes(results, shown, style, width);
  const sides = (results[0]?.fit.sides ?? []).map((s) => s.run.name);
  const order = sides.length > 1 ? ` Where sides differ, they stand in the order ${sides.join(', ')}.` : '';
  return [
    `${countedWords(results, shown)} Lengths are ${unitWords(style)}.${order} “lies” is where the template lies, seen from the swag; “depth” is that of the crown${haveHigher(shown, style) ? ', “highest” how far the stitching reaches' : ''}; “differ” is the difference in depth between sides${results[0] && cornerSwag(results[0].fit) ? ' and corners' : ''}; “uses” is how much of the width between the margins is filled.`,
    HOW_RANKED,
  ].flatMap((text) => wrapPlain(text, width));
};

const countedWords = (results: readonly Ranked[], shown: readonly Ranked[]): string => {
  const { length } = results;
  if (results[0]?.answers.some(isUnmet))
    return shown.length < length
      ? `None meets all that is asked: the nearest ${shown.length} of ${length}.`
      : 'None meets all that is asked: the nearest.';
  return shown.length < length
    ? `The best ${shown.length} of ${length} that fit.`
    : `All ${length} that fit.`;
};

const ringNotes = (
  results: readonly Ranked[],
  shown: readonly Ranked[],
  style: LengthStyle,
  width: number,
): readonly string[] => {
  return [
    `${countedWords(results, shown)} Lengths are ${unitWords(style)}. “lies” is where the template lies, seen from the swag; “span” is straight from start to stop, “depth” how much farther from the centre or nearer to it the crown is, “across” the finished frame with its channels; “uses” is how much of the room up to the limit is filled.`,
    HOW_RINGS_ARE_RANKED,
  ].flatMap((text) => wrapPlain(text, width));
};
