/**
 * Two rows of swags on the same marks: by hand where the numbers come out even, and for random plans by points of the
 * laid stitching on the quilt, with nothing of the search's own checks.
 */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Point, pathEnd, pathStart, pieceAt } from '../../src/geometry/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import {
  type Design,
  designOf,
  fieldsOf,
  type Placed,
  placedPath,
  type Ranked,
  repeatMarks,
  rowsOf,
  type Search,
  searchPlan,
} from '../../src/swag/index.ts';
import { cornerHalfSpans, fieldBeyond } from '../../src/swag/row-beyond.ts';
import type { Template } from '../../src/template/index.ts';
import { fewRuns, patience } from '../support/runs.ts';
import { PROFILES, pointsAlong, templateOf } from './fit-helpers.ts';

const INCH = 25.4;
const ALL = 'template: [baluster, finial, newel]\n';

const planOf = (text: string) => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(`${text}: ${JSON.stringify(reading.problems)}`);
  return reading.parts[0].plan;
};
const search = (text: string, templates: readonly Template[] = PROFILES): Search => {
  const searched = searchPlan(planOf(text), templates);
  if (!searched.ok) throw new Error(JSON.stringify(searched.problems));
  return searched.search;
};

/** A straight edge: what it stitches is as long as it is, and a swag of it is two straight lines. */
const rod = (name: string, inches: number): Template =>
  templateOf(
    `title: ${name}\nunits: in\nedge: [{ start: [0, 0] }, { line: { to: [${inches}, 0] } }]\n`,
    name,
  );

describe('two rows of straight lines, by hand', () => {
  // 3-4-5, and 4² + 4.2² = 5.8².
  const rods = [rod('short', 5), rod('long', 5.8)];
  const rows = (row: string): string =>
    `template: short\nlayout: { strip: { length: 16, width: 12 } }\nswag: { setting: crown-on-centre, side: inside, direction: heel-first, repeats: 2 }\nrows: [{ ${row}, template: long, swag: { setting: crown-on-centre, side: inside, direction: heel-first } }]\n`;

  test('the second row is as wide as the first, and as deep as its own chord leaves it', () => {
    for (const at of [0, 1, 2.5]) {
      const [best] = search(rows(`at: ${at}`), rods).results;
      const [near, far] = [best!.fit.sides[0]!.seat, best!.fit.beyond!.fit.sides[0]!.seat];
      expect([near.span, near.depth, far.span, far.depth].map((mm) => mm / INCH)).toEqual(
        [8, 3, 8, 4.2].map((inches) => expect.closeTo(inches, 9)),
      );
    }
  });

  test('rows that start an inch from each other are four fifths of an inch apart, and no more', () => {
    // From the second row's start square to the first one's line, whose slope is 3 in 4.
    expect(search(rows('at: 1, apart: 0.7999'), rods).results).toHaveLength(1);
    const none = search(rows('at: 1, apart: 0.8001'), rods);
    expect(none.results).toHaveLength(0);
    expect(none.rowMiss?.misfit.kind).toBe('rows-near');
    expect(none.rowMiss!.misfit.by / INCH).toBeCloseTo(0.0001, 9);
  });

  test('rows that start on one mark are as far apart as is asked on the centre line', () => {
    expect(search(rows('at: 0, apart: 1.1999'), rods).results).toHaveLength(1);
    const none = search(rows('at: 0, apart: 1.2001'), rods);
    expect(none.results).toHaveLength(0);
    expect(none.rowMiss?.misfit.kind).toBe('rows-near');
    expect(none.rowMiss!.misfit.by / INCH).toBeCloseTo(0.0001, 9);
  });

  test('a row whose template does not reach from mark to mark, and one that reaches into the margin', () => {
    const reach = search(rows('at: 1'), [rods[0]!, rod('long', 3.9)]).rowMiss?.misfit;
    expect(reach?.kind).toBe('too-short');
    // Two spans of 8 in, each 2 · 3.9 in at most.
    expect(reach!.by / INCH).toBeCloseTo(0.2, 9);
    const high = search(rows('at: 8'), rods).rowMiss?.misfit;
    expect(high?.kind).toBe('too-deep');
    expect(high!.by / INCH).toBeCloseTo(0.2, 9);
  });

  test('a row without room names the margin or the first row, and not a half that passes its own centre line by a hair', () => {
    const swag = 'from: 1, to: crown, side: inside, setting: crown-on-centre, direction: heel-first';
    const none = search(
      `template: [baluster, finial]\nlayout: { border: { width: 8, inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }, margin: 1/2, corners: open } }\nswag: { ${swag} }\nrows: [{ at: 0, apart: 1/2 }]`,
      PROFILES.filter(({ name }) => name !== 'newel'),
    );
    expect(none.results).toHaveLength(0);
    expect(['too-deep', 'rows-near']).toContain(none.rowMiss?.misfit.kind);
  });

  test('at a corner both rows start on one mark along the seam, and end on the mitre', () => {
    const field = (from: string) => {
      const { layout } = planOf(
        `template: x\nlayout: { border: { width: 9, inner: 40, from: ${from}, corners: turn } }\n`,
      );
      const found = layout.kind === 'border' && fieldBeyond(fieldsOf(layout)[0]!, INCH);
      if (!found || found.corners === 'none') throw new Error('a border has corners');
      return found;
    };
    // A first row of h 4 and d 3 starts 4 − 3 = 1 from the corner of the inner seam, one beyond it by 1 has h − d = 2: 5 and 3.
    expect(cornerHalfSpans(Math.sqrt(34), 2, field('inner'))).toEqual([expect.closeTo(5, 12)]);
    // From the outer seam 4 + 3 = 7, and h + d = 6: 5 and 1, or 1 and 5.
    expect(cornerHalfSpans(Math.sqrt(26), 6, field('outer'))).toEqual(
      [5, 1].map((h) => expect.closeTo(h, 12)),
    );
    expect(cornerHalfSpans(4, 6, field('outer'))).toEqual([]);
  });
});

