/** `--show`: how much of the design is drawn or printed. */

import { nearestOf, quoted } from '../document/index.ts';
import { type Scope, scopeOf } from '../drawing/index.ts';
import type { Design } from '../swag/index.ts';
import { wrongValue } from './wrong-use.ts';

/** What to draw, and the design to draw it of. */
export const readShow = (design: Design, text: string): { design: Design; scope: Scope } => {
  const scoped = scopeOf(design, text);
  if (scoped.ok) return scoped;
  const near = nearestOf(text, scoped.known);
  throw wrongValue('--show', 'not in this design', {
    found: quoted(text),
    expected: `one of ${scoped.known.join(', ')}`,
    ...(near === undefined ? {} : { hint: `did you mean ${quoted(near)}?` }),
  });
};
