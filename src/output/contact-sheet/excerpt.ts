/** What a small picture of a design shows: a corner with its neighbours, or the first repeats of a strip. */

import { type Scope, scopeOf, wholeScope } from '../../drawing/index.ts';
import { type Design, isClosed, repeatMarks } from '../../swag/index.ts';

/** Two repeats show a swag and its join; more would make all pictures smaller. */
const STRIP_REPEATS = 2;

export const excerptOf = (design: Design): Scope => {
  const [first] = design.sides;
  if (first && isClosed(first.run)) return wholeScope(design);
  if (design.sides.length === 1 && first) {
    const count = Math.min(STRIP_REPEATS, first.fit.repeats);
    const repeats = Array.from({ length: count }, (_, i) => i);
    const names = repeats.map((i) => `${first.run.name} ${i + 1}`);
    return {
      label: count === 1 ? 'one repeat' : `${count} repeats`,
      halves: design.halves.filter((h) => names.includes(h.repeat)),
      stretches: [
        { side: first, from: 0, to: repeatMarks(first, count - 1).stop + first.fit.seat.gap / 2, repeats },
      ],
    };
  }
  const corner = scopeOf(design, 'corner');
  if (!corner.ok) throw new Error('A border without a corner was to be drawn');
  return { ...corner.scope, label: 'a corner with a repeat on each side' };
};
