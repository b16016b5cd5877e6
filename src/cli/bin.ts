#!/usr/bin/env node
/** The executable. The exit code is set and not forced, so that what was written still leaves. */

import { setFlagsFromString } from 'node:v8';
import { lastWords } from './last-words.ts';

/**
 * How much of a function runs before V8 compiles it a second time, for speed, on threads beside. A run of a second or
 * two ends before that has paid: 6 times the usual halves what a mockup takes of the processor, and slows no long run.
 * Node 20's V8 alone has this flag: later ones (22, 24 and 25 were tried) complain of it on standard error.
 */
if (process.versions.node.startsWith('20.')) setFlagsFromString('--interrupt-budget=400000');

try {
  const [{ main }, { nodeIo }] = await Promise.all([import('./main.ts'), import('./node-io.ts')]);
  process.exitCode = await main(process.argv.slice(2), nodeIo());
} catch (error) {
  process.stderr.write(`${lastWords(error)}\n`);
  process.exitCode = 1;
}
