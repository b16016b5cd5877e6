/** `.svg, .pdf or .png` */
export const eitherOf = (words: readonly string[]): string =>
  [words.slice(0, -1).join(', '), ...words.slice(-1)].filter((part) => part !== '').join(' or ');
