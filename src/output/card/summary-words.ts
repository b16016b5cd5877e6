/** What is made, in the lines under the card's title. */

import { capital } from '../../document/index.ts';
import { exactLength, formatLength } from '../../length/index.ts';
import { hasEnds, type Plan } from '../../plan/index.ts';
import { type Design, depthsOf, frameSize, kindsIn, ownCorner, sidesOf, spansOf } from '../../swag/index.ts';
import { furtherWords, highestOf, partWords, rangeWords, standsHigher, wholeSwags } from '../text/index.ts';

export const summaryLines = (design: Design, plan: Plan): readonly string[] => {
  const { field, fit } = design;
  const {
    foot,
    marks: { style },
  } = plan;
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
  const kinds = kindsIn(fit);
  const inTurn = kinds.length > 1;
  const gaps = fit.sides.map((s) => s.seat.gap);
  const gapWidth = rangeWords(gaps, style);
  const gap = gapWidth === '0' ? '' : `, ${gapWidth} ${style.unit} between neighbours`;
  const corner = ownCorner(fit);
  const of = corner ? [' of the sides', ' of the corners'] : inTurn ? [' of kind 1', ' of kind 2'] : [''];
  const templates = [...kinds.map(({ way }) => way), ...(corner ? [corner] : [])].map(({ shape }, k) => {
    const { title, thickness } = shape.stitching.template;
    const thick = thickness === undefined ? '' : `, ${exactLength(thickness, style)} thick`;
    return `Template${of[k]}: ${title}${thick}, ${partWords(shape)}.`;
  });
  const sizes = kindsIn(sidesOf(fit)).map((kind, k) => {
    const words = (of: readonly number[]): string => `${rangeWords(of, style)} ${style.unit}`;
    const higher = standsHigher(kind, style) ? ` at the crown, ${words(highestOf(kind))} at its highest` : '';
    return `${inTurn ? `Kind ${k + 1}: span` : 'Span'} ${words(spansOf(kind))}, ${words(depthsOf(kind))} deep${higher}`;
  });
  return [
    `${templates.join(' ')} Foot: ${exactLength(foot.clearance, style)} from the needle to its outer edge.`,
    `Swags: ${counts}${inTurn ? ', of two kinds in turn' : ''}${corners[field.corners]}. ${sizes.join('. ')}${gap}${endsWords(plan)}.`,
    ...furtherWords(design, style).map((text) => `${capital(text)}.`),
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
