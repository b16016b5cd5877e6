/**
 * Lengths of the SVG standard. Read strictly: what a browser would drop as an error is refused
 * here, because what it then draws is something else.
 */

import { NotFollowed, shown } from './svg-fault.ts';

/** mm to one of the units that CSS calls absolute (CSS Values 3, 6.2): a px is 1/96 in. */
const UNIT_MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

export const PIXEL_MM = 25.4 / 96;

export interface SvgLength {
  readonly mm: number;
  /** Whether it says its unit, and not px. */
  readonly stated: boolean;
}

const LENGTH = /^[ \t\n\f\r]*([-+]?(?:\d*\.\d+|\d+)(?:e[-+]?\d+)?)([a-z]*|%)[ \t\n\f\r]*$/i;

/** Undefined for percentages, font sizes and nonsense. */
export const readSvgLength = (text: string | undefined): SvgLength | undefined => {
  const found = LENGTH.exec(text ?? '');
  const unit = found?.[2]?.toLowerCase();
  const size = unit === undefined ? undefined : UNIT_MM[unit];
  if (!found || size === undefined) return undefined;
  const mm = Number(found[1]) * size;
  return Number.isFinite(mm) ? { mm, stated: unit !== '' && unit !== 'px' } : undefined;
};

/** A length of something else: the window, the size of letters. */
export const isRelative = (text: string): boolean =>
  /^(?:%|r?em|ex|ch|ic|r?lh|cap|[sld]?v(?:w|h|i|b|min|max))$/i.test(LENGTH.exec(text)?.[2] ?? '') ||
  /^\s*(?:calc\(|(?:min|max|fit)-content)/i.test(text);

/** The size of what percentages are of, in user units: the nearest viewport (SVG 2, 8.9). */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

export type Axis = 'x' | 'y' | 'both';

const percentOf = (share: number, { width, height }: Viewport, axis: Axis): number =>
  share * (axis === 'x' ? width : axis === 'y' ? height : Math.hypot(width, height) / Math.SQRT2);

/** A length in user units; undefined where there is none. "auto" is read by no two browsers alike. */
export const userLength = (
  text: string | undefined,
  axis: Axis,
  viewport: Viewport | undefined,
): number | undefined => {
  if (text === undefined) return undefined;
  const length = readSvgLength(text);
  if (length) return length.mm / PIXEL_MM;
  const percent = LENGTH.exec(text);
  const share = percent?.[2] === '%' ? Number(percent[1]) / 100 : Number.NaN;
  if (!viewport || !Number.isFinite(share))
    throw new NotFollowed({
      code: 'svg-length',
      message: 'a length cannot be read',
      found: shown(text),
      expected: 'a number with no unit, or with px, mm, cm, Q, in, pt or pc',
      hint: 'save the template as a plain path',
    });
  return percentOf(share, viewport, axis);
};
