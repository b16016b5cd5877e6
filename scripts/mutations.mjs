/**
 * Each important check, seen to fail: one thing in the source is made wrong at a time, in a copy, and the tests
 * named beside it must fail. `npm run test:table` does all; `npm run test:table -- cross sheet` those
 * whose names hold one of the words. Ends with 1 where a mutation lives, or where a test fails without any.
 *
 * Those marked as needing tools run tests/tools, which need Debian's qpdf and poppler-utils.
 */

import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { MUTATIONS } from './mutation-table.mjs';

const root = join(import.meta.dirname, '..');

const words = process.argv.slice(2);
const wanted = MUTATIONS.filter(
  ({ name }) => words.length === 0 || words.some((word) => name.includes(word)),
);

const copy = mkdtempSync(join(tmpdir(), 'swagwright-mutations-'));
const COPIED = [
  'scripts',
  'src',
  'tests',
  'profiles',
  'samples',
  'package.json',
  'tsconfig.json',
  'tsconfig.build.json',
];
const CONFIGS = ['vitest.config.ts', 'vitest.tools.config.ts'];

/** Which tests failed: nothing where the tests did not run at all, which proves nothing. */
const failuresOf = ({ test, only }) => {
  const report = join(copy, 'report.json');
  rmSync(report, { force: true });
  const config = test.endsWith('.tools.ts') ? 'vitest.tools.config.ts' : 'vitest.config.ts';
  const args = ['run', '--config', config, '--reporter=json', `--outputFile=${report}`, test];
  if (only) args.push('-t', only);
  // Whole, where npm test tries a part.
  const env = { ...process.env, RUNS: '1' };
  spawnSync(process.execPath, [join(root, 'node_modules/vitest/vitest.mjs'), ...args], { cwd: copy, env });
  if (!existsSync(report)) return undefined;
  const told = JSON.parse(readFileSync(report, 'utf8'));
  const ran = told.testResults.flatMap((file) => file.assertionResults);
  const failed = ran.filter((one) => one.status === 'failed');
  if (!ran.some((one) => one.status === 'passed' || one.status === 'failed')) return undefined;
  return failed.map((one) => one.fullName);
};

const row = (...cells) => console.log(`| ${cells.join(' | ')} |`);
let bad = 0;
try {
  for (const name of [...COPIED, ...CONFIGS]) cpSync(join(root, name), join(copy, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));

  const sound = new Map();
  row('made wrong', 'caught by', 'tests that fail', 'the first');
  row('---', '---', '---', '---');
  for (const mutation of wanted) {
    const { name, file, from, to, test, only } = mutation;
    const path = join(copy, file);
    const source = readFileSync(path, 'utf8');
    if (source.split(from).length !== 2) {
      row(name, test, 'the place is not in the source once', file);
      bad++;
      continue;
    }
    const key = `${test} ${only ?? ''}`;
    if (!sound.has(key)) sound.set(key, failuresOf(mutation));
    const before = sound.get(key);
    if (before === undefined || before.length > 0) {
      row(name, test, 'fails without the mutation', before?.[0] ?? 'did not run');
      bad++;
      continue;
    }
    writeFileSync(path, source.replace(from, to));
    const failed = failuresOf(mutation);
    writeFileSync(path, source);
    if (failed === undefined || failed.length === 0) bad++;
    row(name, test, failed === undefined ? 'did not run' : failed.length || 'LIVES', failed?.[0] ?? '');
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
console.log(`${wanted.length - bad} of ${wanted.length} caught`);
process.exit(bad === 0 ? 0 : 1);
