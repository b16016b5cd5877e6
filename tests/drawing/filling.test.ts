/** Which fill goes where, what is said about it, and that it stays in its region. */

import { describe, expect, test } from 'vitest';
import { drawPlan, fillDesign, fillLengths, scopeOf } from '../../src/drawing/index.ts';
import { FILLS } from '../../src/fill/index.ts';
import { containsPoint, movePath, pathLength, probeRegion } from '../../src/geometry/index.ts';
import { type Design, designOf, stitchedLength } from '../../src/swag/index.ts';
import { planOf, pointsAlong, profile, search } from '../swag/fit-helpers.ts';

const STRIP = 'layout: { strip: { length: 36, width: 6, margin: 1/2 } }';
const BORDER = 'layout: { border: { width: 6, inner: 60, margin: 1/2, corners: turn } }';

const made = (text: string, template = 'baluster') => {
  const plan = planOf(text);
  const best = search(plan, [profile(template)]).results[0]!;
  return { plan, design: designOf(best.field, best.fit) };
};

const oneRepeat = (design: Design) => design.halves.filter((h) => h.repeat === design.halves[0]!.repeat);

describe('which fill goes where', () => {
  const { plan, design } = made(`${STRIP}
channels: { outward: [3/8, 1/2], inward: [3/8] }
fills: { swag: { kind: crosshatch, angle: 0 }, background: lines, channels: [pearls, ribbon, pearls] }`);
  const { byHalf, open, problems } = fillDesign(design, oneRepeat(design), plan);
  const filled = [...byHalf.values()][0]!;

  test('each region has the one that the plan names, channels outward ones first', () => {
    expect(problems).toEqual([]);
    expect(filled.map((f) => `${f.region.name}: ${f.fill}`).sort()).toEqual([
      'inward 1: pearls',
      'outward 1: pearls',
      'outward 2: ribbon',
      'swag: crosshatch',
    ]);
    expect(open.map((f) => `${f.kind}: ${f.fill}`)).toEqual(['background: lines']);
  });

  test('both halves of a repeat have the same', () => {
    expect(byHalf.size).toBe(2);
    expect(new Set(byHalf.values()).size).toBe(1);
  });

  test('every fill stays inside its region', () => {
    for (const { region, paths } of filled) {
      const probe = probeRegion(region.region);
      for (const p of paths.flatMap((path) => pointsAlong(path, 1)))
        expect(containsPoint(region.region, p) || probe.nearer(p, 0.02)).toBe(true);
    }
  });

  test('the same plan gives the same lines', () => {
    const again = fillDesign(design, oneRepeat(design), plan);
    expect([...again.byHalf.values()][0]).toEqual(filled);
  });
});

test('a corner has its own fill, or the swags’', () => {
  const names = (text: string): string[] => {
    const { plan, design } = made(`${BORDER}\n${text}`, 'newel');
    const corner = design.halves.filter((h) => h.repeat === 'corner top right');
    expect(corner.length).toBe(2);
    return [...fillDesign(design, corner, plan).byHalf.values()][0]!.map((f) => f.fill);
  };
  expect(names('fills: { swag: lines, corner: crosshatch }')).toEqual(['crosshatch']);
  expect(names('fills: { swag: lines }')).toEqual(['lines']);
});

