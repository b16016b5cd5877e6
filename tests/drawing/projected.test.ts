/** What a projector shines onto the cloth: the drawing itself, light enough and wide enough, and a grid and a square that measure what they say. */

import { describe, expect, it } from 'vitest';
import { projected, type StyledDrawing, type StyledPath } from '../../src/drawing/index.ts';
import { LINE_ROLES } from '../../src/drawing/role.ts';
import { boxHeight, boxWidth, line, openPath, pathBox, point } from '../../src/geometry/index.ts';
import { transferred } from '../../src/jobs/transfer.ts';
import { viewBox } from '../../src/output/view/index.ts';
import { drawingOf } from '../pagination/sample-drawings.ts';

const pathOf = (role: (typeof LINE_ROLES)[number], i: number): StyledPath => ({
  kind: 'path',
  role,
  path: openPath([line(point(0, 3 * i), point(211, 3 * i))]),
  stroke: { width: 0.15, color: '#16233a', dash: [1, 1] },
});
const drawing: StyledDrawing = drawingOf('all roles', {
  stitch: LINE_ROLES.map(pathOf),
  notes: [
    { kind: 'text', text: 'start', at: point(5, 5), size: 3.5, align: 'start', angle: 0, color: '#000000' },
  ],
});
const box = { minX: -5, minY: -5, maxX: 216, maxY: 90 };
const GRID = { pitch: 20, square: 100, words: ['one', 'two'] };
const shown = projected(drawing, box, GRID);
const paths = (id: 'fill' | 'notes'): StyledPath[] => shown.layers[id].filter((item) => item.kind === 'path');

/** Relative luminance and contrast, WCAG 2.2; the published example is 21 to 1 for black on white. */
const luminance = (color: string): number => {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(color.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

it('the contrast is reckoned as published', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
});

describe('the lines', () => {
  it('lie where they lay', () => {
    const after = shown.layers.stitch as readonly StyledPath[];
    expect(after.map(({ path }) => path)).toEqual(
      drawing.layers.stitch.map((item) => (item as StyledPath).path),
    );
  });

  it('of every role stand out from the ground, stitching most, and are as wide as a pixel', () => {
    const { ground } = shown;
    const seen = (shown.layers.stitch as readonly StyledPath[]).map(({ role, stroke }) => ({
      role,
      width: stroke.width,
      contrast: contrast(stroke.color, ground!),
    }));
    expect(seen).toHaveLength(LINE_ROLES.length);
    for (const { role, width, contrast: c } of seen) {
      // WCAG 2.2, 1.4.11: graphics 3 to 1 at least; a lit room takes some of it, so more is asked.
      expect(c, role).toBeGreaterThan(6);
      expect(width, role).toBeGreaterThanOrEqual(1);
    }
    const stitch = seen.find(({ role }) => role === 'stitch')!;
    expect(stitch.contrast).toBe(Math.max(...seen.map((s) => s.contrast)));
    expect(stitch.width).toBe(Math.max(...seen.map((s) => s.width)));
  });
});

describe('the grid', () => {
  const grid = paths('fill').map(({ path }) => pathBox(path));
  const upright = grid.filter((b) => boxWidth(b) < 1e-9).map((b) => b.minX);
  const level = grid.filter((b) => boxHeight(b) < 1e-9).map((b) => b.minY);

  it('has its lines as far apart as it says, both ways', () => {
    for (const at of [upright, level]) {
      expect(at.length).toBeGreaterThan(5);
      for (let i = 1; i < at.length; i++) expect(at[i]! - at[i - 1]!).toBeCloseTo(20, 9);
    }
  });

  it('lies behind the whole drawing, and is darker than any line of it', () => {
    expect(Math.min(...upright)).toBeLessThanOrEqual(box.minX);
    expect(Math.max(...upright)).toBeGreaterThanOrEqual(box.maxX);
    expect(Math.max(...level)).toBeGreaterThanOrEqual(box.maxY);
    for (const { stroke } of paths('fill')) expect(contrast(stroke.color, shown.ground!)).toBeLessThan(5);
  });
});

it('the square measures what it says, and lies below the drawing, on the grid', () => {
  const [square] = paths('notes').map(({ path }) => pathBox(path));
  expect([boxWidth(square!), boxHeight(square!)]).toEqual([100, 100]);
  expect(square!.maxY).toBeLessThan(box.minY);
  const grid = paths('fill').map(({ path }) => pathBox(path));
  expect(square!.minY).toBeGreaterThan(Math.min(...grid.map((b) => b.minY)));
});

describe('what is asked for in a plan’s units', () => {
  it.each([
    ['in', 25.4, 101.6, 'The square is 4 in each way, the grid 1 in.'],
    ['cm', 20, 100, 'The square is 100 mm each way, the grid 20 mm.'],
  ] as const)('%s', (units, pitch, side, words) => {
    const made = transferred(drawing, { kind: 'projector' }, units);
    const texts = made.layers.notes.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    expect(texts).toContain(words);
    const [first, second] = made.layers.fill as [StyledPath, StyledPath];
    expect(pathBox(second.path).minX - pathBox(first.path).minX).toBeCloseTo(pitch, 9);
    const square = made.layers.notes.find((item) => item.kind === 'path')!;
    expect(boxWidth(pathBox((square as StyledPath).path))).toBeCloseTo(side, 9);
    // Words that ran past the grid would make the picture wider than what is measured.
    const grid = made.layers.fill.map((item) => pathBox((item as StyledPath).path));
    expect(viewBox(made).maxX).toBeLessThan(Math.max(...grid.map((b) => b.maxX)) + pitch);
  });
});
