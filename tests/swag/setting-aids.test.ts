/** How the template stands, where to pause, what lines to lay for channels, and how much thread it takes. */

import { describe, expect, it } from 'vitest';
import { distanceToPiece, move, pathStart } from '../../src/geometry/index.ts';
import { MM_PER_INCH } from '../../src/length/index.ts';
import {
  channelSetting,
  designOf,
  modelRatio,
  outOfReach,
  pausesOf,
  placedPath,
  placingOf,
  stitchedLength,
  threadFor,
  twoDigits,
  WASTAGE,
} from '../../src/swag/index.ts';
import { planOf, profile, search, templateOf } from './fit-helpers.ts';

const inches = (mm: number): number => mm / MM_PER_INCH;
const STRIP = '{ strip: { length: 36, width: 6, margin: 1/4 } }';

const designFor = (swag: string, template: Parameters<typeof search>[1], layout = STRIP) => {
  const plan = planOf(`layout: ${layout}\nswag: ${swag}\n`);
  const best = search(plan, template).results[0]!;
  return { plan, design: designOf(best.field, best.fit) };
};

const LEVEL = templateOf(
  'units: in\nedge: [{ start: [0, 0] }, { line: { to: [2, 0] } }, { arc: { to: [6, 2], through: [4, 1/2] } }]\nalignment: [{ name: A, at: 1/2 }]',
  'level',
);

describe('placing', () => {
  it('has the heel one clearance from the start mark, square to the edge there', () => {
    const { design } = designFor(
      '{ setting: flat-on-guide, flat: 1, from: 1, side: inside, direction: heel-first }',
      [LEVEL],
    );
    const placing = placingOf(design.cells[0]!);
    // The flat lies along the seam and below the needle, so the heel is a clearance of 1/4 in straight down.
    expect(placing.start).toMatchObject({ label: 'heel' });
    expect(placing.start!.along).toBeCloseTo(0, 9);
    expect(placing.start!.up).toBeCloseTo(-MM_PER_INCH / 4, 9);
    expect(placing.start!.back).toBeCloseTo(MM_PER_INCH / 4, 9);
    expect(placing.guide).toBeCloseTo(-MM_PER_INCH / 4, 9);
    expect(placing.firstTurnedOver).toBe(false);
    expect(placing.lean).toBeCloseTo(0, 9);
    // The etched line stands square to the flat, half an inch on.
    expect(placing.lines[0]!.along).toBeCloseTo(MM_PER_INCH / 2, 9);
    expect(placing.lines[0]!.angle).toBeCloseTo(Math.PI / 2, 9);
  });

  it('turns the template over for one change of side or direction, and not for two', () => {
    const over = (swag: string): boolean =>
      placingOf(designFor(`{ setting: crown-on-centre, ${swag} }`, [profile('finial')]).design.cells[0]!)
        .firstTurnedOver;
    expect(over('side: inside, direction: heel-first')).toBe(false);
    expect(over('side: outside, direction: heel-first')).toBe(true);
    expect(over('side: inside, direction: crown-first')).toBe(true);
    expect(over('side: outside, direction: crown-first')).toBe(false);
  });

  it('sits back farther than the clearance where a section starts at a notch', () => {
    const { design } = designFor(
      '{ from: 2, setting: crown-on-centre, side: inside, direction: heel-first }',
      [profile('baluster')],
    );
    const placing = placingOf(design.cells[0]!);
    expect(placing.start!.back).toBeGreaterThan(MM_PER_INCH / 4 + 0.5);
    // The distance from the laid template's notch to the start of the laid stitching, both taken from the design.
    const [half] = design.halves;
    const notch = profile('baluster').breaks[0]!.point;
    const at = move(half!.motion, move(half!.cell.motion, notch));
    const start = pathStart(placedPath(half!))!;
    expect(Math.hypot(at.x - start.x, at.y - start.y)).toBeCloseTo(placing.start!.back, 9);
  });
});

