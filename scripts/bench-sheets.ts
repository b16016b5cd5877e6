/**
 * How long do 60 sheets with 50,000 curves take, beside the same content written by hand with zlib?
 * `npm run bench:sheets`.
 *
 * Each contender runs in a process of its own, which makes the drawing first and then times one run, as a command
 * does, and some more when it is warm. The processes take turns, so that a busy machine disturbs all alike; times are
 * the processor's, ratios are of the least. Peak memory is the process's largest resident size, beside that of one that only holds
 * the drawing. Both files are opened again by pdf.js, and their curves are counted.
 */

import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { inflateSync } from 'node:zlib';
import type { Places } from './sheets/by-hand.ts';
import { CURVES, manyCurves } from './sheets/many-curves.ts';

const ROUNDS = 5;
const WARM = 3;
const FOLDER = 'out/bench';
const PLACES = `${FOLDER}/sheets.json`;
const CONTENDERS = ['drawing', 'by-hand', 'ours'] as const;
type Contender = (typeof CONTENDERS)[number];

interface Seen {
  /** ms: the first run, and the least of the later ones. */
  readonly cold: number;
  readonly warm: number;
  /** The least without the plan of the sheets, which nobody makes by hand. */
  readonly write: number;
  /** MB */
  readonly peak: number;
}

/** What this process took of the processor so far, ms: other programs disturb it less than a clock. */
const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const fileOf = (name: Contender): string => `${FOLDER}/sheets-${name}.pdf`;

const child = async (name: Contender, warm: number): Promise<void> => {
  const drawing = manyCurves();
  let layOut = 0;
  let bytes: Uint8Array = new Uint8Array();
  const once = await contender(name, (ms) => {
    layOut = ms;
  });
  const times: number[] = [];
  const writes: number[] = [];
  for (let i = 0; i <= warm; i++) {
    const from = processorTime();
    bytes = await once(drawing);
    times.push(processorTime() - from);
    writes.push(times.at(-1)! - layOut);
  }
  const peak = process.resourceUsage().maxRSS / 1024;
  if (warm === 0 && bytes.length > 0) writeFileSync(fileOf(name), bytes);
  const least = Math.min(...times);
  const seen: Seen = { cold: times[0]!, warm: least, write: Math.min(...writes), peak };
  console.log(JSON.stringify(seen));
};

type Once = (drawing: ReturnType<typeof manyCurves>) => Promise<Uint8Array>;

const contender = async (name: Contender, planned: (ms: number) => void): Promise<Once> => {
  if (name === 'ours') {
    const { layOutOurs, writeOurs } = await import('./sheets/ours.ts');
    return (drawing) => {
      const from = processorTime();
      const plan = layOutOurs(drawing);
      planned(processorTime() - from);
      return writeOurs(drawing, plan);
    };
  }
  if (name === 'by-hand') {
    const { writeByHand } = await import('./sheets/by-hand.ts');
    const places = JSON.parse(readFileSync(PLACES, 'utf8')) as Places;
    return async (drawing) => writeByHand(drawing, places);
  }
  return async () => new Uint8Array();
};

const run = (name: Contender, warm: number): Seen => {
  const self = fileURLToPath(import.meta.url);
  const ran = spawnSync(process.execPath, ['--single-threaded-gc', self, 'child', name, String(warm)], {
    encoding: 'utf8',
  });
  if (ran.status !== 0) throw new Error(`${name}: ${ran.stderr}`);
  return JSON.parse(ran.stdout) as Seen;
};

/** Pages, and curves on the pages after the first, by pdf.js for the pages and by zlib for the operators. */
const contentsOf = async (file: string): Promise<{ pages: number; curves: number }> => {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const bytes = readFileSync(file);
  const doc = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages = doc.numPages;
  for (let i = 1; i <= pages; i++) await (await doc.getPage(i)).getOperatorList();
  await doc.destroy();
  let curves = 0;
  for (let at = bytes.indexOf('FlateDecode'); at >= 0; at = bytes.indexOf('FlateDecode', at + 1)) {
    const start = bytes.indexOf('stream', at) + 'stream'.length;
    const from = start + (bytes[start] === 13 ? 2 : 1);
    const text = inflateSync(bytes.subarray(from, bytes.indexOf('endstream', from))).toString('latin1');
    curves += text.match(/ c$/gm)?.length ?? 0;
  }
  return { pages, curves };
};

const spread = (values: readonly number[]): string => {
  const sorted = [...values].sort((a, b) => a - b);
  return `${sorted[0]!.toFixed(0)} (median ${sorted[sorted.length >> 1]!.toFixed(0)}, most ${sorted.at(-1)!.toFixed(0)})`;
};

const parent = async (): Promise<void> => {
  mkdirSync(FOLDER, { recursive: true });
  const { layOutOurs, placesOf } = await import('./sheets/ours.ts');
  const places = placesOf(layOutOurs(manyCurves()));
  writeFileSync(PLACES, JSON.stringify(places));
  console.log(`${CURVES.toLocaleString('en')} curves on ${places.sheets.length} sheets and a map`);

  const seen = new Map<Contender, Seen[]>(CONTENDERS.map((name) => [name, []]));
  const peaks = new Map<Contender, number>();
  for (const name of CONTENDERS) peaks.set(name, run(name, 0).peak);
  for (let round = 0; round < ROUNDS; round++)
    for (const name of CONTENDERS.slice(1)) seen.get(name)!.push(run(name, WARM));

  const sizes = new Map<Contender, number>();
  for (const name of CONTENDERS.slice(1)) {
    const bytes = readFileSync(fileOf(name)).length;
    sizes.set(name, bytes);
    const { pages, curves } = await contentsOf(fileOf(name));
    const all = seen.get(name)!;
    console.log(
      `${name.padEnd(8)} first run ${spread(all.map((s) => s.cold))} ms, warm ${spread(all.map((s) => s.warm))} ms, ` +
        `${(bytes / 1e6).toFixed(3)} MB, peak ${peaks.get(name)!.toFixed(0)} MB; ${pages} pages, ${curves} curves drawn`,
    );
  }
  const least = (name: Contender, of: 'cold' | 'warm' | 'write'): number =>
    Math.min(...seen.get(name)!.map((s) => s[of]));
  const ratio = (of: 'cold' | 'warm' | 'write'): string =>
    (least('ours', of) / least('by-hand', of)).toFixed(2);
  console.log(`ours, warm, without the plan of the sheets: ${least('ours', 'write').toFixed(0)} ms`);
  console.log(`a process that only holds the drawing peaks at ${peaks.get('drawing')!.toFixed(0)} MB`);
  console.log(
    `ours / by hand: time ${ratio('write')} for writing (aim: 1.3), ${ratio('warm')} with the plan of the sheets, ` +
      `${ratio('cold')} with that in a fresh process; ` +
      `size ${(sizes.get('ours')! / sizes.get('by-hand')!).toFixed(3)} (aim: 1.05); ` +
      `memory ${(peaks.get('ours')! / peaks.get('by-hand')!).toFixed(2)}`,
  );
};

const [, , first, name, warm] = process.argv;
if (first === 'child') await child(name as Contender, Number(warm));
else await parent();
