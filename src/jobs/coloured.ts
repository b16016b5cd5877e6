/** A picture to show, in the plan's colours of fabric and thread. */

import {
  type ClothArea,
  clothColours,
  colourDoubts,
  type Drawing,
  inColours,
  type LayerId,
  SHEET,
  type StyledDrawing,
  styled,
} from '../drawing/index.ts';
import { viewBox } from '../output/view/index.ts';
import type { Plan } from '../plan/index.ts';

/** What is left out where nothing is said: the quilt as it looks when it is done. */
export const NOT_TO_SHOW: readonly LayerId[] = ['way', 'template', 'marks', 'notes'];

/** Of what was made, a few words. */
export const IN_COLOURS = 'in its colours of fabric and thread';

export interface Coloured {
  readonly drawing: StyledDrawing;
  /** What a person should know of her colours. */
  readonly notices: readonly string[];
}

/** `onMiddle` where the middle is quilted too. */
export const coloured = (
  drawing: Drawing,
  cloth: readonly ClothArea[],
  { colours: written }: Pick<Plan, 'colours'>,
  without: readonly LayerId[],
  onMiddle = false,
): Coloured => {
  const colours = clothColours(written);
  const box = viewBox(styled(drawing, SHEET), { without });
  return {
    drawing: inColours(drawing, { cloth, colours, box, without }),
    notices: colourDoubts(colours, onMiddle),
  };
};
