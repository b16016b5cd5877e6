/** Corners with swags of their own, by the command line: what `fit`, `card` and `draw` tell of them. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { patience } from '../support/runs.ts';
import { emptyFolder, run } from './run.ts';

const folderWith = async (corner: string): Promise<string> => {
  const folder = emptyFolder();
  await writeFile(
    join(folder, 'border.yaml'),
    `title: Own corners
template: baluster
layout: { border: { width: 7, inner: { top: 61 3/8, right: 74, bottom: 61 1/8, left: 74 1/4 }, margin: 1/2 } }
corner: ${corner}
channels: { inward: [1/4] }
`,
  );
  return folder;
};

test('fit and card tell sides and corners each by themselves', { timeout: patience(180_000) }, async () => {
  const folder = await folderWith('{ template: finial }');
  const { out } = await run(folder, ['fit', 'border.yaml', '--json', '--most', '1']);
  const [best] = JSON.parse(out).results;
  expect([best.template, best.corners, best.corner.made.template]).toEqual(['baluster', 'turn', 'finial']);
  const { out: table } = await run(folder, ['fit', 'border.yaml', '--most', '1']);
  expect(table).toMatch(/\n +Baluster, .*\n/);
  expect(table).toMatch(/\n +corners: Finial, .*\n/);
  const { out: card } = await run(folder, ['card', 'border.yaml']);
  expect(card).toMatch(/\nTemplate of the sides: Baluster.*Template of the corners:\s+Finial/s);
  expect(card.match(/^(?:Sides|Corners): \w+/gm)).toEqual([
    'Corners: Finial',
    'Sides: set',
    'Sides: where',
    'Corners: set',
    'Corners: where',
    'Sides: where',
    'Corners: where',
  ]);
  const { made } = JSON.parse((await run(folder, ['card', 'border.yaml', '--json'])).out).corner;
  expect(made.template).toBe('finial');
});

test('a template that is not there is told where it is named, of a corner and of a kind', {
  timeout: patience(180_000),
}, async () => {
  const { err, code } = await run(await folderWith('{ template: final }'), ['fit', 'border.yaml']);
  expect(err).toMatch(/^border\.yaml:4:21: corner\.template: there is no template named "final"/);
  expect(code).not.toBe(0);
  const two = emptyFolder();
  await writeFile(
    join(two, 'strip.yaml'),
    'template: baluster\nlayout: { strip: { length: 60, width: 8 } }\nswag: { alternate: [{}, { template: newell }] }\n',
  );
  expect((await run(two, ['fit', 'strip.yaml'])).err).toMatch(
    /^strip\.yaml:3:37: swag\.alternate\.2\.template: there is no template named "newell"/,
  );
});
