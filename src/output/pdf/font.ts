/** Fonts by their bytes. */

import fontkit from '@pdf-lib/fontkit';

/** The library's types leave out that a font tells the texts that a shape stands for. */
export type Font = ReturnType<typeof fontkit.create> & {
  readonly stringsForGlyph: (id: number) => readonly string[];
};

const read = new WeakMap<Uint8Array, Font>();

/** Reading a font again would take as long as a page. */
export const fontOf = (bytes: Uint8Array): Font => {
  let font = read.get(bytes);
  if (font === undefined) {
    font = fontkit.create(bytes) as Font;
    read.set(bytes, font);
  }
  return font;
};
