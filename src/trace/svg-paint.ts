/** Whether a shape of a drawing is seen (SVG 2, chapter 13; CSS Display 3; CSS Color 4, 3.2). */

import { NotFollowed, shown } from './svg-fault.ts';
import type { Declared } from './svg-style.ts';

/** Properties that go down to the elements inside, each with its initial value. */
const INITIAL = {
  visibility: 'visible',
  fill: 'black',
  stroke: 'none',
  'fill-opacity': '1',
  'stroke-opacity': '1',
  'stroke-width': '1',
} as const;

export type Paint = Readonly<Record<keyof typeof INITIAL, string>>;

export const PLAIN: Paint = INITIAL;

/** Of what is not known to be without ink. */
export const INKED: Paint = { ...INITIAL, stroke: 'black' };

/** Throws NotFollowed. */
export const paintOf = (declared: Declared, around: Paint): Paint => {
  const paint: Record<keyof typeof INITIAL, string> = { ...around };
  for (const property of Object.keys(INITIAL) as (keyof typeof INITIAL)[]) {
    const value = declared(property);
    if (value === undefined || value === '' || value === 'inherit') continue;
    if (!isRead(property, value, around[property])) throw notRead(property, value);
    paint[property] = value;
  }
  return paint;
};

/**
 * Whether the value is one that every browser takes; it falls back to what is around it where it is a mistake. So a
 * colour of a rarer name, which may be a mistake, is taken only where that is ink too.
 */
const isRead = (property: keyof Paint, value: string, around: string): boolean => {
  if (property === 'visibility') return /^(?:visible|hidden|collapse)$/.test(value);
  if (property !== 'fill' && property !== 'stroke') return AMOUNT.test(value);
  return (
    !inks(value) || COLOUR.test(value) || (/^[a-z]+$/.test(value) && !KEYWORD.test(value) && inks(around))
  );
};

const AMOUNT = /^[-+]?(?:\d*\.\d+|\d+)(?:e[-+]?\d+)?(?:px|mm|cm|q|in|pt|pc|%)?$/;
/** CSS Color 3, 4.1 and 4.2: the basic names, and what drawing programs write. */
const COLOUR =
  /^(?:#(?:[\da-f]{3,4}|[\da-f]{6}|[\da-f]{8})|(?:rgb|hsl)a?\([\d.,%\s/]+\)|url\(.*|currentcolor|aqua|black|blue|fuchsia|gray|green|grey|lime|maroon|navy|olive|orange|purple|red|silver|teal|white|yellow)$/is;
const KEYWORD = /^(?:initial|unset|revert)$/;

const DISPLAYED =
  /^(?:block|inline|inline-block|flow-root|list-item|(?:inline-)?(?:flex|grid|table)|table-.*|run-in|compact|marker)$/;

/** Whether an element and all in it are left out. Throws NotFollowed. */
export const isLeftOut = (declared: Declared): boolean => {
  const display = declared('display') || 'inline';
  if (display === 'none') return true;
  if (!DISPLAYED.test(display)) throw notRead('display', display);
  const opacity = declared('opacity') || '1';
  if (!AMOUNT.test(opacity)) throw notRead('opacity', opacity);
  return Number.parseFloat(opacity) <= 0;
};

export const isPainted = (paint: Paint, element: string): boolean =>
  paint.visibility === 'visible' &&
  ((element !== 'line' && inks(paint.fill) && !isZero(paint['fill-opacity'])) ||
    (inks(paint.stroke) && !isZero(paint['stroke-opacity']) && !isZero(paint['stroke-width'])));

const inks = (value: string): boolean => value !== 'none' && value !== 'transparent';

const isZero = (value: string): boolean => Number.parseFloat(value) === 0;

const notRead = (property: string, value: string): NotFollowed =>
  new NotFollowed({
    code: 'svg-paint',
    message: 'the drawing does not say clearly whether this part of it is seen',
    found: shown(`${property}: ${value}`),
    hint: 'write colours as #rrggbb, or save the template alone as a plain path',
  });
