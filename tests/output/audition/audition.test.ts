/** Audition sheets, read back: everything asked for is there, once, at the stated scale. */

import { describe, expect, test } from 'vitest';
import { drawPlan, scopeOf } from '../../../src/drawing/index.ts';
import { FILLS } from '../../../src/fill/index.ts';
import {
  type AuditionOptions,
  hasRegion,
  setsOf,
  type Together,
  trialsFor,
  writeAudition,
  writeEmptyFrames,
} from '../../../src/output/audition/index.ts';
import { captionOf } from '../../../src/output/audition/write-audition.ts';
import { pageSetup } from '../../../src/output/pdf/index.ts';
import { evenMargins, PAPERS, type PaperId } from '../../../src/pagination/index.ts';
import { designOf } from '../../../src/swag/index.ts';
import { planOf, pointsAlong, profile, search } from '../../swag/fit-helpers.ts';
import {
  deflate,
  FONTS,
  openPages,
  type Picture,
  rawPages,
  readTexts,
  renderPage,
} from '../pdf/read-back.ts';

const STRIP = 'layout: { strip: { length: 36, width: 6, margin: 1/2 } }\nswag: { repeats: 3 }';
const MARGIN = 12.7;

const RING = 'layout: { frame: { count: 8, around: 9, clearance: 1/2, within: 15 } }';

const made = (more = '', paper: PaperId = 'letter', layout = STRIP) => {
  const plan = planOf(`${layout}\n${more}`);
  const best = search(plan, [profile(layout === STRIP ? 'baluster' : 'finial')]).results[0]!;
  const design = designOf(best.field, best.fit);
  const scoped = scopeOf(design, 'repeat');
  if (!scoped.ok) throw new Error('one repeat can be shown');
  const { scope } = scoped;
  const options: AuditionOptions = {
    title: 'Strip',
    units: 'in',
    style: plan.marks.style,
    setups: (['portrait', 'landscape'] as const).map((o) => pageSetup(PAPERS[paper], o, evenMargins(MARGIN))),
    channels: drawPlan(design, plan, scope, { withFills: false }).channels,
    deflate,
    fonts: FONTS,
  };
  return { plan, design, scope, options };
};

interface Stroked {
  readonly width: number;
  /** Its red share, which is the whole of a grey: 0 is black, 1 white. */
  readonly color: number;
  readonly curved: boolean;
  readonly points: readonly (readonly [number, number])[];
}

/** Everything that a page strokes, in points. */
const strokes = (content: string): readonly Stroked[] => {
  const found: Stroked[] = [];
  let pen = { width: Number.NaN, color: Number.NaN };
  let points: (readonly [number, number])[] = [];
  let curved = false;
  for (const line of content.split('\n')) {
    const set = /^([\d.]+)(?: [\d.]+ [\d.]+ RG| G) ([\d.]+) w/.exec(line);
    if (set) pen = { width: Number(set[2]), color: Number(set[1]) };
    for (const [, numbers, operator] of line.matchAll(/((?:-?[\d.]+\s+)+)([mlc])\b/g)) {
      const n = numbers!.trim().split(/\s+/).map(Number);
      points.push([n.at(-2)!, n.at(-1)!]);
      curved ||= operator === 'c';
    }
    if (!/(^|\s)S$/.test(line)) continue;
    found.push({ ...pen, points, curved });
    points = [];
    curved = false;
  }
  return found;
};

