/** Taped together, the sheets are the drawing: every sample, and a drawing with one thing wrong at a time. */

import { describe, expect, it } from 'vitest';
import type { StyledDrawing } from '../../src/drawing/index.ts';
import { transferred } from '../../src/jobs/transfer.ts';
import { layOut, type PaperId, type SheetPlan } from '../../src/pagination/index.ts';
import { swagStrip } from '../pagination/sample-drawings.ts';
import { DESIGNS, designDrawing } from './samples.ts';
import { tape } from './taped.ts';

/** Of a narrow border and of small blocks a sheet may show a line's end, from which no scale can be told. */
const TOO_LITTLE = ['corner blocks', 'inner border'];

describe.each(DESIGNS.filter(([, { part }]) => !TOO_LITTLE.includes(part?.name ?? '')))('%s', (_, plan) => {
  it.each(['letter', 'a4'] as const)('on %s: the sheets are the one page', async (paper: PaperId) => {
    const drawing = designDrawing(plan);
    const taped = await tape(drawing, layOut(drawing, { paper }));
    expect(taped.sheets).toBeGreaterThan(1);
    expect(taped.faults).toEqual([]);
    expect(taped.hidden).toBeLessThan(0.2);
  });
});

describe.each(DESIGNS.filter(([name]) => /raffle|wreath-frame/.test(name)))('%s', (_, plan) => {
  it('on a roll of 12 in: its long pages are the one page', async () => {
    const drawing = designDrawing(plan);
    const taped = await tape(drawing, layOut(drawing, { paper: { roll: 304.8 } }));
    expect(taped.sheets).toBeGreaterThan(1);
    expect(taped.faults).toEqual([]);
    expect(taped.hidden).toBeLessThan(0.2);
  });
});

describe.each(DESIGNS.filter(([name]) => /raffle|wreath-frame/.test(name)))('%s, for cloth', (_, plan) => {
  it.each([false, true])('clean, mirrored %s: the bare sheets are the one page', async (mirrored) => {
    const drawing = transferred(designDrawing(plan), { kind: 'clean', mirrored }, 'in');
    const sheets = layOut(drawing, { paper: 'letter' });
    const taped = await tape(drawing, sheets, sheets, drawing, true);
    expect(taped.sheets).toBeGreaterThan(1);
    expect(taped.faults).toEqual([]);
    // Crosses alone hide next to nothing.
    expect(taped.hidden).toBeLessThan(0.03);
  });
});

/** Of the raffle border's stencil one sheet shows a line's end, from which no scale can be told. */
describe.each([
  ['pounce', 'raffle'],
  ['stencil', 'wreath-frame'],
] as const)('%s of %s, for cloth', (kind, name) => {
  it('the sheets are the one page', async () => {
    const [, plan] = DESIGNS.find(([title]) => title.startsWith(name))!;
    const drawing = transferred(designDrawing(plan), { kind }, 'in');
    const taped = await tape(drawing, layOut(drawing, { paper: 'letter' }));
    expect(taped.sheets).toBeGreaterThan(1);
    expect(taped.faults).toEqual([]);
  });
});

describe('one thing wrong is seen', () => {
  const drawing = swagStrip(3, 150, 60);
  const plan = layOut(drawing, { paper: 'letter' });
  const withSheet = (index: number, change: (sheet: SheetPlan['sheets'][number]) => object): SheetPlan => ({
    ...plan,
    sheets: plan.sheets.map((sheet, i) => (i === index ? { ...sheet, ...change(sheet) } : sheet)),
  });
  const faultsOf = async (printed: SheetPlan, paint?: StyledDrawing): Promise<string> =>
    (await tape(drawing, plan, printed, paint)).faults.join('\n');

  it('none is', async () => {
    expect(plan.sheets.length).toBeGreaterThan(1);
    expect(await faultsOf(plan)).toBe('');
  });

  it.each([
    ['across', 0.1, 0],
    ['up', 0, 0.1],
  ])('a cross moved by 0.1 mm %s', async (_, dx, dy) => {
    const printed = withSheet(1, (sheet) => ({
      edges: sheet.edges.map((edge, i) =>
        i > 0
          ? edge
          : {
              ...edge,
              crosses: edge.crosses.map((cross, k) =>
                k > 0 ? cross : { ...cross, paper: { x: cross.paper.x + dx, y: cross.paper.y + dy } },
              ),
            },
      ),
    }));
    expect(await faultsOf(printed)).toMatch(/the cross of .* mm off/);
  });

  it('a sheet dropped', async () => {
    const printed = { ...plan, sheets: plan.sheets.filter((_, i) => i !== 1) };
    expect(await faultsOf(printed)).toMatch(/there is no such sheet\n(.*\n)*a patch near/);
  });

  it('all on the paper 0.1 % too large', async () => {
    const printed = { ...plan, factors: { x: 1.001, y: 1.001 } };
    expect(await faultsOf(printed)).toMatch(/the cross of .* mm off/);
  });

  it('a picture moved by 0.1 mm under crosses that are right', async () => {
    const printed = withSheet(1, (sheet) => ({ place: { ...sheet.place, x: sheet.place.x + 0.1 } }));
    expect(await faultsOf(printed)).toMatch(/its picture is off by/);
  });

  it('one line missing', async () => {
    const paint = { ...drawing, layers: { ...drawing.layers, channel: drawing.layers.channel.slice(1) } };
    expect(await faultsOf(plan, paint)).toMatch(/a patch near/);
  });
});
