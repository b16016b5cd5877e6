import { type Drawing, type Item, LAYERS, type LayerId } from '../../../src/drawing/index.ts';

export const BLACK = { width: 0.5, color: '#000000' };

/** A drawing with these items on these layers and nothing else. */
export const drawingOf = (layers: Partial<Record<LayerId, readonly Item[]>>, title = 'Newel'): Drawing => ({
  title,
  layers: Object.fromEntries(LAYERS.map((id) => [id, layers[id] ?? []])) as unknown as Drawing['layers'],
});
