/**
 * The background as one field for the whole band. Checked from outside: its area by that of the band, its lines by where
 * they end, what is printed of it by what the whole has there, all by sampling and counting.
 */

import { describe, expect, test } from 'vitest';
import {
  drawPlan,
  fillDesign,
  fillLengths,
  fillOpenArea,
  scopeOf,
  tooFineFor,
} from '../../src/drawing/index.ts';
import { FILLS, type Fill } from '../../src/fill/index.ts';
import {
  inverse,
  movePath,
  nearnessOf,
  type Path,
  type Point,
  pathLength,
  regionArea,
  regionBox,
  regionPieces,
} from '../../src/geometry/index.ts';
import {
  alikeRepeats,
  type Design,
  designOf,
  openAreaOf,
  regionsOf,
  rowsOf,
  stitchedLength,
} from '../../src/swag/index.ts';
import { depthIn, polygonsOf } from '../fill/checks.ts';
import { few } from '../support/runs.ts';
import { planOf, pointsAlong, profile, search } from '../swag/fit-helpers.ts';

const made = (layout: string, more = '', template = 'finial') => {
  const plan = planOf(`layout: ${layout}\n${more}`);
  const best = search(plan, [profile(template)]).results[0]!;
  return { plan, design: designOf(best.field, best.fit) };
};

const EVEN = '{ top: 34, right: 23, bottom: 34, left: 23 }';
const TORN = '{ top: 34, right: 23, bottom: 34 3/8, left: 23 1/4 }';
const border = (width: number, more: string, inner = EVEN): string =>
  `{ border: { width: ${width}, inner: ${inner}, margin: 1/2, ${more} } }`;

const BANDS: Readonly<Record<string, string>> = {
  'turning, from inside': border(6, 'from: inner, corners: turn'),
  'turning, from outside': border(9, 'from: outer, corners: turn'),
  'meeting, from inside': border(6, 'from: inner, corners: meet'),
  'meeting, from outside': border(7, 'from: outer, corners: meet'),
  'across, from outside': border(9, 'from: outer, corners: across'),
  'square frame': '{ frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 24 } }',
};
const CHANNELS = 'channels: { outward: [1/4], inward: [1/4] }';

/** Of the band between the near and the far level, its corners square. */
const bandArea = ({ field, sides }: Design): number => {
  const [w, h] = sides.map(({ run }) => run.drawn) as [number, number];
  const out = field.from === 'inner' ? 2 : -2;
  const at = (level: number): number => (w + out * level) * (h + out * level);
  return Math.abs(at(field.far) - at(field.near));
};

/** All that is not background, repeat by repeat; those areas are checked for themselves. */
const otherArea = (design: Design, plan: ReturnType<typeof planOf>): number =>
  alikeRepeats(design, design.halves).reduce((sum, { cell, ends, halves }) => {
    const other = regionsOf(cell, design, plan.channels, ends).filter((r) => r.kind !== 'background');
    return sum + other.reduce((all, r) => all + regionArea(r.region), 0) * (halves.length / 2);
  }, 0);

describe('what finds no way through the whole', () => {
  test('is alike on all sides of a square border, upright or lying', () => {
    const square = '{ top: 30, right: 30, bottom: 30, left: 30 }';
    const { plan, design } = made(border(6, 'from: inner, corners: turn', square), CHANNELS);
    const area = openAreaOf(design, plan.channels);
    const feather = FILLS.find((f) => f.name === 'feather')!;
    const byRepeat: Fill = {
      ...feather,
      fill: (region, options, context) =>
        context?.sides
          ? { paths: [], continuous: true, messages: [] }
          : feather.fill(region, options, context),
    };
    const { paths } = fillOpenArea(byRepeat, area, { spacing: 6.35 });
    const pieces = paths.flatMap((p) => p.pieces);
    expect(pieces.length).toBeGreaterThan(1000);
    const { minX, maxX, minY, maxY } = regionBox(area.region);
    const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
    const near = nearnessOf(pieces);
    for (const p of paths.flatMap((path) => pointsAlong(path, 5)))
      expect(near.distance({ x: x - (p.y - y), y: y + (p.x - x) })).toBeLessThan(1e-6);
  });
});

