/** The best fits for a terminal: each in a plain sentence, and under it what it is made with. */

import type { LengthStyle } from '../../length/index.ts';
import { isRound, isUnmet, type Kind } from '../../swag/index.ts';
import { unitWords } from './choice-words.ts';
import { howRanked } from './how-ranked.ts';
import { likeWords, makingWords, plainSentence } from './plain-sentence.ts';
import { furtherWords } from './row-words.ts';
import { wrapPlain } from './table.ts';
import { answerWords } from './wish-words.ts';

export interface FitTable {
  /** How many of the kinds are shown. */
  readonly most: number;
  readonly style: LengthStyle;
  /** Characters of a line. */
  readonly width: number;
}

/** No line is longer than the width, but for single words that are. */
export const fitTableLines = (
  kinds: readonly Kind[],
  { most, style, width }: FitTable,
): readonly string[] => {
  const shown = kinds.slice(0, most);
  const digits = String(shown.length).length;
  const indent = ' '.repeat(digits + 2);
  const room = width - indent.length;
  const lines = shown.flatMap(({ first, like }, i) => {
    const [head, ...rest] = wrapPlain(plainSentence(first, style), room, '  ');
    const below = [makingWords(first, style), likeWords(like.length)]
      .filter((words) => words !== '')
      .join('; ');
    return [
      `${String(i + 1).padStart(digits)}  ${head}`,
      ...[
        ...rest,
        ...wrapPlain(below, room, '  '),
        ...furtherWords(first, style).flatMap((text) => wrapPlain(text, room, '  ')),
        // How far it is from what was asked, where anything was.
        ...wrapPlain(answerWords(first, style).join('; '), room, '  '),
      ].map((line) => indent + line),
    ];
  });
  const rule = '-'.repeat(Math.max(...lines.map((line) => line.length)));
  return [...lines, rule, ...notes(kinds, shown, style).flatMap((text) => wrapPlain(text, width))];
};

const notes = (kinds: readonly Kind[], shown: readonly Kind[], style: LengthStyle): readonly string[] => {
  const first = kinds[0]?.first;
  const ring = first !== undefined && isRound(first.fit);
  const sides = ring ? [] : (first?.fit.sides ?? []).map((s) => s.run.name);
  const order =
    sides.length === 4
      ? ` Of two counts the first is for ${sides[0]} and ${sides[2]}; four are in the order ${sides.join(', ')}.`
      : '';
  const deep = ring
    ? 'how much farther from the centre or nearer to it the crown is than the start'
    : 'from the line that the swags start on to the crown';
  const uses = ring ? 'the room up to the limit' : 'the width between the margins';
  return [
    `${countedWords(kinds, shown)} Lengths are ${unitWords(style)}.${order} “wide” is straight from start to stop, “deep” ${deep}; “inside” and “outside” say where the template lies, seen from the swag; “uses” is how much of ${uses} is filled where the swags reach least.`,
    ...(first ? [`${first.answers.length > 0 ? ASKED_FIRST : ''}${howRanked(first.field)}`] : []),
  ];
};

/** What is asked comes before all else by which fits are ranked. */
const ASKED_FIRST = 'What is nearest to all that is asked comes before anything else. ';

const countedWords = (kinds: readonly Kind[], shown: readonly Kind[]): string => {
  const found = kinds.reduce((sum, { like }) => sum + 1 + like.length, 0);
  if (kinds[0]?.first.answers.some(isUnmet))
    return shown.length < kinds.length
      ? `None meets all that is asked: the nearest ${shown.length} of ${found}.`
      : 'None meets all that is asked: the nearest.';
  if (found > kinds.length) {
    const kindsShown =
      shown.length < kinds.length
        ? `The best ${shown.length} of ${kinds.length} kinds`
        : kinds.length === 1
          ? 'One kind'
          : `All ${kinds.length} kinds`;
    return `${kindsShown}, ${kinds.length === 1 ? '' : 'each '}for all that looks like it; ${found} fit; --all lists each by itself, and --most says how many.`;
  }
  if (found === 1) return 'One fits.';
  return shown.length < found ? `The best ${shown.length} of ${found} that fit.` : `All ${found} that fit.`;
};
