/** A row on the marks of another, or a second kind of swag, in a sentence: the same on terminals, covers and cards. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import { depthsOf, type Fit, kindsIn, ownCorner, type Ranked } from '../../swag/index.ts';
import { directionWords, partWords, rangeWords, settingWords } from './choice-words.ts';

/**
 * `row 2, starting 1 in beyond row 1: Finial, heel to crown end, …, 4 3/16 in deep`, `kind 2: Finial, …`, `corners: Finial, …`;
 * nothing where there is one row of one kind, over the corners too.
 */
export const furtherWords = (
  { field, fit }: Pick<Ranked, 'field' | 'fit'>,
  style: LengthStyle,
): readonly string[] => [
  ...kindsIn(fit)
    .slice(1)
    .map((kind) => madeOf('kind 2', kind, field)),
  ...cornerWords(fit, field),
  ...(fit.beyond ? [rowWords(field.startMargin, fit.beyond, style)] : []),
];

const cornerWords = (fit: Fit, field: Ranked['field']): readonly string[] => {
  const way = ownCorner(fit);
  return way ? [madeOf('corners', { ...fit, way }, field)] : [];
};

/** Its sizes stand beside the first one's. */
const madeOf = (name: string, fit: Fit, field: Ranked['field']): string => {
  const { shape } = fit.way;
  const made = [settingWords(fit, field), shape.side, directionWords(shape)].join(', ');
  return `${name}: ${shape.stitching.template.title}, ${partWords(shape)}; ${made}`;
};

const madeWords = (fit: Fit, field: Ranked['field']): string => {
  const { shape } = fit.way;
  return [
    shape.stitching.template.title,
    partWords(shape),
    settingWords(fit, field),
    directionWords(shape),
    `template ${shape.side} the swags`,
  ].join(', ');
};

const rowWords = (near: number, { field, fit }: NonNullable<Fit['beyond']>, style: LengthStyle): string => {
  const at = field.startMargin - near;
  const starts =
    at > 0 ? `starting ${formatLength(at, style)} beyond row 1` : 'starting on the marks of row 1';
  return `row 2, ${starts}: ${madeWords(fit, field)}, ${rangeWords(depthsOf(fit), style)} ${style.unit} deep`;
};
