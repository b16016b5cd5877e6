/** All fills by name. To add one: a file of its own, and a line here. */

import type { Problem } from '../document/index.ts';
import { crosshatch } from './crosshatch.ts';
import { echo } from './echo.ts';
import { feather } from './feather.ts';
import type { Fill } from './fill.ts';
import { lines } from './lines.ts';
import { pearls } from './pearls.ts';
import { pebbles } from './pebbles.ts';
import { ribbon } from './ribbon.ts';
import { stipple } from './stipple.ts';
import { swirls } from './swirls.ts';

export const FILLS: readonly Fill[] = [
  feather,
  stipple,
  pebbles,
  swirls,
  crosshatch,
  lines,
  echo,
  pearls,
  ribbon,
];

/** The fill of that name, or what to tell the user, with the names there are. */
export const fillNamed = (name: string): Fill | Problem => {
  const found = FILLS.find((f) => f.name === name.trim().toLowerCase());
  if (found) return found;
  return {
    code: 'unknown-fill',
    message: `no fill named "${name}"`,
    expected: `one of ${FILLS.map((f) => f.name).join(', ')}`,
  };
};
