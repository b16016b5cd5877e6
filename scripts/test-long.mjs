/**
 * The property tests with many more runs, from a fresh seed, and the tests that `npm test` leaves out because they are
 * slow and have rarely failed: `npm run test:long`.
 *
 *   RUNS=50 SEED=12345 npm run test:long            as often, and from where, as said
 *   RUNS=1 npm run test:long                        what `npm test` leaves out, and each property once
 *   npm run test:long -- tests/geometry             only the tests of one folder
 *
 * Prints the seed first, so that a run that fails can be run again. A counterexample then goes into the tests as a
 * fixture, named after the fault that it showed.
 */

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';

const root = join(import.meta.dirname, '..');
const RUNS = process.env.RUNS || '20';
const SEED = process.env.SEED || String(1 + Math.floor(Math.random() * 0x7ffffffe));
const wanted = process.argv.slice(2);

/** Tests that take their runs from tests/support/runs.ts, or are told there whether to run at all. */
const files = readdirSync(join(root, 'tests'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.test.ts'))
  .map((entry) => relative(root, join(entry.parentPath, entry.name)))
  .filter((file) => wanted.length === 0 || wanted.some((part) => file.includes(part)))
  .filter((file) => readFileSync(join(root, file), 'utf8').includes('support/runs.ts'))
  .sort();
if (files.length === 0) {
  console.error(`no such test is named like ${wanted.join(' or ')}`);
  process.exit(2);
}

const again = `RUNS=${RUNS} SEED=${SEED} npm run test:long${wanted.length > 0 ? ` -- ${wanted.join(' ')}` : ''}`;
console.log(`${files.length} files, properties ${RUNS} times as often as in npm test, seed ${SEED}`);
const vitest = join(root, 'node_modules/vitest/vitest.mjs');
const ran = spawnSync(process.execPath, [vitest, 'run', '--config', 'vitest.long.config.ts', ...files], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, RUNS, SEED },
});
console.log(`${ran.status === 0 ? 'All held' : 'Failed'}. The same again: ${again}`);
process.exit(ran.status ?? 1);
