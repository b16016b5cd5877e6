/**
 * How fast is the stitched edge found, beside what people would use instead? `npm run bench:offset`.
 *
 * Three invented closed outlines, one clearance. All give the plain parallel outline and nothing more, each at the
 * settings that were found to keep it within 0.01 mm of the true parallel between its corners as well as at them.
 * The libraries offset polygons: they get outlines that were flattened beforehand, which is not counted, and give
 * polygons back. Ours gets lines and arcs, checks them for crossings, and gives lines and arcs back. Beside it the
 * whole of what the program uses: the same path with what the foot touches meanwhile and what it cannot reach.
 *
 * Everyone takes turns at short rounds in one run, so that a busy machine disturbs all alike; ratios are of the
 * least times, which are what a machine left alone would show, and of the medians. Garbage is collected by one
 * thread (a flag of Node's in the command): helpers would wait for a processor where others load it.
 */

import { boxTreeOf } from '../src/geometry/box-tree.ts';
import { findSelfCrossing, findUnsound } from '../src/geometry/edge-fault.ts';
import { offsetElements } from '../src/geometry/offset-elements.ts';
import { flatten, type Path, reversePath } from '../src/geometry/path.ts';
import { type Piece, trimPiece } from '../src/geometry/piece.ts';
import type { Point } from '../src/geometry/point.ts';
import { pathsRound, type Rolled, rollFootRound } from '../src/geometry/rolling-foot.ts';
import { weld } from '../src/geometry/weld.ts';
import { deviation } from '../tests/geometry/foot-checks.ts';
import {
  clipperOffsetter,
  geosOffsetter,
  jtsOffsetter,
  largestRing,
} from '../tests/geometry/offset-libraries.ts';
import { LOBES, SLOTTED, WAVES } from '../tests/geometry/sample-outlines.ts';

const CLEARANCE = 6.35;

/** Chords this near (mm) to their arcs, and so many segments a quadrant: together they stay within 0.01 mm. */
const FLAT = 0.008;
const SEGMENTS = 16;
/** Places (mm) at which the deviation is measured. */
const STEP = 0.05;

const ROUNDS = 40;
const ROUND_MS = 8;
const WARM_MS = 400;

interface Contender {
  readonly name: string;
  readonly run: () => unknown;
  readonly pieces: () => readonly Piece[];
}

interface Times {
  readonly least: number;
  readonly median: number;
  readonly most: number;
}

/** ms a call, over rounds that the contenders take turns at. */
const race = (contenders: readonly Contender[]): Times[] => {
  const repeats = contenders.map(({ run }) => {
    let calls = 0;
    const from = performance.now();
    while (performance.now() < from + WARM_MS) {
      run();
      calls++;
    }
    return Math.max(1, Math.round((ROUND_MS * calls) / WARM_MS));
  });
  const times = contenders.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round++) {
    contenders.forEach((_, turn) => {
      // Forth and back, so that nobody always comes after the same one's garbage; one call warms up.
      const i = round % 2 === 0 ? turn : contenders.length - 1 - turn;
      const { run } = contenders[i]!;
      run();
      const from = performance.now();
      for (let k = 0; k < repeats[i]!; k++) run();
      times[i]!.push((performance.now() - from) / repeats[i]!);
    });
  }
  return times.map((t) => {
    t.sort((a, b) => a - b);
    return { least: t[0]!, median: t[t.length >> 1]!, most: t.at(-1)! };
  });
};

const must = <T>(r: Rolled<T>): T => {
  if (!r.ok) throw new Error(r.fault.kind);
  return r.value;
};

const libraries = [
  await geosOffsetter(SEGMENTS),
  await clipperOffsetter(6, FLAT),
  await jtsOffsetter(SEGMENTS),
];

