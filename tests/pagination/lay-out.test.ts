import { describe, expect, it } from 'vitest';
import { ProblemError } from '../../src/document/index.ts';
import { line, move, openPath, point, polyline } from '../../src/geometry/index.ts';
import {
  inkOf,
  type LayOutOptions,
  layOut,
  PAPERS,
  type SheetPlan,
  type Side,
} from '../../src/pagination/index.ts';
import { holdsInk } from '../../src/pagination/ink.ts';
import { onFile } from './on-file.ts';
import { drawingOf, scatter, stroked, swagBorder, swagStrip } from './sample-drawings.ts';

const thin = { width: 0.2, color: '#000000' };
const rectangle = (width: number, height: number) =>
  drawingOf('rectangle', {
    stitch: [
      stroked(polyline([point(0, 0), point(width, 0), point(width, height), point(0, height)], true), thin),
    ],
  });

const problemsOf = (work: () => unknown): string[] => {
  try {
    work();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems.map((p) => p.code);
    throw error;
  }
  return [];
};

describe('papers', () => {
  it('have the sizes of their standards', () => {
    // ISO 216: A4 210 × 297, A3 297 × 420 mm. ASME Y14.1: 8.5 × 11, 11 × 17 in. Legal 8.5 × 14 in.
    const sizes = Object.values(PAPERS).map((p) => [p.id, p.width, p.height]);
    expect(sizes).toEqual([
      ['letter', 215.9, 279.4],
      ['a4', 210, 297],
      ['legal', 215.9, 355.6],
      ['tabloid', 279.4, 431.8],
      ['a3', 297, 420],
      ['letter-a4', 210, 279.4],
    ]);
  });

  it('letter-a4 lies wholly on both', () => {
    for (const id of ['letter', 'a4'] as const) {
      expect(PAPERS['letter-a4'].width).toBeLessThanOrEqual(PAPERS[id].width);
      expect(PAPERS['letter-a4'].height).toBeLessThanOrEqual(PAPERS[id].height);
    }
  });
});

describe('one sheet', () => {
  it('may use the whole live area, and not a hair more', () => {
    // Letter with 1/2 in margins leaves 190.5 × 254 mm; the pen is 0.2 mm wide.
    expect(layOut(rectangle(190.3, 253.8), { paper: 'letter' }).sheets).toHaveLength(1);
    expect(layOut(rectangle(190.31, 253.8), { paper: 'letter' }).sheets).toHaveLength(2);
  });

  it('has its ink in the middle and no joins', () => {
    const plan = layOut(rectangle(100, 50), { paper: 'a4' });
    const [sheet] = plan.sheets;
    expect(move(sheet!.place, point(50, 25)).x).toBeCloseTo(105, 9);
    expect(move(sheet!.place, point(50, 25)).y).toBeCloseTo(148.5, 9);
    expect(sheet!.edges).toEqual([]);
    expect(sheet!.label).toBe('A1');
  });

  it('slides a tall design aside when that leaves a clear place for the check square', () => {
    const full = drawingOf('block', {
      fill: [
        {
          kind: 'area',
          loops: [polyline([point(0, 0), point(174, 0), point(174, 170), point(0, 170)], true)],
          color: '#cccccc',
        },
      ],
    });
    const plan = layOut(full, { paper: 'letter', orientation: 'portrait' });
    expect(plan.sheets).toHaveLength(1);
    expect(plan.sheets[0]!.checkIsClear).toBe(true);
  });
});

const samples: readonly (readonly [string, SheetPlan])[] = [
  ['strip, landscape', layOut(swagStrip(4, 220, 60), { paper: 'letter' })],
  ['strip, turned', layOut(swagStrip(4, 220, 60), { paper: 'a4', orientation: 'portrait' })],
  ['border', layOut(swagBorder(700, 120, 4), { paper: 'letter-a4' })],
  ['measured', layOut(scatter(7, 500, 500, 30), { paper: 'a3', measured: { short: 0.98, long: 1.01 } })],
];

