/** Sheets that are stitched through hold the drawing, crosses and no more; what tells their scale is on the cover. */

import { describe, expect, it } from 'vitest';
import { quiltingAlone } from '../../../src/drawing/index.ts';
import { writeSheets } from '../../../src/output/pdf/index.ts';
import { inkOf, itemTouches, layOut } from '../../../src/pagination/index.ts';
import { swagStrip } from '../../pagination/sample-drawings.ts';
import { openPages, POINT, readTexts, type WalkedPath, WORDS, walkPaths } from './read-back.ts';

const drawing = quiltingAlone(swagStrip(5, 150, 60));

const boxOf = ({ points }: WalkedPath) => {
  const xs = points.map((p) => p.x / POINT);
  const ys = points.map((p) => p.y / POINT);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
};

describe.each([
  ['as the printer is', undefined],
  ['corrected for the printer', { short: 0.99, long: 1.005 }],
] as const)('%s', (_, measured) => {
  const plan = layOut(drawing, { paper: 'letter', measured });
  const read = async () => openPages(await writeSheets(drawing, plan, { ...WORDS, bare: true }));

  it('a sheet has nothing on it but the drawing and crosses of 3 mm, and its name in the margin', async () => {
    const pdf = await read();
    const ink = inkOf(drawing);
    expect(plan.sheets.length).toBeGreaterThan(2);
    for (const [i, sheet] of plan.sheets.entries()) {
      const page = await pdf.getPage(pdf.numPages - plan.sheets.length + i + 1);
      const [name, ...more] = await readTexts(page);
      expect(more).toEqual([]);
      expect(name).toMatchObject({ text: sheet.label });
      const { fixed, x, y } = { fixed: plan.live, ...plan.factors };
      expect(name!.from.y).toBeGreaterThan(fixed.minY + (plan.live.maxY - fixed.minY) * y);
      const places = sheet.edges
        .flatMap((edge) => edge.crosses)
        .map(({ paper }) => ({
          x: fixed.minX + (paper.x - fixed.minX) * x,
          y: fixed.minY + (paper.y - fixed.minY) * y,
        }));
      const paths = await walkPaths(page);
      const crosses = places.map((at) =>
        paths.filter((path) => {
          const box = boxOf(path);
          return (
            !path.curves &&
            Math.abs((box.left + box.right) / 2 - at.x) < 0.001 &&
            Math.abs((box.low + box.high) / 2 - at.y) < 0.001 &&
            Math.abs(box.right - box.left - 3 * x) < 0.001 &&
            Math.abs(box.high - box.low - 3 * y) < 0.001
          );
        }),
      );
      expect(crosses.map((found) => found.length)).toEqual(places.map(() => 1));
      const shown = ink.items.filter((item) => itemTouches(item, sheet.window)).length;
      // One more is what the sheet's printed part is cut out by.
      expect(paths.length - places.length).toBe(shown + 1);
    }
  });

  it('the cover has the check square, and says how to cut without lines', async () => {
    const pdf = await read();
    const cover = await pdf.getPage(1);
    // The cover stands upright: the paper's short edge runs across.
    const factor = { short: 1 / (measured?.short ?? 1), long: 1 / (measured?.long ?? 1) };
    const squares = (await walkPaths(cover)).map(boxOf).filter(
      (box) =>
        // 2 in, as it measures when it is printed.
        Math.abs(box.right - box.left - 50.8 * factor.short) < 0.001 &&
        Math.abs(box.high - box.low - 50.8 * factor.long) < 0.001,
    );
    expect(squares.length).toBe(1);
    const words = (await readTexts(cover)).map(({ text }) => text).join(' ');
    expect(words).toContain('cut straight through its crosses');
    expect(words).toContain('Print this page first');
    expect(words).not.toMatch(/frame|dashed/);
  });
});
