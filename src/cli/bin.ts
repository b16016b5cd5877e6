#!/usr/bin/env node
/** The executable. The exit code is set and not forced, so that what was written still leaves. */

import { lastWords } from './last-words.ts';

try {
  const [{ main }, { nodeIo }] = await Promise.all([import('./main.ts'), import('./node-io.ts')]);
  process.exitCode = await main(process.argv.slice(2), nodeIo());
} catch (error) {
  process.stderr.write(`${lastWords(error)}\n`);
  process.exitCode = 1;
}
