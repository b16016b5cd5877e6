/**
 * Breaks the source of one room after another in every place that Stryker knows to break, and every word that has an
 * opposite besides (mutants/word-swap.mjs), and says how much of it the room's tests see:
 *
 *   npm run test:mutations                               every room: takes hours
 *   npm run test:mutations -- card sheets                these rooms
 *   npm run test:mutations -- src/output/card/told.ts    this file (or lines of it, told.ts:10-20), by its room's tests
 *
 *   ONLY=WordSwap,StringLiteral   nothing else is made wrong
 *   KEPT=1                        takes over what an earlier run, kept in out/mutants, said of code and tests that have
 *                                 not changed; it does not see changes in what these import
 *
 * Names each mutant that lives, and ends with 1 where a room has none to make.
 */

import { dirname, join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { ROOMS } from './mutants/rooms.mjs';
import { wordSwap } from './mutants/word-swap.mjs';

// Stryker takes no mutators from outside, so ours is put among its own; package.json holds it to this version.
const inside = new URL('./mutators/index.js', import.meta.resolve('@stryker-mutator/instrumenter'));
const { allMutators } = await import(inside.href);
allMutators.push(wordSwap);

const root = join(import.meta.dirname, '..');
process.chdir(root);

const only = process.env.ONLY?.split(',');
const left = only ? allMutators.map(({ name }) => name).filter((name) => !only.includes(name)) : [];

const withoutLines = (file) => file.replace(/:\d+(-\d+)?$/, '');

/** A room and what of it is made wrong. */
const asked = (word) => {
  if (ROOMS[word]) return { name: word, ...ROOMS[word] };
  const file = withoutLines(word);
  const room = Object.entries(ROOMS).find(([, { mutate }]) =>
    mutate.some((glob) => glob === file || glob === `${dirname(file)}/*.ts`),
  );
  if (room === undefined) {
    console.error(`${word} is no room and in none; rooms are ${Object.keys(ROOMS).join(', ')}`);
    process.exit(2);
  }
  return { name: word, mutate: [word], tests: room[1].tests };
};

const SEEN = ['Killed', 'Timeout', 'RuntimeError'];
const row = (...cells) => console.log(`| ${cells.join(' | ')} |`);
const lives = ({ fileName, location: { start }, mutatorName, replacement, status }) =>
  `${fileName.slice(root.length + 1)}:${start.line}:${start.column + 1} ${mutatorName} ${status}: ${replacement.replaceAll(/\s+/g, ' ').slice(0, 160)}`;

const words = process.argv.slice(2);
const rooms = (words.length > 0 ? words : Object.keys(ROOMS)).map(asked);
const told = [];
for (const { name, mutate, tests } of rooms) {
  process.env.MUTANTS_TESTS = tests.join(' ');
  const results = await new Stryker({
    mutate,
    testRunner: 'vitest',
    vitest: { configFile: 'vitest.mutants.config.ts', related: false },
    plugins: [import.meta.resolve('@stryker-mutator/vitest-runner')],
    mutator: { excludedMutations: left },
    coverageAnalysis: 'perTest',
    concurrency: 1,
    // A busy machine is slow, and a mutant that merely waits is not seen.
    timeoutMS: 60_000,
    timeoutFactor: 4,
    dryRunTimeoutMinutes: 30,
    reporters: process.stdout.isTTY ? ['progress'] : [],
    logLevel: 'error',
    ignorePatterns: ['dist', 'out'],
    tempDirName: 'out/mutants/sandboxes',
    // Vite reads it as it stands, and Stryker would read it by a compiler that is not the one here.
    tsconfigFile: 'none',
    incremental: process.env.KEPT === '1',
    incrementalFile: `out/mutants/${name.replaceAll(/\W+/g, '-')}.json`,
    allowEmpty: true,
  }).runMutationTest();
  const made = results.filter(({ status }) => status !== 'Ignored');
  const living = made.filter(({ status }) => !SEEN.includes(status));
  for (const one of living) console.log(lives(one));
  told.push({ name, made: made.length, seen: made.length - living.length });
}

console.log();
row('room', 'made wrong', 'seen', 'score');
row('---', '---:', '---:', '---:');
for (const { name, made, seen } of told)
  row(name, made, seen, made === 0 ? '' : `${((100 * seen) / made).toFixed(1)} %`);
