/**
 * A link that carries a plan in its fragment, which browsers do not send to any server: the state as JSON,
 * deflated (RFC 1951), in the URL-safe alphabet of base64 (RFC 4648, section 5).
 */

import { MOST_OWN, MOST_TEXT, type State, stateFrom, stateText } from './state.ts';

const KEY = '#plan=';

/** What a link may unpack to: a plan and all templates at their largest. A few bytes can unpack to gigabytes. */
const MOST_UNPACKED = (MOST_OWN + 1) * MOST_TEXT;
/** Longer fragments do not survive being pasted. */
const MOST_FRAGMENT = 1_000_000;

/** Only the templates that the plan uses go along. */
export const fragmentOf = async (state: State, used: readonly string[]): Promise<string> => {
  const text = stateText({ ...state, own: state.own.filter((t) => used.includes(t.name)) });
  return KEY + toBase64(await through(new CompressionStream('deflate-raw'), new TextEncoder().encode(text)));
};

/** The state in a fragment; `none` where it carries no plan, `broken` where it cannot be read. */
export const stateInFragment = async (fragment: string): Promise<State | 'none' | 'broken'> => {
  if (!fragment.startsWith(KEY)) return 'none';
  if (fragment.length > MOST_FRAGMENT) return 'broken';
  try {
    const packed = fromBase64(fragment.slice(KEY.length));
    const bytes = await through(new DecompressionStream('deflate-raw'), packed);
    return stateFrom(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) ?? 'broken';
  } catch {
    return 'broken';
  }
};

const through = async (
  stream: CompressionStream | DecompressionStream,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<Uint8Array> => {
  const writer = stream.writable.getWriter();
  // A fault is told by the reader too; told here it would be one that nobody hears.
  const written = writer
    .write(bytes)
    .then(() => writer.close())
    .catch(() => {});
  const parts: Uint8Array[] = [];
  let size = 0;
  const reader = stream.readable.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > MOST_UNPACKED) {
      await reader.cancel();
      throw new Error('It unpacks to more than any plan');
    }
    parts.push(value);
  }
  await written;
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

const toBase64 = (bytes: Uint8Array): string => {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
};

const fromBase64 = (text: string): Uint8Array<ArrayBuffer> => {
  const plain = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(plain, (c) => c.charCodeAt(0));
};
