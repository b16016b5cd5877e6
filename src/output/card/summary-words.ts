/** What is made, in the lines under the card's title. */

import { formatLength } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Design } from '../../swag/index.ts';
import { depthWords, partWords, repeatsWords, spanWords } from '../text/index.ts';

export const summaryLines = ({ field, fit }: Design, { foot, marks: { style } }: Plan): readonly string[] => {
  const { shape } = fit.way;
  const { template } = shape.stitching;
  const order = fit.sides.length > 1 ? ` (${fit.sides.map((s) => s.run.name).join(', ')})` : '';
  const corners = {
    none: '',
    turn: ', and one across each corner',
    meet: '',
    open: ', the corners left open',
  };
  const thick = template.thickness === undefined ? '' : `, ${formatLength(template.thickness, style)} thick`;
  return [
    `Template: ${template.title}${thick}, ${partWords(shape)}. Foot: ${formatLength(foot.clearance, style)} from the needle to its outer edge.`,
    `${repeatsWords(fit)} swags${order}${corners[field.corners]}. Span ${spanWords(fit, style)} ${style.unit}, depth ${depthWords(fit, style)} ${style.unit}.`,
  ];
};