describe('what is tried', () => {
  const { plan, design, scope } = made(
    'channels: { outward: [1/4] }\nfills: { swag: { kind: lines, spacing: 3/8 } }',
  );

  test('without names all that suit the region, each once', () => {
    const inside = trialsFor(design, scope, plan, { region: 'swag', fills: undefined, spacings: [] });
    expect(inside.map((t) => t.fill.name)).toEqual(
      FILLS.filter((f) => f.suits === 'area').map((f) => f.name),
    );
    const bands = trialsFor(design, scope, plan, { region: 'channel', fills: undefined, spacings: [] });
    expect(bands.map((t) => t.fill.name)).toEqual(FILLS.filter((f) => f.suits === 'band').map((f) => f.name));
    for (const trial of [...inside, ...bands]) expect(trial.length).toBeGreaterThan(0);
  });

  test('a background that the plan asks for is tried with the very lines of the whole, others run through the joins', () => {
    const { plan, design, scope } = made('fills: { background: { kind: stipple, spacing: 1/2 } }');
    const drawn = drawPlan(design, plan, scope).drawing.layers.fill.flatMap((i) =>
      i.kind === 'path' ? [i.path] : [],
    );
    const fills = FILLS.filter((f) => f.name === 'stipple');
    const trial = (spacings: readonly number[]) =>
      trialsFor(design, scope, plan, { region: 'background', fills, spacings })[0]!;
    const own = trial([]).open.flatMap((f) => f.paths);
    expect(own.length).toBeGreaterThan(0);
    expect(own).toEqual(drawn);
    const { from, to } = scope.stretches[0]!;
    const cut = trial([9])
      .open.flatMap((f) => f.paths)
      .flatMap((p) => [p.pieces[0]!.from, p.pieces.at(-1)!.to]);
    // The first repeat ends at the strip’s own end, and on the other side at a join.
    const joins = cut.filter((p) => Math.abs(p.x - to) < 1e-6);
    expect(joins.length).toBeGreaterThan(2);
    expect(cut.every((p) => p.x > from - 1e-6 && p.x < to + 1e-6)).toBe(true);
  });

  test('the plan’s own fill keeps its spacing and is marked as the plan’s', () => {
    const lines = FILLS.filter((f) => f.name === 'lines');
    const [own] = trialsFor(design, scope, plan, { region: 'swag', fills: lines, spacings: [] });
    expect(own).toMatchObject({ planned: true, spacing: 9.525 });
    expect(captionOf(own!, plan.marks.style, 'in')[0]).toBe('inside: lines, as in the plan');
    const [other] = trialsFor(design, scope, plan, { region: 'background', fills: lines, spacings: [] });
    expect(other).toMatchObject({ planned: false, spacing: undefined });
  });

  test('every spacing with every fill, finer ones with more stitching', () => {
    const fills = FILLS.filter((f) => f.name === 'lines' || f.name === 'crosshatch');
    const trials = trialsFor(design, scope, plan, { region: 'background', fills, spacings: [6.35, 12.7] });
    expect(trials.map((t) => [t.fill.name, t.spacing])).toEqual([
      ['crosshatch', 6.35],
      ['crosshatch', 12.7],
      ['lines', 6.35],
      ['lines', 12.7],
    ]);
    // Half the lines, about half the stitching.
    expect(trials[1]!.length / trials[0]!.length).toBeCloseTo(0.5, 1);
    expect(captionOf(trials[1]!, plan.marks.style, 'in')[1]).toContain('1/2 in spacing');
  });

  test('a region that is not there has nothing to try', () => {
    expect(hasRegion(design, scope, plan, 'channel')).toBe(true);
    expect(hasRegion(design, scope, plan, 'corner')).toBe(false);
    expect(hasRegion(design, scope, made().plan, 'channel')).toBe(false);
  });
});

