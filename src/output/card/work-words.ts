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
  const inRows = rows.length > 1 ? ' Row 1 is sewn first, then row 2.' : '';
  const last = then.length > 0 ? ` First all swags, then the ${then.join(', then the ')}.` : '';
  return [
    `${orderWords(design)}${inRows}${last}`,
    neighbourWords(rows),
    'Bring the bobbin thread up where a line begins, and fasten it with a few tiny stitches; do the same where it ends, and bury the tails.',
  ].map(point);
};

const orderWords = (design: Design): string => {
  const { field, sides } = design;
  if (sides.some(({ run }) => isClosed(run))) return 'Begin at any start mark, and sew round the motif.';
  if (field.around.kind === 'block') return 'Begin at any start mark, and sew round the block.';
  const where = sides.length > 1 ? 'On each side begin' : 'Begin';
  const corners = cornerSwag(design) ? ' The swags over the corners come last.' : '';
  return `${where} with the swag in the middle, and sew on from it to the end; then sew those before it, one by one, back to the tape’s 0.${corners}`;
};

const neighbourWords = (rows: readonly Design[]): string => {
  const gaps = rows.map(({ fit }) => hasGaps(fit));
  if (!gaps.includes(true)) return 'Where two swags touch, sew straight on into the next.';
  if (!gaps.includes(false))
    return 'Neighbours do not touch: fasten off at each stop mark, and begin anew at the next start mark.';
  return 'Where two swags touch, sew straight on into the next; where they do not, fasten off at the stop mark, and begin anew at the next start mark.';
};