describe('what a person is told', () => {
  test('a fill that does not exist: one problem each, with the key, the known ones and the nearest', () => {
    const { plan, design } = made(`${STRIP}
channels: { outward: [1/4] }
fills: { swag: stiple, background: steam, channels: [pearl] }`);
    const { problems, byHalf } = fillDesign(design, design.halves, plan);
    expect(byHalf.size).toBe(0);
    expect(problems.map((p) => [p.key, p.hint])).toEqual([
      ['fills.swag', 'did you mean “stipple”?'],
      ['fills.background', undefined],
      ['fills.channels.1', 'did you mean “pearls”?'],
    ]);
    for (const problem of problems) for (const { name } of FILLS) expect(problem.expected).toContain(name);
  });

  test('more fills than channels', () => {
    const { plan, design } = made(`${STRIP}
channels: { outward: [3/8] }
fills: { channels: [pearls, ribbon] }`);
    expect(fillDesign(design, oneRepeat(design), plan).messages).toContain(
      'fills.channels: 2 fills for 1 channel, the last is not used',
    );
  });

  test('a fill for corners where there are none', () => {
    const { plan, design } = made(`${STRIP}\nfills: { corner: lines }`);
    expect(fillDesign(design, oneRepeat(design), plan).messages).toEqual([
      'fills.corner: it is not used, because no swag goes round or across a corner here',
    ]);
  });

  test('what a fill has to say, with where it is and which fill it was', () => {
    const { plan, design } = made(`${STRIP}\nfills: { swag: { kind: stipple, spacing: 12 } }`);
    expect(fillDesign(design, oneRepeat(design), plan).messages).toEqual([
      'swag: stipple: the area is too narrow for a line at this spacing',
    ]);
  });

  test('plumes narrower than a stitch is long are refused', () => {
    const { plan, design } = made(`${STRIP}\nfills: { swag: { kind: feather, spacing: 1/32 } }`);
    expect(fillDesign(design, oneRepeat(design), plan).problems).toMatchObject([
      {
        key: 'fills.swag.spacing',
        message: 'the spacing is too fine for feather',
        found: '1/32 in',
        expected: 'at least 1/16 in',
      },
    ]);
  });

  test('a region of which nothing is left', () => {
    const { plan, design } = made(`${STRIP}
channels: { inward: [3, 3] }
fills: { swag: lines }`);
    expect(fillDesign(design, oneRepeat(design), plan).messages).toEqual(['swag: nothing is left to fill']);
  });

  test('the ground round a frame that has no limit', () => {
    const frame = (limit: string): readonly string[] => {
      const { plan, design } = made(
        `layout: { frame: { count: 8, around: 9, clearance: 1/2${limit} } }\nfills: { background: lines }`,
        'finial',
      );
      return fillDesign(design, oneRepeat(design), plan).messages;
    };
    expect(frame('')).toEqual([
      'background: without a limit (within) nothing says how far from the frame it goes, so it is left empty',
    ]);
    expect(frame(', within: 16')).toEqual([]);
  });

  test('straight lines in a round frame, alike on both sides of each swag’s centre line', () => {
    const { plan, design } = made(
      'layout: { frame: { count: 8, around: 9, clearance: 1/2, within: 16 } }\nfills: { swag: lines, background: crosshatch }',
      'finial',
    );
    const half = oneRepeat(design)[0]!;
    const { byHalf, open } = fillDesign(design, oneRepeat(design), plan);
    const filled = byHalf.get(half)!;
    expect(filled.map((f) => f.fill)).toEqual(['lines']);
    // A half of the repeat on the other side of the mirror holds as much of it, and upright lines run along the mirror.
    const { at, along } = { at: half.cell.crown, along: half.cell.mirror };
    const lean = (p: { from: { x: number; y: number }; to: { x: number; y: number } }): number => {
      const angle = Math.atan2(p.to.y - p.from.y, p.to.x - p.from.x) - along;
      return Math.abs(Math.sin(angle));
    };
    for (const { paths } of filled) {
      const sides = [0, 0];
      for (const path of paths)
        for (const p of path.pieces) {
          if (p.kind !== 'line') continue;
          expect(lean(p)).toBeCloseTo(0, 9);
          const middle = { x: (p.from.x + p.to.x) / 2 - at.x, y: (p.from.y + p.to.y) / 2 - at.y };
          const off = middle.y * Math.cos(along) - middle.x * Math.sin(along);
          if (Math.abs(off) > 1e-6)
            sides[off > 0 ? 0 : 1]! += Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y);
        }
      expect(sides[0]).toBeCloseTo(sides[1]!, 3);
    }
    // Outside, one net of lines for the whole frame stands on its point, whichever swag it passes.
    const net = open.flatMap((f) => f.paths.flatMap((path) => path.pieces));
    expect(net.length).toBeGreaterThan(100);
    for (const { from, to } of net)
      expect(Math.abs(Math.sin(2 * Math.atan2(to.y - from.y, to.x - from.x)))).toBeCloseTo(1, 9);
  });

  test('a channel that ends, where and why', () => {
    // Laid out without channels: the search leaves room for those it knows of.
    const { design } = made(STRIP);
    const plan = planOf(`${STRIP}\nchannels: { outward: [1/4, 12], inward: [1/4, 6] }`);
    const scoped = scopeOf(design, 'all');
    if (!scoped.ok) throw new Error('the whole strip can be shown');
    expect(drawPlan(design, plan, scoped.scope).messages).toEqual([
      'outward channel 2: nothing is left of it; 12 1/4 in from the stitching is beyond the margin everywhere',
      'inward channel 2: nothing is left of it; no place inside the swag is 6 1/4 in from the stitching',
    ]);
  });
});

