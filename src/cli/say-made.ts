/** What is said of a file that has been written: what to know of it, what was made, and what the file holds. */

import type { Made } from '../jobs/made.ts';
import type { Io } from './io.ts';
import { say } from './messages.ts';
import type { Output } from './write-set.ts';

export const sayMade = async (
  io: Io,
  { name }: Pick<Output, 'name'>,
  { notices = [], summary = [], words, corrections = [] }: Omit<Made, 'bytes'>,
): Promise<void> => {
  for (const line of [...notices, ...summary]) await say(io, line);
  await say(io, `${name}: ${words}`);
  for (const line of corrections) await say(io, line);
};
