/** One page at true size, for a wide printer. */

import { writeOnePage } from '../pdf/index.ts';
import { shownDrawing } from '../view/index.ts';
import type { Write } from './writer.ts';

export const write: Write = async (drawing, { without, title, units, measured }, { deflate, fonts }) => ({
  bytes: await writeOnePage(shownDrawing(drawing, { without }), {
    title,
    units,
    measured,
    deflate,
    fonts: await fonts(),
  }),
  size: 'one page at true size',
});
