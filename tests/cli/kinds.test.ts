/** Two kinds that take turns, by the command line: what `fit`, `card` and `draw` tell of them, on paper and for programs. */

import { readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder, run } from './run.ts';

const folderWith = async (): Promise<string> => {
  const folder = emptyFolder();
  await writeFile(
    join(folder, 'strip.yaml'),
    `title: In turn
template: [baluster, newel]
layout: { strip: { length: 60, width: 8, margin: 1/2 } }
swag: { alternate: [{ template: baluster, span: about 9 }, { template: newel, span: about 5 }] }
channels: { inward: [1/4] }
`,
  );
  return folder;
};

interface Side {
  readonly repeats: number;
  readonly length: number;
  readonly span: number;
  readonly gap: number;
}

test('fit tells each kind by itself, in words and for programs', async () => {
  const folder = await folderWith();
  const { out } = await run(folder, ['fit', 'strip.yaml', '--json']);
  const [best] = JSON.parse(out).results;
  expect(best.inTurn.map((kind: object) => Object.keys(kind).slice(0, 2))).toEqual([
    ['swagKind', 'template'],
    ['swagKind', 'template'],
  ]);
  expect(best.inTurn.map(({ swagKind, template }: Record<string, unknown>) => [swagKind, template])).toEqual([
    [1, 'baluster'],
    [2, 'newel'],
  ]);
  const [first, second] = best.inTurn.map(({ sides }: { sides: readonly Side[] }) => sides[0]!) as [
    Side,
    Side,
  ];
  const b = (first.repeats - 1) / 2;
  expect((b + 1) * (first.span + first.gap) + b * (second.span + second.gap)).toBeCloseTo(first.length, 6);
  expect(best.wishes.map(({ of, swagKind }: Record<string, unknown>) => [of, swagKind])).toEqual([
    ['span', 1],
    ['span', 2],
  ]);
  const { out: table } = await run(folder, ['fit', 'strip.yaml']);
  expect(table).toMatch(/^ ?1 {2}\d+ swags, in turn .* in wide, .* in deep, and .* in wide, /);
  expect(table).toMatch(/\n +kind 1: Baluster, .*\n/);
  expect(table).toMatch(/\n +kind 2: Newel, .*\n/);
});

test('card tells which kind stands at which mark, and the drawing which kind each half is of', async () => {
  const folder = await folderWith();
  const { out } = await run(folder, ['card', 'strip.yaml', '--json']);
  const card = JSON.parse(out);
  expect(card.inTurn.map(({ template }: { template: string }) => template)).toEqual(['baluster', 'newel']);
  const centres = card.sides[0].marks.filter(({ kind }: { kind: string }) => kind === 'centre');
  expect(centres.length).toBeGreaterThan(2);
  expect(centres.map(({ swagKind }: { swagKind: number }) => swagKind)).toEqual(
    centres.map((_: object, i: number) => 1 + (i % 2)),
  );
  expect(card.placing.map(({ swagKind }: { swagKind: number }) => swagKind)).toEqual([1, 2]);
  expect((await run(folder, ['draw', 'strip.yaml', '-o', 'strip.svg'])).code).toBe(0);
  const svg = readFileSync(join(folder, 'strip.svg'), 'utf8');
  const stitch = svg.slice(svg.indexOf('id="stitch"')).split('</g>')[0]!;
  const drawn = [...stitch.matchAll(/data-repeat="strip (\d+)" data-half="\w+" data-kind="(\d)"/g)];
  expect(drawn).toHaveLength(2 * centres.length);
  for (const [, place, kind] of drawn) expect(Number(kind)).toBe(1 + ((Number(place) - 1) % 2));
});
