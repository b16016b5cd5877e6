/** Lines as a machine draws or cuts them: joined wherever one goes on as another like it, and nothing but lines. */

import { joinPaths, type Motion, movePath, type Path } from '../geometry/index.ts';
import { LAYERS, type LayerId } from './drawing.ts';
import type { StyledDrawing, StyledItem, StyledPath } from './style.ts';

/** The lines among some items, those of one role and look joined. Whose they were they no longer say. */
export const joinedLines = (items: readonly StyledItem[]): readonly StyledPath[] => {
  const alike = new Map<string, { readonly like: StyledPath; readonly paths: Path[] }>();
  for (const item of items) {
    if (item.kind !== 'path') continue;
    const key = JSON.stringify([item.role, item.stroke]);
    const known = alike.get(key);
    if (known) known.paths.push(item.path);
    else alike.set(key, { like: item, paths: [item.path] });
  }
  return [...alike.values()].flatMap(({ like: { facts: _, ...like }, paths }) =>
    joinPaths(paths).map((path) => ({ ...like, path })),
  );
};

/** What is stitched. */
const QUILTING: readonly LayerId[] = ['fill', 'channel', 'stitch'];

/** What is stitched and nothing else, its lines joined. */
export const quiltingAlone = (drawing: StyledDrawing): StyledDrawing => ({
  title: drawing.title,
  layers: Object.fromEntries(
    LAYERS.map((id) => [id, QUILTING.includes(id) ? joinedLines(drawing.layers[id]) : []]),
  ) as unknown as StyledDrawing['layers'],
});

/** Turned over, left for right. Only lines and areas can be: words would not be read any more, and are left out. */
export const mirrored = (drawing: StyledDrawing): StyledDrawing => ({
  title: drawing.title,
  layers: Object.fromEntries(
    LAYERS.map((id) => [id, drawing.layers[id].flatMap(mirroredItem)]),
  ) as unknown as StyledDrawing['layers'],
});

const OVER: Motion = { flip: true, angle: Math.PI, x: 0, y: 0 };

const mirroredItem = (item: StyledItem): readonly StyledItem[] => {
  switch (item.kind) {
    case 'path':
      return [{ ...item, path: movePath(item.path, OVER) }];
    case 'area':
      return [{ ...item, loops: item.loops.map((loop) => movePath(loop, OVER)) }];
    case 'text':
      return [];
    default:
      return item satisfies never;
  }
};