describe.each(['half', 'open'])('the square that corners: %s leaves free', (corners) => {
  // Where it lies is worked out by hand: 150 mm wide round 900 by 700, the lower left inner corner the origin.
  const border = (fills: string) => {
    const plan = planOf(
      `units: mm\nlayout: { border: { width: 150, inner: { top: 900, right: 700, bottom: 900, left: 700 }, margin: { inner: 12, outer: 20 }, corners: ${corners} } }\nfills: ${fills}`,
    );
    const best = search(plan, [profile('newel')]).results[0]!;
    const design = designOf(best.field, best.fit);
    const scopeAt = (what: string) => {
      const scoped = scopeOf(design, what);
      if (!scoped.ok) throw new Error(what);
      return scoped.scope;
    };
    return { plan, design, scopeAt };
  };
  const hatch = FILLS.filter(({ name }) => name === 'crosshatch');

  test('is tried where it is shown, and from margin to margin', () => {
    const { plan, design, scopeAt } = border('{}');
    expect(hasRegion(design, scopeAt('repeat'), plan, 'corner')).toBe(false);
    expect(hasRegion(design, scopeAt('corner'), plan, 'corner')).toBe(true);
    const asked = { region: 'corner', fills: hatch, spacings: [8] } as const;
    const [tried] = trialsFor(design, scopeAt('corner top right'), plan, asked);
    const points = tried!.open.flatMap(({ paths }) => paths.flatMap((path) => pointsAlong(path, 5)));
    expect(Math.min(...points.map(({ x }) => x))).toBeCloseTo(912, 1);
    expect(Math.max(...points.map(({ x }) => x))).toBeCloseTo(1030, 1);
    expect(Math.min(...points.map(({ y }) => y))).toBeCloseTo(712, 1);
    expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(830, 1);
    const [all] = trialsFor(design, scopeAt('all'), plan, asked);
    expect(all!.open).toHaveLength(4);
    expect(all!.length).toBeCloseTo(tried!.length, 6);
    // A square of 118 mm by lines 8 mm apart, in two directions, and the ways from line to line.
    expect(tried!.length).toBeGreaterThan((2 * 118 * 118) / 8 - 2 * 118);
    expect(tried!.length).toBeLessThan((2 * 118 * 118) / 8 + 4 * 118);
    const { style } = plan.marks;
    expect(captionOf(all!, style, 'mm')[1]).toMatch(/, about \d+ cm per corner square$/);
    const [behind] = trialsFor(design, scopeAt('corner'), plan, { ...asked, region: 'background' });
    expect(captionOf(behind!, style, 'mm')[1]).toMatch(/, about \d+ cm as shown$/);
  });

  test('is the plan’s where its own fill is tried, and not where the swags’ is', () => {
    const planned = (fills: string): boolean => {
      const { plan, design, scopeAt } = border(fills);
      const [one] = trialsFor(design, scopeAt('corner'), plan, {
        region: 'corner',
        fills: hatch,
        spacings: [],
      });
      return one!.planned;
    };
    expect(planned('{ corner: crosshatch }')).toBe(true);
    expect(planned('{ swag: crosshatch }')).toBe(false);
  });

  test('keeps its own fill behind what is tried beside it, and leaves it out of its own', () => {
    const { plan, design, scopeAt } = border('{ corner: crosshatch }');
    const { around, plansFills } = setsOf(design, scopeAt('corner'), plan, []);
    const kinds = (region: 'corner' | 'background'): readonly string[] =>
      around(region).open.map(({ kind }) => kind);
    expect(kinds('background')).toEqual(['corner square']);
    expect(kinds('corner')).toEqual(['background']);
    expect(plansFills).toBe(false);
  });
});

