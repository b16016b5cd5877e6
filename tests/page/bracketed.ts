/** A made-up language: English, with brackets round whatever is said. What the page says without them is no word of the language. */

const [OPEN, CLOSE] = ['⟦', '⟧'];

/** The same words, each text in brackets: those that stand there, and those that functions of values give. */
export const bracketed = <T>(words: T): T => inBrackets(words) as T;

const inBrackets = (words: unknown): unknown => {
  if (typeof words === 'string') return OPEN + words + CLOSE;
  if (typeof words === 'function')
    return (...values: readonly unknown[]) =>
      inBrackets((words as (...of: typeof values) => unknown)(...values));
  // A sentence with something else than text in it.
  if (Array.isArray(words)) return words.map((part) => (typeof part === 'string' ? inBrackets(part) : part));
  if (typeof words !== 'object' || words === null) return words;
  return Object.fromEntries(Object.entries(words).map(([name, of]) => [name, inBrackets(of)]));
};

/** What is left of a text without all that stands in brackets. */
export const outsideBrackets = (text: string): string => {
  let depth = 0;
  let left = '';
  for (const letter of text) {
    if (letter === OPEN) depth++;
    else if (letter === CLOSE) depth--;
    else if (depth === 0) left += letter;
  }
  return left;
};
