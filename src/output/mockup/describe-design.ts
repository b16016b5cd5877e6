/** What a design comes to, a line for each side: for terminals, for screens and for the cover of the sheets. */

import { formatLength, type LengthStyle, roundLength } from '../../length/index.ts';
import type { Channels } from '../../plan/index.ts';
import {
  cornerSwag,
  type Design,
  depthsOf,
  frameSize,
  kindsIn,
  type Pose,
  smallnessOf,
  spansOf,
} from '../../swag/index.ts';
import { directionWords, furtherWords, isHigher, partWords, settingWords, sideWords } from '../text/index.ts';

/** Paper tells at once whether so small a swag can be sewn; `fit` ranks such ones after others. */
const smallWords = (fit: Design['fit'], length: (mm: number) => string): readonly string[] =>
  smallnessOf(fit) > 0
    ? [
        `very small swags for this foot: ${length(Math.min(...spansOf(fit)))} wide and ${length(Math.min(...depthsOf(fit)))} deep; try one on paper before you cut`,
      ]
    : [];

/**
 * Which part of which template makes it, and how; then a line for each side: `top: 7 swags of 10 1/4 in, 4 3/16 in
 * deep`; and of a frame how large it is when it is finished, the outward channels included. Lengths are rounded as
 * the plan's marks are, so that a figure is the same wherever it is read.
 */
export const describeDesign = (
  design: Design,
  style: LengthStyle,
  channels: Pick<Channels, 'outward'> = { outward: [] },
): readonly string[] => {
  const length = (mm: number): string => formatLength(mm, style);
  const { fit } = design;
  const size = frameSize(
    design,
    channels.outward.reduce((a, b) => a + b, 0),
  );
  const closes = size?.round !== undefined;
  const { shape } = fit.way;
  // Lobes may stand higher than the crown between them: then the depth alone would mislead.
  const highest = (pose: Pose): string =>
    !closes && isHigher(pose.top, pose.depth, style)
      ? ` at the crown, ${length(pose.top)} at the highest`
      : '';
  const lines = fit.sides.map(({ run, repeats, seat }, i) => {
    const sizes = kindsIn(fit).map(({ sides }) => {
      const { span, depth, pose } = sides[i]!.seat;
      return `${length(span)}, ${length(depth)} deep${highest(pose)}`;
    });
    const size = `${sideWords(fit, repeats)}${fit.corner.kind === 'half' ? ',' : ''} of ${sizes.join(', and in turn ')}`;
    // A gap that rounds to nothing is none to her.
    const gap = roundLength(seat.gap, style) > 0 ? `, ${length(seat.gap)} between neighbours` : '';
    return `${run.name}: ${size}${gap}`;
  });
  const corner = cornerSwag(fit);
  const made = [
    partWords(shape),
    settingWords(fit, design.field),
    directionWords(shape),
    `template ${shape.side} the swags`,
  ];
  return [
    `${fit.pattern.kind === 'in turn' ? 'kind 1, ' : ''}${shape.stitching.template.title}: ${made.join(', ')}`,
    ...lines,
    ...(corner === undefined
      ? []
      : [
          // Round a corner a ruler along the mitre shows √2 as much: a depth is the reach into the border.
          `corners: ${length(corner.seat.pose.depth)} deep${highest(corner.seat.pose)}, ${
            corner.kind === 'across'
              ? 'along the mitre, from a line between its marks'
              : 'square from the start line, not along the mitre'
          }`,
        ]),
    ...furtherWords(design, style),
    ...kindsIn(fit).flatMap((kind) => smallWords(kind, length)),
    ...(size === undefined
      ? []
      : closes
        ? [`finished frame: ${length(size.width)} across, ${length(size.inside.width)} free inside`]
        : [
            `finished frame: ${length(size.width)} wide and ${length(size.height)} high, ` +
              `${length(size.inside.width)} by ${length(size.inside.height)} free inside`,
          ]),
  ];
};
