/** Drawings for the screen: their lines gathered by kind, so that the page sets a dozen paths and not a thousand. */

import {
  type Drawing,
  type Item,
  LAYERS,
  type LayerId,
  SHEET,
  styled,
  type TextItem,
} from '../../drawing/index.ts';
import { type Motion, matrixOf, type Path } from '../../geometry/index.ts';
import { pathData } from '../../output/svg/index.ts';
import { viewBox } from '../../output/view/index.ts';
import type { Ink, Lettering, Picture } from './messages.ts';

/** Paths by their roles, from the back; fills are left to their own answer. The screen's look is its style sheet's. */
export const inksOf = (drawing: Drawing, without: readonly LayerId[] = []): readonly Ink[] => {
  const byRole = new Map<string, string[]>();
  for (const id of LAYERS) {
    if (without.includes(id)) continue;
    for (const item of drawing.layers[id]) {
      if (item.kind !== 'path') continue;
      const known = byRole.get(item.role);
      const d = pathData(item.path);
      if (known) known.push(d);
      else byRole.set(item.role, [d]);
    }
  }
  return [...byRole].map(([name, parts]) => ({ name, d: parts.join(' ') }));
};

export const textsOf = (drawing: Drawing, without: readonly LayerId[] = []): readonly Lettering[] =>
  LAYERS.filter((id) => !without.includes(id)).flatMap((layer) =>
    drawing.layers[layer].filter(isText).map((item) => ({
      text: item.text,
      x: item.at.x,
      y: -item.at.y,
      size: item.size,
      anchor: item.align,
      turn: (-item.angle * 180) / Math.PI,
      bold: item.bold ?? false,
      layer,
    })),
  );

const isText = (item: Item): item is TextItem => item.kind === 'text';

/** The whole picture in its own box, y down. */
export const pictureOf = (drawing: Drawing, without: readonly LayerId[] = []): Picture => {
  const { minX, minY, maxX, maxY } = viewBox(styled(drawing, SHEET), { without, margin: 2 });
  return {
    box: { minX, maxX, minY: -maxY, maxY: -minY },
    inks: inksOf(drawing, without),
    texts: textsOf(drawing, without),
  };
};

export const dataOf = (paths: readonly Path[]): string => paths.map(pathData).join(' ');

/** A motion of the drawing (y up) as an SVG matrix, whose y points down on both sides. */
export const placeOf = (motion: Motion): readonly number[] => {
  const [a, b, c, d, e, f] = matrixOf(motion);
  return [a, -b, -c, d, e, -f];
};