describe('pauses', () => {
  it('come in the order of stitching, at the breaks that are passed', () => {
    const baluster = [profile('baluster')];
    const whole = '{ setting: crown-on-centre, side: inside, from: 1, to: crown, direction: ';
    const forward = designFor(`${whole}heel-first }`, baluster).design.cells[0]!;
    const back = designFor(`${whole}crown-first }`, baluster).design.cells[0]!;
    expect(pausesOf(forward).map((p) => [p.kind, p.section])).toEqual([
      ['notch', 2],
      ['notch', 3],
    ]);
    expect(pausesOf(back).map((p) => p.section)).toEqual([3, 2]);
    const length = forward.seat.shape.to.along - forward.seat.shape.from.along;
    const [first, second] = pausesOf(forward);
    expect(pausesOf(back).map((p) => length - p.after)).toEqual([
      expect.closeTo(second!.after, 9),
      expect.closeTo(first!.after, 9),
    ]);
    const later = designFor(
      '{ from: 2, to: crown, setting: crown-on-centre, side: inside, direction: heel-first }',
      baluster,
    );
    expect(pausesOf(later.design.cells[0]!).map((p) => p.section)).toEqual([3]);
  });

  it('tell what the foot cannot reach, by the distance from the notch to the stitching', () => {
    const template = profile('baluster');
    const { design } = designFor(
      '{ setting: crown-on-centre, from: 1, to: crown, side: inside, direction: heel-first }',
      [template],
    );
    const cell = design.cells[0]!;
    const reach = outOfReach(cell);
    expect(reach.length).toBe(2);
    for (const [i, u] of reach.entries()) {
      const notch = template.breaks[i]!;
      expect(u.from).toBeLessThan(notch.at);
      expect(u.to).toBeGreaterThan(notch.at);
      const at = move(cell.motion, notch.point);
      const away = Math.min(...cell.path.pieces.map((p) => distanceToPiece(p, at)));
      expect(u.away).toBeCloseTo(away, 6);
      expect(u.away).toBeGreaterThan(MM_PER_INCH / 4);
    }
  });
});

describe('a channel', () => {
  // Common practice, no source: the edge gives one clearance, a line etched e inside it gives e + clearance.
  const clearance = MM_PER_INCH / 4;
  const lines = [1 / 8, 1 / 4, 3 / 8].map((n) => n * MM_PER_INCH);
  it.each([
    [1 / 4, { kind: 'edge' }],
    [3 / 8, { kind: 'line', inside: lines[0] }],
    [1 / 2, { kind: 'line', inside: lines[1] }],
    [5 / 8, { kind: 'line', inside: lines[2] }],
    [3 / 4, { kind: 'spacer', beyond: expect.closeTo(MM_PER_INCH / 2, 9) }],
    [1 / 8, { kind: 'too-narrow', by: expect.closeTo(MM_PER_INCH / 8, 9) }],
    [6 / 25.4, { kind: 'edge' }],
  ])('of %f in is laid by the right line', (width, setting) => {
    expect(channelSetting(width * MM_PER_INCH, clearance, lines)).toEqual(setting);
  });
});

describe('thread', () => {
  it('is 2.5 times the seam, half above and half below, and the waste', () => {
    // A worked example for stitch type 301: 220 cm of seam take 550 cm, 275 above and 275 below; then waste.
    const { needle, bobbin } = threadFor(2200);
    expect(needle / (1 + WASTAGE)).toBeCloseTo(2750, 9);
    expect(bobbin / (1 + WASTAGE)).toBeCloseTo(2750, 9);
  });

  it('follows the geometric model for thickness', () => {
    // Worked examples of the model 2 + 2·T·S: T 0.025 in at 10 stitches an inch is 2.5, T 0.01 in is 2.2.
    expect(modelRatio(0.025 * MM_PER_INCH, MM_PER_INCH / 10)).toBeCloseTo(2.5, 12);
    expect(modelRatio(0.01 * MM_PER_INCH, MM_PER_INCH / 10)).toBeCloseTo(2.2, 12);
  });

  it('is told in two digits', () => {
    expect([1234, 0.0456, 9.96, 0].map(twoDigits)).toEqual([1200, 0.046, 10, 0]);
  });

  it('is reckoned from the length of all halves', () => {
    const arc = templateOf(
      'units: in\nedge: [{ start: [0, 0] }, { arc: { to: [6, 0], rise: 1 1/2 } }]',
      'arc',
    );
    const { plan, design } = designFor(
      '{ repeats: 3, gap: 0, setting: crown-on-centre, side: inside, direction: heel-first }',
      [arc],
    );
    const length = stitchedLength(design, plan.channels);
    // An arc of radius 4 in through 4·atan(2h/c) = 4·atan(1/2) (Machinery's Handbook, 31st ed., p. 83), six times.
    const half = 4 * 4 * Math.atan(1 / 2);
    expect(inches(length.swags)).toBeCloseTo(6 * half, 9);
    expect(inches(length.repeats[0]!.length)).toBeCloseTo(2 * half, 9);
    expect(length.channels).toBe(0);
  });
});