describe.each(samples)('joins: %s', (_name, plan) => {
  const byLabel = new Map(plan.sheets.map((s) => [s.label, s]));
  const facing = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' } as const;

  it('has joins to look at', () => {
    expect(plan.sheets.length).toBeGreaterThan(2);
    expect(plan.sheets.flatMap((s) => s.edges).length).toBeGreaterThan(3);
  });

  it('names the neighbour that is there, and one of the two is cut', () => {
    for (const sheet of plan.sheets) {
      for (const edge of sheet.edges) {
        const back = byLabel.get(edge.neighbour)!.edges.find((e) => e.side === facing[edge.side])!;
        expect(back.neighbour).toBe(sheet.label);
        expect(back.cut).toBe(!edge.cut);
      }
    }
  });

  it('has at least two crosses on each join, at equal drawing coordinates on both sheets', () => {
    for (const sheet of plan.sheets) {
      for (const edge of sheet.edges) {
        const back = byLabel.get(edge.neighbour)!.edges.find((e) => e.side === facing[edge.side])!;
        expect(edge.crosses.length).toBeGreaterThanOrEqual(2);
        expect(back.crosses.map((c) => c.drawing)).toEqual(edge.crosses.map((c) => c.drawing));
        for (const cross of edge.crosses) {
          const put = move(sheet.place, cross.drawing);
          expect(cross.paper.x).toBeCloseTo(put.x, 9);
          expect(cross.paper.y).toBeCloseTo(put.y, 9);
          // On the trim line, in the middle of the band.
          const { band, trim } = edge;
          const upright = edge.side === 'left' || edge.side === 'right';
          expect(upright ? cross.paper.x : cross.paper.y).toBeCloseTo(upright ? trim.from.x : trim.from.y, 9);
          expect(cross.paper.x).toBeGreaterThan(band.minX);
          expect(cross.paper.x).toBeLessThan(band.maxX);
          expect(cross.paper.y).toBeGreaterThan(band.minY);
          expect(cross.paper.y).toBeLessThan(band.maxY);
        }
      }
    }
  });

  it('goes down in reading order: neighbours to the right and below have the next label', () => {
    for (const sheet of plan.sheets) {
      const place = mid(sheet.window, sheet);
      for (const edge of sheet.edges) {
        const other = byLabel.get(edge.neighbour)!;
        const there = mid(other.window, sheet);
        if (edge.side === 'right') expect(there.x).toBeGreaterThan(place.x + 50);
        if (edge.side === 'bottom') expect(there.y).toBeLessThan(place.y - 50);
        if (edge.side === 'right') expect([other.row, other.column]).toEqual([sheet.row, sheet.column + 1]);
        if (edge.side === 'bottom') expect([other.row, other.column]).toEqual([sheet.row + 1, sheet.column]);
      }
    }
  });

  it('maps each window onto the live area', () => {
    for (const { place, window } of plan.sheets) {
      const a = move(place, point(window.minX, window.minY));
      const b = move(place, point(window.maxX, window.maxY));
      expect(Math.min(a.x, b.x)).toBeCloseTo(plan.live.minX, 9);
      expect(Math.max(a.x, b.x)).toBeCloseTo(plan.live.maxX, 9);
      expect(Math.min(a.y, b.y)).toBeCloseTo(plan.live.minY, 9);
      expect(Math.max(a.y, b.y)).toBeCloseTo(plan.live.maxY, 9);
    }
  });

  it('keeps the page’s margins in the file, whatever was measured', () => {
    const corner = onFile(plan, { x: plan.live.maxX, y: plan.live.maxY });
    expect(corner.x).toBeCloseTo(plan.width - 12.7, 9);
    expect(corner.y).toBeCloseTo(plan.height - 12.7, 9);
  });
});

/** The middle of a window, as the given sheet lies. */
const mid = (
  w: { minX: number; maxX: number; minY: number; maxY: number },
  sheet: SheetPlan['sheets'][number],
) => move(sheet.place, point((w.minX + w.maxX) / 2, (w.minY + w.maxY) / 2));

