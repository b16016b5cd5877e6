/** Lines for cutting machines, which read no words. */

import { writeDxf } from '../dxf/index.ts';
import type { Write } from './writer.ts';

export const write: Write = async (drawing, { without }) => ({
  bytes: writeDxf(drawing, { without }),
  size: 'lines at true size in mm, without words',
});
