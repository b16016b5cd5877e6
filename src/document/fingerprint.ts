/** An identifier made from what is in a thing, so that the same thing always has the same one. */

/**
 * 128 bits from four FNV-1a hashes of 32 bits with different starts (Fowler, Noll, Vo; prime 16777619). It names
 * a file or a template; it protects nothing.
 */
export const fingerprint = (texts: readonly string[]): string => {
  // Four variables, not a list: this goes over every letter of every printed page.
  let [a, b, c, d] = [0x811c9dc5, 0x01000193, 0x9e3779b9, 0x7f4a7c15];
  for (const text of texts) {
    // Two letters at a time; one step more than the text is long, so that where one ends and the next begins counts.
    for (let i = 0; i <= text.length; i += 2) {
      const first = i < text.length ? text.charCodeAt(i) : END;
      const second = i + 1 < text.length ? text.charCodeAt(i + 1) : END;
      const code = first ^ (second << 16);
      a = Math.imul(a ^ code, PRIME);
      b = Math.imul(b ^ (code + 1), PRIME);
      c = Math.imul(c ^ (code + 2), PRIME);
      d = Math.imul(d ^ (code + 3), PRIME);
    }
  }
  return [a, b, c, d].map((lane) => (lane >>> 0).toString(16).padStart(8, '0')).join('');
};

const PRIME = 16777619;
/** No letter. */
const END = 0x1ffff;
