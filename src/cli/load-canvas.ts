/** The library that decodes and paints pictures. It is compiled for each kind of computer, and may be missing on a rare one. */

import { ProblemError } from '../document/index.ts';
import { fontFile } from './own-files.ts';

export type CanvasLibrary = typeof import('@napi-rs/canvas');

/** Throws a ProblemError where this computer has none. */
export const loadCanvas = async (hint: string): Promise<CanvasLibrary> => {
  try {
    return await import('@napi-rs/canvas');
  } catch {
    throw new ProblemError([
      { code: 'no-canvas', message: 'pictures of pixels cannot be made or read on this computer', hint },
    ]);
  }
};

/** The same letters on every computer. */
export const registerFonts = ({ GlobalFonts }: CanvasLibrary): void => {
  for (const cut of ['regular', 'bold'] as const) GlobalFonts.registerFromPath(fontFile(cut), 'DejaVu Sans');
};
