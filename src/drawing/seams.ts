/** The cloth that a design lies on: seams, margins and mitres. */

import { movePath, polyline } from '../geometry/index.ts';
import type { Design } from '../swag/index.ts';
import type { Item } from './drawing.ts';
import type { LineRole } from './role.ts';
import type { Stretch } from './scope.ts';

/** The two seams, the margins and, at a corner, the mitre, along the stretch that is shown. */
export const seamItems = (design: Design, { side, from, to }: Stretch): readonly Item[] => {
  const { field } = design;
  const length = side.run.length + (side.tear?.by ?? 0);
  const near = -field.startMargin;
  const far = field.width - field.startMargin;
  // Seams meet their neighbours' on the mitres: each mm out from the start line is a mm longer at each end.
  const lean = field.corners === 'none' ? 0 : field.from === 'outer' ? -1 : 1;
  const startCorner = field.corners === 'open' ? 0 : undefined;
  const endsAt = (y: number): number => {
    if (lean === 0) return 0;
    if (startCorner === undefined) return lean * y;
    // The runs of open corners stop beside the inner corner: the outer seam reaches one width over.
    const isInner = (field.from === 'inner') === (y === near);
    return isInner ? 0 : field.width;
  };
  const level = (y: number, role: LineRole, kind: string): Item => {
    const over = endsAt(y);
    const a = from <= 0 ? -over : from;
    const b = to >= length ? length + over : to;
    return {
      kind: 'path',
      path: movePath(
        polyline([
          { x: a, y },
          { x: b, y },
        ]),
        side.motion,
      ),
      role,
      facts: { side: side.run.name, line: kind },
    };
  };
  const items = field.lines.map((line) => level(line.level, line.role, line.name));
  if (field.corners === 'turn' || field.corners === 'meet') {
    const mitre = (x: number, sense: number): Item => ({
      kind: 'path',
      path: movePath(
        polyline([
          { x: x - sense * lean * near, y: near },
          { x: x - sense * lean * far, y: far },
        ]),
        side.motion,
      ),
      role: 'mitre',
      facts: { side: side.run.name, line: 'mitre' },
    });
    // Each mitre is drawn with the side that ends there; a corner's own picture shows both sides.
    if (to >= length) items.push(mitre(length, -1));
  }
  return items;
};