const EXACT = 1e-6;
const STEP = 0.5;
const near = (a: number, b: number, what: string): void => {
  if (!(Math.abs(a - b) <= EXACT)) throw new Error(`${what}: ${a} is not ${b}`);
};
const away = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The far half on the marks of a near one, and where both lie on the quilt. */
const pairs = (design: Design): readonly (readonly [Placed, Placed])[] => {
  const [first, second] = rowsOf(design);
  if (!second) throw new Error('a second row');
  return first.halves.map((half) => {
    const found = second.halves.find((h) => h.repeat === half.repeat && h.half === half.half);
    if (!found) throw new Error(`no second row on ${half.repeat}`);
    return [half, found];
  });
};

/** Throws where a result with two rows is not what a plan asks for. */
const checkRows = ({ field, fit }: Ranked, at: number, apart: number, outward: number): void => {
  const design = designOf(field, fit);
  const beyond = rowsOf(design)[1]!;
  design.sides.forEach((side, k) => {
    for (let i = 0; i < side.fit.repeats; i++) {
      const [a, b] = [repeatMarks(side, i), repeatMarks(beyond.sides[k]!, i)];
      for (const mark of ['start', 'centre', 'stop'] as const) near(a[mark], b[mark], `${mark} is shared`);
    }
  });
  const looked = new Set<unknown>();
  for (const [one, two] of pairs(design)) {
    const [a, b] = [placedPath(one), placedPath(two)];
    const [from, to] = [pathStart(b)!, pathEnd(b)!];
    near(away(from, pathStart(a)!), at, 'the start lines are as far apart as the plan says');
    near(away(from, to), two.cell.seat.shape.chord, 'h² + d² = C²');
    const points = looked.has(one.cell) ? [] : pointsAlong(b, STEP);
    // Rows start apart by `at`, or on one mark and then part within an inch.
    const all = (looked.has(one.cell) ? [] : a.pieces).flatMap((piece) =>
      Array.from({ length: 41 }, (_, i) => pieceAt(piece, i / 40)),
    );
    const from1 = pathStart(a)!;
    // Copies of one half lie alike.
    const isNew = !looked.has(one.cell);
    looked.add(one.cell);
    for (const p of isNew ? all : []) {
      const least = Math.min(...points.map((q) => away(p, q)));
      if (at > 0 && least < apart - EXACT) throw new Error(`rows ${least} mm apart, and not ${apart}`);
      if (at === 0 && away(p, from1) > 26 && least < 1.5875 - EXACT)
        throw new Error(`rows ${least} mm apart an inch from the mark`);
    }
    near(away(pathEnd(a)!, from1), one.cell.seat.shape.chord, 'h² + d² = C²');
    const room = field.width - field.startMargin - field.farMargin - outward;
    for (const p of isNew ? pointsAlong(two.cell.path, STEP) : []) {
      if (p.y + at > room + EXACT) throw new Error('into the far margin');
      if (p.y < -EXACT) throw new Error('below its own start line');
      if (p.x < two.cell.join - EXACT) throw new Error('past the join');
    }
    const crowns = [one, two].map((h) => pathEnd(placedPath(h))!);
    if (one.repeat.startsWith('corner')) {
      // The mitre goes through the corner of the quilt's own rectangle, at 45°.
      const { inner } = cornersOf(design);
      for (const crown of crowns) {
        const off = inner.map(({ x, y }) => Math.abs(Math.abs(crown.x - x) - Math.abs(crown.y - y)));
        near(Math.min(...off), 0, 'a corner’s crown is on the mitre');
      }
    }
  }
};

