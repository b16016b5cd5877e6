/** A drawing's ink as a cloud of points, by a way that shares nothing with the program's. */

import type { StyledDrawing } from '../../src/drawing/index.ts';
import { pieceAt, pieceLength } from '../../src/geometry/index.ts';

/**
 * Points `pitch` mm apart along the pen's middle and both its edges (round ends included), or an area's outline and
 * inside.
 */
export const inkPoints = (drawing: StyledDrawing, pitch = 0.05): { x: number; y: number }[] => {
  const points: { x: number; y: number }[] = [];
  for (const item of Object.values(drawing.layers).flat()) {
    if (item.kind === 'path') {
      const half = item.stroke.width / 2;
      for (const piece of item.path.pieces) {
        const steps = Math.ceil(pieceLength(piece) / pitch) + 1;
        for (let i = 0; i <= steps; i++) {
          const p = pieceAt(piece, i / steps);
          for (let k = 0; k < 24; k++) {
            const angle = (k * Math.PI) / 12;
            points.push({ x: p.x + half * Math.cos(angle), y: p.y + half * Math.sin(angle) });
          }
          points.push(p);
        }
      }
    } else if (item.kind === 'area') {
      for (const loop of item.loops)
        for (const piece of loop.pieces) {
          if (piece.kind !== 'arc') throw new Error('The slow count knows only discs.');
          for (let r = piece.radius; r > 0; r -= r > piece.radius - 1 ? pitch : 8 * pitch) {
            const steps = Math.ceil((2 * Math.PI * r) / pitch);
            for (let i = 0; i < steps; i++) {
              const a = (2 * Math.PI * i) / steps;
              points.push({ x: piece.center.x + r * Math.cos(a), y: piece.center.y + r * Math.sin(a) });
            }
          }
        }
    }
  }
  return points;
};
