/** A row on the marks of another, in a sentence: the same on terminals, covers and cards. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import { depthsOf, type Fit, type Ranked } from '../../swag/index.ts';
import { directionWords, partWords, rangeWords, settingWords } from './choice-words.ts';

/** `row 2, starting 1 in beyond row 1: Finial, heel to crown end, …, 4 3/16 in deep`; nothing where there is one row. */
export const beyondWords = (
  { field, fit }: Pick<Ranked, 'field' | 'fit'>,
  style: LengthStyle,
): readonly string[] => (fit.beyond ? [rowWords(field.startMargin, fit.beyond, style)] : []);

const rowWords = (near: number, { field, fit }: NonNullable<Fit['beyond']>, style: LengthStyle): string => {
  const at = field.startMargin - near;
  const { shape } = fit.way;
  const starts =
    at > 0 ? `starting ${formatLength(at, style)} beyond row 1` : 'starting on the marks of row 1';
  return [
    `row 2, ${starts}: ${shape.stitching.template.title}`,
    partWords(shape),
    settingWords(fit, field),
    directionWords(shape),
    `template ${shape.side} the swags`,
    `${rangeWords(depthsOf(fit), style)} ${style.unit} deep`,
  ].join(', ');
};
