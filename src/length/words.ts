/** Where a line of text may break: never inside a measure, which would then read as another. */

/**
 * The words of a text, in order, what belongs together as one: `7 1/8 in` broken after the 7 would be read as
 * 7, or as 1/8. White space between words is dropped.
 */
export const wordsOf = (text: string): readonly string[] => {
  const words: string[] = [];
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const last = words.at(-1);
    if (last !== undefined && belongsTo(last, word)) words[words.length - 1] = `${last} ${word}`;
    else words.push(word);
  }
  return words;
};

const belongsTo = (before: string, word: string): boolean =>
  /\d$/.test(before) && (FRACTION.test(word) || UNIT.test(word));

const FRACTION = /^\d+\/\d+/;
const UNIT = /^(?:%|(?:in|mm|cm|m|yd|ft)(?![\p{L}\d]))/u;