const cornersOf = ({ field }: Design): { readonly inner: readonly Point[] } => {
  const lengths = new Map(field.runs.map((r) => [r.name, r.drawn]));
  // From the start lines' corners back to the inner rectangle's.
  const out = field.from === 'inner' ? field.startMargin : field.width - field.startMargin;
  const w = lengths.get('top')! - 2 * out;
  const h = lengths.get('right')! - 2 * out;
  return {
    inner: [
      { x: 0, y: 0 },
      { x: w, y: 0 },
      { x: 0, y: h },
      { x: w, y: h },
    ],
  };
};

const question = fc.record({
  layout: fc.constantFrom('strip', 'turn', 'turn', 'meet', 'open'),
  from: fc.constantFrom('inner', 'outer'),
  width: fc.integer({ min: 5, max: 12 }),
  side: fc.integer({ min: 20, max: 70 }),
  by: fc.constantFrom(0, 1 / 8, 1 / 2),
  at: fc.constantFrom(0, 0, 1 / 2, 1, 2),
  apart: fc.constantFrom(1 / 4, 1 / 4, 3 / 8),
  margin: fc.constantFrom(0, 1 / 2),
  gap: fc.constantFrom('auto', '0', '1/2'),
  outward: fc.constantFrom(0, 1 / 4),
});

describe('two rows on a random plan', () => {
  test(
    'share their marks, keep apart and within the margins, and satisfy their equations',
    () => {
      const made = fewRuns(5, 12, 20261129);
      let found = 0;
      fc.assert(
        fc.property(question, (q) => {
          const layout =
            q.layout === 'strip'
              ? `strip: { length: ${q.side}, width: ${q.width}, margin: ${q.margin} }`
              : `border: { width: ${q.width}, inner: { top: ${q.side}, right: ${q.side + 7}, bottom: ${q.side + q.by}, left: ${q.side + 7} }, margin: ${q.margin}, from: ${q.from}, corners: ${q.layout} }`;
          const { results } = search(
            `${ALL}layout: { ${layout} }\nswag: { gap: ${q.gap} }\nchannels: { outward: [${q.outward || ''}] }\nrows: [{ at: ${q.at}, apart: ${q.apart} }]\n`,
          );
          for (const ranked of [...results.slice(0, 3), ...results.slice(-2)]) {
            found++;
            checkRows(ranked, q.at * INCH, q.apart * INCH, q.outward * INCH);
          }
        }),
        made,
      );
      expect(found / made.numRuns).toBeGreaterThan(20 / 12);
    },
    patience(60_000),
  );
});