describe('the picture', () => {
  const { plan, design } = made(
    `${BORDER}\nchannels: { outward: [1/4] }\nfills: { swag: lines, background: lines }`,
    'newel',
  );
  const show = (name: string, withFills = true) => {
    const scoped = scopeOf(design, name);
    if (!scoped.ok) throw new Error(`${name} can be shown`);
    return { scope: scoped.scope, ...drawPlan(design, plan, scoped.scope, { withFills }) };
  };

  test('channels and fills are on their own layers, and fills can be left out', () => {
    const { layers } = show('repeat').drawing;
    expect(layers.channel.length).toBeGreaterThan(0);
    expect(layers.fill.length).toBeGreaterThan(0);
    expect(show('repeat', false).drawing.layers.fill).toEqual([]);
  });

  test('repeats that are not shown are not filled', () => {
    expect(show('top 1').fills.size).toBe(2);
  });

  test('a corner that is shown by half shows the fill of that half only', () => {
    const { scope, drawing, fills } = show('side');
    const alone = scope.halves.find((h) => h.repeat === 'corner top right')!;
    expect(scope.halves.filter((h) => h.repeat === alone.repeat).length).toBe(1);
    const whole = fills
      .get(alone)!
      .flatMap((f) => f.paths)
      .reduce((sum, p) => sum + pathLength(p), 0);
    const paths = drawing.layers.fill.flatMap((item) => {
      if (item.kind !== 'path') return [];
      const { repeat } = item.facts ?? {};
      return repeat === alone.repeat ? [item.path] : [];
    });
    const shown = paths.reduce((sum, p) => sum + pathLength(p), 0);
    expect(shown).toBeGreaterThan(0.3 * whole);
    expect(shown).toBeLessThan(0.7 * whole);
    // Nothing of it on the other side of the mitre: seen from the corner it leans 45° to the top side.
    const crown = movePath({ pieces: alone.cell.path.pieces, closed: false }, alone.motion).pieces.at(-1)!.to;
    for (const p of paths.flatMap((path) => pointsAlong(path, 2)))
      expect(p.y - crown.y - (p.x - crown.x)).toBeGreaterThan(-1e-6);
  });
});

test('the stitched length holds channels and fills, repeat by repeat', () => {
  const { plan, design } = made(`${STRIP}\nchannels: { outward: [1/4] }\nfills: { swag: lines }`);
  const filling = fillDesign(design, design.halves, plan);
  const lengths = stitchedLength(design, plan.channels, fillLengths(filling, design));
  const drawn = [...filling.byHalf.values()][0]!
    .flatMap((f) => f.paths)
    .reduce((sum, p) => sum + pathLength(p), 0);
  const repeats = design.halves.length / 2;
  expect(drawn).toBeGreaterThan(100);
  expect(lengths.repeats[0]!.fills).toBeCloseTo(drawn, 6);
  expect(lengths.fills).toBeCloseTo(repeats * drawn, 6);
  expect(lengths.channels).toBeCloseTo(repeats * lengths.repeats[0]!.channels, 6);
  expect(stitchedLength(design, plan.channels).fills).toBe(0);
});
