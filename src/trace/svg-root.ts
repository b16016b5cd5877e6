/** How large a drawing is: from its units to mm (SVG 2, 8.2 and 8.12; sizes as CSS 2.1, 10.3.2 and 10.6.2 find them). */

import { NotFollowed, shown } from './svg-fault.ts';
import { isRelative, PIXEL_MM, readSvgLength, type SvgLength, type Viewport } from './svg-lengths.ts';
import type { Matrix } from './svg-matrix.ts';
import type { Declared } from './svg-style.ts';
import type { SvgNode } from './svg-tree.ts';
import { viewBoxMatrix, viewBoxOf } from './svg-viewbox.ts';

export interface SvgSize {
  /** From the drawing's units to mm. */
  readonly matrix: Matrix;
  /** Undefined where the drawing does not say it. */
  readonly viewport: Viewport | undefined;
  /** How the size is known: the drawing states it, it counts in px of 1/96 in, or the person said it. */
  readonly size: 'stated' | 'pixels' | 'given';
}

const noSize = (): NotFollowed =>
  new NotFollowed({
    code: 'svg-no-size',
    message: 'the drawing does not say how large it is',
    hint: 'say what one unit of it measures, such as --scale 1mm',
  });

/** `unitMm` is what one unit measures, where a person has said it. Throws NotFollowed. */
export const sizeOfDrawing = (root: SvgNode, declared: Declared, unitMm: number | undefined): SvgSize => {
  const box = viewBoxOf(root);
  const side = (key: 'width' | 'height'): SvgLength | undefined => {
    const text = declared(key) ?? root.attributes.get(key) ?? 'auto';
    if (text.trim() === 'auto' || text.trim() === '') return undefined;
    const length = readSvgLength(text);
    // Of something that is not known, as a percentage is; what nobody can read is a slip, also beside a scale.
    if ((length && length.mm < 0) || !(length || isRelative(text)))
      throw new NotFollowed({
        code: 'svg-length',
        message: `the drawing's ${key} cannot be read`,
        found: shown(text),
        expected: 'a number with no unit, or with px, mm, cm, Q, in, pt or pc',
        ...(/\d,\d/.test(text) ? { hint: 'write a decimal point' } : {}),
      });
    if (unitMm === undefined && !(length && length.mm > 0)) throw noSize();
    return length;
  };
  const [width, height] = [side('width'), side('height')];
  const sheet = width && height ? { width: width.mm / PIXEL_MM, height: height.mm / PIXEL_MM } : undefined;
  const viewport = box ?? sheet;
  if (unitMm !== undefined) {
    const [x, y] = box ? [box.x, box.y] : [0, 0];
    return { matrix: [unitMm, 0, 0, unitMm, -x * unitMm, -y * unitMm], viewport, size: 'given' };
  }
  if (!width && !height) throw noSize();
  // Without a viewBox a unit is a px, whatever the size of the sheet.
  if (!box) return { matrix: [PIXEL_MM, 0, 0, PIXEL_MM, 0, 0], viewport, size: 'pixels' };
  // A side that is not said follows from the box's proportions; in a window of its own only where nothing is stretched.
  if (!(width && height) && /none|slice/.test(root.attributes.get('preserveAspectRatio') ?? ''))
    throw noSize();
  const size = {
    width: width?.mm ?? (height!.mm * box.width) / box.height,
    height: height?.mm ?? (width!.mm * box.height) / box.width,
  };
  return {
    matrix: viewBoxMatrix(box, size, root.attributes.get('preserveAspectRatio')),
    viewport,
    size: (width ?? height)!.stated ? 'stated' : 'pixels',
  };
};
