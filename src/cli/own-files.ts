/** The package's own files. The source lies two folders below the package, and so does what is built from it. */

import { fileURLToPath } from 'node:url';

/** `path` as seen from the package's folder. */
export const ownFile = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** The two cuts of the one font; the build lays them there. */
export const FONT_FILES = {
  regular: 'dist/fonts/DejaVuSans.ttf',
  bold: 'dist/fonts/DejaVuSans-Bold.ttf',
} as const;
