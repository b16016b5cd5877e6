/** A drawing at true size, for people who look and programs that measure. */

import { writeSvg } from '../svg/index.ts';
import type { Write } from './writer.ts';

export const write: Write = async (drawing, { without, summary }) => ({
  bytes: writeSvg(drawing, { without, description: `${summary.join('; ')}.` }),
  size: 'a drawing at true size',
});
