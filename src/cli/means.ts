/** What the jobs are given here: Node's compressor, the fonts from their files, and a canvas. */

import { readFile } from 'node:fs/promises';
import { deflateSync } from 'node:zlib';
import type { Means } from '../jobs/made.ts';
import { loadCanvas, registerFonts } from './load-canvas.ts';
import { fontFile } from './own-files.ts';

export const MEANS: Means = {
  deflate: (bytes) => deflateSync(bytes),
  fonts: async () => ({
    regular: await readFile(fontFile('regular')),
    bold: await readFile(fontFile('bold')),
  }),
  canvas: async (width, height) => {
    const library = await loadCanvas('ask for --format svg or pdf');
    registerFonts(library);
    const canvas = library.createCanvas(width, height);
    return { context: canvas.getContext('2d'), png: () => canvas.encode('png') };
  },
};