describe('the sheets', () => {
  test.each(['swag', 'background', 'channel', 'corner'] as const)(
    'of a corner say what each length is that of, and no line of them is cut off: %s',
    async (region) => {
      const plan = planOf(
        'layout: { border: { width: 6, inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }, margin: 1/2, corners: turn } }\nchannels: { outward: [1/4], inward: [1/4] }',
      );
      const best = search(plan, [profile('baluster')]).results[0]!;
      const design = designOf(best.field, best.fit);
      const scoped = scopeOf(design, 'corner bottom right');
      if (!scoped.ok) throw new Error('a corner can be shown');
      const { scope } = scoped;
      const fills = FILLS.filter(({ name }) => ['feather', 'lines', 'pearls'].includes(name));
      const trials = trialsFor(design, scope, plan, { region, fills, spacings: [] });
      const sets = setsOf(design, scope, plan, trials);
      const { options } = made();
      const written = (await writeAudition(design, scope, trials, sets, options))!;
      const doc = await openPages(written.bytes);
      const texts = (await readTexts(await doc.getPage(1))).map(({ text }) => text.trim());
      expect(texts).toContain('Fills to choose from: the bottom right corner with a repeat on each side.');
      expect(texts.filter((text) => text.endsWith('…'))).toEqual([]);
      const per = { swag: 'per swag', background: 'as shown', channel: 'per swag', corner: 'per corner' }[
        region
      ];
      expect(texts.filter((text) => text.endsWith(` in ${per}`))).toHaveLength(trials.length);
    },
  );

  test.each(['letter', 'a4', 'legal', 'tabloid', 'a3', 'letter-a4'] as const)(
    'show the frame and the fills at the stated scale, on %s',
    async (paper) => {
      const { plan, design, scope, options } = made('', paper);
      const fills = FILLS.filter((f) => f.name === 'lines' || f.name === 'crosshatch');
      const trials = [
        ...trialsFor(design, scope, plan, { region: 'swag', fills, spacings: [] }),
        ...trialsFor(design, scope, plan, { region: 'background', fills, spacings: [] }),
      ];
      const sets = setsOf(design, scope, plan, trials);
      const written = (await writeAudition(design, scope, trials, sets, options))!;
      expect(written.reductions.length).toBe(1);
      const pages = await rawPages(written.bytes);
      expect(pages.length).toBe(written.pages);
      // A swag of a 36 in strip with three is 12 in from start to stop, less what the gap takes.
      const { pose } = design.sides[0]!.fit.seat;
      const all = strokes(pages[0]!.content).filter((stroke) => stroke.curved);
      const widest = Math.max(...all.map((stroke) => stroke.width));
      // The first picture's two halves: from start to stop.
      const [first, second] = all.filter((stroke) => stroke.width === widest);
      const ends = [first!.points[0]!, second!.points[0]!];
      const span = Math.abs(ends[1]![0] - ends[0]![0]);
      expect(span).toBeCloseTo(((2 * pose.halfSpan) / written.reductions[0]!) * (72 / 25.4), 1);
    },
  );

  test('are the same for the same plan', async () => {
    const { plan, design, scope, options } = made();
    const fills = FILLS.filter((f) => f.name === 'stipple');
    const sheets = await Promise.all(
      [1, 2].map(async () => {
        const trials = trialsFor(design, scope, plan, { region: 'swag', fills, spacings: [] });
        const sets = setsOf(design, scope, plan, trials);
        return (await writeAudition(design, scope, trials, sets, options))!.bytes;
      }),
    );
    expect(sheets[0]).toEqual(sheets[1]);
  });

  test('none where the frame is larger than the page at the scale asked for', async () => {
    const { design, scope, options } = made();
    expect(await writeEmptyFrames(design, scope, 1, { ...options, reduction: 1 })).toBeUndefined();
    expect((await writeEmptyFrames(design, scope, 1, { ...options, reduction: 2 }))!.reductions).toEqual([2]);
  });
});

/** The share of a page's squares of 8 mm, within the margins, that no ink comes into. */
const whiteShare = ({ width, height, darkness }: Picture): number => {
  const mm = 300 / 25.4;
  const inked = (x0: number, y0: number): boolean => {
    for (let y = Math.round(y0 * mm); y < (y0 + 8) * mm; y++)
      for (let x = Math.round(x0 * mm); x < (x0 + 8) * mm; x++)
        if (darkness[y * width + x]! > 0.1) return true;
    return false;
  };
  let [white, all] = [0, 0];
  for (let y = MARGIN; y + 8 <= height / mm - MARGIN; y += 8)
    for (let x = MARGIN; x + 8 <= width / mm - MARGIN; x += 8) {
      all++;
      if (!inked(x, y)) white++;
    }
  return white / all;
};