describe('the check square', () => {
  it('covers no ink where it says so, and finds a clear place on nearly every sheet of a border', () => {
    const drawing = swagBorder(1000, 152, 4);
    const ink = inkOf(drawing);
    const plan = layOut(drawing, { paper: 'letter' });
    const clear = plan.sheets.filter((s) => s.checkIsClear);
    expect(clear.length).toBeGreaterThan(plan.sheets.length * 0.8);
    for (const { check, window } of clear) {
      const x = window.minX + check.x - plan.live.minX;
      const y = window.minY + check.y - plan.live.minY;
      expect(plan.turned).toBe(false);
      expect(holdsInk(ink, { minX: x, minY: y, maxX: x + 50.8, maxY: y + 50.8 })).toBe(false);
    }
  });

  const block = (minX: number, maxX: number, minY = 0, maxY = 190) => ({
    kind: 'area' as const,
    loops: [polyline([point(minX, minY), point(maxX, minY), point(maxX, maxY), point(minX, maxY)], true)],
    color: '#cccccc',
  });

  it('finds a free strip that is just wide enough for it', () => {
    // Letter, landscape, has 254 by 190.5 mm between its margins; the frame's ticks take 7, the square's own room 2.
    for (const slack of [0.5, 4.5]) {
      const left = 254 - 7 - 50.8 - 2 - slack;
      const drawing = drawingOf('strip', {
        stitch: [block(0, left), block(left + 1, 254, 0, 60), block(left + 1, 254, 130, 190)],
      });
      const { sheets } = layOut(drawing, { paper: 'letter', orientation: 'landscape' });
      expect(sheets).toHaveLength(1);
      expect(sheets[0]!.checkIsClear, `${slack} mm`).toBe(true);
    }
  });

  it('on a full sheet rather hides how the template lies than what the needle follows', () => {
    for (const needle of ['fill', 'channel', 'stitch', 'marks'] as const) {
      const drawing = drawingOf('full', { template: [block(190, 250)], [needle]: [block(0, 190)] });
      const [sheet] = layOut(drawing, { paper: 'letter', orientation: 'landscape' }).sheets;
      expect(sheet!.checkIsClear).toBe(false);
      // A cell of the grid on which ink is counted, 1 mm, may be lost.
      expect(sheet!.check.x, needle).toBeGreaterThanOrEqual(move(sheet!.place, point(189, 0)).x);
    }
  });

  it('lies inside the live area, between the bands', () => {
    for (const [, plan] of samples) {
      for (const { check, edges } of plan.sheets) {
        expect(check.x).toBeGreaterThan(plan.live.minX + 5);
        expect(check.y).toBeGreaterThan(plan.live.minY + 5);
        expect(check.x + 50.8).toBeLessThan(plan.live.maxX - 5);
        expect(check.y + 50.8).toBeLessThan(plan.live.maxY - 5);
        for (const { band } of edges)
          expect(
            check.x >= band.maxX ||
              check.x + 50.8 <= band.minX ||
              check.y >= band.maxY ||
              check.y + 50.8 <= band.minY,
          ).toBe(true);
      }
    }
  });
});

describe('rules', () => {
  it('run along all four sides of the frame, in inches and millimetres', () => {
    const { rules, live } = layOut(rectangle(100, 100), { paper: 'letter', orientation: 'portrait' });
    const on = (side: Side) => rules.find((r) => r.side === side)!;
    // 190.5 × 254 mm: 7 whole inches, 190 mm; 9 whole inches (10 would end in the corner), 250 mm.
    expect(on('bottom').length).toBeCloseTo(7 * 25.4, 9);
    expect(on('left').length).toBeCloseTo(9 * 25.4, 9);
    expect(on('top').length).toBe(190);
    expect(on('right').length).toBe(250);
    expect(on('bottom').zero).toEqual({ x: live.minX, y: live.minY });
  });

  it('have the plan’s own unit at the bottom and the left', () => {
    const { rules } = layOut(rectangle(100, 100), { paper: 'a4', units: 'cm' });
    expect(rules.filter((r) => r.unit === 'mm').map((r) => r.side)).toEqual(['bottom', 'left']);
  });
});

