/** Fonts by their bytes. */

import fontkit from '@pdf-lib/fontkit';

export type Font = ReturnType<typeof fontkit.create>;

const read = new WeakMap<Uint8Array, Font>();

/** Reading a font again would take as long as a page. */
export const fontOf = (bytes: Uint8Array): Font => {
  let font = read.get(bytes);
  if (font === undefined) {
    font = fontkit.create(bytes);
    read.set(bytes, font);
  }
  return font;
};
