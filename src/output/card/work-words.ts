/** The work round the marks, in its order: what is done before the first stitch, and how one swag follows another. */

import { cornerSwag, type Design, hasGaps, isClosed, rowsOf } from '../../swag/index.ts';
import type { CardBlock } from './block.ts';

const point = (text: string): CardBlock => ({ kind: 'point', text });

/** Common practice, no source. */
export const prepareBlocks = (): readonly CardBlock[] =>
  [
    'Press and baste the quilt, and stitch in the ditch along the seams first, so that nothing shifts.',
    'Mark with what comes out again: try it on a scrap of these fabrics, and take it out.',
  ].map(point);

/** From the middle outward fullness is pushed to the edge, and not caught between two lines: common practice, no source. */
export const sewBlocks = (design: Design, then: readonly string[]): readonly CardBlock[] => {
  const rows = rowsOf(design);
  const inRows = rows.length > 1 ? ['Row 1 is sewn first, then row 2.'] : [];
  const last = then.length > 0 ? [`First all swags, then the ${then.join(', then the ')}.`] : [];
  return [
    orderWords(design),
    ...cornerOrder(design),
    ...inRows,
    ...last,
    'Bring the bobbin thread up where a line begins, and fasten it with a few tiny stitches; do the same where it ends, and bury the tails.',
  ].map(point);
};

const orderWords = (design: Design): string => {
  const { field, sides, fit } = design;
  const [goesOn, goesOnBack] = hasGaps(fit)
    ? [
        'swag after swag, fastening off at each stop mark, since neighbours do not touch',
        'those before it one by one, the nearest first',
      ]
    : [
        'straight from each swag into the next, since they touch',
        'those before it one by one, the nearest first: each begins at its own start mark, and is fastened off at its stop mark, where the next one is sewn',
      ];
  if (sides.some(({ run }) => isClosed(run)))
    return `Begin at any start mark, and sew round the motif, ${goesOn}.`;
  if (field.around.kind === 'block') return `Begin at any start mark, and sew round the block, ${goesOn}.`;
  const where = sides.length > 1 ? 'On each side begin' : 'Begin';
  return `${where} with the swag in the middle, or the one just past it, and sew on to the end, ${goesOn}. Then sew ${goesOnBack}.`;
};

const cornerOrder = (design: Design): readonly string[] =>
  cornerSwag(design) && design.field.around.kind !== 'block'
    ? ['The swags over the corners come last, each from its start mark to its stop mark.']
    : [];
