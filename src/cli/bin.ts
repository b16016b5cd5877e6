#!/usr/bin/env node
/** The executable. The exit code is set and not forced, so that what was written still leaves. */

import { main } from './main.ts';
import { nodeIo } from './node-io.ts';

process.exitCode = await main(process.argv.slice(2), nodeIo());
