/**
 * Marks the built program as one that may be run. npm does this when it links a program, but not when its cache
 * holds the link already: somebody who cloned again into the same folder was told "Permission denied".
 */

import { chmodSync } from 'node:fs';

chmodSync(new URL('../dist/cli/bin.js', import.meta.url), 0o755);
