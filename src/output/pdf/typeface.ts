/** A font's measures, before any document exists: widths for aligning and wrapping, and what it can show. */

import { wordsOf } from '../../length/index.ts';
import { fontOf } from './font.ts';

/** Two cuts of one font, as the bytes of TrueType files. */
export interface FontBytes {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface Typeface {
  /** The text with what the font lacks, or what has no shape, made visible or a space. */
  readonly shown: (text: string) => string;
  /** Whether a letter is shown as something else, because the font has no shape for it. */
  readonly lacks: (letter: string) => boolean;
  /** mm, of the text as it is shown, in a size in mm. */
  readonly width: (text: string, size: number) => number;
}

/** The replacement character of Unicode: a question mark in a diamond, not an empty box that reads as a shape. */
const MISSING = '\u{fffd}';

export const typefaceOf = (bytes: Uint8Array): Typeface => {
  const font = fontOf(bytes);
  const letters = new Map<string, { readonly shown: string; readonly advance: number }>();
  const letterOf = (character: string) => {
    let letter = letters.get(character);
    if (letter === undefined) {
      const has = font.hasGlyphForCodePoint(character.codePointAt(0)!);
      const shown = SPACES.test(character) ? ' ' : has ? character : MISSING;
      const advance = font.glyphForCodePoint(shown.codePointAt(0)!).advanceWidth / font.unitsPerEm;
      letter = { shown, advance };
      letters.set(character, letter);
    }
    return letter;
  };
  return {
    shown: (text) => {
      let shown = '';
      for (const character of text) shown += letterOf(character).shown;
      return shown;
    },
    lacks: (letter) => letterOf(letter).shown === MISSING && letter !== MISSING,
    width: (text, size) => {
      let sum = 0;
      for (const character of text) sum += letterOf(character).advance;
      return sum * size;
    },
  };
};

/** Line ends, tabs and other control characters, marks of direction among them: a page shows a space. */
const SPACES = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;

export interface Typefaces {
  readonly regular: Typeface;
  readonly bold: Typeface;
}

export const typefacesOf = (fonts: FontBytes): Typefaces => ({
  regular: typefaceOf(fonts.regular),
  bold: typefaceOf(fonts.bold),
});

/** Lines no wider than `width` (mm), broken at spaces; a word that is wider by itself is broken anywhere. */
export const wrapText = (face: Typeface, text: string, size: number, width: number): string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of wordsOf(text)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (face.width(longer, size) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = breakWord(face, word, size, width);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  if (line !== '') lines.push(line);
  return lines;
};

const breakWord = (face: Typeface, word: string, size: number, width: number): string[] => {
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && face.width(piece + character, size) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
};

/** The text on one line, its end replaced by an ellipsis where it is too wide. */
export const fitText = (face: Typeface, text: string, size: number, width: number): string => {
  if (face.width(text, size) <= width) return text;
  const characters = [...text];
  while (characters.length > 0 && face.width(`${characters.join('').trimEnd()}…`, size) > width)
    characters.pop();
  return `${characters.join('').trimEnd()}…`;
};