describe('the background is one field', () => {
  for (const [name, layout] of Object.entries(BANDS))
    test(`${name}: it is all of the band but swags and channels, in one ring`, () => {
      const { plan, design } = made(layout, CHANNELS);
      const { region } = openAreaOf(design, plan.channels);
      expect(regionArea(region)).toBeCloseTo(bandArea(design) - otherArea(design, plan), 2);
      // One outline outside, and one round what it lies round.
      const large = region.loops.filter((l) => pathLength(l) > 1000);
      expect(large.length).toBe(2);
    });

  test('sides that differ: where a join stands open it goes on from side to side', () => {
    const { plan, design } = made(border(6, 'from: inner, corners: turn', TORN), CHANNELS);
    const { region } = openAreaOf(design, plan.channels);
    expect(region.loops.length).toBe(2);
    const torn = design.sides.filter(({ tear }) => tear);
    expect(torn.length).toBe(2);
    // Of each gap it takes what lies beyond the channel, which is a join's height lower than the far level.
    const gaps = torn.reduce((sum, { tear }) => sum + tear!.by * design.field.far, 0);
    const more = regionArea(region) - (bandArea(design) - otherArea(design, plan) - gaps);
    expect(more).toBeGreaterThan(0.5 * gaps);
    expect(more).toBeLessThan(gaps);
  });

  test('corner squares that are left free are no part of it: there is a piece for each side', () => {
    const { plan, design } = made(border(6, 'from: inner, corners: open'), CHANNELS);
    const { region } = openAreaOf(design, plan.channels);
    const { far, near } = design.field;
    const sides = design.sides.reduce((sum, { run }) => sum + run.length * (far - near), 0);
    expect(regionArea(region)).toBeCloseTo(sides - otherArea(design, plan), 2);
  });

  test('round a frame it closes', () => {
    const frame = '{ frame: { count: 8, around: 9, clearance: 1/2, within: 16 } }';
    const { plan, design } = made(frame, CHANNELS);
    const { region } = openAreaOf(design, plan.channels);
    const inside = otherArea(design, plan);
    // From the clear circle, 10 in across, to the limit, 16 in across.
    const disc = Math.PI * 25.4 ** 2 * (64 - 25);
    expect(regionArea(region)).toBeCloseTo(disc - inside, 2);
    expect(region.loops.length).toBe(2);
  });
});

const openLines = (design: Design, plan: ReturnType<typeof planOf>): readonly Path[] =>
  fillDesign(design, design.halves, plan).open.flatMap(({ paths }) => paths);

const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) < 1e-6;

describe('straight lines turn on the mitres', () => {
  const cases: readonly (readonly [string, string, string])[] = [
    ['crosshatch', '', 'turning, from inside'],
    ['crosshatch', ', angle: 30', 'turning, from inside'],
    ['lines', '', 'turning, from inside'],
    ['lines', ', angle: 60', 'meeting, from inside'],
    ['lines', ', angle: 60', 'meeting, from outside'],
    ['crosshatch', '', 'across, from outside'],
    ['lines', ', angle: 0', 'turning, from outside'],
  ];
  for (const [kind, angle, band] of cases)
    test(`${kind}${angle}, ${band}: every line ends on an edge or where another one ends`, () => {
      const text = `${CHANNELS}\nfills: { background: { kind: ${kind}, spacing: 1/2${angle} } }`;
      const layout = BANDS[band]!.replace(EVEN, TORN);
      const { plan, design } = made(layout, text);
      const lines = openLines(design, plan);
      const polygons = polygonsOf(openAreaOf(design, plan.channels).region);
      const ends = lines.map((p) => [p.pieces[0]!.from, p.pieces.at(-1)!.to] as const);
      let onMitres = 0;
      ends.forEach((both, i) => {
        for (const end of both) {
          if (Math.abs(depthIn(polygons, end)) < 0.02) continue;
          onMitres++;
          const meets = ends.some((other, k) => k !== i && other.some((e) => near(e, end)));
          expect(meets, `${end.x} ${end.y}`).toBe(true);
        }
      });
      expect(lines.length).toBeGreaterThan(40);
      // Some do turn.
      expect(onMitres).toBeGreaterThan(7);
    });

  test('each keeps its angle to its side, and its spacing but for what a side leaves over', () => {
    const text = `${CHANNELS}\nfills: { background: { kind: lines, spacing: 1/2 } }`;
    const { plan, design } = made(BANDS['turning, from inside']!, text);
    const lines = openLines(design, plan);
    for (const { run } of design.sides) {
      const own = lines.map((p) => movePath(p, inverse(run.place)));
      const middles = own.flatMap(({ pieces: [p] }) =>
        p &&
        Math.abs(p.to.x - p.from.x) < 1e-9 &&
        p.from.x > 0 &&
        p.from.x < run.length &&
        p.from.y > 0 &&
        p.from.y < 200
          ? [p.from.x]
          : [],
      );
      const xs = [...new Set(middles.map((x) => x.toFixed(6)))].map(Number).sort((a, b) => a - b);
      const gaps = xs.slice(1).map((x, i) => x - xs[i]!);
      expect(xs.length).toBeGreaterThan(30);
      for (const gap of gaps) expect(Math.abs(gap - 12.7)).toBeLessThan(0.02 * 12.7);
      // The first is half a gap from the corner, so that none lies on the mitre's foot.
      expect(xs[0]).toBeCloseTo(6.35, 6);
    }
  });
});

