/**
 * How long does each command take from nothing, beside a Node that does nothing? `npm run bench:start`, after
 * `npm run build`.
 *
 * Every command is run as a person runs it, in a process of its own, with its help and once for real on a small plan,
 * and the main ones on a whole border with fills; all take turns with `node -e 0`, so that a busy machine disturbs all
 * alike. Times are what each process took of the processor (user and system together), and the time on the clock;
 * ratios are of the least. At last the package is packed and installed as somebody else would, and its size told.
 */

import { spawnSync } from 'node:child_process';
import { copyFileSync, lstatSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const ROUNDS = Number(process.env.ROUNDS ?? '9');
const root = join(import.meta.dirname, '..');
const bin = join(root, 'dist/cli/bin.js');
const folder = mkdtempSync(join(tmpdir(), 'swagwright-start-'));
mkdirSync(join(folder, 'out'));
copyFileSync(join(root, 'samples/guild-strip.yaml'), join(folder, 'plan.yaml'));
copyFileSync(join(root, 'samples/raffle-border.yaml'), join(folder, 'border.yaml'));
const STUDENTS = 30;
const pieces = Array.from({ length: STUDENTS }, (_, i) => `Student ${i + 1},${28 + (i % 12)},5`);
writeFileSync(join(folder, 'class.csv'), ['name,length,width', ...pieces].join('\n'));

const HELP = [
  '--help',
  ...['fit', 'mockup', 'draw', 'card', 'audition', 'class', 'template'].map((c) => `${c} --help`),
];
const REAL = [
  'fit plan.yaml',
  'mockup plan.yaml -o out/OUT.pdf',
  'draw plan.yaml -o out/OUT.svg',
  'draw plan.yaml -o out/OUT.png',
  'card plan.yaml',
  'audition plan.yaml -o out/OUT.pdf',
  'template baluster -o out/OUT.pdf',
  'fit border.yaml',
  'mockup border.yaml -o out/OUT.pdf',
  'card border.yaml',
  'class plan.yaml class.csv -o out/OUT.pdf',
];

/** What each may take, as a multiple of `node -e 0`: of help, and of a command on the small plan. */
const MOST = { help: 1.6, fit: 5, card: 5, mockup: 12 };
const MOST_MEGABYTES = 60;
/** Of one mock-up: what a class of thirty may take. */
const MOST_MOCKUPS = 10;
const mostOf = (name) => (name.endsWith('--help') ? MOST.help : MOST[name.split(' ')[0]]);

/** Makes a process say at its end, on its error output, how much of the processor it took (µs). */
const MARK = 'processor time: ';
const TELL = `data:text/javascript,process.on('exit', () => {
  const { userCPUTime, systemCPUTime } = process.resourceUsage();
  process.stderr.write('${MARK}' + (userCPUTime + systemCPUTime));
})`;

let written = 0;
const run = (args) => {
  const from = performance.now();
  const ran = spawnSync(process.execPath, ['--import', TELL, ...args], { cwd: folder, encoding: 'utf8' });
  const clock = performance.now() - from;
  if (ran.status !== 0) throw new Error(`${args.join(' ')}: ${ran.stderr}`);
  return { clock, busy: Number(ran.stderr.slice(ran.stderr.lastIndexOf(MARK) + MARK.length)) / 1000 };
};
// A file that exists is not written over without a word: each run has a name of its own.
const command = (line) => [bin, ...line.replace('OUT', String(++written)).split(' ')];

const rows = [
  { name: 'node -e 0', args: () => ['-e', '0'] },
  ...[...HELP, ...REAL].map((line) => ({ name: line, args: () => command(line) })),
].map((row) => ({ ...row, clock: [], busy: [] }));

/** MB of the package and all that it needs, from the files' lengths. */
const installed = () => {
  const npm = (cwd, ...args) => {
    const ran = spawnSync('npm', args, { cwd, encoding: 'utf8' });
    if (ran.status !== 0) throw new Error(`npm ${args.join(' ')}: ${ran.stderr}`);
    return ran.stdout;
  };
  const [{ filename }] = JSON.parse(
    npm(root, 'pack', '--ignore-scripts', '--json', '--pack-destination', folder),
  );
  const empty = join(folder, 'empty');
  mkdirSync(empty);
  writeFileSync(join(empty, 'package.json'), '{ "private": true }');
  npm(empty, 'install', '--omit=dev', '--prefer-offline', join(folder, filename));
  const files = readdirSync(join(empty, 'node_modules'), { recursive: true, withFileTypes: true });
  return files.reduce((sum, file) => sum + lstatSync(join(file.parentPath, file.name)).size, 0) / 1e6;
};

let megabytes;
try {
  for (let round = 0; round <= ROUNDS; round++) {
    for (const row of rows) {
      const { clock, busy } = run(row.args());
      // The first round reads the files from the disk.
      if (round === 0) continue;
      row.clock.push(clock);
      row.busy.push(busy);
    }
  }
  megabytes = installed();
} finally {
  rmSync(folder, { recursive: true });
}

const least = (values) => Math.min(...values);
const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];
const [nothing] = rows;
console.log(`${ROUNDS} rounds; processor: least ms (median), ratio of the least; clock: the same`);
for (const { name, busy, clock } of rows) {
  const figures = (of, base) =>
    `${least(of).toFixed(0).padStart(5)} (${median(of).toFixed(0)})`.padEnd(14) +
    `${(least(of) / least(base)).toFixed(1).padStart(5)} ×`;
  const ratio = least(busy) / least(nothing.busy);
  const most = mostOf(name);
  const bound = most === undefined ? '' : `   ${ratio <= most ? 'at most' : 'MORE THAN'} ${most}`;
  console.log(`${name.padEnd(36)}${figures(busy, nothing.busy)}   ${figures(clock, nothing.clock)}${bound}`);
}
const leastOf = (start) => least(rows.find(({ name }) => name.startsWith(start)).busy);
const inMockups = leastOf('class plan.yaml') / leastOf('mockup plan.yaml');
console.log(
  `a class of ${STUDENTS}: ${inMockups.toFixed(1)} mock-ups   ${inMockups <= MOST_MOCKUPS ? 'at most' : 'MORE THAN'} ${MOST_MOCKUPS}`,
);
console.log(
  `installed ${megabytes.toFixed(1)} MB   ${megabytes <= MOST_MEGABYTES ? 'at most' : 'MORE THAN'} ${MOST_MEGABYTES}`,
);
