/** What stands under a candidate's picture: five lines, short where the counts' sides are not named. */

import type { LengthStyle } from '../../length/index.ts';
import { depthsOf, frameSize, type Ranked, spansOf } from '../../swag/index.ts';
import {
  bareLength,
  directionWords,
  partWords,
  rangeWords,
  settingWords,
  swagsWords,
} from '../text/index.ts';

export const captionOf = (
  { field, fit, score }: Ranked,
  style: LengthStyle,
  naming: 'named' | 'unnamed' = 'unnamed',
): readonly string[] => {
  const { shape } = fit.way;
  const seats = fit.sides.map((s) => s.seat);
  const spans = spansOf(fit);
  const size = frameSize({ field, fit });
  const gaps = seats.map((s) => s.gap);
  const { unit } = style;
  const corners = field.corners === 'none' ? '' : `, corners ${field.corners}`;
  const gapWidth = rangeWords(gaps, style);
  const gap = gapWidth === '0' ? '' : `, gap ${gapWidth}`;
  const { beyond } = fit;
  const further = beyond
    ? [
        `row 2: ${beyond.fit.way.shape.stitching.template.title}, ${partWords(beyond.fit.way.shape)}, ${rangeWords(depthsOf(beyond.fit), style)} ${unit} deep`,
      ]
    : [];
  return [
    `${shape.stitching.template.title}, ${partWords(shape)}`,
    `${settingWords(fit, field)}, ${shape.side}, ${directionWords(shape)}`,
    `${swagsWords(fit, naming)}${corners}`,
    `${rangeWords(spans, style)} ${unit} wide${gap}`,
    `${rangeWords(depthsOf(fit), style)} ${unit} deep, ${size?.round ? `${bareLength(size.width, style)} ${unit} across` : `uses ${Math.round(100 * score.use)} %`}`,
    ...further,
  ];
};
