/** A canvas to paint pictures on, in a worker, with the letters that our pages have. */

import { ProblemError } from '../../document/index.ts';
import type { Means } from '../../jobs/made.ts';
import { madeWords } from '../words/words.ts';
import type { Fonts } from './messages.ts';

/** Throws a ProblemError in a browser that has none for workers. */
export const painting =
  (fonts: Fonts): NonNullable<Means['canvas']> =>
  async (width, height) => {
    const context =
      typeof OffscreenCanvas === 'undefined' ? null : new OffscreenCanvas(width, height).getContext('2d');
    if (!context)
      throw new ProblemError([
        { code: 'no-canvas', message: madeWords.cannotPaint, hint: madeWords.takeDrawing },
      ]);
    await takeFonts(fonts);
    return {
      context,
      png: async () => {
        const blob = await context.canvas.convertToBlob({ type: 'image/png' });
        return new Uint8Array(await blob.arrayBuffer());
      },
    };
  };

let taken: Promise<unknown> | undefined;

/** Once for a worker's life. */
const takeFonts = ({ regular, bold }: Fonts): Promise<unknown> => {
  const faces = (globalThis as unknown as { readonly fonts: { add(face: FontFace): void } }).fonts;
  const take = async (bytes: Uint8Array, weight: string): Promise<void> => {
    faces.add(await new FontFace('DejaVu Sans', bytes as BufferSource, { weight }).load());
  };
  taken ??= Promise.all([take(regular, 'normal'), take(bold, 'bold')]);
  return taken;
};
