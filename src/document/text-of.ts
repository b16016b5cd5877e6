/** The text of a file's bytes, or why they are none: files come from editors that write what no plan is written in. */

import type { Problem } from './problem.ts';

export const textOf = (bytes: Uint8Array): string | Omit<Problem, 'place'> => {
  if (isUtf16(bytes))
    return { code: 'not-utf-8', message: 'this is text in UTF-16', hint: 'save it again as UTF-8' };
  if (bytes.includes(0)) return { code: 'not-text', message: 'this is not a text file' };
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return { code: 'not-utf-8', message: 'this is not text in UTF-8', hint: 'save it again as UTF-8' };
  }
};

/** By the mark that it begins with, or by letters of plain English, of which every second byte is nothing. */
const isUtf16 = (bytes: Uint8Array): boolean => {
  const mark = `${bytes[0]},${bytes[1]}`;
  if (mark === '255,254' || mark === '254,255') return true;
  const first = bytes.subarray(0, LOOKED_AT);
  const zeros = [0, 1].map((odd) => first.filter((byte, i) => byte === 0 && i % 2 === odd).length);
  return Math.min(...zeros) === 0 && Math.max(...zeros) > LEAST_ZEROS * first.length;
};

/** Bytes at the beginning, and the share of them that are nothing in such a text. */
const LOOKED_AT = 200;
const LEAST_ZEROS = 0.4;
