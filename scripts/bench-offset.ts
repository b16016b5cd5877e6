/**
 * How fast the way round an outline is found, beside two libraries that offset polygons, at settings that keep
 * each within 0.01 mm of the true parallel. Run it with a bundle:
 *
 *   npx rolldown scripts/bench-offset.ts --platform node --format esm --file out/bench-offset.mjs && node out/bench-offset.mjs
 *
 * The libraries get outlines that were flattened beforehand and give polygons back; ours gets lines and arcs and
 * gives lines and arcs back, with contacts and unreached places, and checks the outline for crossings as well.
 */

import { flatten, type Path, reversePath } from '../src/geometry/path.ts';
import type { Piece } from '../src/geometry/piece.ts';
import type { Point } from '../src/geometry/point.ts';
import { rollFootRound } from '../src/geometry/rolling-foot.ts';
import { deviation } from '../tests/geometry/foot-checks.ts';
import { clipperOffsetter, geosOffsetter, largestRing } from '../tests/geometry/offset-libraries.ts';
import { LOBES, SLOTTED, WAVES } from '../tests/geometry/sample-outlines.ts';

const CLEARANCE = 6.35;

/** What was found to keep the deviation within 0.01 mm: chords of 0.008 mm, 16 segments a quadrant. */
const FLAT = 0.008;
const SEGMENTS = 16;

const ROUNDS = 25;
const ROUND_MS = 12;

interface Contender {
  readonly name: string;
  readonly run: () => unknown;
  readonly pieces: () => readonly Piece[];
}

/** Median and spread, in ms a call, of rounds that the contenders take turns at. */
const race = (contenders: readonly Contender[]): number[][] => {
  const repeats = contenders.map(({ run }) => {
    const until = performance.now() + 400;
    let calls = 0;
    const from = performance.now();
    while (performance.now() < until) {
      run();
      calls++;
    }
    return Math.max(1, Math.round((ROUND_MS * calls) / (performance.now() - from)));
  });
  const times = contenders.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round++) {
    contenders.forEach(({ run }, i) => {
      const from = performance.now();
      for (let k = 0; k < repeats[i]!; k++) run();
      times[i]!.push((performance.now() - from) / repeats[i]!);
    });
  }
  return times.map((t) => t.sort((a, b) => a - b));
};

const outlines: readonly (readonly [string, Path])[] = [
  ['T1 lobes', LOBES],
  ['T2 waves', WAVES],
  ['T3 mixed', SLOTTED],
];

const libraries = [await geosOffsetter(SEGMENTS), await clipperOffsetter(6, FLAT)];

for (const [name, outline] of outlines) {
  const edge = reversePath(outline);
  const ring: readonly Point[] = flatten(outline, FLAT).slice(0, -1);
  const rolled = (): readonly Piece[] => {
    const r = rollFootRound(edge, CLEARANCE);
    if (!r.ok) throw new Error(r.fault.kind);
    return r.value[0]!.path.pieces;
  };
  const contenders: Contender[] = [
    { name: 'swagwright', run: rolled, pieces: rolled },
    ...libraries.map((library) => ({
      name: library.name,
      run: () => library.offset(ring, CLEARANCE),
      pieces: () => largestRing(library.offset(ring, CLEARANCE)).pieces,
    })),
  ];
  const times = race(contenders);
  console.log(`\n${name} (${outline.pieces.length} lines and arcs, ${ring.length} points when flat)`);
  contenders.forEach((c, i) => {
    const t = times[i]!;
    const pieces = c.pieces();
    const figures = [
      `min ${t[0]!.toFixed(4)} ms`,
      `median ${t[ROUNDS >> 1]!.toFixed(4)}`,
      `spread ${t[0]!.toFixed(4)} to ${t[ROUNDS - 1]!.toFixed(4)}`,
      `${pieces.length} pieces`,
      `deviation ${deviation(pieces, edge.pieces, CLEARANCE, 0.05).toExponential(1)} mm`,
    ];
    console.log(`  ${c.name.padEnd(14)} ${figures.join(', ')}`);
  });
  const fastest = Math.min(...times.slice(1).map((t) => t[ROUNDS >> 1]!));
  console.log(
    `  ${(fastest / times[0]![ROUNDS >> 1]!).toFixed(2)} times as fast as the faster library (medians)`,
  );
}
