/** What is made, in the lines under the card's title. */

import { capital } from '../../document/index.ts';
import { exactLength, formatLength } from '../../length/index.ts';
import { hasEnds, type Plan } from '../../plan/index.ts';
import { type Design, depthsOf, frameSize, spansOf } from '../../swag/index.ts';
import { beyondWords, highestOf, partWords, rangeWords, standsHigher, wholeSwags } from '../text/index.ts';

export const summaryLines = (design: Design, plan: Plan): readonly string[] => {
  const { field, fit } = design;
  const {
    foot,
    marks: { style },
  } = plan;
  const { shape } = fit.way;
  const { template } = shape.stitching;
  const counts =
    fit.sides.length > 1
      ? fit.sides.map((s) => `${s.run.name} ${wholeSwags(fit, s.repeats) || 'none'}`).join(', ')
      : String(fit.sides[0]?.repeats);
  const corners = {
    none: '',
    turn: ', one round each corner',
    across: ', one across each corner',
    half: ', and half a swag at each end of every side; the corner squares left free',
    meet: '',
    open: ', corners left open',
  };
  const spans = spansOf(fit);
  const gaps = fit.sides.map((s) => s.seat.gap);
  const gapWidth = rangeWords(gaps, style);
  const gap = gapWidth === '0' ? '' : `, ${gapWidth} ${style.unit} between neighbours`;
  const higher = standsHigher(fit, style)
    ? ` at the crown, ${rangeWords(highestOf(fit), style)} ${style.unit} at its highest`
    : '';
  const thick = template.thickness === undefined ? '' : `, ${exactLength(template.thickness, style)} thick`;
  return [
    `Template: ${template.title}${thick}, ${partWords(shape)}. Foot: ${exactLength(foot.clearance, style)} from the needle to its outer edge.`,
    `Swags: ${counts}${corners[field.corners]}. Span ${rangeWords(spans, style)} ${style.unit}, ${rangeWords(depthsOf(fit), style)} ${style.unit} deep${higher}${gap}${endsWords(plan)}.`,
    ...beyondWords(design, style).map((text) => `${capital(text)}.`),
    ...sizeWords(design, plan),
    ...copiesWords(plan),
    ...plan.doubts,
  ];
};

const endsWords = ({ layout, marks: { style } }: Plan): string =>
  hasEnds(layout) && layout.ends > 0 ? `, ${formatLength(layout.ends, style)} kept clear at both ends` : '';

const sizeWords = (design: Design, { marks: { style } }: Plan): readonly string[] => {
  const size = frameSize(design);
  if (!size?.round) return [];
  const channels = size.round.away > 0 ? ', channels included' : '';
  return [
    `Finished frame: ${formatLength(size.width, style)} across${channels}; ${formatLength(size.inside.width, style)} across is free inside it.`,
  ];
};

/** A part that lies in several places of a quilt is sewn as often. */
const copiesWords = ({ part }: Plan): readonly string[] =>
  part && part.places.length > 1
    ? [`Sewn ${part.places.length} times on the quilt; stitching and thread are for one.`]
    : [];
