/** The colours of a quilt in its picture, as a person writes them: hers, and nothing that a figure depends on. */

import * as z from 'zod';
import { group, refuse } from '../document/index.ts';

/** `#rrggbb`, in small letters; of what she does not say, nothing. */
export interface Colours {
  /** What is quilted: a strip, a border, the ground of a frame. */
  readonly fabric?: string | undefined;
  /** What lies inside: the quilt in a border, a frame's motif or block. */
  readonly middle?: string | undefined;
  readonly thread?: string | undefined;
}

/** The same colour in the one way that all else reads it; undefined for a text that is none. */
export const colourFrom = (text: string): string | undefined => {
  const digits = /^\s*#?([0-9a-f]{6})\s*$/i.exec(text)?.[1];
  return digits === undefined ? undefined : `#${digits.toLowerCase()}`;
};

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
