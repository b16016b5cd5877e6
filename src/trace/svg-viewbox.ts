/** The map from a viewBox to its viewport (SVG 2, chapter 8). */

import { readSvgNumbers } from '../geometry/index.ts';
import { NotFollowed, shown } from './svg-fault.ts';
import type { Viewport } from './svg-lengths.ts';
import type { Matrix } from './svg-matrix.ts';
import type { SvgNode } from './svg-tree.ts';

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** SVG 2, 8.6. A browser passes over a `viewbox`, and the drawing is of another size than it was meant to be. */
export const viewBoxOf = ({ attributes }: SvgNode): ViewBox | undefined => {
  const text = attributes.get('viewBox');
  if (text === undefined) {
    const alike = [...attributes.keys()].find((key) => key.toLowerCase() === 'viewbox');
    if (alike === undefined) return undefined;
    throw new NotFollowed({
      code: 'svg-viewbox',
      message: 'no browser reads this attribute: capital and small letters count',
      found: shown(alike),
      expected: '"viewBox"',
    });
  }
  const v = readSvgNumbers(text);
  const [x, y, width, height] = v ?? [];
  if (v?.length !== 4 || !(width! > 0 && height! > 0))
    throw new NotFollowed({
      code: 'svg-viewbox',
      message: 'a viewBox cannot be read',
      found: shown(text),
      expected: 'four numbers, the last two greater than 0',
    });
  return { x: x!, y: y!, width: width!, height: height! };
};

const KEEP = /^[ \t\n\f\r]*(?:none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:[ \t\n\f\r]+(meet|slice))?[ \t\n\f\r]*$/;
const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/** From the viewBox's units to a viewport, by preserveAspectRatio (SVG 2, 8.2 and 8.7). */
export const viewBoxMatrix = (box: ViewBox, { width, height }: Viewport, keep = 'xMidYMid'): Matrix => {
  const found = KEEP.exec(keep);
  if (!found)
    throw new NotFollowed({
      code: 'svg-aspect',
      message: 'a preserveAspectRatio cannot be read',
      found: shown(keep),
      expected: 'none, or such as xMidYMid meet',
    });
  const sx = width / box.width;
  const sy = height / box.height;
  const [, alongX, alongY, how] = found;
  if (!alongX || !alongY) return [sx, 0, 0, sy, -box.x * sx, -box.y * sy];
  const s = how === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  return [
    s,
    0,
    0,
    s,
    -box.x * s + (width - box.width * s) * SHARE[alongX]!,
    -box.y * s + (height - box.height * s) * SHARE[alongY]!,
  ];
};
