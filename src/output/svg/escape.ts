/** Text that may hold anything, made safe inside XML 1.0 elements and quoted attributes. */

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** XML 1.0 has no way to write most control characters and lone surrogates; they become spaces. */
export const escapeXml = (text: string): string =>
  text
    .replace(/[\t\n\r]+/g, ' ')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is replaced here
    .replace(/[\u0000-\u001f\u007f-\u009f\ufffe\uffff]|\p{Surrogate}/gu, ' ')
    .replace(/[&<>"']/g, (c) => ENTITIES[c] ?? c);
