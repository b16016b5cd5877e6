/**
 * Whether a line is the rim of something that lies on the paper: clear acrylic lets less light through than there is
 * beside it, and what a pencil line encloses is the paper itself.
 */

import type { Point } from '../geometry/index.ts';
import type { Picture } from './picture.ts';

/** So far (mm) beside the line the paper, or the acrylic, is looked at: beyond blur, rims and shadows. */
const BESIDE = 2.5;
/** Places looked at. */
const PLACES = 200;
/** Greys of 255 by which a body is darker than paper at least; light that falls unevenly does less in 5 mm. */
const DARKER = 7;

/** `ring` is the line's outer side, in pixels and clockwise as seen; `wide` the line's width (mm). */
export const enclosesBody = (
  { width, height, grey }: Picture,
  ring: readonly Point[],
  wide: number,
  pixelsPerMm: number,
): boolean => {
  const greyAt = (x: number, y: number): number | undefined => {
    const [i, j] = [Math.floor(x), Math.floor(y)];
    return i >= 0 && j >= 0 && i < width && j < height ? grey[j * width + i] : undefined;
  };
  const reach = Math.max(1, Math.round(pixelsPerMm));
  const step = Math.max(1, Math.floor(ring.length / PLACES));
  const darker: number[] = [];
  for (let i = 0; i < ring.length; i += step) {
    const { x, y } = ring[i]!;
    const [a, b] = [ring.at(i - reach)!, ring[(i + reach) % ring.length]!];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (!(long > 0)) continue;
    // With y down and the shape on the right of the way, this points out of it.
    const out = { x: (b.y - a.y) / long, y: -(b.x - a.x) / long };
    const at = (mm: number): number | undefined =>
      greyAt(x + out.x * mm * pixelsPerMm, y + out.y * mm * pixelsPerMm);
    const [outside, inside] = [at(BESIDE), at(-wide - BESIDE)];
    if (outside !== undefined && inside !== undefined) darker.push(outside - inside);
  }
  darker.sort((p, q) => p - q);
  return (darker[darker.length >> 1] ?? 0) >= DARKER;
};
