/** Figures that were typed where the page was in other units: no length changes because she looks at it in others. */

import { readLength, type Units } from '../../length/index.ts';

/** The figure, which says from now on what it was typed in, unless it has a unit of its own or cannot be read. */
export const typedIn = (figure: string, then: Units, now: Units): string => {
  const [meant, read] = [readLength(figure, then, 'any'), readLength(figure, now, 'any')];
  return meant.ok && !(read.ok && read.mm === meant.mm) ? `${figure.trim()} ${then}` : figure;
};
