/**
 * Where the card says that channels begin is where a line so far from the stitching begins: the place is laid by the
 * card's words and figures alone, and its distance to points of the swag and of its neighbour's mirror image is taken.
 */

import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/index.ts';
import { cardOf } from '../../src/output/card/index.ts';
import { type Cell, cornerSwag, designFromPlan, rowsOf } from '../../src/swag/index.ts';
import { PROFILES, planOf, pointsAlong } from '../swag/fit-helpers.ts';

const MM = 25.4;
/** The card's figures are rounded to 1/16 in; points stand so close (mm). */
const ROUNDED = MM / 32;
const CLOSE = 0.1;

const mirrored = ({ x, y }: Point, at: Point, angle: number): Point => {
  const [c, s] = [Math.cos(2 * angle), Math.sin(2 * angle)];
  return { x: at.x + c * (x - at.x) + s * (y - at.y), y: at.y + s * (x - at.x) - c * (y - at.y) };
};

/** A half swag, the other half, and the half beyond its start, which is its own like. */
const stitchingRound = (cell: Cell): Point[] => {
  const own = pointsAlong(cell.path, CLOSE);
  const join = cell.centre ? cell.centre.x : cell.join;
  return [
    ...own,
    ...own.map((p) => mirrored(p, cell.crown, cell.mirror)),
    ...own.map((p) => mirrored(p, { x: join, y: 0 }, Math.PI / 2)),
  ];
};

/** `1 3/16` in mm. */
const inches = (text: string): number =>
  MM *
  text.split(' ').reduce((sum, part) => {
    const [top, bottom = '1'] = part.split('/');
    return sum + Number(top) / Number(bottom);
  }, 0);

const MEASURE = String.raw`([\d/ ]+) in(?: \(([^)]*)\))?`;
const LINE = new RegExp(
  `^(in line with the mark where two swags touch|midway between two swags|on the start line), ` +
    `(${MEASURE}(?: or ${MEASURE})*) ` +
    `(above the start line|below the start line|farther from the centre|nearer to the centre|` +
    `past the start mark and as far before the stop mark|before the start mark and as far past the stop mark)$`,
);

/** A place in a cell's frame (mm) as the words give it. */
const placeOf = (where: string, mm: number, which: string, cell: Cell): Point => {
  if (where === 'on the start line') return { x: which.startsWith('past') ? mm : -mm, y: 0 };
  const x = where.startsWith('midway') ? -cell.seat.gap / 2 : 0;
  if (!cell.centre) return { x, y: which.startsWith('above') ? mm : -mm };
  const radius = Math.hypot(cell.centre.x, cell.centre.y);
  const wanted = (radius + (which.startsWith('farther') ? mm : -mm)) / radius;
  return { x: cell.centre.x * (1 - wanted), y: cell.centre.y * (1 - wanted) };
};

const CHANNELS = 'channels: { outward: [1/4, 1/4], inward: [1/4, 3/8] }';

describe.each([
  ['a strip', 'layout: { strip: { length: 40, width: 7, margin: 1/4 } }\nswag: { repeats: 4 }'],
  ['a gap', 'layout: { border: { width: 7, inner: 36, margin: 1/2, corners: open } }\nswag: { gap: 1 }'],
  [
    'corners turned, from the outer seam',
    'layout: { border: { width: 6, inner: { top: 30, right: 34, bottom: 30, left: 33 3/4 }, margin: 1/2, corners: turn, from: outer } }',
  ],
  ['corners that meet', 'layout: { border: { width: 6, inner: 30, margin: 1/2, corners: meet } }'],
  ['a wreath', 'layout: { frame: { count: 8, around: 12, clearance: 1/2 } }'],
  [
    'two rows',
    'layout: { border: { width: 8, inner: 30, margin: 1/2, corners: open } }\nrows: [{ at: 1/2 }]',
  ],
])('%s', (_, text) => {
  const plan = planOf(`${text}\n${CHANNELS}`);
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const { design } = made;
  const blocks = cardOf(design, plan, []).sections.find(({ id }) => id === 'channels')!.blocks;
  const told = blocks.flatMap((block) =>
    block.kind === 'point' ? (/^(outward|inward) (\d) begins and stops (.*)\.$/.exec(block.text) ?? []) : [],
  );

  test('each channel that is told of begins where it is said to', () => {
    expect(told.length).toBeGreaterThan(0);
    const rows = rowsOf(design);
    const measured = new Set<string>();
    for (let i = 0; i < told.length; i += 4) {
      const [side, number, words] = told.slice(i + 1, i + 4) as [string, string, string];
      const row = side === 'outward' ? rows.at(-1)! : rows[0]!;
      const widths = plan.channels[side as 'outward' | 'inward'].slice(0, Number(number));
      const reach = widths.reduce((a, b) => a + b, 0);
      const cells = new Map<string, Cell>(row.sides.map((s) => [s.run.name, s.cells[0]]));
      const corner = cornerSwag(row);
      if (corner) cells.set('corner', corner.cell);
      for (const line of words.split('; ')) {
        const named = /^([a-z, ]+): (.*)$/.exec(line);
        const found = LINE.exec(named ? named[2]! : line);
        if (!found) {
          expect(line).toMatch(
            /^(corner: within the swag and comes to no mark: follow the true-size sheets|beside a corner where it meets the corner's)$/,
          );
          continue;
        }
        measured.add(`${side} ${number}`);
        const [, where, measures, ...rest] = found as unknown as string[];
        const which = rest.at(-1)!;
        for (const [, figure, names] of measures!.matchAll(new RegExp(MEASURE, 'g'))) {
          const those = (names ?? named?.[1] ?? [...cells.keys()].join(', ')).split(', ');
          for (const name of those) {
            const cell = cells.get(name);
            if (!cell) throw new Error(`${name} of ${[...cells.keys()]}`);
            const place = placeOf(where!, inches(figure!.trim()), which, cell);
            const away = Math.min(
              ...stitchingRound(cell).map((p) => Math.hypot(p.x - place.x, p.y - place.y)),
            );
            expect(Math.abs(away - reach), `${name}: ${line}`).toBeLessThan(ROUNDED + CLOSE);
          }
        }
      }
    }
    expect(measured.size).toBe(4);
  });
});
