/** The template in place, as a ghost: its working edge, the lines etched on it, and nothing that is not known of it. */

import {
  type Motion,
  meetingsWithLine,
  movePath,
  openPath,
  type Path,
  pathBox,
  polyline,
  reversePath,
  rollFoot,
} from '../geometry/index.ts';
import type { Template } from '../template/index.ts';
import type { Facts, PathItem } from './drawing.ts';
import type { LineRole } from './role.ts';

/** How far an etched alignment line is drawn into the template below its working edge, mm. */
const ETCHED_LENGTH = 25;

export const ghostItems = (
  template: Template,
  motion: Motion,
  facts: Facts,
  withLines: boolean,
): readonly PathItem[] => {
  const item = (path: Path, role: LineRole, part: string, name?: string): PathItem => ({
    kind: 'path',
    path: movePath(path, motion),
    role,
    facts: { ...facts, part, ...(name === undefined ? {} : { name }) },
  });
  const items = [item(template.edge, 'ghostEdge', 'edge')];
  if (!withLines) return items;
  for (const line of etchedAlignment(template))
    items.push(item(line.path, 'ghostLine', 'alignment', line.name));
  for (const line of etchedChannels(template)) items.push(item(line.path, 'ghostLine', 'channel-line'));
  return items;
};

/** Alignment lines, square to the template's long axis, from just above the edge down into the template. */
export const etchedAlignment = (template: Template): readonly { name: string; at: number; path: Path }[] => {
  const box = pathBox(template.edge);
  return template.alignment.map(({ name, at }) => ({
    name,
    at,
    path: polyline([
      { x: at, y: edgeHeightAt(template, at) ?? box.maxY },
      { x: at, y: (edgeHeightAt(template, at) ?? box.minY) - ETCHED_LENGTH },
    ]),
  }));
};

/** The highest place of the edge at a distance along the long axis. */
const edgeHeightAt = (template: Template, x: number): number | undefined => {
  const heights = meetingsWithLine(template.edge, { x, y: 0 }, { x: 0, y: 1 }).map((m) => m.point.y);
  return heights.length > 0 ? Math.max(...heights) : undefined;
};

/** Lines etched parallel to the edge, this far inside. */
export const etchedChannels = (template: Template): readonly { inside: number; path: Path }[] =>
  template.channelLines.flatMap((inside) => {
    const path = insideEdge(template.edge, inside);
    return path ? [{ inside, path }] : [];
  });

/** What runs so far (mm) inside an edge: what the foot's parallel would be on the other side. */
export const insideEdge = (edge: Path, inside: number): Path | undefined => {
  const rolled = rollFoot(reversePath(edge), inside);
  return rolled.ok ? openPath(reversePath(rolled.value.path).pieces) : undefined;
};
