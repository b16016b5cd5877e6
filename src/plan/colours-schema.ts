/** What a plan file may say of colours. */

import * as z from 'zod';
import { group, refuse } from '../document/index.ts';
import { colourFrom } from './colours.ts';

/** A # that stands outside quotes begins a remark, and leaves nothing of the colour. */
const EXPECTED = 'six digits from 0 to f in quotes, such as "#f4efe6"';

const colour = (description: string) =>
  z
    .string({ error: EXPECTED })
    .meta({ description })
    .transform(
      (text, context): string =>
        colourFrom(text) ?? refuse(context, text, { message: 'this is no colour', expected: EXPECTED }),
    )
    .optional();

export const coloursSchema = group(
  {
    fabric: colour('Of what is quilted: the border, the strip, the ground of a frame.'),
    middle: colour('Of what lies inside: the quilt, a motif, a block. Without it as the fabric.'),
    thread: colour('Of the quilting.'),
  },
  'a group such as { fabric: "#f4efe6", thread: "#1b2a41" }',
).prefault({});
