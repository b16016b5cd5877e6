/** The cloth that a design lies on: seams, margins and mitres. */

import { movePath, polyline } from '../geometry/index.ts';
import { type Design, leavesSquare, levelPath } from '../swag/index.ts';
import type { Item } from './drawing.ts';
import type { Stretch } from './scope.ts';

/** The band's lines and, at a corner, the mitre, along the stretch that is shown. */
export const seamItems = (design: Design, { side: { run }, from, to }: Stretch): readonly Item[] => {
  const { field } = design;
  const near = -field.startMargin;
  const far = field.width - field.startMargin;
  // Seams meet their neighbours' on the mitres: each mm out from the start line they are longer at each end.
  const lean = field.corners === 'none' ? 0 : 1 / Math.tan(field.mitre);
  const endsAt = (level: number): number => {
    if (run.ends > 0) return run.ends;
    if (!leavesSquare(field)) return lean * (level - field.marksAt);
    // The runs of open corners stop beside the inner corner: the outer seam reaches one width over.
    const isInner = (field.from === 'inner') === (level === near);
    return isInner ? 0 : field.width;
  };
  const at = (level: number, x: number) => ({ x, y: level });
  const items = field.lines.map(({ role, name, level }): Item => {
    const over = endsAt(level);
    const a = from <= 0 ? -over : from;
    const b = to >= run.drawn ? run.drawn + over : to;
    return {
      kind: 'path',
      path: levelPath(run, level, a, b),
      role,
      facts: { side: run.name, line: name, ...calledWords(field, role, level) },
    };
  });
  if (run.ends > 0) {
    const across = (x: number): Item => ({
      kind: 'path',
      path: movePath(polyline([at(near, x), at(far, x)]), run.place),
      role: 'margin',
      facts: { side: run.name, line: 'end margin' },
    });
    if (from <= 0) items.push(across(0));
    if (to >= run.drawn) items.push(across(run.drawn));
  }
  // Each mitre is drawn with the side that ends there; a corner's own picture shows both sides.
  if (field.corners !== 'none' && !leavesSquare(field) && to >= run.drawn) {
    const onMitre = (level: number) => at(level, run.drawn + lean * (level - field.marksAt));
    items.push({
      kind: 'path',
      path: movePath(polyline([onMitre(near), onMitre(far)]), run.place),
      role: 'mitre',
      facts: { side: run.name, line: 'mitre' },
    });
  }
  return items;
};

/** What a person calls the line that is laid on a seam, or on what a frame goes round; nothing of other lines. */
const calledWords = (
  { corners, from, startMargin }: Design['field'],
  role: Design['field']['lines'][number]['role'],
  level: number,
): { readonly called?: string } => {
  if (role === 'block' || role === 'motif') return { called: `edge of the ${role}` };
  if (role !== 'seam') return {};
  const isNear = level === -startMargin;
  if (corners === 'none') return { called: isNear ? 'seam' : 'far seam' };
  return { called: isNear === (from === 'inner') ? 'inner seam' : 'outer seam' };
};
