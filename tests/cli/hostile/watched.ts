/** The program as a process with little memory, and what it took: so that a bound is measured and not believed. */

import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

export interface Watched {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
  readonly lines: readonly string[];
  /** Of all its threads, seconds: other work on the machine does not count. */
  readonly cpu: number;
  /** The most memory that it held at once, MB, as the system counts it. */
  readonly megabytes: number;
}

/**
 * Runs before the program, and tells on its way out what the process has used. Linux counts into the most that a process
 * ever held (maxRSS) what its parent held when it was started, here all that the tests have loaded; VmHWM is its own.
 */
const REPORT = `process.on('exit', () => {
  const { readFileSync, writeSync } = require('node:fs');
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  let most = maxRSS;
  try {
    most = Number(/VmHWM:\\s*(\\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8'))[1]);
  } catch {}
  writeSync(3, JSON.stringify({ cpu: (userCPUTime + systemCPUTime) / 1e6, megabytes: most / 1024 }));
});
`;

export interface Limits {
  /** MB that the objects of the program may take: beyond it the process dies, and the test with it. */
  readonly heap?: number;
  /** Code that runs before the program. */
  readonly before?: string;
  /** A shell's words before the command, such as a limit on the size of files. */
  readonly shell?: string;
}

/** What runs before the program lies beside it, and not in the folder that is watched. */
export const startWatched = (
  bin: string,
  folder: string,
  argv: readonly string[],
  { heap = 1024, before = '', shell }: Limits = {},
): ChildProcess => {
  const report = join(bin, '../../report.cjs');
  writeFileSync(report, REPORT);
  const own = join(bin, `../../before-${argv[0]}.mjs`);
  if (before !== '') writeFileSync(own, before);
  const node = [
    `--max-old-space-size=${heap}`,
    '--require',
    report,
    ...(before === '' ? [] : ['--import', pathToFileURL(own).href]),
    bin,
    ...argv,
  ];
  const { PATH } = process.env;
  const options: SpawnOptions = { cwd: folder, env: { PATH }, stdio: ['ignore', 'pipe', 'pipe', 'pipe'] };
  return shell === undefined
    ? spawn(process.execPath, node, options)
    : spawn('sh', ['-c', `${shell} exec "$@"`, 'sh', process.execPath, ...node], options);
};

export const finished = (child: ChildProcess): Promise<Watched> =>
  new Promise((resolve, reject) => {
    const said = ['', '', ''];
    [1, 2, 3].forEach((fd, i) => {
      const stream = child.stdio[fd] as NodeJS.ReadableStream;
      stream.setEncoding('utf8').on('data', (text: string) => {
        said[i] += text;
      });
    });
    child.on('error', reject);
    child.on('close', (code, signal) => {
      const [out, err, used] = said as [string, string, string];
      const { cpu, megabytes } = used.startsWith('{')
        ? (JSON.parse(used) as { cpu: number; megabytes: number })
        : { cpu: Number.NaN, megabytes: Number.NaN };
      resolve({ code, signal, out, err, lines: err.split('\n').filter((l) => l !== ''), cpu, megabytes });
    });
  });

export const watched = (
  bin: string,
  folder: string,
  argv: readonly string[],
  limits: Limits = {},
): Promise<Watched> => finished(startWatched(bin, folder, argv, limits));
