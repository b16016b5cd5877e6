/** The page's own answers: a fit that stays taken, one swag that is dragged, a drawing that becomes a template. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { withValue, withValues } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';
import { FONTS } from '../output/pdf/read-back.ts';
import { ask, inputOf } from './ask.ts';

const RING = readFileSync(join(import.meta.dirname, '../../samples/wreath-frame.yaml'), 'utf8');

describe('the fits', () => {
  test('a taken fit stays taken while other things change, and is looked for where it is gone', async () => {
    const cards = await ask({ kind: 'fits', input: inputOf(FIRST_PLAN), from: 0, count: 5 });
    const taken = cards[4]!.key;
    const wider = await ask({ kind: 'look', input: inputOf(withValue(FIRST_PLAN, ['paper'], 'a4'), taken) });
    expect(wider.chosen?.key).toBe(taken);
    const other = withValues(FIRST_PLAN, [
      [['layout', 'border', 'inner', 'top'], '30'],
      [['layout', 'border', 'inner', 'bottom'], '30'],
    ]);
    const moved = await ask({ kind: 'look', input: inputOf(other, taken) });
    expect(moved.chosen?.key).not.toBe(taken);
    expect(moved.chosen?.key.split('|')[0]).toBe(taken.split('|')[0]);
  });

  test('a plan that is looked at again after another has its fits by their names', async () => {
    const of = (plan: string) => ask({ kind: 'fits', input: inputOf(plan), from: 0, count: 5 });
    const before = await of(FIRST_PLAN);
    await ask({ kind: 'swag', input: inputOf(RING), side: 'frame' });
    const again = await of(FIRST_PLAN);
    for (const { key } of again) expect(key).toBeTypeOf('string');
    expect(again.map((c) => c.key)).toEqual(before.map((c) => c.key));
  });

  test('every count of a ring that fits is there, and each is its own', async () => {
    const open = withValue(RING, ['layout', 'frame', 'count'], undefined);
    const { found } = await ask({ kind: 'look', input: inputOf(open) });
    const cards = await ask({ kind: 'fits', input: inputOf(open), from: 0, count: 1000 });
    // What looks alike is shown once.
    const kinds = cards[0]!.of;
    expect(kinds).toBeLessThanOrEqual(found);
    expect(kinds).toBeGreaterThan(1);
    expect(new Set(cards.map((c) => c.key)).size).toBe(kinds);
    expect(cards.length).toBe(kinds);
    const swag = (await ask({ kind: 'swag', input: inputOf(open), side: 'frame' }))!;
    expect(swag.stops.length).toBeGreaterThan(1);
    for (const stop of swag.stops) {
      const taken = await ask({ kind: 'look', input: inputOf(open, stop.key) });
      expect(taken.chosen?.key).toBe(stop.key);
      expect(taken.chosen?.sides[0]?.repeats).toBe(stop.repeats);
    }
  });
});

describe('one swag, dragged', () => {
  test('the template is rigid: half span and depth keep to the chord, h² + d² = C²', async () => {
    const input = inputOf(FIRST_PLAN);
    const swag = (await ask({ kind: 'swag', input, side: 'top' }))!;
    for (const share of [0.3, 0.5, 0.7, 0.9]) {
      const pose = (await ask({ kind: 'drag', input, side: 'top', halfSpan: share * swag.chord }))!;
      expect(pose.halfSpan).toBeCloseTo(share * swag.chord, 9);
      expect(Math.hypot(pose.halfSpan, pose.depth)).toBeCloseTo(swag.chord, 9);
      expect(pose.inks.map((ink) => ink.name)).toEqual(
        expect.arrayContaining(['stitch', 'channel', 'ghostEdge']),
      );
    }
  });

  test('a corner swag keeps its crown on the mitre, and both its ends on their seams', async () => {
    for (const from of ['inner', 'outer']) {
      const input = inputOf(withValue(FIRST_PLAN, ['layout', 'border', 'from'], from));
      const { pose, chord, turns, kind } = (await ask({ kind: 'swag', input, side: 'corner' }))!;
      expect([kind, turns]).toEqual(['corner', true]);
      for (const share of [0.75, 0.8, 0.9]) {
        const now = (await ask({ kind: 'drag', input, side: 'corner', halfSpan: share * chord }))!;
        // The crown: h along the seam from the start and d into the border, and that on the diagonal of the corner.
        const crown = {
          x: now.ground.x + now.deeper.x * now.depth,
          y: now.ground.y + now.deeper.y * now.depth,
        };
        expect(now.ground.x).toBeCloseTo(pose.ground.x, 9);
        expect(now.ground.y).toBeCloseTo(pose.ground.y, 9);
        for (const end of now.ends)
          expect(Math.hypot(crown.x - end.x, crown.y - end.y)).toBeCloseTo(chord, 9);
        expect(Math.abs(crown.x)).toBeCloseTo(Math.abs(crown.y - now.ground.y), 9);
        expect(Math.min(...now.ends.map((e) => Math.abs(e.x)))).toBeCloseTo(0, 9);
        expect(Math.min(...now.ends.map((e) => Math.abs(e.y - now.ground.y)))).toBeCloseTo(0, 9);
      }
    }
  });

  test('a hand may pull anywhere: the pose stays one that the template can have', async () => {
    const input = inputOf(FIRST_PLAN);
    const { chord } = (await ask({ kind: 'swag', input, side: 'top' }))!;
    for (const halfSpan of [-1e9, 0, 1e-9, 1e9, Number.POSITIVE_INFINITY]) {
      const pose = (await ask({ kind: 'drag', input, side: 'top', halfSpan }))!;
      expect(pose.halfSpan).toBeGreaterThan(0);
      expect(pose.halfSpan).toBeLessThan(chord);
    }
    expect(await ask({ kind: 'drag', input, side: 'top', halfSpan: Number.NaN })).toBeUndefined();
  });

  test('it snaps only where a whole number of swags fits the side', async () => {
    const input = inputOf(FIRST_PLAN);
    const { stops } = (await ask({ kind: 'swag', input, side: 'top' }))!;
    expect(stops.length).toBeGreaterThan(1);
    for (const stop of stops) {
      const taken = await ask({ kind: 'look', input: { ...input, taken: stop.key } });
      expect(taken.chosen?.key).toBe(stop.key);
      expect(taken.chosen?.sides.find((s) => s.name === 'top')?.repeats).toBe(stop.repeats);
    }
    expect(stops.map((s) => s.halfSpan)).toEqual(stops.map((s) => s.halfSpan).toSorted((a, b) => a - b));
  });
});

describe('a template from a drawing', () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="250mm" height="80mm" viewBox="0 0 250 80"><path d="M5 75 L5 60 C60 60 70 20 125 15 S200 55 245 60 L245 75 Z"/></svg>';

  test('is told to be without a size where it counts in pixels', async () => {
    const pixels = svg.replace('width="250mm" height="80mm" ', 'width="250" height="80" ');
    const made = await ask({ kind: 'drawing', fileName: 'corbel.svg', svg: pixels, units: 'in' });
    expect(made.words).toMatch(/does not say how large it is/);
    const none = svg.replace('width="250mm" height="80mm" ', '');
    await expect(ask({ kind: 'drawing', fileName: 'corbel.svg', svg: none, units: 'in' })).rejects.toThrow(
      /^The drawing does not say how large it is\W.*in mm or inches\W?$/,
    );
  });
});

describe('what is printed', () => {
  const STRIP = `title: Léa’s 漢 strip\ntemplate: baluster\nlayout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }\n`;
  const choices = { paper: 'letter', measured: undefined, show: undefined } as const;

  test('is called after the plan, and letters that cannot be printed are said', async () => {
    const printed = await ask({
      kind: 'print',
      input: inputOf(STRIP),
      what: 'sheets',
      choices,
      fonts: FONTS,
    });
    expect(printed.name).toBe('léa-s-漢-strip-mockup.pdf');
    expect(printed.words).toMatch(/^the whole strip, \d+ sheets of Letter, .* \d+ pages with the cover$/);
    // What was told before they were made.
    const [told] = await ask({ kind: 'count-sheets', input: inputOf(STRIP), choices });
    expect(told).toMatch(/^the whole strip, \d+ sheets of Letter, /);
    expect(printed.words.startsWith(told!), told).toBe(true);
    expect(printed.notices).toEqual(['the font has no “漢”: another sign is printed in their place']);
  });

  test.each(['sheets', 'card', 'audition', 'frames'] as const)(
    'is nothing while the plan asks for a fill that there is not: %s',
    async (what) => {
      const input = inputOf(`${STRIP}fills: { swag: steam }\n`);
      await expect(ask({ kind: 'print', input, what, choices, fonts: FONTS })).rejects.toThrow(
        /no fill named/i,
      );
    },
  );
});

test('a spacing too fine for the area is said at once, with the finest; the card is told without it', async () => {
  const input = inputOf(
    'template: baluster\nlayout: { border: { width: 24, inner: 100, margin: 1/2, corners: turn } }\nfills: { background: { kind: loops, spacing: 1/16 } }\n',
  );
  // What fits is looked for once, and is known then.
  await ask({ kind: 'look', input });
  const before = process.cpuUsage();
  const { quilt, problems } = await ask({ kind: 'fills', input, side: 'top' });
  expect(quilt).toEqual([]);
  expect(problems.map((p) => p.text)).toEqual([
    expect.stringMatching(/too fine for so large an area of loops.*at least/s),
  ]);
  expect(process.cpuUsage(before).user / 1e6).toBeLessThan(6);
  const sections = await ask({ kind: 'words', input });
  expect(sections.map((s) => s.id)).toContain('thread');
});