const contest = (name: string, outline: Path): void => {
  const edge = reversePath(outline);
  const ring: readonly Point[] = flatten(outline, FLAT).slice(0, -1);
  const ours: readonly Contender[] = [
    {
      name: 'path alone',
      run: () => must(pathsRound(edge, CLEARANCE)),
      pieces: () => must(pathsRound(edge, CLEARANCE))[0]!.pieces,
    },
    {
      name: 'with contacts',
      run: () => must(rollFootRound(edge, CLEARANCE)),
      pieces: () => must(rollFootRound(edge, CLEARANCE))[0]!.path.pieces,
    },
  ];
  const theirs = libraries.map(
    (library): Contender => ({
      name: library.name,
      run: () => library.offset(ring, CLEARANCE),
      pieces: () => largestRing(library.offset(ring, CLEARANCE)).pieces,
    }),
  );
  const contenders = [...ours, ...theirs];
  const times = race(contenders);
  console.log(`\n${name}: ${outline.pieces.length} lines and arcs, ${ring.length} points when flat`);
  console.log('                 min ms  median     max   pieces  deviation mm');
  contenders.forEach((c, i) => {
    const pieces = c.pieces();
    const cells = [
      ...[times[i]!.least, times[i]!.median, times[i]!.most].map((t) => t.toFixed(4).padStart(8)),
      String(pieces.length).padStart(9),
      deviation(pieces, edge.pieces, CLEARANCE, STEP).toExponential(1).padStart(14),
    ];
    console.log(`  ${c.name.padEnd(13)}${cells.join('')}`);
  });
  ours.forEach((c, i) => {
    const ratio = (of: keyof Times): string =>
      (Math.min(...times.slice(ours.length).map((t) => t[of])) / times[i]![of]).toFixed(1);
    console.log(
      `  ${c.name}: ${ratio('least')} times as fast as the fastest library (medians ${ratio('median')})`,
    );
  });
};

contest('T1 lobes', LOBES);
contest('T2 waves', WAVES);
contest('T3 mixed', SLOTTED);

/** What the time goes on. The libraries are not asked whether the outline crosses itself; ours is. */
console.log('\nwhat the bare path spends its time on, each step alone');
for (const [name, outline] of [
  ['T1 lobes', LOBES],
  ['T2 waves', WAVES],
  ['T3 mixed', SLOTTED],
] as const) {
  const edge = reversePath(outline);
  const tree = boxTreeOf(edge.pieces);
  const welded = weld(edge.pieces, true);
  const caps = new Set<number>();
  const steps: Record<string, () => unknown> = {
    'whole path': () => must(pathsRound(edge, CLEARANCE)),
    'is it sound': () => findUnsound(edge),
    'a tree of boxes': () => boxTreeOf(edge.pieces),
    'does it cross itself': () => findSelfCrossing(edge, welded, tree),
    welding: () => weld(edge.pieces, true),
    'raw offsets': () => offsetElements(welded, CLEARANCE, caps),
  };
  const times = race(Object.entries(steps).map(([step, run]) => ({ name: step, run, pieces: () => [] })));
  const [whole, ...parts] = times.map((t) => t.least);
  const told = Object.keys(steps)
    .slice(1)
    .map((step, i) => `${step} ${Math.round((100 * parts[i]!) / whole!)} %`);
  const rest = 100 - parts.reduce((sum, t) => sum + (100 * t) / whole!, 0);
  console.log(`  ${name}: ${told.join(', ')}, cutting, keeping and linking ${Math.round(rest)} %`);
}

/** What grows as the work grows: the waves with every piece in 1, 2, 4 … parts. */
console.log('\nT2 waves, each piece split');
for (const parts of [1, 2, 4, 8]) {
  const split = WAVES.pieces.flatMap((p) =>
    Array.from({ length: parts }, (_, k) => trimPiece(p, k / parts, (k + 1) / parts)),
  );
  const edge = reversePath({ pieces: split, closed: true });
  const [t] = race([{ name: '', run: () => must(pathsRound(edge, CLEARANCE)), pieces: () => [] }]);
  const each = (1000 * t!.least) / split.length;
  console.log(
    `  ${String(split.length).padStart(5)} pieces: ${t!.least.toFixed(3)} ms, ${each.toFixed(2)} µs a piece`,
  );
}
