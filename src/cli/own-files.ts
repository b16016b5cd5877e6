/** The package's own files. The source lies two folders below the package, and so does what is built from it. */

import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

/** `path` as seen from the package's folder. */
export const ownFile = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** The two cuts of the one font: the build lays them into the package, and before it they are where npm put them. */
const FONTS = { regular: 'DejaVuSans.ttf', bold: 'DejaVuSans-Bold.ttf' } as const;

export const fontFile = (cut: keyof typeof FONTS): string => {
  const packed = ownFile(`dist/fonts/${FONTS[cut]}`);
  if (existsSync(packed)) return packed;
  return createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${FONTS[cut]}`);
};