describe('what a printer does is undone per axis', () => {
  it('stretches what came out short, and gives the window what then fits', () => {
    const plan = layOut(rectangle(100, 100), {
      paper: 'letter',
      orientation: 'portrait',
      measured: { short: 0.995, long: 1.002 },
    });
    expect(plan.factors.x).toBeCloseTo(1.005025, 6);
    expect(plan.factors.y).toBeCloseTo(0.998004, 6);
    const [sheet] = plan.sheets;
    const at = (x: number, y: number) => onFile(plan, move(sheet!.place, point(x, y)));
    // 100 mm of the drawing, printed by a printer that makes 0.995 of it across and 1.002 up, is 100 mm again.
    expect((at(100, 0).x - at(0, 0).x) * 0.995).toBeCloseTo(100, 9);
    expect((at(0, 100).y - at(0, 0).y) * 1.002).toBeCloseTo(100, 9);
    expect((plan.live.maxX - plan.live.minX) / 0.995).toBeCloseTo(190.5, 9);
  });
});

describe('mistakes', () => {
  const small = rectangle(50, 50);
  it('are told in the units of the plan, and what was found is not what is expected', () => {
    const told = (options: Partial<LayOutOptions>): string => {
      try {
        layOut(small, { paper: 'letter', ...options });
        return 'laid out';
      } catch (error) {
        return error instanceof Error ? error.message : '';
      }
    };
    // Letter, 8 1/2 by 11 in, less 3 in on each side leaves 2 1/2 by 5 in; 4 mm is 0.157 in.
    expect(told({ margins: 3 * 25.4, units: 'in' })).toMatch(
      /found 2 1\/2 in × 5 in; expected at least \S.* in each way/,
    );
    expect(told({ margins: 80, units: 'mm' })).toMatch(
      /found 55\.9 mm × 119\.4 mm; expected at least \S+ mm each way/,
    );
    expect(told({ overlap: 4, units: 'in' })).toMatch(/found 3\/16 in; expected at least 1\/4 in/);
    expect(told({ overlap: 6.34, units: 'in' })).toMatch(
      /found a little less than 1\/4 in; expected at least 1\/4 in \(6\.35 mm\)/,
    );
  });

  it('are problems with a code each', () => {
    expect(problemsOf(() => layOut(small, { paper: 'letter', margins: 6 }))).toEqual([
      'margin-too-small',
      'margin-too-small',
      'margin-too-small',
      'margin-too-small',
    ]);
    expect(problemsOf(() => layOut(small, { paper: 'letter', margins: { bottom: Number.NaN } }))).toEqual([
      'margin-too-small',
    ]);
    expect(problemsOf(() => layOut(small, { paper: 'letter', overlap: 2 }))).toEqual(['overlap-too-small']);
    expect(problemsOf(() => layOut(small, { paper: 'letter', overlap: 80 }))).toEqual(['no-room-on-paper']);
    expect(problemsOf(() => layOut(small, { paper: 'letter', margins: 80 }))).toEqual(['no-room-on-paper']);
    expect(problemsOf(() => layOut(small, { paper: 'letter', measured: { short: 0.5, long: 1 } }))).toEqual([
      'measured-out-of-range',
    ]);
    expect(problemsOf(() => layOut(drawingOf('empty', {}), { paper: 'letter' }))).toEqual([
      'nothing-to-print',
    ]);
    expect(problemsOf(() => layOut(swagBorder(2000, 152, 8), { paper: 'letter', mostSheets: 20 }))).toEqual([
      'too-many-sheets',
    ]);
    const endless = drawingOf('endless', {
      stitch: [stroked(openPath([line(point(0, 0), point(1e7, 1e7))]), thin)],
    });
    expect(problemsOf(() => layOut(endless, { paper: 'letter' }))).toEqual(['too-many-sheets']);
  });

  it('do not stop a margin of exactly 1/4 in', () => {
    expect(layOut(small, { paper: 'letter', margins: 0.25 * 25.4 }).sheets).toHaveLength(1);
    expect(layOut(small, { paper: 'letter', margins: { bottom: 17 } }).live.minY).toBe(17);
  });
});
