/** All fills by name. To add one: a file of its own, and a line here. */

import type { Problem } from '../document/index.ts';
import { clamshell } from './clamshell.ts';
import { crosshatch } from './crosshatch.ts';
import { curvedCrosshatch } from './curved-crosshatch.ts';
import { echo } from './echo.ts';
import { doubleFeather, feather } from './feather.ts';
import type { Fill } from './fill.ts';
import { leaves } from './leaves.ts';
import { lines } from './lines.ts';
import { loops } from './loops.ts';
import { pearls } from './pearls.ts';
import { pebbles } from './pebbles.ts';
import { pianoKeys } from './piano-keys.ts';
import { ribbon } from './ribbon.ts';
import { stipple } from './stipple.ts';
import { swirls } from './swirls.ts';

export const FILLS: readonly Fill[] = [
  feather,
  doubleFeather,
  stipple,
  loops,
  leaves,
  pebbles,
  swirls,
  clamshell,
  crosshatch,
  curvedCrosshatch,
  lines,
  pianoKeys,
  echo,
  pearls,
  ribbon,
];

/** The fill of that name, or what to tell the user, with the names there are. A hyphen stands for a space. */
export const fillNamed = (name: string): Fill | Problem => {
  const plain = name
    .trim()
    .toLowerCase()
    .replaceAll(/[-\s]+/g, ' ');
  const found = FILLS.find((f) => f.name === plain);
  if (found) return found;
  return {
    code: 'unknown-fill',
    message: `no fill named "${name}"`,
    expected: `one of ${FILLS.map((f) => f.name).join(', ')}`,
  };
};
