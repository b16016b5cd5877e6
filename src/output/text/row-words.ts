/** A row on the marks of another, or a second kind of swag, in a sentence: the same on terminals, covers and cards. */

import { formatLength, type LengthStyle } from '../../length/index.ts';
import {
  cornerSwag,
  depthsOf,
  type Fit,
  isSmooth,
  kindsIn,
  ownCorner,
  type Ranked,
} from '../../swag/index.ts';
import { directionWords, isHigher, partWords, rangeWords, settingWords } from './choice-words.ts';

/**
 * `row 2, starting 1 in beyond row 1: Finial, heel to crown end, …, 4 3/16 in deep`, `kind 2: Finial, …`, `corners: Finial, …, 4 3/16 in deep, meeting in a point on the mitre`;
 * nothing where there is one row of one kind, over the corners too.
 */
export const furtherWords = (
  { field, fit }: Pick<Ranked, 'field' | 'fit'>,
  style: LengthStyle,
): readonly string[] => [
  ...kindsIn(fit)
    .slice(1)
    .map((kind) => madeOf('kind 2', kind, field)),
  ...cornerWords(fit, field, style),
  ...(fit.beyond ? [rowWords(field.startMargin, fit.beyond, style)] : []),
];

const cornerWords = (fit: Fit, field: Ranked['field'], style: LengthStyle): readonly string[] => {
  const way = ownCorner(fit);
  const over = cornerSwag(fit);
  if (!way || !over) return [];
  const { span, depth, pose } = over.seat;
  // Round a corner it has no width of its own.
  const wide = over.kind === 'across' ? `, ${formatLength(span, style)} wide` : '';
  const meeting = isSmooth(over.seat) ? 'one smooth curve on the mitre' : 'meeting in a point on the mitre';
  const deep = `${formatLength(depth, style)} deep`;
  const high = isHigher(pose.top, depth, style)
    ? `${deep} at the crown, ${formatLength(pose.top, style)} at its highest`
    : deep;
  return [`${madeOf('corners', { ...fit, way }, field)}${wide}, ${high}, ${meeting}`];
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
