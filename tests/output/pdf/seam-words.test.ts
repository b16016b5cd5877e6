/** Every sheet that shows a seam says which one it is, beside that line and no other. Read from the PDF of the sheets. */

import { describe, expect, test } from 'vitest';
import { mockup } from '../../../src/jobs/mockup.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { PROFILES, planOf } from '../../swag/fit-helpers.ts';
import { deflate, FONTS, openPages, readTexts, type Spot, type Written } from './read-back.ts';

const INCH = 25.4;

/** The words on each sheet, with the place of their line on the drawing. */
const said = async (text: string, paper: 'letter' | 'a4' = 'letter') => {
  const plan = planOf(text);
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const part = { name: undefined, plan, templates: PROFILES, design: made.design, placed: <T>(p: T): T => p };
  const { bytes, sheets } = await mockup(
    part,
    { show: 'all', layout: { paper } },
    { deflate, fonts: async () => FONTS },
  );
  const doc = await openPages(bytes);
  const first = doc.numPages - sheets.sheets.length;
  return Promise.all(
    sheets.sheets.map(async (sheet, i) => {
      const texts = await readTexts(await doc.getPage(first + i + 1));
      const onDrawing = ({ x, y }: Spot): Spot => {
        const { place } = sheet;
        const [dx, dy] = [x - place.x, y - place.y];
        const [c, s] = [Math.cos(place.angle), Math.sin(place.angle)];
        return { x: c * dx + s * dy, y: -s * dx + c * dy };
      };
      const words = texts
        .filter((t) => t.text.startsWith('this line on the '))
        .map((t) => ({
          called: t.text.slice('this line on the '.length),
          from: onDrawing(t.from),
          to: onDrawing(t.to),
        }));
      return { sheet, words };
    }),
  );
};

/** Letters stand within so much (mm) of their line. */
const NEAR = 4;
const isNear = (at: number, line: number): boolean => Math.abs(at - line) < NEAR;

/** What a sheet shows of a line from one place to another must be as long as the words, and some, before they find room. */
const ROOM = 60;

describe.each(['inner', 'outer'] as const)('a border whose swags leave from the %s seam', (from) => {
  // The inner rectangle's lower left corner is the drawing's origin: the inner seam is its sides, the outer 6 in out.
  const [w, h, band] = [20 * INCH, 16 * INCH, 6 * INCH];
  const lines = { 'inner seam': 0, 'outer seam': band } as const;
  test.each(['letter', 'a4'] as const)('on %s', async (paper) => {
    const sheets = await said(
      `layout: { border: { width: 6, inner: { top: 20, right: 16, bottom: 20, left: 16 }, margin: 1/2, from: ${from}, corners: turn } }`,
      paper,
    );
    let seen = 0;
    for (const { sheet, words } of sheets) {
      for (const { called, from: a, to: b } of words) {
        const out = lines[called as keyof typeof lines];
        const isLevel = Math.abs(a.y - b.y) < 0.1;
        const beside = isLevel ? [-out, h + out] : [-out, w + out];
        expect(
          beside.some((line) => isNear(isLevel ? a.y : a.x, line)),
          `${sheet.label}: ${called}`,
        ).toBe(true);
        // The plan of the sheets keeps 0.52 of the size, 2.5 mm, for each letter: the printed words take no more.
        const letters = 'this line on the '.length + called.length;
        expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeLessThan(0.52 * 2.5 * letters);
        seen++;
      }
      // A sheet that shows enough of a line names it.
      const { window } = sheet;
      for (const [called, out] of Object.entries(lines)) {
        const shown = [-out, h + out].some(
          (y) =>
            y > window.minY + 8 &&
            y < window.maxY - 8 &&
            Math.min(window.maxX, w + out) - Math.max(window.minX, -out) > ROOM + 60,
        );
        if (shown)
          expect(
            words.map((one) => one.called),
            sheet.label,
          ).toContain(called);
      }
    }
    expect(seen).toBeGreaterThan(8);
  });
});

test('a strip lies between two seams, and the one that swags leave from is below', async () => {
  const sheets = await said('layout: { strip: { length: 36, width: 6, margin: 1/4 } }');
  for (const { words } of sheets) {
    const heights = new Map(words.map(({ called, from }) => [called, from.y]));
    expect([...heights.keys()].sort()).toEqual(['far seam', 'seam']);
    const apart = heights.get('far seam')! - heights.get('seam')!;
    // Each may stand on either side of its line.
    expect(Math.abs(apart - 6 * INCH)).toBeLessThan(2 * NEAR);
  }
});

test('a frame says where the block’s edge and the motif’s are', async () => {
  const block = await said(
    'layout: { frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 24, corners: meet } }',
  );
  const called = (all: typeof block): readonly string[] => [
    ...new Set(all.flatMap(({ words }) => words.map((w) => w.called))),
  ];
  expect(called(block)).toEqual(['edge of the block']);
  const wreath = await said('layout: { frame: { count: 8, around: 9, clearance: 1/2 } }');
  expect(called(wreath)).toEqual(['edge of the motif']);
  // Beside the circle of 9 in across the middle: within it or without.
  for (const { words } of wreath)
    for (const { from, to } of words) {
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
      // A straight row of letters within a circle stands off from it in its middle.
      expect(Math.abs(Math.hypot(middle.x, middle.y) - 4.5 * INCH)).toBeLessThan(NEAR + 1.5);
    }
});

test('no words lie on other words', async () => {
  const sheets = await said('layout: { border: { width: 5, inner: 14, margin: 1/2, corners: turn } }');
  const middles = (words: readonly Pick<Written, 'from' | 'to'>[]) =>
    words.map(({ from, to }) => [(from.x + to.x) / 2, (from.y + to.y) / 2] as const);
  for (const { sheet, words } of sheets) {
    const all = middles(words);
    for (const [i, a] of all.entries())
      for (const b of all.slice(i + 1))
        expect(Math.hypot(a[0] - b[0], a[1] - b[1]), sheet.label).toBeGreaterThan(3);
  }
});
