/**
 * Asks for the outline in a picture. From a disk a worker starts from a text, and in WebKit such a worker can read no
 * file, not even one that it has made itself (NotReadableError). So there the page reads the picture, once.
 */

import type { Client, Outcome } from './client.ts';
import { decoded } from './decode.ts';
import { isByAddress } from './hire.ts';
import type { DecodedPicture, TraceAnswer, TraceInput } from './messages.ts';
import { troublesIn } from './serve.ts';

let last: { readonly key: number; readonly read: Promise<DecodedPicture> } | undefined;

export const askTrace = async (tracer: Client, picture: TraceInput): Promise<Outcome<TraceAnswer>> => {
  if (isByAddress()) return tracer.ask({ kind: 'trace', picture });
  if (last?.key !== picture.key) last = { key: picture.key, read: decoded(picture.file) };
  try {
    return await tracer.ask({ kind: 'trace', picture: { ...picture, read: await last.read } });
  } catch (error) {
    last = undefined;
    return { kind: 'problems', problems: troublesIn(error) };
  }
};