describe('what is printed of it is the line of the whole', () => {
  for (const kind of ['stipple', 'crosshatch', 'echo'])
    test(`${kind}: repeats, corners and a side show what the whole has there, and all of it`, () => {
      const text = `${CHANNELS}\nfills: { background: { kind: ${kind}, spacing: ${kind === 'stipple' ? '1' : '1/2'} } }`;
      const { plan, design } = made(border(6, 'from: inner, corners: turn', TORN), text);
      const whole = openLines(design, plan);
      const all = whole.reduce((sum, p) => sum + pathLength(p), 0);
      const around = nearnessOf(whole.flatMap((p) => p.pieces));
      const shownAt = (name: string) => {
        const scoped = scopeOf(design, name);
        if (!scoped.ok) throw new Error(name);
        const { drawing } = drawPlan(scoped.design, plan, scoped.scope);
        const lines = drawing.layers.fill.flatMap((item) => (item.kind === 'path' ? [item.path] : []));
        return { lines, drawn: scoped.design };
      };
      for (const name of ['top 2', 'right 1', 'corner top right']) {
        const { lines } = shownAt(name);
        const share = lines.reduce((sum, p) => sum + pathLength(p), 0) / all;
        expect(share).toBeGreaterThan(0.03);
        expect(share).toBeLessThan(name.startsWith('corner') ? 0.5 : 0.2);
        for (const p of lines.flatMap((path) => pointsAlong(path, 5)))
          expect(around.distance(p)).toBeLessThan(1e-6);
      }
      // The bottom is longer than the top; drawn alone the top has no gap in it, and beyond it lines lie nearer.
      const { lines, drawn } = shownAt('top');
      const [alone, there] = [drawn, design].map((d) => d.sides.find((s) => s.run.name === 'top')!);
      const { after, by } = there!.tear!;
      const share = (there!.run.length - 2 * there!.inset) / there!.places;
      const at = there!.inset + after * share;
      const back = inverse(alone!.run.place);
      let beyond = 0;
      for (const path of lines.map((p) => movePath(p, back)))
        for (const p of pointsAlong(path, 5)) {
          if (Math.abs(p.x - at) < 1e-3) continue;
          if (p.x > at) beyond++;
          const moved = { x: p.x > at ? p.x + by : p.x, y: p.y };
          const [onWhole] = movePath(
            { pieces: [{ kind: 'line', from: moved, to: moved }], closed: false },
            there!.run.place,
          ).pieces;
          expect(around.distance(onWhole!.from)).toBeLessThan(1e-6);
        }
      expect(beyond).toBeGreaterThan(20);
      // The repeats and corners together have the whole, but for what lies in the two gaps.
      const lengths = stitchedLength(
        design,
        plan.channels,
        fillLengths(fillDesign(design, design.halves, plan), design),
      );
      expect(lengths.fills).toBeLessThanOrEqual(all + 1e-6);
      expect(lengths.fills).toBeGreaterThan(0.985 * all);
    });
});

describe('an echo', () => {
  const text = `${CHANNELS}\nfills: { background: { kind: echo, spacing: 3/8 } }`;
  for (const [name, layout] of Object.entries(BANDS))
    test(`${name}: each line is whole spacings beyond the channel, from swag to swag`, () => {
      const { plan, design } = made(layout, text);
      const lines = openLines(design, plan);
      const stitched = design.halves.flatMap((h) => movePath(h.cell.path, h.motion).pieces);
      const { distance } = nearnessOf(stitched);
      const spacing = 0.375 * 25.4;
      const seen = new Set<number>();
      for (const p of lines.flatMap((path) => pointsAlong(path, 3))) {
        const steps = (distance(p) - 6.35) / spacing;
        expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-5);
        seen.add(Math.round(steps));
      }
      expect(Math.min(...seen)).toBe(1);
      expect(seen.size).toBeGreaterThan(3);
      // The first lines run on through joins: they reach to both sides of one.
      const { run, inset, fit, places } = design.sides[0]!;
      const join = inset + (run.length - 2 * inset) / places;
      const back = inverse(run.place);
      const reaches = lines.some((path) => {
        const xs = pointsAlong(movePath(path, back), 3).flatMap((p) => (p.y > 0 ? [p.x] : []));
        return Math.min(...xs) < join - fit.seat.span / 4 && Math.max(...xs) > join + fit.seat.span / 4;
      });
      expect(reaches).toBe(true);
    });
});