describe('sets of fills', () => {
  const CASES: readonly (readonly [string, string, string?])[] = [
    ['a plan without fills', ''],
    ['a round frame', 'channels: { outward: [1/4], inward: [1/4] }', RING],
    [
      'one with channels and fills',
      'channels: { outward: [1/4], inward: [1/4] }\nfills: { swag: feather, background: { kind: crosshatch, spacing: 1/2 } }',
    ],
  ];
  test.each(CASES)(
    '%s: pictures fill the pages, and no empty frame is among them',
    async (_, more, layout) => {
      const { plan, design, scope, options } = made(more, 'letter', layout);
      const trials = (['swag', 'background'] as const).flatMap((region) =>
        trialsFor(design, scope, plan, { region, fills: undefined, spacings: [] }),
      );
      const sets = setsOf(design, scope, plan, trials);
      const written = (await writeAudition(design, scope, trials, sets, { ...options, withSets: true }))!;
      expect(written.sets.length).toBeGreaterThanOrEqual(4);
      const document = await openPages(written.bytes);
      expect(document.numPages).toBe(written.pages);
      for (let n = 1; n <= written.pages; n++) {
        const page = await document.getPage(n);
        const white = whiteShare(await renderPage(page));
        expect(white).toBeLessThan(0.25);
        const words = (await readTexts(page)).map(({ text }) => text).join(' ');
        expect(words).not.toContain('empty');
      }
    },
  );

  test('the plan’s own comes first, then pairs of another density inside than outside', () => {
    const { plan, design, scope } = made(
      'channels: { outward: [1/4] }\nfills: { swag: pebbles, background: lines }',
    );
    const [own, ...pairs] = setsOf(design, scope, plan, []).sets(5) as [Together, ...Together[]];
    expect(own).toMatchObject({ planned: true, inside: 'pebbles', background: 'lines' });
    const drawn = drawPlan(design, plan, scope);
    const ownLines = own.open.flatMap((f) => f.paths);
    expect(ownLines.length).toBeGreaterThan(0);
    expect(drawn.drawing.layers.fill.flatMap((i) => (i.kind === 'path' ? [i.path] : []))).toEqual(
      expect.arrayContaining(ownLines),
    );
    expect(pairs).toHaveLength(5);
    for (const { inside, background, byHalf, open } of pairs) {
      expect(inside.endsWith(', open')).toBe(!background.endsWith(', open'));
      const kinds = new Set([...byHalf.values()].flatMap((filled) => filled.map((f) => f.region.kind)));
      expect(kinds.has('swag')).toBe(true);
      expect(open.flatMap((f) => f.paths).length).toBeGreaterThan(0);
    }
  });

  test('what is tried stands among fills of the other regions, the plan’s where it has some', () => {
    const { plan, design, scope } = made('fills: { background: pebbles }');
    const sets = setsOf(design, scope, plan, []);
    expect(sets.around('swag').open.map((f) => f.fill)).toEqual(['pebbles']);
    const beside = sets.around('background');
    expect(beside.open).toEqual([]);
    expect([...beside.byHalf.values()].flat().map((f) => f.region.kind)).toContain('swag');
  });
});

describe('empty frames', () => {
  test.each([1, 2, 6, 12, 18])('%i on one page, all light enough to draw over', async (count) => {
    const { design, scope, options } = made('channels: { outward: [1/4] }');
    const written = (await writeEmptyFrames(design, scope, count, options))!;
    expect(written.pages).toBe(1);
    const [page] = await rawPages(written.bytes);
    const all = strokes(page!.content);
    // Every frame has two halves of stitching. Greys from 0 (black) to 1: pencil is below 0.5.
    const frames = all.filter((stroke) => stroke.curved);
    expect(frames.length).toBeGreaterThanOrEqual(2 * count);
    for (const { color } of frames) expect(color).toBeGreaterThan(0.6);
  });

  test('a single one is at true size where the paper holds it', async () => {
    const { design, scope, options } = made('', 'a3');
    const { width, height } = PAPERS.a3;
    const span = 2 * design.sides[0]!.fit.seat.pose.halfSpan;
    expect(span).toBeLessThan(Math.max(width, height) - 2 * MARGIN);
    expect((await writeEmptyFrames(design, scope, 1, options))!.reductions).toEqual([1]);
  });
});
