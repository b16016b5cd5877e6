/** A side that is drawn by itself is as long as it is measured, though the side opposite is longer. */

import { describe, expect, test } from 'vitest';
import { type Scope, scopeOf } from '../../src/drawing/index.ts';
import { move } from '../../src/geometry/index.ts';
import { cornerSwag, type Design, designOf, repeatMarks } from '../../src/swag/index.ts';
import { planOf, search } from '../swag/fit-helpers.ts';

const designs = (['turn', 'meet'] as const).flatMap((corners) =>
  (['inner', 'outer'] as const).map((from): readonly [string, Design] => {
    const plan = planOf(
      `layout: { border: { width: 6 in, inner: { top: 60 in, right: 72 in, bottom: 60 1/2 in, left: 71 3/4 in }, from: ${from}, corners: ${corners} } }`,
    );
    const { field, fit } = search(plan).results[0]!;
    return [`${corners}, from ${from}`, designOf(field, fit)];
  }),
);

const shown = (design: Design, name: string): { design: Design; scope: Scope } => {
  const scoped = scopeOf(design, name);
  if (!scoped.ok) throw new Error(scoped.known.join(', '));
  return scoped;
};

describe.each(designs)('%s', (_, whole) => {
  test.each(['top', 'right', 'bottom', 'left'])('%s by itself has its own length and no opening', (name) => {
    const { design, scope } = shown(whole, name);
    const [stretch] = scope.stretches;
    const { side, from, to } = stretch!;
    expect(side.run.name).toBe(name);
    expect(to - from).toBeCloseTo(side.run.length, 9);
    const { pose, gap } = side.fit.seat;
    for (let i = 1; i < side.fit.repeats; i++)
      expect(repeatMarks(side, i).start - repeatMarks(side, i - 1).start).toBeCloseTo(
        2 * pose.halfSpan + gap,
        9,
      );
    // What is left after the last stop mark is what was left before the first start mark.
    const first = repeatMarks(side, 0).start;
    const last = repeatMarks(side, side.fit.repeats - 1).stop;
    expect(side.run.length - last).toBeCloseTo(first, 6);
    expect(scope.halves.length).toBe(2 * side.fit.repeats + (cornerSwag(design) ? 2 : 0));
    // All that is shown lies on the start line as drawn, from its one end to its other.
    const begin = move(side.run.place, { x: 0, y: 0 });
    const end = move(side.run.place, { x: side.run.length, y: 0 });
    for (const h of scope.halves) {
      const start = move(h.motion, { x: 0, y: 0 });
      const along =
        ((start.x - begin.x) * (end.x - begin.x) + (start.y - begin.y) * (end.y - begin.y)) / side.run.length;
      expect(along).toBeGreaterThan(-1e-6);
      expect(along).toBeLessThan(side.run.length + 1e-6);
    }
  });

  test('the whole border is drawn on four square corners, open in the shorter sides', () => {
    const { design } = shown(whole, 'all');
    expect(design.sides.map((s) => Math.round((s.tear?.by ?? 0) * 1e6) / 1e6)).toEqual([12.7, 0, 0, 6.35]);
  });
});

test('what is shown whole is called by what it lies round', () => {
  const label = (layout: string): string => {
    const { field, fit } = search(planOf(`layout: { ${layout} }`)).results[0]!;
    return shown(designOf(field, fit), 'all').scope.label;
  };
  expect(label('border: { width: 6 in, inner: 60 in }')).toBe('the whole border');
  expect(label('frame: { block: 14 in, clearance: 1/2 in, within: 24 in }')).toBe('the whole frame');
  expect(label('frame: { around: 9 in, clearance: 1/2 in }')).toBe('the whole frame');
  expect(label('strip: { length: 36 in, width: 6 in }')).toBe('the whole strip');
});

test.each(['inner', 'outer'])('beside half a swag a corner shows a whole one, from the %s seam', (from) => {
  const plan = planOf(
    `layout: { border: { width: 6 in, inner: { top: 60 in, right: 72 in, bottom: 60 in, left: 72 in }, from: ${from}, corners: half } }`,
  );
  const { field, fit } = search(plan).results[0]!;
  const { scope } = shown(designOf(field, fit), 'corner top right');
  for (const { side, from: begin, to, repeats } of scope.stretches) {
    const { pose, gap } = side.fit.seat;
    expect(to - begin).toBeCloseTo(3 * pose.halfSpan + 1.5 * gap, 6);
    expect(repeats.length).toBe(2);
    // Half a swag, and both halves of the next.
    expect(scope.halves.filter((h) => h.side === side.run.name).length).toBe(3);
  }
});