test('between two rows there is one field too', () => {
  const layout = border(9, 'from: inner, corners: turn').replace('margin: 1/2', 'margin: 1/4');
  const fills = '{ between: { kind: stipple, spacing: 1/2 }, background: { kind: echo, spacing: 1/2 } }';
  const { plan, design } = made(layout, `rows: [{ at: 1/2 }]\nfills: ${fills}`, 'baluster');
  const [near, far] = rowsOf(design).map((row) => openAreaOf(row, plan.channels));
  expect([near!.kind, far!.kind]).toEqual(['between', 'background']);
  expect(regionPieces(near!.region).length).toBeGreaterThan(10);
  const { open } = fillDesign(design, design.halves, plan);
  expect(open.map((f) => `${f.row} ${f.kind} ${f.fill}`)).toEqual(['1 between stipple', '2 background echo']);
});

describe('a spacing too fine for the whole', () => {
  const STRIP = '{ strip: { length: 360, width: 8, margin: 1/2 } }';
  const { design } = made(STRIP, '', 'baluster');
  const asking = (kind: string, spacing: string) =>
    planOf(`layout: ${STRIP}\nfills: { background: { kind: ${kind}, spacing: ${spacing} } }`);
  /** What is said of it, and the seconds of the processor that it took to say so. */
  const refused = (kind: string, spacing: string) => {
    const plan = asking(kind, spacing);
    const before = process.cpuUsage();
    const { problems, open, byHalf } = fillDesign(design, design.halves, plan);
    const seconds = process.cpuUsage(before).user / 1e6;
    expect(open).toEqual([]);
    expect(byHalf.size).toBe(0);
    const [, finest, over, under] = /^at least ((\d+)\/(\d+)) in$/.exec(problems[0]?.expected ?? '') ?? [];
    return { problems, seconds, finest: finest!, inch: Number(over) / Number(under), plan };
  };

  test('stipple is refused, with the finest that is taken', () => {
    const { problems, inch, plan } = refused('stipple', '1/16');
    expect(problems.map((p) => [p.key, p.found])).toEqual([['fills.background.spacing', '1/16 in']]);
    // An element for every square as wide as the spacing, and no more than the stated number of them.
    const { region } = openAreaOf(design, plan.channels);
    const squares = (of: number): number => regionArea(region) / (25.4 * of) ** 2;
    expect(squares(inch)).toBeLessThan(60_000);
    expect(squares(inch - 1 / 32)).toBeGreaterThan(60_000);
  });

  test.each(FILLS.map((f) => f.name))(
    '%s is refused before any work; the finest that it says is taken',
    (kind) => {
      const { problems, seconds, finest } = refused(kind, '1/32');
      expect(problems).toMatchObject([{ code: 'spacing-too-fine', key: 'fills.background.spacing' }]);
      expect(seconds).toBeLessThan(1.5);
      const plan = asking(kind, finest);
      const { region } = openAreaOf(design, plan.channels);
      const { spacing } = plan.fills.background!;
      const fill = FILLS.find((f) => f.name === kind)!;
      expect(tooFineFor({ path: [], fill, spacing: spacing!, regions: [region] }, plan)).toBe(undefined);
    },
  );

  /** `tests/cli/hostile/README.md` says so of each. */
  const MOST_SECONDS = 25;
  test.each(
    few(
      FILLS.map((f) => f.name),
      (name) => ['clamshell', 'lines', 'pearls'].includes(name),
    ),
  )('%s at the finest that is taken is drawn in the time that is said', { timeout: 300_000 }, (kind) => {
    const plan = asking(kind, refused(kind, '1/32').finest);
    const before = process.cpuUsage();
    const { problems, open } = fillDesign(design, design.halves, plan);
    const { user, system } = process.cpuUsage(before);
    expect(problems).toEqual([]);
    expect(open.length).toBe(1);
    expect((user + system) / 1e6).toBeLessThan(MOST_SECONDS);
  });

  test('what many places ask for together counts, and nothing is made of the others', () => {
    // Each swag by itself could be filled so.
    const plan = planOf(
      `layout: ${border(12, 'from: inner, corners: turn', TORN)}\nfills: { swag: { kind: stipple, spacing: 1/32 }, background: lines }`,
    );
    const { design: whole } = made(border(12, 'from: inner, corners: turn', TORN), '');
    const { problems, open } = fillDesign(whole, whole.halves, plan);
    expect(problems.map((p) => p.key)).toEqual(['fills.swag.spacing']);
    expect(open).toEqual([]);
  });
});
