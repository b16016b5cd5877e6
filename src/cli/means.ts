/** What the jobs are given here: Node's compressor, and the fonts from their files. */

import { readFile } from 'node:fs/promises';
import { deflateSync } from 'node:zlib';
import type { Means } from '../jobs/made.ts';
import { fontFile } from './own-files.ts';

export const MEANS: Means = {
  deflate: (bytes) => deflateSync(bytes),
  fonts: async () => ({
    regular: await readFile(fontFile('regular')),
    bold: await readFile(fontFile('bold')),
  }),
};
