/** The colours of a quilt in its picture, as a person writes them: hers, and nothing that a figure depends on. */

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
