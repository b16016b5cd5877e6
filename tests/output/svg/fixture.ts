import { LAYERS, type LayerId, type StyledDrawing, type StyledItem } from '../../../src/drawing/index.ts';

export const BLACK = { width: 0.5, color: '#000000' };

/** A drawing with these items on these layers and nothing else. */
export const drawingOf = (
  layers: Partial<Record<LayerId, readonly StyledItem[]>>,
  title = 'Newel',
): StyledDrawing => ({
  title,
  layers: Object.fromEntries(
    LAYERS.map((id) => [id, layers[id] ?? []]),
  ) as unknown as StyledDrawing['layers'],
});
