/**
 * What a fit looks like, in one plain sentence: the same on the terminal, under its picture and on the page. What it is
 * made with stands in a second line.
 */

import { plural, series } from '../../document/index.ts';
import type { LengthStyle } from '../../length/index.ts';
import {
  depthsOf,
  type Field,
  type Fit,
  frameSize,
  hasGaps,
  isRound,
  kindsIn,
  type Ranked,
  roomName,
  sidesOf,
  spansOf,
  threadStarts,
} from '../../swag/index.ts';
import {
  bareLength,
  directionWords,
  halvesWords,
  highestOf,
  partWords,
  rangeWords,
  settingWords,
  standsHigher,
  swagsWords,
  usedWords,
  wholeSwags,
} from './choice-words.ts';

/** `5 and 6 swags, 11 5/8 in wide, 4 in deep, touching; fills most of the border`; two kinds are told in turn. */
export const plainSentence = (
  ranked: Pick<Ranked, 'field' | 'fit' | 'score'>,
  style: LengthStyle,
): string => {
  const { field, fit, score } = ranked;
  const { unit } = style;
  const gaps = fit.sides.map((s) => s.seat.gap);
  const apart = hasGaps(fit)
    ? `${rangeWords(gaps, style)} ${unit} apart with ${plural(threadStarts({ field, fit }), 'start')} and stops`
    : 'touching';
  const sizes = kindsIn(sidesOf(fit)).map(
    (kind) =>
      `${rangeWords(spansOf(kind), style)} ${unit} wide, ${rangeWords(depthsOf(kind), style)} ${unit} deep`,
  );
  const sized = sizes.length > 1 ? `in turn ${sizes.join(', and ')}` : sizes[0];
  return [`${countsWords(fit)}, ${sized}, ${apart}`, fillsWords(score.use, field, fit, style)].join('; ');
};

/** `6 swags on each side`; of sides that are as many across the quilt `5 and 6 swags`; else each side's, in their order. */
const countsWords = (fit: Fit): string => {
  const [top = 0, right = 0, bottom, left] = fit.sides.map((s) => wholeSwags(fit, s.repeats));
  const isEven =
    fit.sides.length === 4 && top === bottom && right === left && top !== right && top * right > 0;
  return isEven ? `${series([`${top}`, `${right}`])} swags${halvesWords(fit)}` : swagsWords(fit);
};

/** How much is filled, from which share on. */
const FILLS = [
  [0.95, 'fills'],
  [0.75, 'fills most of'],
  [0.58, 'fills about two thirds of'],
  [0.42, 'fills about half of'],
  [0.28, 'fills about a third of'],
  [0, 'fills little of'],
] as const;

const fillsWords = (use: number, field: Field, fit: Fit, style: LengthStyle): string => {
  const { around } = field;
  const size = frameSize({ field, fit });
  // Without a limit a round frame fills what it makes itself.
  if (around.kind === 'motif' && !Number.isFinite(around.within) && size)
    return `${bareLength(size.width, style)} ${style.unit} across`;
  const [, fills] = FILLS.find(([least]) => use >= least) ?? FILLS.at(-1)!;
  return `${fills} the ${roomName(field)}`;
};

/** What it is made with: `Finial, heel to crown end; crown on centre, inside, heel first; corners turn; uses 88 %`. */
export const makingWords = (
  { field, fit, score }: Pick<Ranked, 'field' | 'fit' | 'score'>,
  style: LengthStyle,
): string => {
  const { shape } = fit.way;
  const kind = fit.pattern.kind === 'in turn' ? 'kind 1: ' : '';
  return [
    `${kind}${shape.stitching.template.title}, ${partWords(shape)}`,
    `${settingWords(fit, field)}, ${shape.side}, ${directionWords(shape)}`,
    ...(field.corners === 'none' ? [] : [`corners ${field.corners}`]),
    ...(standsHigher(fit, style)
      ? [`${rangeWords(highestOf(fit), style)} ${style.unit} at its highest`]
      : []),
    ...(isRound(fit) && field.around.kind === 'motif' && !Number.isFinite(field.around.within)
      ? []
      : [`uses ${usedWords(score.use)}`]),
  ].join('; ');
};

/** `and 12 like it`; nothing where it stands alone. */
export const likeWords = (like: number): string => (like > 0 ? `and ${like} like it` : '');
